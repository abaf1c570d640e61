"""Distances beside what is described: '1.2 metres mft' is how far off, and no focal length of a lens for MFT."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_FAR: Final = frozenset(["m", "ft"])
_LEAST_MM: Final = 300.0  # no lens that is adapted has its focal length told so
_DESCRIBING: Final = frozenset(["MOUNT", "FORMAT", "KIND", "TRAIT"])


def with_far_lengths_apart(tokens: list[Token]) -> list[Token]:
    """The tokens with a break behind every distance that something described follows."""
    out: list[Token] = []
    for token in tokens:
        before = out[-1] if out else None
        far = before is not None and before.kind == "LENGTH" and before.unit in _FAR and before.numbers[0] >= _LEAST_MM
        if far and token.kind in _DESCRIBING:
            out.append(Token("CUE", "", token.column))
        out.append(token)
    return out
