"""'focused at 30 cm from the sensor': so far off the subject is, and no length behind the lens.

Nothing nearer to the sensor than four focal lengths comes sharp (D = 2f + f*f/x + x is least at x = f); so what is as
far as that, told from the sensor, is the subject's distance.
"""

from __future__ import annotations

from typing import Final

from grammar.words.groups import FROM_SENSOR
from grammar.words.tokens import Token

_LEAST_OF_FOCALS: Final = 4.0
_FLANGE: Final = "flange-to-image"
_FOCALS: Final = frozenset(["LENGTH", "COMBO", "NUMBER", "FOCAL"])
_LEAST_LENS, _LONGEST_LENS = 8.0, 600.0  # mm
_NO_SUBJECT: Final = frozenset(["bellows"])  # pieces that carry the lens so far before the sensor
_UNSEATED: Final = frozenset(["KIND"])  # enlarger and projector lenses are measured from shoulder to image


def with_subject_from_sensor(tokens: list[Token]) -> list[Token]:
    """The words behind such a length no longer tell that it lies behind the lens."""
    if any(one.value in _NO_SUBJECT or one.kind in _UNSEATED for one in tokens):
        return tokens
    out = list(tokens)
    for at in range(1, len(tokens)):
        words, size = tokens[at], tokens[at - 1]
        if words.value != _FLANGE or FROM_SENSOR not in words.groups or size.kind != "LENGTH":
            continue
        others = [one for n, one in enumerate(tokens) if n != at - 1 and _may_be_focal(one)]
        if others and size.numbers[0] >= _LEAST_OF_FOCALS * min(one.numbers[0] for one in others):
            out[at] = words.as_("CUE", value="")
    return out


def _may_be_focal(token: Token) -> bool:
    lens = token.kind in _FOCALS and token.unit in ("", "mm") and not token.text.isalpha()
    return lens and bool(token.numbers) and _LEAST_LENS <= token.numbers[0] <= _LONGEST_LENS
