"""How much of a ruler the picture shows: 'a rule across the frame shows 42 mm', '30 mm of ruler across my picture'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.motifs import FIELD
from grammar.words.groups import PICTURE_PART, RULER, SPAN
from grammar.words.tokens import Token

_CIRCLE: Final = "circle"  # 'a disc on paper, 18 mm by ruler'
_NEAR: Final = 7  # tokens between the ruler and its length
_LONGEST_MM: Final = 1000.0
_FRAMES: Final = frozenset(["FORMAT", "FRAME"])
_HEADS: Final = frozenset(["LENS", "KIND", "PIECE", "MOUNT", "FNUM", "COMBO", "MOUNTWORD"])
_GLASS: Final = frozenset(["LENS", "KIND"])


def with_rulers_seen(tokens: list[Token]) -> list[Token]:
    """The length beside a ruler that lies in the picture becomes the field; nothing where no picture is spoken of."""
    at = next((n for n, one in enumerate(tokens) if RULER in one.groups), None)
    framed = any(one.kind in _FRAMES or PICTURE_PART in one.groups for one in tokens)
    circle = any(one.kind == "MEASURE" and one.value == _CIRCLE for one in tokens)
    if at is None or not framed or circle or any(one.kind == "KEYED" and one.value == FIELD for one in tokens):
        return tokens
    sizes = [n for n in range(max(0, at - _NEAR), min(len(tokens), at + _NEAR + 1)) if _is_size(tokens, n)]
    if not sizes:
        return tokens
    best = min(sizes, key=lambda n: (abs(n - at), n < at))
    out = [one.as_("CUE") if n == at or _across(one) else one for n, one in enumerate(tokens)]
    out[best] = tokens[best].as_("KEYED", value=FIELD, unit=tokens[best].unit or "mm", ids=())
    return out


def _across(token: Token) -> bool:
    return SPAN in token.groups and token.kind == "MEASURE"


def _is_size(tokens: list[Token], at: int) -> bool:
    """A length that is no lens's: neither '60 mm lens' nor 'lens 60 mm'."""
    token = tokens[at]
    if not token.is_mm or not 0 < token.numbers[0] <= _LONGEST_MM:
        return False
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    before = tokens[at - 1] if at else None
    led = before is not None and before.kind in _GLASS
    return not led and (after is None or after.kind not in _HEADS)
