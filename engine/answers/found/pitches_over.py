"""What so many threads of a named screw come to: 'how long are ten threads of a T2', told by the pitch of the facts."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import listed, trimmed
from engine.base.interval import is_known
from engine.base.units import MM_PER_INCH
from engine.facts.records import Thread
from grammar.kinds import DEFINITION
from grammar.questions import Question, Thing

KEY: Final = "pitches-over"  # of what is mentioned
_SPELT: Final = {"five": 5.0, "ten": 10.0, "twenty": 20.0}
_LEAST, _MOST = 2.0, 100.0  # threads that are counted along a rule
_TEN: Final = 10.0
_FINEST_TPI: Final = 60  # more threads an inch than this are metric
_WHOLE: Final = 0.02
_MEASURED: Final = re.compile(r"\d\.\d|\d ?mm\b|= ?\d")  # 'ten pitches = 7.5': its pitch was measured


def with_pitches_over(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """How long so many threads of each screw that is named are, in place of the answer.

    Length, mm = count x pitch. Nothing where the pitch was measured, or no screw of a known pitch is named.
    """
    count = _count(question)
    threads = [one for one in _screws(question, knowledge) if is_known(one[1].pitch_mm)]
    before = question.prior.said("pitch") if question.follows and question.prior is not None else None
    if count is None or not threads or question.said("pitch") != before or _MEASURED.search(question.text):
        return answer
    lines, rows = [], []
    for name, thread in threads:
        pitch = thread.pitch_mm
        assert is_known(pitch)
        length = pitch * count
        tpi = MM_PER_INCH / pitch.nominal
        inch = f", {tpi:.0f} to the inch" if tpi < _FINEST_TPI and abs(tpi - round(tpi)) < _WHOLE else ""
        text = f"{name}: {count:g} threads measure {trimmed(length.nominal, 2)} mm, crest to crest (pitch "
        lines.append(Line("head", f"{text}{trimmed(pitch.nominal, 3)} mm{inch}; {thread.designation})."))
        rows += [Quantity("thread_pitch_mm", pitch, name)]
        rows += [Quantity("ten_pitches_mm", pitch * _TEN, name)]
    told = "Press paper on the thread, mark one crest and the last one counted from it, and measure between the two."
    here = [one for one in (*question.things, *question.lenses, *question.bodies) if _is_typed(one, question.text)]
    # asked by the way: what follows goes on with the lens and body spoken of
    aside = question.with_(intent=DEFINITION, topic=None, lenses=(), bodies=(), adapters=(), things=tuple(here))
    asked = aside if question.follows or question.prior is not None else question
    return Answer(
        question.text, asked.intent, ANSWERED, (*lines, Line("text", told)), question=asked, quantities=tuple(rows),
        reading=f"how long {count:g} threads of {listed([name for name, _ in threads])} are",
    )  # fmt: skip


def _count(question: Question) -> float | None:
    """How many threads the question itself tells of."""
    for place in question.places(KEY):
        first = question.text[place.at : place.end].split()[0].casefold()
        number = _SPELT.get(first, place.number)
        if number is not None and _LEAST <= number <= _MOST:
            return number
    return None


def _screws(question: Question, knowledge: Knowledge) -> list[tuple[str, Thread]]:
    """The screws that the question names itself, by name; where it names none, that of the lens spoken of."""
    here = [one for one in (*question.things, *question.lenses, *question.bodies) if _is_typed(one, question.text)]
    found: dict[str, tuple[str, Thread]] = {}
    for thing in here or question.lenses:
        for name, id_ in _threads_of(thing, knowledge):
            found.setdefault(id_, (name, knowledge.catalogue.threads[id_]))
    return list(found.values())


def _threads_of(thing: Thing, knowledge: Knowledge) -> list[tuple[str, str]]:
    facts = knowledge.catalogue
    if thing.kind == "thread":
        return [(facts.threads[name].designation, name) for name in thing.ids[:1]]
    mounts = [facts.mounts[name] for name in thing.ids if name in facts.mounts]
    return [(one.designation, one.thread) for one in mounts if one.thread]


def _is_typed(thing: Thing, text: str) -> bool:
    """Whether it stands in this very text, and was not carried over from before."""
    at = thing.column - 1
    return bool(thing.words) and text[at : at + len(thing.words)].casefold() == thing.words.casefold()
