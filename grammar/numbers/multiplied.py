"""What a lens is said to be multiplied by: 'must a 50 be multiplied by 1.6', 'is it x1.8 or just a 50'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.crop_numbers import crops
from grammar.things.casting import OPTICAL
from grammar.words.groups import MULTIPLYING
from grammar.words.tokens import Token

_EQUIV: Final = "equiv"
_FACTORS: Final = frozenset(["NUMBER", "TIMES"])
_FRAMES: Final = frozenset(["FORMAT", "AREA", "MOUNT", "CROP"])
_LENSES: Final = frozenset(["LENGTH", "NUMBER", "LENS"])
_BY: Final = frozenset(["by", "with"])
_SHORTEST: Final = 3.0  # mm, of a lens
_BETWEEN: Final = 4  # small words: 'multiplied by about'
_SMALL: Final = frozenset(["FILLER", "DET", "VERB", "CUE", "PREP", "JOIN"])


def without_multiplied(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The tokens with such a factor as CROP; passed over where a frame is told, which decides by how much it is.

    Where glass is told the factor is that of the glass.
    """
    if _EQUIV not in told or any(one.kind == "PIECE" and one.value in OPTICAL for one in tokens):
        return tokens
    framed = any(one.kind in _FRAMES for one in tokens)
    out = list(tokens)
    for at, token in enumerate(tokens):
        lens = _led_by(tokens, at) if token.kind in _FACTORS and not token.text.isalpha() else None
        if lens is None:
            continue
        out[at] = token.as_("FILLER") if framed or not crops(token.numbers[0]) else token.as_("CROP")
        if tokens[lens].kind == "NUMBER" and tokens[lens].numbers[0] >= _SHORTEST:
            out[lens] = tokens[lens].as_("FOCAL")
    return out


def _led_by(tokens: list[Token], at: int) -> int | None:
    """Where the word for multiplying stands that leads to the factor here, or the lens between the two; else None."""
    place = at - 1
    while place >= 0 and at - place <= _BETWEEN and tokens[place].kind in _SMALL:
        if MULTIPLYING in tokens[place].groups:
            return place
        place -= 1
    lens = place >= 0 and tokens[place].kind in _LENSES and at - place > 1 and tokens[at - 1].text.casefold() in _BY
    led = any(MULTIPLYING in one.groups for one in tokens[max(0, place - _BETWEEN) : place])
    return place if lens and led else None
