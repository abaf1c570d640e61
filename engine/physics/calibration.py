"""Setting infinity: shims from marks, turns and sheets, spacers that make a length, targets far enough, and pitches.

Lengths in mm, distances from the sensor.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import floor
from typing import Final

from engine.base.interval import Measure, Unknown
from engine.physics import focus
from engine.physics.enclose import enclose
from engine.physics.picking import Picked, pick
from engine.physics.positive import positive

PITCHES_MEASURED: Final = 10


def shim_from_mark_mm(mark: Measure, focal_length: Measure, hiatus: Measure) -> Measure:
    """What to add where infinity is sharp at this mark: (S - sqrt(S*S - 4f*f))/2, S = mark - 2f - HH'.

    Source: optics model, mark at which infinity is sharp, d < 0; the smaller root.
    """
    return focus.travel_to_mark_mm(mark, focal_length, hiatus)


def thinning_from_limit_mm(farthest: Measure, focal_length: Measure, hiatus: Measure) -> Measure:
    """What to take off where nothing farther than this can be made sharp: the same root.

    Source: optics model, D = 2f + HH' + f*f/x + x.
    """
    return focus.travel_to_mark_mm(farthest, focal_length, hiatus)


def shim_from_turns_mm(turns: Measure, pitch: Measure) -> Measure:
    """What a lens screwed out by `turns` has moved: turns * pitch. Source: definition of pitch."""
    return turns * positive(pitch)


def turns_for_mm(length: Measure, pitch: Measure) -> Measure:
    """Turns of the thread that move it by `length`: length/pitch. Source: definition of pitch."""
    return enclose(lambda long, p: long / p, length, positive(pitch))


def layer_count(shim: Measure, sheet: Measure) -> Measure:
    """Whole layers of a sheet that come nearest to a shim; the fewest where the sheet is thick, the most where thin.

    Source: thicknesses of a stack add.
    """
    return enclose(lambda thick, layer: floor(thick / layer + 0.5), shim, positive(sheet))


def layers_mm(count: int, sheet: Measure) -> Measure:
    """Thickness of `count` layers. Source: thicknesses of a stack add."""
    return sheet * float(count)


def spacers_for_mm(wanted: Measure, spacers: Sequence[Measure], near_enough: Measure) -> Picked | Unknown:
    """Which of the spacers at hand make a wanted length, in whole micrometres.

    A stack within `near_enough` of it counts as right and the fewest are taken; else the nearest stack, then the
    fewest. Of two as near, the thinner: what is thin can be shimmed. Source: lengths of a stack add.
    """
    return pick(wanted, spacers, near_enough)


def length_of_spaces_mm(pitch: Measure) -> Measure:
    """Length of as many pitches as are measured over, crest to crest. Source: definition of pitch."""
    return positive(pitch) * float(PITCHES_MEASURED)


def advance_per_turn_mm(advance: Measure, turns: Measure) -> Measure:
    """Advance of a focusing thread in one turn, from a measured part of it. Source: definition of lead."""
    return enclose(lambda far, part: far / part, advance, positive(turns))
