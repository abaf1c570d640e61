"""A bare number in a talk that is the flange to image distance of the lens spoken of."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.questions import Question
from grammar.turns.lengths_again import HELICOID
from grammar.turns.on_what import IDENTIFY

MOUNTLESS: Final = frozenset(["enlarger", "projector"])  # kinds whose thread tells nothing of their register
_FLANGES: Final = (5.0, 120.0)  # mm, between which a bare number may be a flange to image distance


def flange_measured(said: Question, before: Question, heard: Heard) -> Question:
    """'yes, about 12.5' after the mount was in doubt: the flange to image distance that was asked for."""
    number, length = said.said("numbers"), said.said("length")
    text = length or (f"{number} mm" if number else "")
    asked = before.intent == IDENTIFY or is_unseated(before)
    if not asked or not heard.tells("brief") or "," in text or not text.endswith(" mm"):
        return said
    if not _FLANGES[0] <= float(text.removesuffix(" mm")) <= _FLANGES[1]:
        return said
    rest = tuple(row for row in said.values if row[0] not in ("numbers", "length"))
    return said.with_(values=(*rest, ("flange_to_image", text)))


def is_unseated(before: Question) -> bool:
    """Whether a helicoid's range is told and the lens before it has no mount whose register would be known."""
    ranged = any(
        one.piece == HELICOID and one.thickness_mm and len(set(one.thickness_mm)) > 1 for one in before.adapters
    )
    lens = before.lens
    unknown = lens is not None and (not lens.ids or lens.lens_kind in MOUNTLESS)
    return ranged and unknown and before.said("flange_to_image") is None
