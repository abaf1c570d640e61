"""Reducers or extenders set against each other: what each does to the light, the stop and the focal length."""

from __future__ import annotations

from itertools import pairwise
from math import log2
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import focals, mentions, stop
from engine.answers.parts.wording import f_number, trimmed
from engine.base.interval import Interval
from engine.facts.kinds import GLASS_KINDS
from grammar.questions import Question

FEWEST: Final = 2
PLAIN: Final = ("adapter", "ring")  # kinds of pieces without glass


def alternatives(question: Question) -> tuple[float, ...]:
    """The factors of glass that are told to choose from; none where they stand behind one another."""
    factors = _factors(question)
    return factors if len(factors) >= FEWEST and mentions(question, "either-or") else ()


def _factors(question: Question) -> tuple[float, ...]:
    pieces = [thing for thing in question.adapters if thing.factor and (thing.piece in GLASS_KINDS or not thing.piece)]
    return tuple(dict.fromkeys(thing.factor for thing in pieces if thing.factor))


def glass_apart(question: Question, beside_plain: bool = False) -> Told:
    """One line for each of the factors that are set against each other, and how far they are apart in stops.

    `beside_plain`: a single one is told of where a ring without glass is set against it.
    """
    factors = _factors(question)
    if len(factors) < FEWEST:
        plain = beside_plain and bool(factors) and _has_plain(question)
        return _against_plain(question, factors[0]) if plain else Told()
    told = Told()
    for factor in factors:
        told += _of_one(factor, question)
    for one, other in pairwise(factors):
        apart = abs(2 * log2(one / other))
        text = f"between {one:g}x and {other:g}x lie {trimmed(apart, 2)} stops"
        row = Quantity("light_difference_stops", Interval.exact(apart), f"{one:g}x and {other:g}x")
        told += Told((Line("fact", text, 1),), (row,))
    return told


def _has_plain(question: Question) -> bool:
    """Whether a ring without glass is set against the glass."""
    return question.limits.without_glass or any(one.piece in PLAIN and not one.factor for one in question.adapters)


def _against_plain(question: Question, factor: float) -> Told:
    """'0.71 reducer against a plain ring for dark clubs': what the glass alone does."""
    plain = Line("fact", "a plain ring has no glass: light, stop and focal length stay as they are", 1)
    return _of_one(factor, question) + Told((plain,))


def _of_one(factor: float, question: Question) -> Told:
    stops, at = 2 * log2(factor), stop(question)
    case = f"{factor:g}x"
    text = f"{case} {'costs' if stops > 0 else 'gains'} {trimmed(abs(stops), 2)} stops of light"
    rows = [Quantity("light_difference_stops", Interval.exact(abs(stops)), case)]
    for focal in focals(question)[:1]:
        text += f"; {trimmed(focal, 1)} mm becomes {trimmed(focal * factor, 1)} mm"
        rows.append(Quantity("focal_length_mm", Interval.exact(focal * factor), case))
    if at is not None:
        text += f"; f/{f_number(at)} becomes f/{trimmed(at * factor, 2)}"
        rows.append(Quantity("f_number", Interval.exact(at * factor), case))
    return Told((Line("head", f"{text}."),), tuple(rows))
