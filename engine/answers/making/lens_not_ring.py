"""A whole length behind a ring that the ring cannot have, for the mounts named: it is that of the lens."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.questions import Question, Thing

_RINGS: Final = ("adapter", "plain", "ring", "recessed")
_LEAST_MM: Final = 8.0
_OFF_MM: Final = 1.5  # no ring for the pair is so far from what is right,
_OFF: Final = 0.15  # as a share of it


def with_lens_told(question: Question, right_mm: float) -> Question:
    """'C on an MFT ring, 16 mm': with the length as the lens's, where it has none and a comma parts it from the ring.

    `right_mm`: the seat that is right, lens register less body register.
    """
    lens = question.lens
    if lens is None or len(question.lenses) > 1 or lens.focal_length_mm is not None:
        return question
    found = next((one for one in question.adapters if _is_apart(one, question.text, right_mm)), None)
    if found is None or found.thickness_mm is None:
        return question
    others = tuple(one for one in question.adapters if one is not found)
    told_twice = any(one.words == found.words for one in others)  # 'the ring 27.5, 35 mm' was read as two of them
    rings = others if told_twice else (*others, replace(found, thickness_mm=None))
    lens = replace(lens, focal_length_mm=found.thickness_mm[0])
    return question.with_(lenses=(lens,), adapters=rings)


def _is_apart(piece: Thing, text: str, right_mm: float) -> bool:
    if piece.piece not in _RINGS or piece.ids or piece.thickness_mm is None:
        return False
    low, high = piece.thickness_mm
    whole = low == high == int(low) and low >= _LEAST_MM
    if not whole or abs(low - right_mm) <= max(_OFF_MM, _OFF * right_mm):
        return False
    return re.search(rf"[\d\w], *{low:g} ?(?:mm)?\b(?!\.\d)", text) is not None
