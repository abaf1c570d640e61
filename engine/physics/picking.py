"""Which of the pieces at hand come nearest to a wanted sum: exact in whole thousandths, always the same choice."""

from __future__ import annotations

from collections.abc import Sequence
from math import isfinite
from typing import Final

from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Interval, Measure, Unknown, is_known

THOUSANDTHS: Final = 1000  # what pieces are counted in: micrometres of a mm, thousandths of a stop


@compact
class Picked:
    """`pieces`: places in the list that was offered, largest piece first. `left`: what was wanted less `total`."""

    pieces: tuple[int, ...]
    total: Interval
    left: Interval


def closest_subset(sizes: Sequence[int], wanted: int, *, within: int, over_first: bool) -> tuple[int, ...]:
    """Places of the sizes (each above 0) whose sum is best, largest first; empty where nothing does better than none.

    Best is, in this order: least outside of `wanted` give or take `within`; fewest; nearest to `wanted`; of two as near
    on either side the lesser sum (the greater with `over_first`); larger sizes; earlier places.
    A sum at or above `wanted` only gets worse by another piece, so each sum below it is kept once, by its best pieces.
    """
    order = sorted(range(len(sizes)), key=lambda place: (-sizes[place], place))

    def rank(total: int, picked: tuple[int, ...]) -> tuple[int, int, int, bool, tuple[int, ...]]:
        miss = abs(total - wanted)
        return max(miss - within, 0), len(picked), miss, (total < wanted) == over_first, picked

    best = rank(0, ())
    below: dict[int, tuple[int, ...]] = {0: ()}
    for position, place in enumerate(order):
        grown: dict[int, tuple[int, ...]] = {}
        for total, picked in below.items():
            reached, more = total + sizes[place], (*picked, position)
            best = min(best, rank(reached, more))
            held = below.get(reached)
            if reached < wanted and (held is None or (len(more), more) < (len(held), held)):
                grown[reached] = more
        below |= grown
    return tuple(order[position] for position in best[-1])


def pick(
    wanted: Measure, pieces: Sequence[Measure], near_enough: Measure, *, over_first: bool = False
) -> Picked | Unknown:
    """The pieces that come nearest to `wanted` by likeliest values, as `closest_subset` has it.

    Pieces of unknown size, or under half a thousandth, are left out; the sum has all tolerances.
    Source: whole-number arithmetic.
    """
    if not (is_known(wanted) and is_known(near_enough) and isfinite(wanted.nominal)):
        return UNKNOWN
    counted = {
        place: round(piece.nominal * THOUSANDTHS)
        for place, piece in enumerate(pieces)
        if is_known(piece) and isfinite(piece.nominal)
    }
    places = [place for place, size in counted.items() if size > 0]
    chosen = closest_subset(
        [counted[place] for place in places],
        round(wanted.nominal * THOUSANDTHS),
        within=round(near_enough.nominal * THOUSANDTHS),
        over_first=over_first,
    )
    picked = tuple(places[place] for place in chosen)
    total = Interval.exact(0.0)
    for place in picked:
        piece = pieces[place]
        total = total + piece if is_known(piece) else total
    return Picked(picked, total, wanted - total)
