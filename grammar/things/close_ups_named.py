"""A power and 'closeup' behind it, with no word for a lens: '+2 closeup on my 100' is a close-up lens."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_PIECE: Final = "close-up-lens"
_CLOSE_UP: Final = "closeup"
_JOINING: Final = str.maketrans("", "", " -")


def with_close_ups_named(tokens: list[Token]) -> list[Token]:
    """The cue behind a power in dioptres becomes the PIECE that has it."""
    out = list(tokens)
    for at in range(1, len(out)):
        token = out[at]
        spoken = token.kind == "CUE" and token.text.casefold().translate(_JOINING).startswith(_CLOSE_UP)
        if spoken and out[at - 1].kind == "DIOPTRE":
            out[at] = token.as_("PIECE", value=_PIECE)
    return out
