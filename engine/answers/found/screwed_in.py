"""What becomes of the screw of one mount in the thread of another: whether it catches, binds or drops through."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import small_mm
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.chains.joints import screw_of
from engine.facts.records import Mount, Thread
from engine.physics.mating import Mating, mate
from grammar.questions import Question, Thing

DROPS: Final = "falls-through"
BINDS: Final = "binds"
_A_SLEEVE: Final = "a sleeve (bushing) that has both threads must go between"


def with_screw_told(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what happens if the lens is screwed straight in, where no way was found."""
    lens, body = (_only(things) for things in (question.lenses, question.bodies))
    mounts = knowledge.catalogue.mounts
    if answer.chains or lens not in mounts or body not in mounts:
        return answer
    text = screwed_in(mounts[lens], mounts[body], knowledge)
    return replace(answer, lines=(Line("head", text), *answer.lines)) if text else answer


def screwed_in(male: Mount, female: Mount, knowledge: Knowledge) -> str:
    """What the male screw of one mount does in the hole of another of a different thread; '' where it is the same."""
    threads = knowledge.catalogue.threads
    one, other = threads.get(male.thread or ""), threads.get(female.thread or "")
    if one is None or other is None or one.id == other.id or male.coupling != "screw" or female.coupling != "screw":
        return ""
    mating = mate(screw_of(one), screw_of(other), knowledge.joints.limits)
    text = _outcome(one, other, mating)
    return f"{text[0].upper()}{text[1:]}." if text else ""


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
