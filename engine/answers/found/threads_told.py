"""The threads that a question tells of: by name, by width and pitch, or by the pitch of one whose width is known."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.knowledge import Knowledge
from engine.base.interval import Interval, is_known
from engine.base.units import MM_PER_INCH
from engine.facts.basis import Basis
from engine.facts.catalogue import Catalogue
from engine.facts.records import Thread
from grammar.questions import Question
from grammar.words.atoms import key_of

SAME_MM: Final = 0.02  # pitches nearer than this are one
SAME_WIDTH_MM: Final = 0.1
ANOTHER_MM: Final = 1.0  # a width that is farther off is another
_WRITTEN: Final = re.compile(r"m?\s*(\d+(?:\.\d+)?)\s*(?:mm)?\s*[x×]\s*(\d+(?:\.\d+)?)\s*(tpi|in)?", re.IGNORECASE)
_PITCH: Final = re.compile(r"(\d+(?:\.\d+)?)\s*(tpi)?")
_AS_TOLD: Final = Basis("one-source", ())  # what the person asking says it is


def threads_told(question: Question, knowledge: Knowledge) -> list[Thread]:
    """Every thread that is told by itself, as the facts have it, else as it is written."""
    texts = (question.said("thread") or "").split(", ")
    found = [thread_named(text, knowledge.catalogue) or _written(text, knowledge) for text in texts if text]
    if any(found):  # '39x26' beside a thread is one too, and no frame of that size
        frames = [thing.words for thing in question.things if thing.kind == "format"]
        found = [*(thread_named(words, knowledge.catalogue) for words in frames), *found]
    return [thread for thread in found if thread is not None]


def width_told(question: Question, measured_mm: float, knowledge: Knowledge) -> float:
    """The width in mm; where the name of a thread holds another measure, '2 inch filter', that of the thread."""
    named = next(iter(threads_told(question, knowledge)), None)
    other = named is not None and abs(named.major_mm.nominal - measured_mm) > ANOTHER_MM
    return named.major_mm.nominal if named is not None and other else measured_mm


def of_pitch(question: Question, width: Thread, knowledge: Knowledge) -> Thread | None:
    """The thread of the pitch told and as wide as one that is named: 'M39x1 into the 26 tpi hole'."""
    match = _PITCH.search(question.said("pitch") or "")
    if match is None:
        return None
    value = float(match[1])
    pitch = MM_PER_INCH / value if match[2] else value
    if is_known(width.pitch_mm) and abs(width.pitch_mm.nominal - pitch) < SAME_MM:
        return None
    return _of_size(width.major_mm.nominal, pitch, knowledge)


def thread_named(text: str, facts: Catalogue) -> Thread | None:
    """The thread that goes by a name as typed: an id, a designation or another name of it."""
    key = key_of(text)
    if not key or text in facts.threads:
        return facts.threads.get(text)
    return next((one for one in facts.threads.values() if key in map(key_of, (one.designation, *one.aliases))), None)


def _written(text: str, knowledge: Knowledge) -> Thread | None:
    match = _WRITTEN.match(text)
    if match is None or match[3] == "in":
        return None
    value = float(match[2])
    return _of_size(float(match[1]), MM_PER_INCH / value if match[3] else value, knowledge)


def _of_size(width: float, pitch: float, knowledge: Knowledge) -> Thread:
    """The thread of the facts that has this width and pitch, or one that is made up of them."""
    for one in knowledge.catalogue.threads.values():
        if (
            is_known(one.pitch_mm)
            and abs(one.major_mm.nominal - width) < SAME_WIDTH_MM
            and abs(one.pitch_mm.nominal - pitch) < SAME_MM
        ):
            return one
    name = f"M{width:g}x{pitch:.3g}"
    return Thread(name, name, _AS_TOLD, Interval.exact(width), Interval.exact(pitch))
