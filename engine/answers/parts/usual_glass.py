"""The factor that glass between lens and body mostly has, where none is told."""

from __future__ import annotations

from collections import Counter

from engine.answers.parts.answer import Line, Told
from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing

KINDS = ("focal-reducer", "teleconverter")


def usual_factor(kind: str, facts: Catalogue) -> float | None:
    """The factor that most pieces of this kind have; None for kinds without one."""
    factors = [row.factor for row in facts.adapters.values() if row.kind == kind and row.factor]
    return Counter(factors).most_common(1)[0][0] if factors else None


def usual_factors(facts: Catalogue) -> list[float]:
    """That of reducers, and that of extenders."""
    return [factor for kind in KINDS if (factor := usual_factor(kind, facts)) is not None]


def with_usual_factor(question: Question, facts: Catalogue) -> tuple[Question, Told]:
    """The question with the usual factor for glass that is named without one, and a note that says so."""
    through = [kind for kind in question.limits.using if kind in KINDS]
    pieces = [*question.adapters, *(Thing(piece=kind, words=kind.replace("-", " ")) for kind in through)]
    if any(thing.factor is not None for thing in pieces if thing.piece in KINDS):
        return question, Told()
    lacking = [thing for thing in pieces if thing.piece in KINDS and not thing.ids][:1]
    factor = usual_factor(lacking[0].piece or "", facts) if lacking else None
    if factor is None:
        return question, Told()
    told = tuple(replace(thing, factor=factor) if thing is lacking[0] else thing for thing in pieces)
    note = f"Assumed: a factor of {factor:g}x, as most have. What is engraved on yours?"
    return question.with_(adapters=told), Told((Line("note", note),))
