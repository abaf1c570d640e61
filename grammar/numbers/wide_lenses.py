"""A wide-angle lens called by the short word: '28 mm wide on MFT', 'a 24mm wide lens', '35mm wide and a thin ring'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.focal_numbers import may_be_focal
from grammar.words.tokens import Token

_WIDE: Final = "wide"
_SHORTEST, _LONGEST = 8, 40  # mm, of wide-angle lenses
_BE: Final = "be"
_ON: Final = frozenset(["on", "onto", "for"])
_PUT_ON: Final = frozenset(["MOUNT", "LETTER", "BODY", "FORMAT", "FRAME", "NAMED"])
_MEASURED: Final = frozenset(["MEASURE", "MOUNTWORD", "MOTIF", "PITCH"])  # what may be so wide
_THICK: Final = "thickness"  # by which nothing is wide
_LENSES: Final = frozenset(["LENS", "COMBO", "RANGE", "FOCAL"])
_OF_SIZE: Final = frozenset(["macro", "how-close", "how-big", "frame-filling", "working-distance", "identify"])


def with_wide_lenses(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The length before such a word as FOCAL; it stays a length where anything else may be so wide."""
    if told & _OF_SIZE or any(one.kind in _MEASURED and one.value != _THICK for one in tokens):
        return tokens
    out = list(tokens)
    for at in range(1, len(out)):
        if out[at].kind == "KIND" and out[at].text.casefold() == _WIDE and _is_focal(out, at - 1):
            out[at - 1] = out[at - 1].as_("FOCAL")
    return out


def _is_focal(tokens: list[Token], at: int) -> bool:
    token, before = tokens[at], tokens[at - 1] if at else None
    whole = token.kind == "LENGTH" and token.unit == "mm" and token.numbers[0] == int(token.numbers[0])
    if not whole or not _SHORTEST <= token.numbers[0] <= _LONGEST or not may_be_focal(token.numbers[0]):
        return False
    rest = tokens[at + 2 :]
    if rest and rest[0].kind == "LENS":
        return True
    said = before is not None and before.value == _BE and at > 1  # 'the barrel is 28 mm wide'
    others = any(one.kind in _LENSES or (one.kind == "LENGTH" and one.unit == "mm") for one in (*tokens[:at], *rest))
    return not said and not others and _is_put_somewhere(rest)


def _is_put_somewhere(rest: list[Token]) -> bool:
    """Whether what follows is what such a lens is put on, or what stands between."""
    if any(one.kind == "PIECE" for one in rest):
        return bool(rest) and rest[0].kind in ("JOIN", "PREP")
    return any(one.kind == "PREP" and one.value in _ON for one in rest) and any(one.kind in _PUT_ON for one in rest)
