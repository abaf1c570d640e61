"""A bare number after a view or a depth, about as long as the ring must be: the ring at hand, and no distance."""

from __future__ import annotations

import re
from typing import Final

from grammar.kinds import (
    FOCUS_VERDICT,
    IDENTIFY_MOUNT,
    OF_PICTURE,
)
from grammar.questions import RING, Question, Thing

_KEYS: Final = frozenset(["thickness", "numbers", "length"])
_LIT: Final = frozenset(["light", "shutter", "iso", "frame_rate", "angle"])  # of an exposure, and no matter of the seat
_LEAST_MM: Final = 2.0  # a ring that is thinner may be off by as much as it is thick
_OFF_MM, _OFF = 0.6, 0.04  # a ring is made so near to what is right, in mm or as a share of it
_ALONE: Final = re.compile(r"(?<![\w./])\d+\.\d+(?!\s?(?:m|cm|ft|s|x|k|mp)\b)(?![\w.]*\d)")
_FIGURES: Final = re.compile(r"\d+(?:\.\d+)?")


def with_ring_in_talk(question: Question, right_mm: float) -> Question:
    """'mine says 26.6' after what an 85 mm OM lens frames like on MFT: with that ring, whether it reaches infinity."""
    told = _ALONE.findall(question.text)
    prior = question.prior.intent if question.prior is not None else None
    asked = question.intent in OF_PICTURE or (question.intent == IDENTIFY_MOUNT and prior in OF_PICTURE)
    if not question.follows or not asked or len(told) != 1 or right_mm < _LEAST_MM:
        return question
    size = float(told[0])
    near = abs(size - right_mm) <= max(_OFF_MM, _OFF * right_mm)
    if not near or len(_FIGURES.findall(question.text)) != 1 or any(one.thickness_mm for one in question.adapters):
        return question
    lens, body = question.lens, question.body
    claimed = any(text.split()[0] == f"{size:g}" for key, text in question.values if key in _KEYS)
    if lens is None or body is None or not (claimed or question.distance_mm == size * 1000):
        return question
    ring = Thing(words=f"{size:g} mm ring", piece=RING, front=lens.ids, rear=body.ids, thickness_mm=(size, size))
    kept = question.rest(*(_KEYS | _LIT))
    return question.with_(intent=FOCUS_VERDICT, topic=None, adapters=(ring,), values=kept, distance_mm=None)
