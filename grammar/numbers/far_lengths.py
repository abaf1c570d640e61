"""Distances beside what is described: '1.2 metres mft' is how far off, and no focal length of a lens for MFT."""

from __future__ import annotations

from typing import Final

from grammar.numbers.turned_ways import with_turned_into
from grammar.words.groups import FARTHEST
from grammar.words.token_kinds import METRES
from grammar.words.tokens import Token

_LEAST_MM: Final = 300.0  # no lens that is adapted has its focal length told so
_TAPED: Final = frozenset(["m", "ft", "cm"])
_BE: Final = "be"
_FROM_SENSOR: Final = "flange-to-image"
_LEAD: Final = 6  # tokens before the length
_LENSES: Final = frozenset(["LENS", "KIND", "LENGTH", "FOCAL", "COMBO", "NUMBER"])
_DESCRIBING: Final = frozenset(["MOUNT", "FORMAT", "KIND", "TRAIT", "PIECE"])


def with_farthest_led(tokens: list[Token]) -> list[Token]:
    """'the farthest it goes is 2 m from the sensor': how far off that is, as if 'at' stood before it."""
    out, tokens = list[Token](), with_turned_into(tokens)
    for n, token in enumerate(tokens):
        led = out[-1].value == _BE if out else False
        lead = tokens[max(0, n - _LEAD) : n]
        behind = tokens[n + 1].value if n + 1 < len(tokens) else ""
        far = behind == _FROM_SENSOR or any(
            FARTHEST in one.listed.of(word) for one in lead for word in one.text.split()
        )
        at = led and far and token.kind == "LENGTH" and token.unit in _TAPED and token.numbers[0] >= _LEAST_MM
        out += [Token("PREP", "at", token.column, value="at"), token] if at else [token]
    return out


def with_far_lengths_apart(tokens: list[Token]) -> list[Token]:
    """The tokens with a break behind every distance that something described follows."""
    out: list[Token] = []
    for token in tokens:
        before = out[-1] if out else None
        if before is not None and (_is_far(before, tokens) or _is_far(token, tokens)):
            other = token if _is_far(before, tokens) else before
            apart = other.kind in _DESCRIBING or _is_lens(other)  # '1.2 metres mft', 'f/8 80 cm', '25mm 1.2 m'
        else:
            apart = token.kind == "FNUM" and _ends_on_body(tokens, out)
        out += [Token("CUE", "", token.column), token] if apart else [token]
    return out


def _is_far(token: Token, tokens: list[Token]) -> bool:
    """A distance by its unit; one in cm where the focal length is told too: '50 mm at f8 50 cm Super 35'."""
    if token.kind != "LENGTH" or token.numbers[0] < _LEAST_MM:
        return False
    told = any(_is_lens(one) and one.kind != "FNUM" for one in tokens)
    return token.unit in METRES or (token.unit == "cm" and told and not any(one.kind == "PIECE" for one in tokens))


def _is_lens(token: Token) -> bool:
    """'0.8 m 35 mm': a focal length, which no distance describes."""
    return token.kind in ("FOCAL", "COMBO", "FNUM") or token.is_mm


def _ends_on_body(tokens: list[Token], out: list[Token]) -> bool:
    """'on mft f11': a body's mount behind 'on', where nothing tells a lens, has no stop."""
    placed = len(out) > 1 and out[-1].kind in ("MOUNT", "FORMAT") and out[-2].value == "on"
    return placed and not any(one.kind in _LENSES for one in tokens)
