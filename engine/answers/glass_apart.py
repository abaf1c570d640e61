"""Two pieces of glass behind a lens set against each other: the light and the focal length of each."""

from __future__ import annotations

from math import log2
from typing import Final

from engine.answers.answer import Line, Quantity, Told
from engine.answers.said import focals
from engine.answers.wording import trimmed
from engine.base.interval import Interval
from grammar.questions import Question

FEWEST: Final = 2


def glass_apart(question: Question) -> Told:
    """What each of the factors told makes of light and focal length; nothing where fewer than two differ."""
    factors = list(dict.fromkeys(thing.factor for thing in question.adapters if thing.factor and thing.factor != 1))
    if len(factors) < FEWEST:
        return Told()
    lines, rows = [], []
    focal = next(iter(focals(question)), None)
    for factor in factors:
        stops = -2 * log2(factor)
        case = f"{factor:g}x"
        text = (
            f"{case}: {trimmed(abs(stops), 2)} stops {'brighter' if stops > 0 else 'darker'}, f-number times {factor:g}"
        )
        rows.append(Quantity("light_difference_stops", Interval.exact(abs(stops)), case))
        if focal is not None:
            rows.append(Quantity("focal_length_mm", Interval.exact(focal * factor), case))
            text += f"; {trimmed(focal, 1)} mm becomes {trimmed(focal * factor, 1)} mm"
        lines.append(Line("head", f"{text}; the image circle times {factor:g}."))
    between = abs(2 * log2(factors[0] / factors[1]))
    rows.append(Quantity("light_difference_stops", Interval.exact(between), "between the two"))
    lines.append(Line("fact", f"Between the two: {trimmed(between, 2)} stops.", 1))
    return Told(tuple(lines), tuple(rows))
