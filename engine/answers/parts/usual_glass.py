"""The factor that glass between lens and body mostly has, where none is told."""

from __future__ import annotations

from collections import Counter

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.said import mentions
from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing

CORRECTIVE = "corrective-glass"
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
    corrected = _with_corrective(question, facts)
    if corrected is not None:
        return corrected
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


def _with_corrective(question: Question, facts: Catalogue) -> tuple[Question, Told] | None:
    """The same for the glass that gives infinity back: that of the ring from this lens to this body, where known."""
    named = [thing for thing in question.adapters if thing.piece == CORRECTIVE]
    glazed = question.limits.with_glass or mentions(question, "glass-in-ring")
    glazed = glazed and not question.limits.without_glass
    if not (named or glazed) or any(thing.factor for thing in question.adapters):
        return None
    fronts, rears = ({id_ for one in side for id_ in one.ids} for side in (question.lenses, question.bodies))
    rings = (row for row in facts.adapters.values() if row.kind == CORRECTIVE and row.factor)
    ring = next((row for row in rings if row.front in fronts and row.rear in rears), None)
    if ring is None and question.bodies and not named:
        return None
    factor = ring.factor if ring is not None else usual_factor(CORRECTIVE, facts)
    if factor is None:
        return None
    whose = f"as the {ring.name} has by what is known of it" if ring is not None else "as such rings mostly have"
    glass = Thing(piece=CORRECTIVE, words="glass", factor=factor)
    rest = tuple(replace(one, factor=factor) if one in named[:1] else one for one in question.adapters)
    note = f"Assumed: a factor of {factor:g}x, {whose}; that of another seller may differ."
    return question.with_(adapters=rest if named else (*rest, glass)), Told((Line("note", note),))
