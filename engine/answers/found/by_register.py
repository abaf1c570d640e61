"""Which mounts a lens may have by its flange to image distance alone, the nearest first."""

from __future__ import annotations

from math import inf

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import how_rare, mount_line, registers_of
from engine.answers.parts.near_enough import gauged_mm
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import listed, small_mm
from engine.answers.seat.seen import as_seen, is_coupled_by_lugs, is_coupled_so
from engine.answers.seat.told_register import BY_PAPER, having, roughly, seen_with_lugs
from engine.base.interval import Measure, is_known
from engine.facts.kinds import ACCESSORIES
from grammar.questions import Question

MOST = 8


def with_opening_as_throat(question: Question, knowledge: Knowledge) -> Question:
    """'opening 54, flange to image 44': an opening that a bayonet of that register has is its throat, and no thread."""
    bore, told = number(question, "bore"), number(question, "flange_to_image")
    if bore is None or told is None or question.said("pitch") is not None or mentions(question, "thread-told"):
        return question
    as_wide = knowledge.catalogue.assumptions["throat-by-caliper"].value.greatest
    near = (one for one in having(told, question, knowledge) if one.coupling != "screw")
    if not any(_off(mount.throat_mm, bore) <= as_wide for mount in near):
        return question
    values = tuple(("throat", value) if key == "bore" else (key, value) for key, value in question.values)
    return question.with_(values=values)


def by_register(question: Question, knowledge: Knowledge) -> Told:
    """The mounts whose register lies as near to the told one as a ruler tells; of the coupling that is spoken of."""
    told, throat = number(question, "flange_to_image"), number(question, "throat")
    if told is None and throat is None and is_coupled_by_lugs(question):
        told, throat = seen_with_lugs(question), _width_seen(question)  # 'three lugs, a lever, 46.5'
    if told is None:
        return _by_throat(throat, question, knowledge) if throat is not None else _if_flange(question, knowledge)
    good = knowledge.catalogue.assumptions[BY_PAPER].value.greatest
    near = having(told, question, knowledge)
    wide = throat if throat is not None else _width_seen(question) if is_coupled_by_lugs(question) else None
    if wide is not None:  # what is as wide too, where any of them is known to be
        as_wide = knowledge.catalogue.assumptions["throat-by-caliper"].value.greatest
        near = [mount for mount in near if _off(mount.throat_mm, wide) <= as_wide] or near
    meant = roughly(told, question)
    about = "About " if meant != told else ""
    head = f"{about}{small_mm(meant)} from flange to image, good to {small_mm(good)} by a ruler on paper"
    glass = _behind_glass(told, knowledge)
    if not near:
        text = f"{head}: no mount in the facts has that register, so the lens brings one of its own."
        return glass if glass.lines else Told((Line("head", text),))
    shown = near[:MOST]
    lines = [Line("head", f"{head}, may be:")]
    lines += [Line("fact", f"{mount.designation}: {mount_line(mount, knowledge)}", 1) for mount in shown]
    return Told(tuple(lines), registers_of(shown)) + glass


def _behind_glass(told: float, knowledge: Knowledge) -> Told:
    """The mounts whose bodies measure so much metal to metal, as glass lies behind their flange: what it is in air."""
    near = gauged_mm(knowledge.catalogue)
    rows = [one for one in knowledge.catalogue.mounts.values() if _off(one.mechanical_mm, told) <= near]
    lines = []
    for mount in rows:
        if is_known(mount.mechanical_mm) and is_known(mount.register_mm):
            moved = mount.mechanical_mm.nominal - mount.register_mm.nominal
            text = f"{small_mm(told)} is what {mount.designation} bodies measure from flange to image, metal to metal: "
            text += f"the glass behind the flange moves the image back by {small_mm(round(moved, 3))}. In air that is"
            lines.append(Line("head", f"{text} {small_mm(mount.register_mm.nominal)}, the register of its lenses."))
    return Told(tuple(lines), registers_of(rows))


def _width_seen(question: Question) -> float | None:
    """How wide the rear is that was seen, where that is no thread."""
    keys = ("barrel", "bore", *(("thread",) if mentions(question, "no-thread") else ()))
    return number(question, *keys)


def _if_flange(question: Question, knowledge: Knowledge) -> Told:
    """'a breech ring and 42 mm': what it may be if that is no focal length, which only the person asking can tell."""
    open_ = [lens for lens in question.lenses if not lens.ids and lens.f_number is None]
    focal = next((lens.focal_length_mm for lens in open_ if lens.focal_length_mm is not None), None)
    if focal is None or not is_coupled_by_lugs(question):
        return Told()
    near = having(focal, question, knowledge)[:MOST]
    if not near:
        return Told()
    names = listed([mount.designation for mount in near], "or")
    text = f"If {small_mm(focal)} is from flange to image, and not its focal length, it may be {names}."
    return Told((Line("text", text),), registers_of(near))


def _by_throat(told: float, question: Question, knowledge: Knowledge) -> Told:
    """The mounts whose opening is as wide as was measured, the nearest first."""
    good = knowledge.catalogue.assumptions["throat-by-caliper"].value.greatest
    near = [
        mount for mount in knowledge.catalogue.mounts.values()
        if mount.kind not in ACCESSORIES and mount.coupling != "screw" and is_known(mount.throat_mm)
        and is_coupled_so(mount, question) and _off(mount.throat_mm, told) <= good
    ]  # fmt: skip
    if not near:
        return Told((Line("head", f"No bayonet in the facts has a throat of {small_mm(told)}."),))
    near = as_seen(near, question)
    shown = sorted(near, key=lambda mount: (_off(mount.throat_mm, told), how_rare(mount, knowledge)))[:MOST]
    lines = [Line("head", f"By a throat of {small_mm(told)}, good to {small_mm(good)}, it may be:")]
    for mount in shown:
        assert is_known(mount.throat_mm)
        wide = f"throat {small_mm(mount.throat_mm.nominal)}"
        lines.append(Line("fact", f"{mount.designation}: {mount_line(mount, knowledge)}; {wide}", 1))
    return Told(tuple(lines), registers_of(shown))


def _off(fact: Measure, told: float) -> float:
    """How far a fact is from what was measured, in tenths of a millimetre: finer no caliper tells here."""
    return round(abs(fact.nominal - told), 1) if is_known(fact) else inf


def beside_register(question: Question, knowledge: Knowledge) -> Told:
    """'what else is close to that' after 46.5 mm: the mounts whose registers lie next to it, the nearest first."""
    told = number(question, "flange_to_image")
    if told is None:
        return Told()
    beside = knowledge.catalogue.assumptions["next-register"].value.nominal
    mounts = [
        mount for mount in knowledge.catalogue.mounts.values()
        if mount.kind not in ACCESSORIES and _off(mount.register_mm, told) <= beside
        and is_coupled_so(mount, question)
    ]  # fmt: skip
    near = sorted(mounts, key=lambda mount: (_off(mount.register_mm, told), how_rare(mount, knowledge)))[:MOST]
    if not near:
        return Told((Line("head", f"Nothing in the facts has a register within {small_mm(beside)} of that."),))
    lines = [Line("head", f"By the register alone, those next to {small_mm(told)}, the nearest first:")]
    lines += [Line("fact", f"{mount.designation}: {mount_line(mount, knowledge)}", 1) for mount in near]
    lines.append(Line("text", "Lugs or thread, throat, levers and pins tell such mounts apart."))
    return Told(tuple(lines), registers_of(near))
