"""Whether parts pass each other: what a lens's rear, barrel and thread have left. Lengths in mm, below 0: they meet."""

from __future__ import annotations

from math import inf

from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.base.span import Span


def overhang_mm(rear_reach: Measure, seat: Span) -> Measure:
    """How far the rear stands behind the body flange: rear reach - seat, at the shortest setting of the seat.

    Below 0 it ends ahead of the flange. One caliper reading checks it. Source: definition of seat.
    """
    return rear_reach - seat.shortest


def clearance_mm(clear_depth: Measure, overhang: Measure) -> Measure:
    """What is left between the rear and the first thing behind the flange: clear depth - overhang.

    With the depth unknown a rear that ends ahead of the flange still has at least that room: nothing of the body
    stands ahead of its own flange. Source: plane geometry.
    """
    if not is_known(overhang):
        return UNKNOWN
    if is_known(clear_depth):
        return clear_depth - overhang
    if overhang.greatest > 0:
        return UNKNOWN
    return Interval(-overhang.greatest, inf, -overhang.nominal)


def width_left_mm(opening: Measure, part: Measure) -> Measure:
    """What is left around a round part in a round opening, in diameter: collar in cup, rear in ring or throat."""
    return opening - part


def thread_depth_left_mm(depth: Measure, length: Measure) -> Measure:
    """What is left of a threaded hole behind a male thread of this length; below 0 it bottoms before it seats."""
    return depth - length
