"""Which mounts a lens may have by its flange to image distance alone, the nearest first."""

from __future__ import annotations

from math import inf

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import how_rare, mount_line
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import small_mm
from engine.answers.seat.told_register import ACCESSORIES, BY_PAPER, finely_told, having, is_coupled_so
from engine.base.interval import Measure, is_known
from engine.facts.records import Mount
from grammar.questions import Question

MOST = 8


def by_register(question: Question, knowledge: Knowledge) -> Told:
    """The mounts whose register lies as near to the told one as a ruler tells; of the coupling that is spoken of."""
    told, throat = number(question, "flange_to_image"), number(question, "throat")
    if told is None and throat is None and mentions(question, "coupled-bayonet"):
        told = finely_told(question)  # 'three lugs, a lever, 46.5'
    if told is None:
        return _by_throat(throat, question, knowledge) if throat is not None else Told()
    good = knowledge.catalogue.assumptions[BY_PAPER].value.greatest
    near = having(told, question, knowledge)
    head = f"{small_mm(told)} from flange to image, good to {small_mm(good)} by a ruler on paper"
    if not near:
        text = f"{head}: no mount in the facts has that register, so the lens brings one of its own."
        return Told((Line("head", text),))
    shown = near[:MOST]
    lines = [Line("head", f"{head}, may be:")]
    lines += [Line("fact", f"{mount.designation}: {mount_line(mount, knowledge)}", 1) for mount in shown]
    return Told(tuple(lines), tuple(_register(mount) for mount in shown))


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
    shown = sorted(near, key=lambda mount: (_off(mount.throat_mm, told), how_rare(mount, knowledge)))[:MOST]
    lines = [Line("head", f"By a throat of {small_mm(told)}, good to {small_mm(good)}, it may be:")]
    for mount in shown:
        assert is_known(mount.throat_mm)
        wide = f"throat {small_mm(mount.throat_mm.nominal)}"
        lines.append(Line("fact", f"{mount.designation}: {mount_line(mount, knowledge)}; {wide}", 1))
    return Told(tuple(lines), tuple(_register(mount) for mount in shown if is_known(mount.register_mm)))


def _off(fact: Measure, told: float) -> float:
    """How far a fact is from what was measured, in tenths of a millimetre: finer no caliper tells here."""
    return round(abs(fact.nominal - told), 1) if is_known(fact) else inf


def _register(mount: Mount) -> Quantity:
    assert is_known(mount.register_mm)
    return Quantity("register_mm", mount.register_mm, mount.id)
