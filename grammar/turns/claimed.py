"""What somebody else says of a ring that was measured: 'seller says it is the same', 'the box says 27.46'.

What was measured counts, a ring or an image circle: what it comes to is told again, and the number claimed takes no
measured one's place.
"""

from __future__ import annotations

import re
from typing import Final

from grammar.kinds import (
    CHAIN,
    COVERAGE,
    CROP_EQUIVALENT,
    DEFINITION,
    DIY_DIMENSION,
    FOCUS_VERDICT,
    LOOK_ALIKE,
    OUT_OF_SCOPE,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.questions import OFF, RING, Question
from grammar.turns.answer_told import ERROR, RIGHT, told_as

_CLAIMED: Final = "claimed-by-another"
_CIRCLE: Final = "circle"
_OF_CIRCLE: Final = frozenset([COVERAGE, OUT_OF_SCOPE, FOCUS_VERDICT, CHAIN, WHY, CROP_EQUIVALENT])
_SEATED: Final = frozenset([CHAIN, FOCUS_VERDICT, SHIM_CALIBRATION, WHY, DIY_DIMENSION, LOOK_ALIKE])
_ASKED: Final = _SEATED | {DEFINITION, OUT_OF_SCOPE}
_LENGTHS: Final = frozenset(["numbers", "length", "thickness", "thread", "layer", "total", OFF])
_NUMBER: Final = re.compile(r"(?<![\w./])\d*\.?\d+")
_OFF_MM: Final = 0.02  # as near as a caliper reads
_CLOSE_MM: Final = 1.0  # by which a number claimed may miss the right one


def with_measured_held(got: Question, before: Question) -> Question:
    """The question of before with its ring as it was measured; the same where nothing is claimed of such a ring."""
    if got.follows and got.places(_CLAIMED) and before.said(_CIRCLE) is not None and got.intent in _OF_CIRCLE:
        values = (*got.rest(*_LENGTHS, _CIRCLE), (_CIRCLE, before.said(_CIRCLE) or ""))
        bodies, frames = got.bodies or before.bodies, got.frames or before.frames
        if _is_other(got.with_(bodies=()), before) or not (bodies or frames):
            return got
        return got.with_(intent=COVERAGE, topic=None, lenses=before.lenses, bodies=bodies, values=values, number=None)
    rings = [one for one in before.adapters if one.thickness_mm is not None]
    claimed = got.follows and got.places(_CLAIMED) and before.intent in _SEATED and got.intent in _ASKED
    if not claimed or len(rings) != 1 or rings[0].piece != RING or rings[0].ids or not rings[0].is_of_one_length:
        return got
    right = told_as(before, RIGHT)
    told = [float(one) for one in _NUMBER.findall(got.text)]
    if any(not right or abs(one - right[0]) > _CLOSE_MM for one in told) or _is_other(got, before):
        return got
    seat = (rings[0].thickness_mm or (0.0,))[0]
    errors = told_as(before, ERROR) + [seat - one for one in right[:1]]
    off = bool(errors) and abs(errors[0]) > _OFF_MM
    return got.with_(
        intent=SHIM_CALIBRATION if off else FOCUS_VERDICT, topic=None, lenses=before.lenses, bodies=before.bodies,
        adapters=before.adapters, values=got.rest(*_LENGTHS), laid=before.laid, number=None,
    )  # fmt: skip


def _is_other(got: Question, before: Question) -> bool:
    sides = ((got.lenses, before.lenses), (got.bodies, before.bodies))
    return any(now and [one.ids for one in now] != [one.ids for one in was] for now, was in sides)
