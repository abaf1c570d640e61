"""A bare number after a view or a depth, about as long as the ring must be: the ring at hand, and no distance."""

from __future__ import annotations

import re
from typing import Final

from grammar.kinds import CHAIN, DEPTH_OF_FIELD, FOCUS_VERDICT, IDENTIFY_MOUNT, MACRO_DISTANCE, OF_PICTURE
from grammar.questions import RING, Question, Thing

_ASKED: Final = OF_PICTURE | {MACRO_DISTANCE}
_KEYS: Final = frozenset(["thickness", "numbers", "length"])
_LIT: Final = frozenset(["light", "shutter", "iso", "frame_rate", "angle"])  # of an exposure, and no matter of the seat
_LEAST_MM: Final = 2.0  # a ring that is thinner may be off by as much as it is thick
_ALONE: Final = re.compile(r"(?<![\w./])\d+\.\d+(?!\s?(?:m|cm|ft|s|x|k|mp)\b)(?![\w.]*\d)")
_LENS_SAID: Final = "lens-or-glass"
_SHORT_MM: Final = 15.0
_OF_SEAT: Final = frozenset([CHAIN, FOCUS_VERDICT])
_FIGURES: Final = re.compile(r"\d+(?:\.\d+)?")


def _with_lens_before(question: Question, right_mm: float, made_mm: float) -> Question:
    """'horizon ok with 53.5?' of a 75 mm lens: no lens is so long, but the ring must nearly be; it is the old lens."""
    lens, old = question.lens, question.prior.lens if question.prior is not None else None
    if not question.follows or lens is None or old is None or len(question.lenses) != 1 or lens.ids != old.ids:
        return question
    size, was = lens.focal_length_mm, old.focal_length_mm
    if size is None or was in (None, size) or size == int(size) or question.places(_LENS_SAID):
        return question
    if (size * 2 == int(size * 2) and size < _SHORT_MM) or abs(size - right_mm) > made_mm:
        return question  # '12.5' and '7.5' are lenses
    values = (*question.values, ("thickness", f"{size:g} mm"))
    intent = DEPTH_OF_FIELD if question.intent in _OF_SEAT else question.intent
    return question.with_(lenses=(old,), values=values, intent=intent)


def with_ring_in_talk(question: Question, right_mm: float, made_mm: float) -> Question:
    """'mine says 26.6' after what an 85 mm OM lens frames like on MFT: with that ring, whether it reaches infinity."""
    question = _with_lens_before(question, right_mm, made_mm)
    told = _ALONE.findall(question.text)
    prior = question.prior.intent if question.prior is not None else None
    asked = question.intent in _ASKED or (question.intent == IDENTIFY_MOUNT and prior in _ASKED)
    if not question.follows or not asked or len(told) != 1 or right_mm < _LEAST_MM:
        return question
    size = float(told[0])
    near = abs(size - right_mm) <= made_mm
    if not near or len(_FIGURES.findall(question.text)) != 1 or any(one.thickness_mm for one in question.adapters):
        return question
    lens, body = question.lens, question.body
    claimed = any(text.split()[0] == f"{size:g}" for key, text in question.values if key in _KEYS)
    if lens is None or body is None or not (claimed or question.distance_mm == size * 1000):
        return question
    ring = Thing(words=f"{size:g} mm ring", piece=RING, front=lens.ids, rear=body.ids, thickness_mm=(size, size))
    kept = question.rest(*(_KEYS | _LIT))
    return question.with_(intent=FOCUS_VERDICT, topic=None, adapters=(ring,), values=kept, distance_mm=None)
