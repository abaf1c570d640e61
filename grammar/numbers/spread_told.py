"""A ring not equally thick all round: 'varies 27.41 to 27.55', 'between 23.95 and 24.1' are readings of it."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_READING: Final = "reading"
_RINGS: Final = frozenset(["adapter", "recessed"])
_SIZES: Final = frozenset(["NUMBER", "LENGTH"])
_BY: Final = frozenset(["to", "-", "till"])
_BETWEEN, _AND = "between", "and"
_APART_MM: Final = 0.5  # farther apart they are two things
_LEAST_MM: Final = 0.3


def with_spread_told(tokens: list[Token]) -> list[Token]:
    """Both ends of such a span behind a ring become readings; nothing where they are no decimals."""
    for at in range(1, len(tokens) - 2):
        one, joined, two = tokens[at : at + 3]
        ring = any(token.kind == "PIECE" and token.value in _RINGS for token in tokens[:at])
        word, led = joined.text.casefold(), tokens[at - 1].text.casefold()
        spans = word in _BY or (word == _AND and led == _BETWEEN)  # 'rings of 26.1 and 26.3' are two
        if not (ring and spans and _is_size(one) and _is_size(two)):
            continue
        if not 0 < abs(one.numbers[0] - two.numbers[0]) <= _APART_MM:
            continue
        ends = [token.as_("KEYED", value=_READING, unit="mm", ids=(), implies=()) for token in (one, two)]
        return [*tokens[:at], ends[0], joined.as_("JOIN", value="and"), ends[1], *tokens[at + 3 :]]
    return tokens


def _is_size(token: Token) -> bool:
    return token.kind in _SIZES and token.unit in ("", "mm") and "." in token.text and token.numbers[0] >= _LEAST_MM
