"""A sensor told by its width alone, 'my sensor is 23.6 wide': both its sides, where the facts hold one so wide."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.wording import trimmed
from engine.facts.catalogue import Catalogue

_NEAR_MM: Final = 0.12  # so near to its width a sensor is that one
_ALIKE_MM: Final = 0.3  # formats of a width whose heights differ by no more are one
_NUMBER: Final = r"(?P<width>\d{1,2}(?:\.\d+)?)\s?(?:mm)?"
_LINK: Final = r"(?:(?:\s+|\s*[:=,]\s*)(?:is|are|it's|its|has|of|only|just|measures|about|width)\b)*[\s:=,]+"
_WIDE: Final = r"(?:mm)?\s+(?:wide|across)\b"
_SAID: Final = (
    re.compile(rf"\b(?:sensor|chip)\b{_LINK}(?P<told>{_NUMBER}{_WIDE})", re.IGNORECASE),
    re.compile(rf"\b(?:sensor|chip) width\b{_LINK}(?P<told>{_NUMBER})(?![\w.]|\s?[x×*/])", re.IGNORECASE),
    re.compile(rf"(?<![\w./x])(?P<told>{_NUMBER}{_WIDE})\s+(?:sensor|chip)\b", re.IGNORECASE),
)


def with_both_sides(text: str, catalogue: Catalogue) -> str:
    """The text with the width of such a sensor as its two sides; the same where none, or several, are so wide."""
    found = next((match for said in _SAID if (match := said.search(text)) is not None), None)
    if found is None:
        return text
    width = float(found["width"])
    heights = sorted(
        form.height_mm for form in catalogue.formats.values() if abs(form.width_mm - width) <= _NEAR_MM
    )  # fmt: skip
    if not heights or heights[-1] - heights[0] > _ALIKE_MM:
        return text
    start, end = found.span("told")
    return f"{text[:start]}{trimmed(width, 2)} x {trimmed(heights[0], 2)} mm{text[end:]}"
