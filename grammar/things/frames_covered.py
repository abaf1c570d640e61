"""What a lens shall cover is a frame, and nothing that it is made for: 'does my 50 cover 44x33 in crop mode'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import LIT, READ_OUT
from grammar.words.tokens import Token

_FULL: Final = "35mm-full-frame"
_FILM_MM: Final = 35.0
_CIRCLE: Final = "circle"
_PASSED: Final = frozenset(["DET", "UNKNOWN", "STOP", "CUE"])
_MOST: Final = 3  # tokens between the verb and the frame
_HEADS: Final = frozenset(["FRAME", "BODY", "LENS", "KIND", "LENGTH", "COMBO", "FNUM", "FOCAL"])


def with_frames_covered(tokens: list[Token]) -> list[Token]:
    """A FRAME behind the format that a lens shall cover; '35mm crop mode' is a part as large as full frame."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        mode = after is not None and after.kind == "FRAME" and READ_OUT in after.groups
        if token.is_mm and token.numbers[0] == _FILM_MM and mode:
            token = token.as_("FORMAT", ids=(_FULL,))
        if token.kind == "FORMAT" and _is_of_circle(tokens, at):
            out[-1] = out[-1].as_("PREP", value="on")
        out.append(token)
        headed = after is not None and after.kind in _HEADS
        if token.kind == "FORMAT" and not headed and _is_covered(tokens, at):
            out.append(Token("FRAME", "sensor", token.column))
    return out


def _is_covered(tokens: list[Token], at: int) -> bool:
    """Whether the verb stands before it, with no more than small words between, and a lens before that."""
    if _is_of_circle(tokens, at):
        return True
    for back in range(at - 1, max(-1, at - 2 - _MOST), -1):
        if LIT in tokens[back].groups:
            return any(one.kind in ("LENS", "FOCAL", "LENGTH", "COMBO", "MOUNT", "KIND") for one in tokens[:back])
        if tokens[back].kind not in _PASSED:
            return False
    return False


def _is_of_circle(tokens: list[Token], at: int) -> bool:
    """'a 38 mm enlarger lens, image circle for APS-C': what the circle is for, and not what the lens is made for."""
    ahead = [(one.kind, one.value) for one in tokens[max(0, at - 2) : at]]
    return ahead == [("MEASURE", _CIRCLE), ("PREP", "for")]
