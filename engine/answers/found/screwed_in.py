"""What becomes of the screw of one mount in the thread of another: whether it catches, binds or drops through."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import numbers
from engine.answers.parts.wording import listed, small_mm
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.chains.joints import screw_of
from engine.facts.records import Mount, Thread
from engine.physics.mating import Mating, mate
from grammar.questions import Question, Thing

DROPS: Final = "falls-through"
BINDS: Final = "binds"
SAME: Final = "same"
MOST_TURNS: Final = 20.0  # of a thread of a lens mount
FILTER: Final = "filter"  # kind of mounts, and of pieces, that have a front thread
FRONT: Final = ("filter", "front thread")  # stand in what a thread is used for, where that is the front of lenses
TWO: Final = 2
_A_SLEEVE: Final = "a sleeve (bushing) that has both threads must go between"


def with_screw_told(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what happens if the lens is screwed straight in, where no way was found."""
    lens, body = (_only(things) for things in (question.lenses, question.bodies))
    mounts, drops = knowledge.catalogue.mounts, question.mentions("drops-asked")
    if drops and answer.question is not None:  # 'drops through my C to MFT ring': into the ring, and not the body
        lens, body = _only(answer.question.lenses), next(iter(question.limits.using), body)
    if lens not in mounts or body not in mounts or (answer.chains and not drops):
        return answer
    text = screwed_in(mounts[lens], mounts[body], knowledge)
    return replace(answer, lines=(Line("head", text), *answer.lines)) if text else answer


def with_pitches_told(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind which pitches front threads of the width told are cut with, where there is more than one."""
    width = _front_mm(question, knowledge)
    pitches = sorted({one.pitch_mm.nominal for one in fronts_of(width, knowledge) if is_known(one.pitch_mm)})
    if width is None or len(pitches) < TWO:
        return answer
    listed_ = listed([f"{pitch:g}" for pitch in pitches])
    text = (
        f"Filters of {width:g} mm are cut with pitches of {listed_} mm, which do not go into each other: the wrong one "
        "catches, then binds within a turn. Turn it back, do not force it, and measure ten crests of both."
    )
    return replace(answer, lines=(Line("head", text), *answer.lines))


def _front_mm(question: Question, knowledge: Knowledge) -> float | None:
    """The width of the one front thread that is spoken of."""
    mounts, threads = knowledge.catalogue.mounts, knowledge.catalogue.threads
    named = (mounts.get(thing.id or "") for thing in (*question.lenses, *question.bodies, *question.things))
    widths = {
        threads[one.thread].major_mm.nominal for one in named if one is not None and one.kind == FILTER and one.thread
    }
    widths |= set(numbers(question, "filter_thread"))
    of_filters = any(one.piece == FILTER for one in question.adapters)
    widths |= set(numbers(question, "thread")[:1]) if of_filters and not widths else set()
    return next(iter(widths)) if len(widths) == 1 else None


def fronts_of(width_mm: float | None, knowledge: Knowledge) -> list[Thread]:
    """The threads of lens fronts and filters that are so wide."""
    threads = knowledge.catalogue.threads.values()
    return [one for one in threads if one.major_mm.nominal == width_mm and any(word in one.used_for for word in FRONT)]


def screwed_in(male: Mount, female: Mount, knowledge: Knowledge) -> str:
    """What the male screw of one mount does in the hole of another of a different thread; '' where it is the same."""
    threads = knowledge.catalogue.threads
    one, other = threads.get(male.thread or ""), threads.get(female.thread or "")
    if one is None or other is None or one.id == other.id or male.coupling != "screw" or female.coupling != "screw":
        return ""
    mating = mate(screw_of(one), screw_of(other), knowledge.joints.limits)
    text = _outcome(one, other, mating)
    return f"{text[0].upper()}{text[1:]}." if text else ""


def is_one_thread(one: Mount, other: Mount, knowledge: Knowledge) -> bool:
    """Whether two mounts have the same thread, by whatever name: M58x0.75 of a filter and of a camera."""
    threads = knowledge.catalogue.threads
    first, second = threads.get(one.thread or ""), threads.get(other.thread or "")
    if first is None or second is None or first.id == second.id:
        return one.thread == other.thread
    return mate(screw_of(first), screw_of(second), knowledge.joints.limits).outcome == SAME


def _outcome(one: Thread, other: Thread, mating: Mating) -> str:
    if mating.outcome == DROPS:
        wide = f"{one.designation} ({small_mm(one.major_mm.nominal)}) drops through {other.designation}"
        return f"{wide} without catching: {_A_SLEEVE}"
    if mating.outcome != BINDS:
        return ""
    if not starts(mating):
        return f"{one.designation} is too wide for {other.designation}: it does not start; {_A_SLEEVE}"
    pitches = ""
    if is_known(one.pitch_mm) and is_known(other.pitch_mm):
        pitches = f" ({one.pitch_mm.nominal:.3g} against {other.pitch_mm.nominal:.3g} mm a turn)"
    if mating.runs_home == "often":
        home = f"{one.designation} mostly runs home in {other.designation}{pitches}"
        return f"{home}, but a tight pair binds before: never force it"
    return f"{one.designation} starts in {other.designation}, then binds{pitches}: do not force it"


def starts(mating: Mating) -> bool:
    """Whether a screw that binds at last gets into the hole at all."""
    return mating.turns is None or mating.turns.greatest > 0


def _only(things: tuple[Thing, ...]) -> str:
    """The likeliest mount of the only thing."""
    return things[0].ids[0] if len(things) == 1 and things[0].ids else ""


def binds_after(turns: Interval) -> str:
    """After how many turns a screw binds; more than a thread has are none that it would bind after."""
    if turns.greatest <= 0:
        return "starts, then binds at once"
    if turns.least >= MOST_TURNS:
        return "starts, and holds badly"
    return f"starts, then binds after about {turns.least:.1f} to {min(turns.greatest, MOST_TURNS):.1f} turns"
