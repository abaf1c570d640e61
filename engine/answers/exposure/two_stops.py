"""Two f-numbers that are told, however: as settings, or as what lenses open to; what lies between, which is metered."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.close.coupled import pair_of
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import figures, trimmed
from engine.base.interval import Interval, is_known
from engine.physics import exposure
from grammar.questions import Question

FIXED = "fixed iris"
_CLAUSES = re.compile(r"[,;?]|\.\s")
_NUMBER = re.compile(r"\d+(?:\.\d+)?|\.\d+")


def stops_told(question: Question) -> tuple[float, ...]:
    """Every f-number told, in order; those of lenses where no more than one stands by itself."""
    set_only = question.said("light") and len((question.said("shutter") or "").split(", ")) < 2
    if len(question.stops) > 1 or set_only:
        return question.stops  # in some light a lens that opens wider is only set to the other
    if any(lens.ids or lens.kind == "lens" for lens in question.lenses):
        return question.stops  # lenses that are set against each other
    told = [(lens.column, lens.f_number) for lens in question.lenses if lens.f_number is not None]
    of_lenses = tuple(dict.fromkeys(at for _, at in sorted(told)))
    others = question.stops or ((question.f_number,) if question.f_number is not None else ())
    rest = tuple(one for one in others if one not in of_lenses)
    return (*of_lenses, *rest) if len(of_lenses) + len(rest) > 1 else question.stops


def metered_first(question: Question) -> tuple[float, ...]:
    """The stops told, what was metered before what the lens is set to, or cannot leave."""
    told = stops_told(question)
    if len(told) != 2:
        return told
    metered = _behind_meter(question, told)
    fixed = [lens.f_number for lens in question.lenses if FIXED in lens.traits and lens.f_number in told]
    if metered is None and fixed:
        metered = next((one for one in told if one != fixed[0]), None)
    return told if metered is None else (metered, next((one for one in told if one != metered), metered))


def _behind_meter(question: Question, told: tuple[float, ...]) -> float | None:
    """'the meter says f8, my lens is fixed at f2': the first of them behind the word, or the one right before it."""
    places = question.places("meter")
    if not places:
        return None
    beside = _CLAUSES.split(question.text[: places[0].at])[-1]
    before = [float(one) for one in _NUMBER.findall(beside) if float(one) in told]
    if before:
        return before[-1]  # 'f/4 metered, want f/8', '1/250 at f8 iso 100 metered'
    behind = (float(one) for one in _NUMBER.findall(question.text[places[0].end :]))
    return next((one for one in behind if one in told), None)


# how far it is wanted between two: the phrase, and the share of the way from the lower with how that is said
_SHARES: Final = {
    "two-thirds-way": (2 / 3, "Two thirds of the way between"),
    "third-way": (1 / 3, "A third of the way between"),
}
_HALF: Final = (0.5, "Halfway between")


def between_two(question: Question) -> Told:
    """How far two f-numbers are apart, and the one halfway between."""
    stops = stops_told(question)
    if len(stops) != 2 or stops[0] == stops[1] or question.said("shutter") or mentions(question, "filtered"):
        return Told()
    if question.follows and question.mentions("stop-of-number", "number-becomes"):
        return Told()  # what the one comes to is asked
    if pair_of(question) is not None or question.said("light") or question.said("magnification"):
        return Told()  # one behind the other: they are not to choose from
    low, high = Interval.exact(min(stops)), Interval.exact(max(stops))
    share, lead = next((row for key, row in _SHARES.items() if mentions(question, key)), _HALF)
    middle = exposure.f_number_between(low, high, Interval.exact(share))
    apart = exposure.f_number_stops(low, high)
    if not (is_known(middle) and is_known(apart)):
        return Told()
    text = f"{lead} f/{trimmed(low.nominal, 1)} and f/{trimmed(high.nominal, 1)} is f/{trimmed(middle.nominal, 2)}."
    half, third = (2 ** (part / 2) for part in (1 / 2, 1 / 3))  # a stop is the root of 2 in f-number
    light = figures(2**apart.nominal, 3)
    more = (
        f"They are {trimmed(apart.nominal, 2)} stops apart, {light} times the light or the time; half a stop is "
        f"{trimmed(half, 2)} times the f-number, a third {trimmed(third, 2)}."
    )
    rows = (Quantity("f_number", middle, lead.lower()), Quantity("light_difference_stops", apart, "between the two"))
    told = (
        (Line("head", text), Line("text", more))
        if (mentions(question, "half-way") or share != 0.5) and not mentions(question, "how-many-stops")
        else (Line("head", more), Line("text", text))
    )
    return Told(told, rows)
