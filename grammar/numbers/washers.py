"""What stands between by no name of a piece: 'a 2 mm washer between lens and body', '3 mm of washers', 'a 3 mm gap'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import SPACER
from grammar.words.tokens import Token

_SPACER_CUE: Final = "spacer"  # what a cue tells that speaks of washers and the like
_WHERE: Final = frozenset(["between", "behind", "on"])


def tell_washers(tokens: list[Token], told: frozenset[str]) -> None:
    """'a 2 mm washer between the lens and the body': where no piece is told otherwise, that is the ring."""
    if any(one.kind == "PIECE" for one in tokens):
        return
    for at in range(len(tokens) - 1):
        between = tokens[at + 1].kind == "PREP" and tokens[at + 1].value == "between"
        if between and tokens[at].kind == "LENGTH" and tokens[at].unit == "mm":
            tokens.insert(at + 1, Token("PIECE", "ring", tokens[at].column, "adapter"))  # 'a 3 mm gap between ...'
            return
    for at in range(1, len(tokens) - 1):
        sized = tokens[at - 1].kind == "LENGTH" and tokens[at - 1].unit == "mm"
        placed = tokens[at + 1].kind == "PREP" and tokens[at + 1].value in _WHERE
        if _SPACER_CUE in told and tokens[at].kind == "CUE" and sized and placed:
            tokens[at] = tokens[at].as_("PIECE", value="adapter")
    for at in range(len(tokens) - 2):
        size, of, what = tokens[at : at + 3]
        if _SPACER_CUE in told and size.kind == "LENGTH" and of.value == "of" and what.kind == "CUE":
            tokens[at + 1 : at + 3] = [what.as_("PIECE", value=SPACER)]  # '3 mm of washers'
            return
