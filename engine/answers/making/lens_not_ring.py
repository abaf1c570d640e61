"""A length that only the lens can have: behind a ring for the mounts named, beside how large it shall draw,
or as long as its register."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.said import number
from engine.base.compact import replace
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import Question, Thing

_ENLARGER: Final = "enlarger"  # the kind of lens that has no register
_NEAREST_IMAGE, _FARTHEST_IMAGE = 0.8, 1.1  # of its focal length, from the flange of such a lens
_RINGS: Final = ("adapter", "plain", "ring", "recessed")
_LENGTHS: Final = ("length", "extension")  # keys under which the length of such a lens may have been read
_DRAWN: Final = "extension"
_SIZE: Final = "magnification"
_LEAST_MM: Final = 8.0
_TELE_MM: Final = 85.0
_LONGEST_MM: Final = 600.0
_OFF_MM: Final = 1.5  # no ring for the pair is so far from what is right,
_OFF: Final = 0.15  # as a share of it
_ADAPTER, _FLANGE, _THREAD = "adapter", "flange_to_image", "thread"
_AGAIN: Final = ("numbers", "thread", "thickness", _FLANGE)  # keys under which that number may have been read
_SPREAD_MM: Final = 0.8  # a register measured on a lens lies so near that of its mount
_RING_MM: Final = 3.0  # what is so near the right ring may be one


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


def _with_image_measured(question: Question) -> Question:
    """'just did, 74.5 to a roof far away' of an 80 mm enlarger lens: told to the tenth, so far off lies its image."""
    lens, before = question.lens, question.prior.lens if question.prior is not None else None
    if lens is None or before is None or len(question.lenses) > 1 or question.said(_FLANGE) is not None:
        return question
    one, other = before.focal_length_mm, lens.focal_length_mm
    kind = question.follows and before.lens_kind == _ENLARGER and lens.lens_kind in (_ENLARGER, None)
    if not kind or one is None or other is None or one == other or other == int(other):
        return question
    near = _NEAREST_IMAGE <= other / one <= _FARTHEST_IMAGE
    values = (*question.values, (_FLANGE, f"{other:g} mm"))
    return question.with_(lenses=(before,), values=values) if near else question


def with_lens_drawing(question: Question) -> Question:
    """'need 2:1 from a 40mm, extension?': beside how large it shall draw, the one length told is that of the lens."""
    question = _with_image_measured(question)
    told = [(key, number(question, key)) for key in _LENGTHS if question.said(key) is not None]
    free = not question.lenses and not question.adapters and question.said(_SIZE) is not None
    if question.intent != MACRO_DISTANCE or not free or len(told) != 1:
        return question
    key, size = told[0]
    whole = size is not None and size == int(size) and _LEAST_MM <= size <= _LONGEST_MM
    if size is None or not whole or (key == _DRAWN and not _is_led(size, question.text)):
        return question
    rest = question.rest(key)
    return question.with_(lenses=(Thing(words=f"{size:g} mm", focal_length_mm=size),), values=rest)


def with_lens_behind_ring(question: Question) -> Question:
    """'0.15 short ring, 200mm': beside by how much it is off, no ring is as long as a tele: that is the lens."""
    ring = question.adapters[0] if len(question.adapters) == 1 else None
    size = ring.thickness_mm[0] if ring is not None and ring.is_of_one_length and ring.thickness_mm else 0.0
    long = ring is not None and ring.piece in _RINGS and not ring.ids and size == int(size) and size >= _TELE_MM
    if ring is None or question.lenses or not long or question.off_word is None:
        return question
    lens = Thing(words=f"{size:g} mm", focal_length_mm=size)
    return question.with_(lenses=(lens,), adapters=(replace(ring, thickness_mm=None),))


def with_lens_beside_thread(question: Question, threads_mm: dict[str, float]) -> Question:
    """'LTM 50mm turned out a quarter turn': no width of that thread, so it is how long the lens is.

    `threads_mm`: how wide the threads of the mounts are, by mount.
    """
    lens, told = question.lens, number(question, _THREAD)
    if lens is None or len(question.lenses) > 1 or lens.focal_length_mm is not None or told is None:
        return question
    wide = threads_mm.get(lens.id or "")
    turned = question.said("turns") is not None or question.said("angle") is not None
    whole = told == int(told) and _LEAST_MM <= told <= _LONGEST_MM
    if wide is None or not (turned and whole) or abs(told - wide) <= _OFF_MM:
        return question
    rest = question.rest(_THREAD)
    return question.with_(lenses=(replace(lens, focal_length_mm=told),), values=rest)


def with_register_measured(question: Question, lens_mm: float, right_mm: float) -> Question:
    """'mine measured 44.6' after a lens of register 44.46: no ring is meant where none was named, but that.

    `lens_mm`: the register of its mount; `right_mm`: the ring that is right on the body.
    """
    question = _with_lens_of_before(question, lens_mm)
    rings = question.adapters
    new = question.follows and len(rings) == 1 and rings[0].piece == _ADAPTER and not rings[0].column
    size = rings[0].thickness_mm if new else None
    if size is None or size[0] != size[1] or rings[0].ids or question.mentions("ring-word"):
        return question
    if abs(size[0] - lens_mm) > _SPREAD_MM or abs(size[0] - right_mm) <= _RING_MM:
        return question
    rest = question.rest(*_AGAIN)
    return question.with_(adapters=(), values=(*rest, (_FLANGE, f"{size[0]:g} mm")))


def _with_lens_of_before(question: Question, lens_mm: float) -> Question:
    """'i got 45.5 on mine' in a talk of a 50: no other lens is so long to the tenth, but its register is."""
    lens, prior = question.lens, question.prior
    old = prior.lens if prior is not None and question.follows else None
    told = lens.focal_length_mm if lens is not None else None
    if lens is None or old is None or told is None or told == int(told) or old.ids != lens.ids:
        return question
    if old.focal_length_mm in (None, told) or abs(told - lens_mm) > _SPREAD_MM or len(question.lenses) > 1:
        return question
    rest = question.rest(*_AGAIN)
    return question.with_(lenses=(old,), values=(*rest, (_FLANGE, f"{told:g} mm")))


def _is_led(size: float, text: str) -> bool:
    """'with a 35mm: extension', 'from a 105 extension needed'; 'with a 35mm extension' has no lens."""
    return re.search(rf"\b(?:a|an|my|the) {size:g}(?: ?mm *[,:;.]|(?! ?mm)\b)", text, re.IGNORECASE) is not None


def _is_apart(piece: Thing, text: str, right_mm: float) -> bool:
    if piece.piece not in _RINGS or piece.ids or piece.thickness_mm is None:
        return False
    low, high = piece.thickness_mm
    whole = low == high == int(low) and low >= _LEAST_MM
    if not whole or abs(low - right_mm) <= max(_OFF_MM, _OFF * right_mm):
        return False
    return re.search(rf"[\d\w], *{low:g} ?(?:mm)?\b(?!\.\d)", text) is not None
