"""A length that something stretching stands behind is a lens's: 'out of a 60 mm on bellows', 'my 75 mm on tubes'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import DRAWN
from grammar.words.tokens import Token

_SHORTEST_MM: Final = 8.0  # of a lens
_ON: Final = frozenset(["on", "behind"])
_OWN: Final = frozenset(["DET", "LETTER"])  # 'my', 'a' before the length


def with_lens_on_bellows(tokens: list[Token]) -> list[Token]:
    """Such a length with the word for a lens behind it."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        out.append(token)
        led = tokens[at - 1] if at else None
        behind = [one for one in tokens[at + 1 : at + 4] if one.kind not in _OWN][:2]
        placed = len(behind) > 1 and behind[0].kind == "PREP" and behind[0].value in _ON
        long = token.kind == "LENGTH" and token.unit == "mm" and token.numbers[0] >= _SHORTEST_MM
        if long and placed and behind[1].value in DRAWN and led is not None and led.kind in _OWN:
            out.append(Token("LENS", "", token.column))
    return out
