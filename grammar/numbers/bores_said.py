"""An opening told by how wide it is clear: '38 mm clear', 'only 38 clear inside'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_CLEAR: Final = "clear"
_BORE: Final = "bore"
_ENDS: Final = frozenset(["STOP", "JOIN", "PREP", "CUE", "VERB", "MARK", "PIECE", "MOUNT"])  # 'a 38 mm clear T2 ring'
_LEAST: Final = 5.0  # mm


def with_clear_openings(tokens: list[Token]) -> list[Token]:
    """The tokens with 'clear' right behind a length in mm as the opening that it measures."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
        metric = before is not None and before.may_be_mm
        wide = metric and before is not None and len(before.numbers) == 1 and before.numbers[0] >= _LEAST
        if token.text.casefold() == _CLEAR and wide and (after is None or after.kind in _ENDS):
            out[at] = token.as_("MEASURE", value=_BORE, implies=())
    return out
