"""A register told beside the mount that it is said to be of, or in place of one: what it speaks for and against."""

from __future__ import annotations

from math import inf
from typing import Final

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import how_rare, registers_of
from engine.answers.parts.near_enough import lens_off_mm, told_register_mm
from engine.answers.parts.said import mentions, number, numbers
from engine.answers.parts.wording import listed, small_mm
from engine.answers.seat.open_lens import UNFOCUSED
from engine.answers.seat.seen import as_seen, is_coupled_so
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.kinds import ACCESSORIES
from engine.facts.records import Mount
from grammar.questions import BY_MEASURES, BY_REGISTER, BY_THREAD, Question, Thing

TOLD_BY: Final = "assumed by paper"  # trait of a lens that was told by its register alone
BY_PAPER: Final = "register-by-paper"  # how far such a measurement may be off
MOST: Final = 3
LEAST_MM: Final = 9.0  # no mount has a shorter one
LEAST_WHOLE_MM: Final = 16.0  # a whole number below counts lugs and pins
MOST_MM: Final = 115.0  # and no mount has a longer one
_COUPLINGS: Final = ("screw", "bayonet", "breech", "lugs")
_FOUND: Final = frozenset([BY_MEASURES, BY_THREAD, BY_REGISTER])  # traits of a lens whose mount was found out
_AS_WIDE_MM: Final = 0.4  # as near as a caliper tells screws apart
_MORE_MM: Final = 0.5  # than a whole number of millimetres: '44 and a bit'


def against_name(question: Question, knowledge: Knowledge) -> Told:
    """'it says F, register 40.5': that the mount named has another, and which mounts have that; else nothing."""
    told, lens = number(question, "flange_to_image"), question.lens
    named = _named(lens, knowledge)
    if told is None or lens is None or named is None or not is_known(named.register_mm) or lens.lens_kind:
        return Told()
    good = knowledge.catalogue.assumptions[BY_PAPER].value.greatest
    if BY_REGISTER in lens.traits:
        text = f"{small_mm(told)} from flange to image: that is {named.designation}, whatever it is sold as."
        return Told((Line("head", text),), registers_of([named]))
    if abs(named.register_mm.nominal - told) <= good:
        return Told()
    has = small_mm(named.register_mm.nominal)
    text = f"No, that does not fit: {named.designation} has a register of {has}, not {small_mm(told)}."
    near = [mount for mount in having(told, question, knowledge) if mount.id != named.id]
    alike = [mount for mount in near if mount.id in lens.ids] or near
    if alike:
        text += f" {small_mm(told)} is that of {listed([mount.designation for mount in alike[:MOST]], 'or')}"
        text += ", which shares no more than the name." if alike != near else "."
    rows = [named, *alike[:MOST]]
    return Told((Line("head", text),), registers_of(rows))


def not_of_its_name(question: Question, knowledge: Knowledge) -> Told:
    """'flange to image 45' of an LTM lens: which other mount with as wide a screw has that; nothing where none has."""
    told, named = number(question, "flange_to_image"), _named(question.lens, knowledge)
    facts, prior = knowledge.catalogue, question.prior if question.follows else None
    known = prior is not None and prior.said("flange_to_image") == question.said("flange_to_image")  # it was said
    if told is None or named is None or known or named.thread is None or not is_known(named.register_mm):
        return Told()
    if BY_REGISTER in (question.lens or Thing()).traits or abs(named.register_mm.nominal - told) <= lens_off_mm(facts):
        return Told()
    wide = facts.threads[named.thread].major_mm
    good = facts.assumptions[BY_PAPER].value.greatest
    alike = [
        mount for mount in facts.mounts.values()
        if mount.thread is not None and mount.kind not in ACCESSORIES and _off(mount, told) <= good
        and is_known(wide) and abs(facts.threads[mount.thread].major_mm.nominal - wide.nominal) <= _AS_WIDE_MM
    ]  # fmt: skip
    if not alike:
        return Told()
    alike.sort(key=lambda mount: (round(_off(mount, told), 1), how_rare(mount, knowledge)))
    names = listed([f"{one.designation}, register {_figure(one)}" for one in alike[:MOST]], "or")
    text = f"{small_mm(told)} from flange to image is not {named.designation}, {small_mm(named.register_mm.nominal)}: "
    text += f"of screws as wide it is {names}. What follows goes by what was measured."
    return Told((Line("head", text),), registers_of(alike[:MOST]))


def with_mount_by_register(question: Question, knowledge: Knowledge, sure: bool = False) -> Question:
    """A lens that is told by its register alone, as one of the mounts that have it: 'a 27.8 bayonet to MFT'.

    `sure`: what mount it is was asked, so that its coupling need not be told.
    """
    lens = question.lens
    told_otherwise = lens is not None and (lens.ids or lens.lens_kind in UNFOCUSED or lens.kind)
    if question.said("flange_to_image") is not None and question.said("thread") is not None:
        return question  # its thread has had its say: of no mount of that thread is it the distance
    if told_otherwise or not question.bodies or len(question.lenses) > 1:
        return question
    told = number(question, "flange_to_image")
    told = told if told is not None or lens is None else finely_told(question)  # 'a breech lens 74.1 onto Z'
    if told is None:
        return question
    coupled = sure or any(mentions(question, f"coupled-{word}") for word in _COUPLINGS)
    good = knowledge.catalogue.assumptions[BY_PAPER].value.greatest
    good = good if coupled and question.said("flange_to_image") is not None else told_register_mm(knowledge.catalogue)
    hosts = {id_ for thing in question.bodies for id_ in thing.ids}
    near = [
        mount for mount in having(told, question, knowledge)
        if mount.id not in hosts and mount.kind != "mirrorless" and _off(mount, told) <= good
    ]  # fmt: skip
    if not near:
        return question
    words = f"lens with a register of {small_mm(told)}"
    ids, traits = tuple(mount.id for mount in near[:MOST]), tuple(dict.fromkeys((*(lens or Thing()).traits, TOLD_BY)))
    meant = replace(lens or Thing(), kind="mount", ids=ids, words=words, traits=traits)
    return replace(question, lenses=(meant,))


def finely_told(question: Question) -> float | None:
    """The one bare number that is told finer than any focal length, as registers are; mm."""
    keys = ("numbers", "length", *(() if " x " in (question.said("thread") or "") else ("thread",)))
    told = [one for one in numbers(question, *keys) if one != int(one) and one >= LEAST_MM]
    return told[0] if len(told) == 1 else None


def seen_with_lugs(question: Question) -> float | None:
    """'claws at the back, 44 something': the one bare number that may be a register, of a mount told by its looks."""
    fine = finely_told(question)
    if fine is not None:
        return fine
    whole = [one for one in numbers(question, "numbers", "length") if LEAST_WHOLE_MM <= one <= MOST_MM]
    if not whole and mentions(question, "bit-more"):  # 'a lever at the back, a bit over 44' tells of no lens of 44
        bare = [lens for lens in question.lenses if lens.words.isdecimal() and not lens.ids]
        whole = [lens.focal_length_mm for lens in bare if lens.focal_length_mm is not None]
    return whole[0] if len(whole) == 1 else None


def roughly(told: float, question: Question) -> float:
    """A register as it is meant, in mm: 'a bit over 44' is half a millimetre more."""
    return told + _MORE_MM if told == int(told) and mentions(question, "bit-more") else told


def without_claim(question: Question) -> Question:
    """A register that somebody says the mount has, and that was not measured on the lens, counts for nothing."""
    if not mentions(question, "only-claimed") or mentions(question, "measured-so"):
        return question
    return question.with_(values=tuple(row for row in question.values if row[0] != "flange_to_image"))


def without_paper(question: Question, knowledge: Knowledge) -> Question:
    """A distance caught on paper counts for nothing once the mount that it told of has one that is known better.

    One told in hundredths was measured, and is that lens's own.
    """
    told, lens = number(question, "flange_to_image"), question.lens
    found = lens is not None and (bool(_FOUND & set(lens.traits)) or question.said("thread") is not None)
    mount = knowledge.catalogue.mounts.get(lens.id or "") if found and lens is not None else None
    if told is None or mount is None or not is_known(mount.register_mm) or round(told, 1) != told:
        return question
    near = abs(mount.register_mm.nominal - told) <= knowledge.catalogue.assumptions[BY_PAPER].value.greatest
    return question.with_(values=question.rest("flange_to_image")) if near and question.follows else question


def having(told: float, question: Question, knowledge: Knowledge) -> list[Mount]:
    """The mounts of the coupling spoken of whose register is the told one, as near as a ruler tells; nearest first."""
    good = knowledge.catalogue.assumptions[BY_PAPER].value.greatest
    told = roughly(told, question)
    near = [
        mount for mount in knowledge.catalogue.mounts.values()
        if mount.kind not in ACCESSORIES and is_known(mount.register_mm) and is_coupled_so(mount, question)
        and abs(mount.register_mm.nominal - told) <= good
    ]  # fmt: skip
    return sorted(as_seen(near, question), key=lambda mount: (round(_off(mount, told), 1), how_rare(mount, knowledge)))


def _named(lens: Thing | None, knowledge: Knowledge) -> Mount | None:
    return (
        knowledge.catalogue.mounts.get(lens.ids[0]) if lens is not None and lens.kind == "mount" and lens.ids else None
    )


def _figure(mount: Mount) -> str:
    return small_mm(mount.register_mm.nominal) if is_known(mount.register_mm) else ""


def _off(mount: Mount, told: float) -> float:
    return abs(mount.register_mm.nominal - told) if is_known(mount.register_mm) else inf
