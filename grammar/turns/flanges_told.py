"""A bare number in a talk that is the flange to image distance of the lens spoken of."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import IDENTIFY_MOUNT
from grammar.questions import BODY_REGISTER, Question
from grammar.things.casting import MOUNTLESS
from grammar.turns.lengths_again import HELICOID
from grammar.words.groups import FOCAL_NAMED

_FLANGE: Final = "flange_to_image"
_PASSED: Final = frozenset(["FILLER", "VERB", "DET", "MARK"])
_OF_THREAD: Final = frozenset(["thread", "pitch", "barrel", "frame_rate"])  # told of what they are
_FLANGES: Final = (5.0, 120.0)  # mm, between which a bare number may be a flange to image distance


def flange_measured(said: Question, before: Question, heard: Heard) -> Question:
    """'yes, about 12.5' after the mount was in doubt: the flange to image distance that was asked for.

    After the register of a body it is that body's, told anew.
    """
    held = said.said(_FLANGE)
    if held is not None and before.said(BODY_REGISTER) is not None and not (said.lenses or heard.cast.lenses):
        rest = tuple(row for row in said.values if row[0] != _FLANGE)
        return said.with_(values=(*rest, (BODY_REGISTER, held)))
    number, length = said.said("numbers"), said.said("length")
    text = length or (f"{number} mm" if number else "")
    asked = before.intent == IDENTIFY_MOUNT or is_unseated(before)
    if not asked or not heard.tells("brief") or "," in text or not text.endswith(" mm"):
        return said
    if not _FLANGES[0] <= float(text.removesuffix(" mm")) <= _FLANGES[1]:
        return said
    rest = said.rest("numbers", "length")
    return said.with_(values=(*rest, ("flange_to_image", text)))


def with_flange_first(heard: Heard, before: Question) -> Heard:
    """'48, and it has no focus ring' after that distance was asked for: the number that the reply begins with."""
    first = next((token for token in heard.line.tokens if token.kind not in _PASSED), None)
    lens = heard.cast.lenses[0] if len(heard.cast.lenses) == 1 else None
    asked = _FLANGE in before.wants.split() and before.said(_FLANGE) is None
    if first is None or first.kind not in ("NUMBER", "LENGTH") or not asked or "?" in heard.text:
        return heard
    if len(heard.cast.lenses) > 1:
        return heard  # 'they are 13 mm f1.9, 6.5 mm and 36 mm'
    alone = lens is None or (lens.focal == first.numbers[0] and not (lens.has_mount or lens.kinds or lens.f_number))
    if any(FOCAL_NAMED in token.groups for token in heard.line.tokens):
        return heard  # 'focal length about 85'
    if _OF_THREAD & heard.readings.values.keys():
        return heard  # '10 threads is 10'
    if lens is not None and lens.focal in {one.focal_length_mm for one in before.known}:
        return heard  # 'the 50 pulls out': a lens that was spoken of
    if not alone or not _FLANGES[0] <= first.numbers[0] <= _FLANGES[1] or _FLANGE in heard.readings.values:
        return heard
    values = {key: text for key, text in heard.readings.values.items() if key not in ("numbers", "length")}
    readings = replace(heard.readings, values={**values, _FLANGE: f"{first.numbers[0]:g} mm"})
    return replace(heard, cast=replace(heard.cast, lenses=[]), readings=readings)


def is_unseated(before: Question) -> bool:
    """Whether a helicoid's range is told and the lens before it has no mount whose register would be known."""
    ranged = any(
        one.piece == HELICOID and one.thickness_mm and len(set(one.thickness_mm)) > 1 for one in before.adapters
    )
    lens = before.lens
    unknown = lens is not None and (not lens.ids or lens.lens_kind in MOUNTLESS)
    return ranged and unknown and before.said("flange_to_image") is None
