"""Two lengths of which one is to be put between: 'do I need 5 or 10 mm for coins with a 50 mm'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import SPACER
from grammar.words.tokens import Token

_CLOSE: Final = frozenset(["macro", "how-big", "how-close", "frame-filling"])  # cues of what is drawn large
_LONGEST_MM: Final = 60.0  # of a tube
_SHARE: Final = 0.75  # of the lens behind it: what is nearly as long is another lens
_NUMBERS: Final = frozenset(["NUMBER", "LENGTH"])
_OR: Final = frozenset(["or", "vs"])
_ARTICLES: Final = frozenset(["DET", "LETTER"])
_SMALL: Final = frozenset(["JOIN", "STOP", "PREP", "MOTIF", "CUE", "FILLER"])


def with_either_tube(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The two lengths with the word for a tube behind them, where a longer one is named as the lens's."""
    if not told & _CLOSE or any(one.kind == "PIECE" for one in tokens):
        return tokens
    for at in range(1, len(tokens) - 3):
        one, join, other = tokens[at - 1 : at + 2]
        pair = one.kind in _NUMBERS and other.is_mm and join.kind == "JOIN" and join.value in _OR
        if not pair or one.text.isalpha() or one.unit not in ("", "mm") or tokens[at + 2].kind not in _SMALL:
            continue
        most = max(one.numbers[0], other.numbers[0])
        if most <= _LONGEST_MM and any(_is_lens(tokens, n, most) for n in range(at + 3, len(tokens))):
            return [*tokens[: at + 2], Token("PIECE", "tube", other.column, SPACER), *tokens[at + 2 :]]
    return tokens


def _is_lens(tokens: list[Token], at: int, tube_mm: float) -> bool:
    """'with a 50 mm', 'on my 90': a number behind an article, and longer than the tubes."""
    token, led = tokens[at], tokens[max(0, at - 2) : at]
    lens = token.kind in _NUMBERS and token.unit in ("", "mm") and not token.text.isalpha()
    placed = len(led) > 1 and led[0].kind == "PREP" and led[0].value in ("with", "on") and led[1].kind in _ARTICLES
    return lens and placed and tube_mm <= _SHARE * token.numbers[0]
