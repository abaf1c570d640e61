"""A bare number that is a density, as grey filters are marked: 'filter says 1.8 on the rim', 'nd marked 0.9'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import OPENED
from grammar.words.tokens import Token

DENSITIES: Final = frozenset([0.3, 0.6, 0.9, 1.2, 1.5, 1.8, 2.1, 2.4, 2.7, 3.0])  # as filters are marked
_TELLING: Final = frozenset(["VERB", "CUE", "MEASURE"])  # 'says', 'reads', 'marked'
_OF_OTHERS: Final = frozenset(["PIECE", "BODY", "FRAME", "MEASURE", "MOUNTWORD", "LENS", "KIND", "MOUNT", "TRAIT"])


def with_marked_densities(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The tokens with each number as ND that a filter is said to be marked with, where light is spoken of."""
    if "add-up" in told and not any(token.kind in _OF_OTHERS for token in tokens):
        summed = [token for token in tokens if _is_density(token)]
        if len(summed) > 1 and len(summed) == sum(token.kind == "NUMBER" for token in tokens):
            # 'stacked a 0.6 and a 1.2, total?': nothing else is told that numbers so marked may be of
            return [token.as_("ND", value=f"ND {token.text}") if token in summed else token for token in tokens]
    filtered = any(token.kind == "PIECE" and token.value == "filter" for token in tokens)
    if not ("nd" in told or (filtered and "engraved" in told)) or any(token.kind == "ND" for token in tokens):
        return tokens
    return [_marked(tokens, at) for at in range(len(tokens))]


def _is_density(token: Token) -> bool:
    return token.kind == "NUMBER" and "." in token.text and token.numbers[0] in DENSITIES


def _marked(tokens: list[Token], at: int) -> Token:
    token = tokens[at]
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    if not _is_density(token) or before is None:
        return token
    if OPENED in before.groups:
        return token  # 'nd for wide open 1.2'
    if before.kind not in _TELLING or (after is not None and after.kind in _OF_OTHERS):
        return token
    return token.as_("ND", value=f"ND {token.text}")
