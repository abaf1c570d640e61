"""What is big enough for a frame shall light it, and is not made for it: 'does it give enough image for APS-C'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import ENOUGH
from grammar.words.tokens import Token

_FOR, _ON = "for", "on"
_BACK: Final = 4  # tokens from the frame's 'for' back to the word
_FRAMES: Final = frozenset(["FORMAT", "AREA", "MOUNT", "LETTER", "DET"])
_PASSED: Final = frozenset(["FILLER", "MEASURE", "CUE", "UNKNOWN", "DET"])


def with_enough_for(tokens: list[Token]) -> list[Token]:
    """The 'for' before such a frame as an 'on'."""
    out = list(tokens)
    for at, token in enumerate(out[:-1]):
        if (token.kind, token.value) == ("PREP", _FOR) and out[at + 1].kind in _FRAMES and _is_enough(out[:at]):
            out[at] = token.as_("PREP", value=_ON)
    return out


def _is_enough(ahead: list[Token]) -> bool:
    for one in reversed(ahead[-_BACK:]):
        if ENOUGH in one.groups:
            return True
        if one.kind not in _PASSED:
            return False
    return False
