"""A focal length told by itself in a talk of an infinity objective: the lens that shall be its tube lens."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import Final, Protocol

from engine.answers.parts.said import number
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import Question, Thing

OBJECTIVE: Final = "infinity-objective"  # of the term, and of the words for it
_ALONE: Final = re.compile(r"\D*?(\d{2,3}) ?(?:mm)?\b\D*", re.IGNORECASE)
_FEW: Final = 6  # words
_SHORTEST, _LONGEST = 50.0, 600.0  # mm, that a tube lens may have


class Past(Protocol):
    @property
    def question(self) -> Question: ...


class Told(Protocol):
    """What the talk keeps of its last answers."""

    @property
    def named(self) -> Sequence[Thing]: ...
    @property
    def past(self) -> Sequence[Past]: ...


def with_tube_lens(question: Question, talk: Told, reads: Callable[[str], object]) -> Question:
    """'i have a 135' after an infinity objective and its mark: what that gives behind it; else as it is."""
    told = _ALONE.fullmatch(question.text.strip())
    if told is None or len(question.text.split()) > _FEW or not _SHORTEST <= float(told[1]) <= _LONGEST:
        return question
    if not any(OBJECTIVE in thing.ids for thing in talk.named) or any(one.ids for one in question.lenses):
        return question
    sizes = (number(one.question, "magnification") for one in reversed(talk.past))
    marked = next((size for size in sizes if size is not None), None)
    got = reads(f"infinity objective {marked:g}x with a {told[1]} mm tube lens") if marked is not None else None
    if not isinstance(got, Question) or got.intent != MACRO_DISTANCE:
        return question
    return got.with_(text=question.text, follows=True)
