"""Sheet that is at hand after a seat that is too close: 'I only have 0.1 brass' asks how many layers of it."""

from __future__ import annotations

import re
from typing import Final

from grammar.kinds import FOCUS_VERDICT, SHIM_CALIBRATION
from grammar.questions import OFF, Question
from grammar.turns.answer_told import ERROR, RIGHT, told_as

_AT_HAND: Final = "sheet-owned"
_PUT: Final = "sheet-put-in"
_LAYER: Final = "layer"
_SEATED: Final = frozenset([SHIM_CALIBRATION, FOCUS_VERDICT])
_NUMBER: Final = re.compile(r"(?<![\w./])(\d*\.\d+|\d+(?= ?mm))(?![\w/]*\d)")
_THICKEST: Final = 0.7  # mm, of a sheet
_SEVERAL: Final = 1.5  # times its thickness; what is off by less takes one of them
_LENGTHS: Final = frozenset([_LAYER, "numbers", "length", "thickness", "mark", "shim", "thread", "at_hand"])


def with_sheet_at_hand(got: Question, before: Question) -> Question:
    """The question how many layers of that make up what is lacking; the same where one is put in, or none is told."""
    sizes = [float(one) for one in _NUMBER.findall(got.text)]
    error = _error(before)
    # 'or 0.2 card' after sheet of 0.1 mm
    again = before.said(_LAYER) is not None and bool(before.places(_AT_HAND))
    told = got.follows and before.intent in _SEATED and (again or got.places(_AT_HAND)) and not got.places(_PUT)
    if not told or len(sizes) != 1 or not 0 < sizes[0] <= _THICKEST or -error < _SEVERAL * sizes[0]:
        return got
    kept = tuple(row for row in before.values if row[0] in ("thickness", OFF, "mark", "shim"))
    values = (*got.rest(*_LENGTHS, OFF), *kept, (_LAYER, f"{sizes[0]:g} mm"))
    return got.with_(
        intent=SHIM_CALIBRATION, topic=None, lenses=before.lenses, bodies=before.bodies, adapters=before.adapters,
        values=values, laid=before.laid, number=None,
    )  # fmt: skip


def _error(before: Question) -> float:
    """By how much the lens sits too far out, mm, below 0 too close: as the answer told, or by the right ring."""
    told = told_as(before, ERROR)
    right = told_as(before, RIGHT)
    sized = [one for one in before.adapters if one.is_of_one_length]
    rings = [one.thickness_mm[0] for one in sized if one.thickness_mm is not None]
    if told:
        return told[0]
    return rings[0] - right[0] if len(right) == len(rings) == 1 else 0.0
