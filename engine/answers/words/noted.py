"""What is noted of the mounts that are named and the rings between them, beside an answer that lacks it.

Told where the question is about that: where a sentence of a note shares its words.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from engine.answers.found.mounts_named import likeliest
from engine.answers.parts.answer import NO, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import LIKE
from engine.answers.words.advice import STUCK, advice_lines, is_of_body
from engine.base.compact import compact, replace
from engine.facts.kinds import VERDICTS
from engine.facts.records import Adapter, Mount
from engine.facts.subjects import subjects_of
from grammar.kinds import (
    BUY_PLAN,
    COMPARE,
    COVERAGE,
    CROP_EQUIVALENT,
    DEPTH_OF_FIELD,
    DIY_DIMENSION,
    EXPOSURE_ND,
    GEAR_SETTING,
    HAZARD,
    IDENTIFY_MOUNT,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    OUT_OF_SCOPE,
    SEATED,
    WHY,
)
from grammar.questions import Question

LEAST: Final = 2.5  # what a note and a question share from which on it is told: one word that says something
OF_ADVICE: Final = 6.0  # what advice on a mount must share with the question to be told of it
WHOLLY: Final = 0.6  # so much of what the question tells is all of it
BY_ADVICE: Final = frozenset([WHY, HAZARD, IDENTIFY_MOUNT])  # kinds that are answered by advice as it is
ABOUT: Final = 3.5  # from here on the question is about it
SEVERAL: Final = 2  # one word alone is shared by chance
MOST_OF: Final = 0.5  # so much of what the question tells is all that it is about
# kinds of question that words answer, and no numbers
SAID_FIRST: Final = frozenset([WHY, HAZARD, GEAR_SETTING, LOOK_ALIKE, OUT_OF_SCOPE, IDENTIFY_MOUNT])
BY_NUMBERS: Final = frozenset([DIY_DIMENSION, BUY_PLAN, COMPARE])  # beside numbers one word is not enough
# kinds whose numbers, where they could be reckoned, are the answer
BY_NUMBERS_OF: Final = frozenset([COVERAGE, CROP_EQUIVALENT, MACRO_DISTANCE, EXPOSURE_ND, DEPTH_OF_FIELD])
DOUBTFUL: Final = frozenset(["borderline", "unknown"])
RINGS: Final = frozenset(["plain", "recessed", "corrective-glass"])
ANY_RING: Final = ("adapter", "ring")  # pieces that say nothing more than that there is one
MOST_NAMED: Final = 2  # of more mounts than these a note would be one of many
_SENTENCE: Final = re.compile(r"(?<=[.;:])\s+")


@compact
class Row:
    """A sentence of a note, how much it shares with the question, what part of it that is, and in which words."""

    text: str
    score: float
    part: float
    shared: frozenset[str]


def with_notes(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer, with the sentences of the notes that share their words with the question.

    Said first where they are what is asked, behind a ruling on a danger, else behind the rest.
    """
    answer = _with_advice(_with_pair(answer, question, knowledge), question, knowledge)
    told = " ".join(line.text for line in answer.lines)
    least = ABOUT if (question.intent in SEATED and answer.chains) or question.intent in BY_NUMBERS else LEAST
    first: list[Line] = []
    last: list[Line] = []
    for name, note in _notes(answer, question, knowledge):
        rows = [row for row in _about(note, question, knowledge, least) if row.text not in told]
        rows = [row for row in rows if len(row.shared) >= SEVERAL] if question.follows else rows
        line = Line("head", f"{name}: {' '.join(row.text for row in rows)}")
        if rows and _is_first(rows, question):
            first.append(line)
        elif rows:
            last.append(replace(line, kind="text"))
    if not (first or last):
        return answer
    ruled = 1 if answer.lines[:1] and answer.lines[0].kind == "head" and answer.status != NO else 0
    while ruled and ruled < len(answer.lines) and answer.lines[ruled].depth:
        ruled += 1  # what belongs to the first line stays with it
    return replace(answer, lines=(*answer.lines[:ruled], *first, *answer.lines[ruled:], *last))


def _with_advice(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """What is to be known of a mount that is named, where the question is surely about that and nothing tells it.

    Behind the answer; before one that has found no chain, where it is about nothing else.
    """
    if question.intent in BY_ADVICE:
        return answer
    mounts = {mount.id for mount in _mounts(question, knowledge)}
    if answer.chains and len(mounts) > 1:
        return answer  # of a pair it is told with the chains
    advice = knowledge.catalogue.advice
    rows = [
        match
        for match in subjects_of(knowledge.catalogue).matches(_without_names(question), question.intent)
        if match.score >= OF_ADVICE and match.likeness >= LIKE and len(match.shared) >= SEVERAL
        if not mounts.isdisjoint(advice[match.id].mounts) and is_of_body(advice[match.id], question)
    ][:1]
    told = " ".join(line.text for line in answer.lines)
    lines = [line for line in advice_lines([advice[match.id] for match in rows]) if line.text not in told]
    if not lines:
        return answer
    reckoned = bool(answer.quantities) and question.intent in BY_NUMBERS_OF
    first = not (answer.chains or reckoned or question.intent in BY_NUMBERS) and rows[0].told >= WHOLLY
    return replace(answer, lines=(*lines, *answer.lines) if first else (*answer.lines, *lines))


def _with_pair(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """What is noted of the one mount about the other, behind the verdict, where that is not plainly infinity."""
    mounts = _mounts(question, knowledge)
    if len(mounts) != MOST_NAMED or not (question.intent == LOOK_ALIKE or _is_doubtful(answer, question)):
        return answer
    heads = [
        Line("head", f"{one.designation}: {' '.join(rows)}")
        for one, other in (mounts, mounts[::-1])
        if (rows := [text for text in _sentences(one.note) if _names(text, other)])
    ]
    texts = [line.text.partition(": ")[2] for line in heads]
    at = 0 if answer.lines[:1] and answer.lines[0].text.endswith(":") else 1  # a list that is headed stays whole
    told = " ".join(line.text for line in answer.lines[:at])
    heads = [line for line, text in zip(heads, texts, strict=True) if text not in told]
    rest = [_without(line, texts) for line in answer.lines[at:]]
    rest = [line for line in rest if not line.text.endswith(":") or line in answer.lines]
    return replace(answer, lines=(*answer.lines[:at], *heads, *rest)) if heads else answer


def _without(line: Line, texts: list[str]) -> Line:
    """A line without what is told before it."""
    for text in texts:
        line = replace(line, text=" ".join(line.text.replace(text, "").split())) if text in line.text else line
    return line


def _is_doubtful(answer: Answer, question: Question) -> bool:
    """Whether a way was looked for, and none was found that surely reaches infinity, or nothing warns of a danger."""
    if question.intent not in SEATED:
        return question.intent == HAZARD and answer.status == NO
    best = answer.chains[0].listed.judged if answer.chains else None
    return best is None or best.verdict != VERDICTS[0] or best.certainty in DOUBTFUL


def _names(text: str, mount: Mount) -> bool:
    """Whether a text names a mount, by its designation or a short name."""
    plain = mount.designation.partition(" (")[0]
    for word in ("-mount", " bayonet", " breech-lock"):
        plain = plain.removesuffix(word)
    names = (plain, *(one for one in mount.aliases if " " not in one))
    return any(re.search(rf"(?<![\w-]){re.escape(name)}(?![\w-])", text) for name in names)


def _is_first(rows: list[Row], question: Question) -> bool:
    """Whether the note is what is asked: by what kind of question it is, or by how much of the question is in it."""
    if question.topic == STUCK or len(frozenset().union(*(row.shared for row in rows))) < SEVERAL:
        return False
    most = max(row.score for row in rows)
    if most >= ABOUT and question.intent in SAID_FIRST:
        return True
    return question.intent not in BY_NUMBERS and sum(row.part for row in rows) >= MOST_OF


def _notes(answer: Answer, question: Question, knowledge: Knowledge) -> Iterator[tuple[str, str]]:
    """The notes that may be meant, each with the name of what it is noted of; one that is told alike once."""
    for mount in _mounts(question, knowledge) if not (question.intent in SEATED and answer.chains) else ():
        if mount.note:
            yield mount.designation, mount.note
    seen: set[str] = set()
    for adapter in _rings(answer, question, knowledge):
        if adapter.note and adapter.note not in seen:
            seen.add(adapter.note)
            yield adapter.name, adapter.note


def _mounts(question: Question, knowledge: Knowledge) -> list[Mount]:
    """The one or two mounts that the question names, each in its likeliest meaning."""
    names = list(dict.fromkeys(likeliest(question, knowledge)))
    return [knowledge.catalogue.mounts[name] for name in names] if len(names) <= MOST_NAMED else []


def _rings(answer: Answer, question: Question, knowledge: Knowledge) -> Iterator[Adapter]:
    """The pieces of the first chain; where there is none, or a reason is asked for, the rings between what is named."""
    pieces = [piece for row in (answer.chains or ())[:1] for piece in row.listed.judged.chain.adapters]
    yield from pieces
    if question.intent in SEATED and answer.chains and all(one.id in knowledge.catalogue.adapters for one in pieces):
        return  # one's own ring is not noted of: what is said of those that are sold is
    lenses = {name for thing in question.lenses for name in thing.ids[:1]}
    bodies = {name for thing in question.bodies for name in thing.ids[:1]}
    pairs = {(front, rear) for front in lenses for rear in bodies}
    pairs |= {(one.front[0], one.rear[0]) for one in question.adapters if one.front and one.rear}
    for one in knowledge.catalogue.adapters.values():
        if (one.front, one.rear) in pairs and one.kind in RINGS and not one.stackable:
            yield one


def _about(note: str, question: Question, knowledge: Knowledge, least: float) -> Iterator[Row]:
    """What the note says of what is asked: the sentences that share words with the question, and how much."""
    subjects = subjects_of(knowledge.catalogue)
    text = _without_names(question)
    for sentence in _sentences(note):
        row = Row(sentence, *subjects.shared(text, sentence))
        if row.score >= least or (row.score >= LEAST and row.part >= MOST_OF):
            yield row


def _sentences(note: str) -> Iterator[str]:
    """A note in sentences, each to be read alone: what a colon or a semicolon parts stays together."""
    held = ""
    for part in _SENTENCE.split(note):
        held = f"{held} {part}".strip()
        if held.endswith("."):
            yield held
            held = ""
    if held:
        yield held


def _without_names(question: Question) -> str:
    """What was typed without the names of mounts, which stand in every note, and without the word for a ring."""
    text = question.text
    for thing in (*question.lenses, *question.bodies, *question.things, *question.adapters):
        named = thing.kind == "mount" or thing.piece in ANY_RING
        text = text.replace(thing.words, " ") if thing.words and named else text
    return text
