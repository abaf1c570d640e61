"""Which of two lenses told by their f-numbers is the brighter, and by how much, with the glass that one wears."""

from __future__ import annotations

from math import log2
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.near_enough import same_light_stops
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import trimmed
from engine.answers.picture.each_glass import worn_by
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from grammar.kinds import COMPARE
from grammar.questions import Question, Thing

_REVERSED: Final = "reversed"
_OF_SCENE: Final = ("shutter", "iso", "light", "magnification", "extension", "stops")  # keys of another question


def stops_apart(question: Question, facts: Catalogue) -> Told:
    """The f-number that each has behind its glass, and the stops between; nothing where not two of them are told."""
    lenses = [(lens, lens.f_number) for lens in question.lenses if lens.f_number]
    glass = [piece for piece in question.adapters if piece.factor]
    if len(lenses) != 2 or any(lens.ids for lens, _ in lenses) or not glass:
        return Told()
    found: list[tuple[float, str]] = []
    columns = [lens.column for lens, _ in lenses]
    for lens, opened in lenses:
        factor, name = worn_by(lens.column, columns, glass), f"f/{trimmed(opened, 1)}"
        found.append((opened * factor, f"{name} with {factor:g}x") if factor else (opened, name))
    (one, first), (other, second) = sorted(found)
    apart = 2 * log2(other / one)
    told = "; ".join(f"{name} is f/{trimmed(at, 2)}" for at, name in found if "with" in name)
    text = f"{told}: as bright as {second if 'with' in first else first}."
    if apart > same_light_stops(facts):
        text = f"{told}: {first} is brighter than {second} by {trimmed(apart, 2)} stops."
    rows = [Quantity("f_number", Interval.exact(at), name) for at, name in found]
    rows.append(Quantity("light_difference_stops", Interval.exact(apart), f"{first} against {second}"))
    return Told((Line("head", text),), tuple(rows))


def brighter_of(question: Question, facts: Catalogue) -> Told:
    """'light between them', 'how much brighter is the FD' of two lenses of a talk: by how many stops each lets in more.

    Nothing where an exposure, or a converter that one of them wears, is told.
    """
    lenses = _two(question)
    asked = mentions(question, "brighter-of-two") if question.intent == COMPARE or len(question.lenses) == 1 else True
    told = question.f_number is not None or len(question.stops) > 1 or any(map(question.said, _OF_SCENE))
    if any(_REVERSED in lens.traits for lens in lenses):
        return Told()  # coupled, the one behind counts by what the other lets through
    if not (lenses and asked) or told or any(piece.factor for piece in question.adapters):
        return Told()
    (one, first), (other, second) = sorted((lens.f_number or 0.0, _name(lens)) for lens in lenses)
    apart = 2 * log2(other / one)
    text = f"{first} lets in {trimmed(apart, 2)} stops more light than {second}."
    if apart <= same_light_stops(facts):
        text = f"{first} and {second} are equally bright."
    row = Quantity("light_difference_stops", Interval.exact(apart), f"{first} against {second}")
    return Told((Line("head", text),), (row,))


def _two(question: Question) -> tuple[Thing, ...]:
    """The two lenses that are set against each other, now or in the turn before."""
    prior = question.prior.lenses if question.prior is not None and question.follows else ()
    rows = (question.lenses, prior if set(question.lenses) <= set(prior) else ())
    two = next((row for row in rows if len(row) == 2), ())
    return two if all(lens.f_number and lens.focal_length_mm for lens in two) else ()


def _name(lens: Thing) -> str:
    return f"{lens.focal_length_mm:g} mm f/{trimmed(lens.f_number or 0.0, 2)}"
