"""By how much an anamorphic lens squeezes the width: '1.33x anamorphic', 'anamorphic 2x', 'anamorphic, 1.8 squeeze'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.objectives_told import with_objectives_told
from grammar.words.tokens import Token

SQUEEZE: Final = "squeeze"
_KIND: Final = "anamorphic"
_FACTORS: Final = frozenset(["TIMES", "RATIO", "NUMBER"])
_LEAST, _MOST = 1.2, 2.0  # factors that such lenses squeeze by
_BEFORE, _BEHIND = 2, 3  # tokens that may stand between


def with_squeezes(tokens: list[Token]) -> list[Token]:
    """The factor beside the word is no magnification, and no teleconverter's: it becomes KEYED."""
    tokens = with_objectives_told(tokens)  # what stands on the barrel of another kind of lens
    out = list(tokens)
    for at, token in enumerate(tokens):
        if (token.kind, token.value) != ("KIND", _KIND):
            continue
        near = [*range(at - 1, max(at - 1 - _BEFORE, -1), -1), *range(at + 1, min(at + 1 + _BEHIND, len(tokens)))]
        found = next((place for place in near if _is_factor(tokens[place])), None)
        if found is not None:
            out[found] = out[found].as_("KEYED", value=SQUEEZE)
    return out


def _is_factor(token: Token) -> bool:
    """A factor told as one; a bare number only where it has a fraction, as none but factors have it."""
    if token.kind not in _FACTORS or len(token.numbers) != 1 or token.unit not in ("", "x"):
        return False
    told = token.kind != "NUMBER" or "." in token.text
    return told and _LEAST <= token.numbers[0] <= _MOST
