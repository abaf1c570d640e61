"""The ring of before measured at another place: '28.10 on the other side' after 28.02 mm is a second reading of it."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.kinds import SHIM_CALIBRATION
from grammar.questions import RING, Question
from grammar.turns.standing_ring import is_same_body

_SIDE: Final = "other-side"
_READINGS: Final = "readings"
_NEAR: Final = 1.0  # mm, by which two readings of one ring may differ
_NUMBER: Final = re.compile(r"(?<![\w.])\d+(?:\.\d+)?")
_LENGTHS: Final = ("numbers", "length", "thickness", _READINGS)


def with_side_measured(got: Question, before: Question) -> Question:
    """The ring with all its readings, as long as their mean; as it was where no other place is told of."""
    rings = [one for one in before.adapters if one.piece == RING and one.is_of_one_length]
    numbers = [float(one) for one in _NUMBER.findall(got.text)]
    if not got.follows or len(rings) != 1 or len(numbers) != 1 or not got.places(_SIDE):
        return got
    was = (rings[0].thickness_mm or (0.0,))[0]
    if abs(numbers[0] - was) > _NEAR or not is_same_body(got, before):
        return got
    held = [float(one) for one in _NUMBER.findall(before.said(_READINGS) or f"{was:g}")]
    every = [*held, numbers[0]]
    mean = round(sum(every) / len(every), 4)
    ring = replace(rings[0], thickness_mm=(mean, mean), words=f"{mean:g} mm ring")
    told = ", ".join(f"{one:g} mm" for one in every)
    return got.with_(
        intent=SHIM_CALIBRATION, topic=None, lenses=before.lenses, bodies=before.bodies, adapters=(ring,),
        values=(*got.rest(*_LENGTHS), (_READINGS, told)), number=None,
    )  # fmt: skip
