"""'25 mm of rings': so much is put between, whatever pieces make it up."""

from __future__ import annotations

from typing import Final

from grammar.numbers.tails import with_lens_behind_ring
from grammar.words.tokens import Token

_OF: Final = "of"
_PIECES: Final = frozenset(["adapter", "extension-tube"])
_EXTENSION: Final = "extension"
_NAMING: Final = frozenset(["MOUNT", "LINK", "PIECE"])  # what tells behind it which ring it is


def with_pieces_of_length(tokens: list[Token]) -> list[Token]:
    """The tokens with a length in mm before 'of rings', 'of spacer' as one of extension."""
    tokens = with_lens_behind_ring(tokens)
    out = list(tokens)
    for at in range(len(tokens) - 2):
        size, of, piece = tokens[at : at + 3]
        after = tokens[at + 3] if at + 3 < len(tokens) else None
        named = after is not None and after.kind in _NAMING
        told = size.is_mm and of.text.casefold() == _OF
        if told and piece.kind == "PIECE" and piece.value in _PIECES and not named:
            out[at] = size.as_("KEYED", value=_EXTENSION)
            out[at + 1 : at + 3] = [of.as_("CUE"), piece.as_("CUE")]
    return out
