"""Stops from one f-number to others: so many to either side of one, and from each of a row to the next."""

from __future__ import annotations

from itertools import pairwise
from math import log2

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import f_number, trimmed
from engine.base.interval import Interval, is_known
from engine.physics import exposure
from grammar.questions import Question

THIRDS = {1: "1/3 stop", 2: "2/3 stop", 4: "1 1/3 stops", 5: "1 2/3 stops"}
THIRD_NEAR = 0.005


def stops_from(question: Question) -> Told:
    """'A third down from f/2.8': so many stops to either side of a stop that is told."""
    stops, at = number(question, "stops"), question.stops[0] if question.stops else question.f_number
    if stops is None or at is None or question.said("shutter") or question.said("frame_rate") or question.said("light"):
        return Told()
    if question.said("iso") or question.adapters or mentions(question, "filtered", "meter"):
        return Told()
    closed, opened = (exposure.f_number_after(Interval.exact(at), Interval.exact(one)) for one in (stops, -stops))
    if not (is_known(closed) and is_known(opened)):
        return Told()
    stops = next((part / 3 for part in (1, 2, 4, 5) if abs(stops - part / 3) < THIRD_NEAR), stops)
    apart = stops_said(stops)
    ways = [
        (f"{apart} down from f/{f_number(at)}, darker, is f/{trimmed(closed.nominal, 2)}", "stopped down", closed),
        (f"{apart} up from f/{f_number(at)}, brighter, is f/{trimmed(opened.nominal, 2)}", "opened", opened),
    ]
    if mentions(question, "brighter-by"):
        ways.reverse()
    text = "; ".join(says for says, _, _ in ways)
    return Told((Line("head", f"{text}."),), tuple(Quantity("f_number", value, case) for _, case, value in ways))


def steps_between(question: Question) -> Told:
    """'clicks at 2.8 4.8 8': stops from each to the next, where more than two are told."""
    told = question.stops
    if len(told) < 3 or question.said("shutter"):
        return Told()
    steps = [(a, b, abs(2 * log2(b / a))) for a, b in pairwise(told)]
    each = "; ".join(f"f/{f_number(a)} to f/{f_number(b)} {trimmed(stops, 2)} stops" for a, b, stops in steps)
    rows = tuple(
        Quantity("light_difference_stops", Interval.exact(stops), f"f/{a:g} to f/{b:g}") for a, b, stops in steps
    )
    return Told((Line("head", f"{each}."),), rows)


def stops_said(stops: float) -> str:
    """Stops as they are said, thirds as such."""
    third = next((says for part, says in THIRDS.items() if abs(stops - part / 3) < THIRD_NEAR), None)
    return third or f"{trimmed(stops, 2)} stop{'s' if stops > 1 else ''}"
