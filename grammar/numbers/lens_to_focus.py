"""Which bare number is the lens where a span of focus is told: 'travel of a 50 from infinity to half a metre'."""

from __future__ import annotations

from typing import Final

from engine.base.units import FAR_UNITS
from grammar.words.groups import ENDLESS
from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token

_TO: Final = frozenset(["to", "and", "down to", "-"])
_OF_LENS: Final = frozenset(["FOCAL", "COMBO", "NAMED", "RANGE"])
_LED: Final = frozenset(["CUE", "DET", "PREP", "STOP", "JOIN", "LETTER"])
_ASKED: Final = frozenset(["travel", "extension", "total"])  # values of what measures a move
_FOCALS: Final = (8.0, 800.0)  # mm
_NEAR_MM: Final = 100.0  # and as near as a distance is told in mm
_AHEAD: Final = 3  # tokens from infinity to the near end


def with_lens_to_focus(tokens: list[Token]) -> list[Token]:
    """The one number that no piece has becomes FOCAL where the span from infinity has its end."""
    tokens = _with_lens_made_to(tokens)
    span = next((at for at in range(len(tokens)) if _is_span(tokens, at)), None)
    if span is None or any(one.kind in _OF_LENS for one in tokens):
        return tokens
    lenses = [at for at in range(len(tokens)) if not span <= at <= span + _AHEAD and _may_be_lens(tokens, at)]
    if len(lenses) != 1:
        return tokens
    lens = lenses[0]
    out = [one.as_("FOCAL", unit="mm", ids=()) if at == lens else one for at, one in enumerate(tokens)]
    others = any(one.kind in SIZES and at != lens and not _is_away(one) for at, one in enumerate(tokens))
    # the travel is what is asked for
    return out if others else [one.as_("CUE") if one.value in _ASKED else one for one in out]


def _with_lens_made_to(tokens: list[Token]) -> list[Token]:
    """'my adapter makes 100mm stop at 35m': what is made to do something is a lens, and no sum."""
    out = list(tokens)
    for at in range(len(tokens) - 2):
        makes, lens, does = tokens[at : at + 3]
        summed = (makes.kind, makes.value) == ("MEASURE", "total")
        if summed and lens.is_mm and lens.numbers[0] >= _FOCALS[0] and does.kind == "CUE" and does.text.isalpha():
            far = any(_is_away(one) and one.unit in FAR_UNITS for one in tokens[at + 3 :])
            if far:
                out[at : at + 2] = [makes.as_("CUE", value=""), lens.as_("FOCAL", unit="mm")]
    return out


def _is_span(tokens: list[Token], at: int) -> bool:
    """Whether infinity stands here, and a distance right behind 'to'."""
    if ENDLESS not in tokens[at].groups:
        return False
    rest = tokens[at + 1 : at + 1 + _AHEAD]
    led = bool(rest) and any(one.value in _TO or one.text.casefold() in _TO for one in rest[:-1])
    return led and any(_is_away(one) for one in rest[1:])


def _is_away(token: Token) -> bool:
    return token.kind == "LENGTH" and (token.unit in FAR_UNITS or token.numbers[0] >= _NEAR_MM)


def _may_be_lens(tokens: list[Token], at: int) -> bool:
    token, before, behind = tokens[at], tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    if token.kind not in SIZES or token.unit not in ("", "mm") or not _FOCALS[0] <= token.numbers[0] <= _FOCALS[1]:
        return False
    led = before is None or before.kind in _LED
    own = behind is not None and behind.kind in ("LENS", "KIND", "MOUNT")
    piece = behind is not None and (behind.kind == "PIECE" or behind.value in ("travel", "extension", "of"))
    return (led or own) and not piece
