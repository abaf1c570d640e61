"""Why the lens of one mount does not go into another by itself: screw against bayonet, another pitch, other lugs."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import READS_MM, article, small_mm, trimmed
from engine.base.interval import is_known
from engine.facts.records import Mount, Thread
from grammar.questions import Question

GOES_ON: Final = ("goes-on-by-itself", "fits-so")  # what a question mentions that asks of fit, not of focus
SCREW: Final = "screw"
_DEEP: Final = "deep-rear"


def couplings_apart(one: Mount, other: Mount, question: Question, knowledge: Knowledge) -> tuple[Told, bool]:
    """Why a lens of `one` does not simply go into `other`, and whether that is the first reason to tell."""
    if one.id == other.id or not mentions(question, *GOES_ON):
        return Told(), False
    threads = [knowledge.catalogue.threads.get(mount.thread or "") for mount in (one, other)]
    first, second = threads
    if first is not None and second is not None:
        return _threads(one, other, first, second, knowledge)
    kinds = {mount.coupling for mount in (one, other)}
    if "unknown" in kinds:
        return Told(), False
    alike = knowledge.catalogue.assumptions["taken-for-one-distance"].value.nominal
    same = _apart_mm(one, other) <= (READS_MM if SCREW in kinds else alike)  # a screw may sink into a throat
    if SCREW in kinds:
        text = f"{_shape(one, first)} and {_shape(other, second)}: neither goes into the other, a ring must carry both."
        text = f"{text[:1].upper()}{text[1:]}"
    elif other.id in one.shares_bayonet or one.id in other.shares_bayonet:
        note = f" {one.note}" if one.note and _DEEP in one.traits else ""
        return Told((Line("head", f"The two share a bayonet.{note}"),)), bool(note)
    elif len(kinds) == 1:
        text = (
            f"{one.designation} and {other.designation} are both {one.coupling.replace('-', ' ')} mounts, but each has"
            " lugs, width and lock of its own: the one does not turn home in the other."
        )
    else:
        text = (
            f"{_shape(one, first)} and {_shape(other, second)}: each has lugs and a lock of its own, and the one does"
            " not turn home in the other."
        )
        text = f"{text[:1].upper()}{text[1:]}"
    return Told((Line("head", f"{text}{_but_registers(one, other) if same else ''}"),)), same


def _shape(mount: Mount, thread: Thread | None) -> str:
    kind = f"screw, {thread.designation}" if thread is not None else mount.coupling.replace("-", " ")
    return f"{mount.designation} is {article(kind)} {kind}"


def _threads(one: Mount, other: Mount, first: Thread, second: Thread, knowledge: Knowledge) -> tuple[Told, bool]:
    """What becomes of the screw of the one in the thread of the other, and what is left to tell the two apart."""
    rows = tuple(
        Quantity("thread_pitch_mm", thread.pitch_mm, mount.id)
        for mount, thread in ((one, first), (other, second))
        if is_known(thread.pitch_mm)
    )
    if first.id == second.id:
        text = f"They do screw together, both threads are {first.designation}: the register alone keeps them apart."
        return Told((Line("head", f"{text}{_registers(one, other)}"),), rows), True
    mating = knowledge.joints.meeting(first, second)
    widths = [thread.major_mm.nominal for thread in (first, second)]
    if mating is None or not (is_known(first.pitch_mm) and is_known(second.pitch_mm)):
        text = (
            f"{one.designation} has a thread of {trimmed(widths[0], 2)} mm and {other.designation} one of "
            f"{trimmed(widths[1], 2)} mm: "
            + ("it drops through without catching." if widths[0] < widths[1] else "it is too wide to go in.")
        )
        return Told((Line("head", text),), rows), True
    pitches = [trimmed(thread.pitch_mm.nominal, 3) for thread in (first, second) if is_known(thread.pitch_mm)]
    text = (
        f"{first.designation} is not {second.designation}: the pitch of {one.designation} is {pitches[0]} mm, that of "
        f"{other.designation} {pitches[1]} mm ({mating.why}). Stop where it goes tight, never force it."
    )
    return Told((Line("head", f"{text}{_registers(one, other)}"),), rows), True


def _apart_mm(one: Mount, other: Mount) -> float:
    first, second = one.register_mm, other.register_mm
    return abs(first.nominal - second.nominal) if is_known(first) and is_known(second) else float("inf")


def _but_registers(one: Mount, other: Mount) -> str:
    """What registers that are nearly one mean, and what they do not."""
    by = _apart_mm(one, other)
    if by <= READS_MM:
        flush = " A ring for infinity would be a flush one, of 0 mm." if SCREW in (one.coupling, other.coupling) else ""
        return f" A register that is the same only says that the image lies as far behind both flanges.{flush}"
    return f" Registers that near ({small_mm(by)} apart) leave no metal for a ring between two flanges."


def _registers(one: Mount, other: Mount) -> str:
    first, second = one.register_mm, other.register_mm
    if not (is_known(first) and is_known(second)) or first.nominal == second.nominal:
        return ""
    return (
        f" And the registers differ: {one.designation} {trimmed(first.nominal, 3)} mm, {other.designation}"
        f" {trimmed(second.nominal, 3)} mm, {small_mm(abs(first.nominal - second.nominal))} apart."
    )
