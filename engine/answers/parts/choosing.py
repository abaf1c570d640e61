"""A designation that several mounts carry, none the likelier: which one the user means, asked once and then kept."""

from __future__ import annotations

import re
from collections.abc import Sequence

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.wording import listed
from engine.base.compact import compact, replace
from engine.facts.catalogue import Catalogue
from engine.facts.gearedits import Append, Drop, Edit
from engine.facts.guidance import Shared
from grammar.questions import Question, Taught, Thing
from grammar.words.atoms import key_of
from grammar.words.tokens import Token

SECTION = "shared"
MOST_WORDS = 9  # of a line that tells which one is meant
WORD = r"[a-z]{3,}"
UNTELLING = frozenset({"MOUNTWORD", "NUMBER", "DET", "PREP", "JOIN", "VERB", "STOP", "MARK"})
NAMED = frozenset({"MOUNT", "NAMED", "LETTER", "PIECE"})  # a line that names a thing tells of that


@compact
class Choice:
    """One meaning of a word: the question with the word taken so, and what would be kept."""

    question: Question
    says: tuple[str, ...]
    mount: str


def choices_of(question: Question, catalogue: Catalogue) -> tuple[Choice, ...]:
    """The meanings of the first word that names several mounts alike; none where one of them is the likelier."""
    for role in ("lenses", "bodies"):
        things: tuple[Thing, ...] = getattr(question, role)
        for at, thing in enumerate(things):
            row = _shared(thing, catalogue)
            if row is not None:
                says = row.says
                return tuple(
                    Choice(
                        question.with_(**{role: (*things[:at], replace(thing, ids=(id_,)), *things[at + 1 :])}),
                        says,
                        id_,
                    )
                    for id_ in thing.ids
                )
    return ()


def told_in_words(tokens: Sequence[Token], choices: tuple[Choice, ...], catalogue: Catalogue) -> Choice | None:
    """The meaning that a short line tells by a word that only its designation has: 'the rangefinder one'."""
    told = [token for token in tokens if token.kind not in UNTELLING]
    said = {word for token in told for word in re.findall(WORD, f"{token.text} {token.value}".casefold())}
    if len(tokens) > MOST_WORDS or any(token.kind in NAMED for token in told):
        return None
    names = [set(re.findall(WORD, catalogue.mounts[one.mount].designation.casefold())) for one in choices]
    own = [words - set().union(*(other for other in names if other is not words)) for words in names]
    meant = [one for one, words in zip(choices, own, strict=True) if words & said]
    return meant[0] if len(meant) == 1 else None


def _shared(thing: Thing, catalogue: Catalogue) -> Shared | None:
    if thing.kind != "mount" or not thing.ambiguous:
        return None
    alike = (row for row in catalogue.shared.values() if set(thing.ids) <= set(row.mounts))
    return next((row for row in alike if row.likely is None), None)


def asked(answer: Answer, choices: tuple[Choice, ...], catalogue: Catalogue) -> Answer:
    """The answer with the question which of them is meant."""
    names = [f"{n}. {catalogue.mounts[one.mount].designation}" for n, one in enumerate(choices, start=1)]
    ask = Line(
        "ask", f"Which one is it? {listed(names, 'or')}. The number answers for it, and can be kept as your word."
    )
    return replace(answer, lines=(*answer.lines, ask))


def kept(choice: Choice) -> Question:
    """The statement that the word means that mount."""
    fields = (("says", ", ".join(choice.says)), ("mounts", choice.mount))
    return Question(choice.says[0], "teach", taught=Taught(SECTION, id_of(choice.says[0]), choice.says[0], fields))


def id_of(word: str) -> str:
    return f"my-{key_of(word) or 'word'}"


def edits_of(question: Question, catalogue: Catalogue, comment: str) -> tuple[Edit, ...]:
    """What is to be done to the gear file."""
    taught = question.taught
    assert taught is not None
    if question.intent == "forget":
        return (Drop(SECTION, taught.id),)
    fields = dict(taught.fields)
    before = (Drop(SECTION, taught.id),) if taught.id in catalogue.gear_ids else ()
    value = {"says": fields["says"].split(", "), "mounts": [fields["mounts"]], "likely": fields["mounts"]}
    return (*before, Append(SECTION, taught.id, value, comment))
