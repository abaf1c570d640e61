"""Rows of numbers taken for something else: '7/14/28' is no fraction, '13-21-31' no range, '12/25 tubes' no lens."""

from __future__ import annotations

import re
from typing import Final

from grammar.things.casting import SPACER
from grammar.words.tokens import Token

_PARTING: Final = frozenset(["/", "-"])
_PAIRED: Final = frozenset(["FRACTION", "COMBO", "RANGE"])
_PAIR: Final = re.compile(r"(\d+(?:\.\d+)?) ?[/-] ?(\d+(?:\.\d+)?)")


def with_parted(tokens: list[Token]) -> list[Token]:
    """'7/14/28', '13-21-31', '12/25 tubes': a row that was taken for a fraction, a range or a lens is numbers again."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        before = out[-1] if out else None
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        goes_on = after is not None and after.text in _PARTING and at + 2 < len(tokens) and _is_number(tokens[at + 2])
        goes_on = goes_on or (token.kind == "RANGE" and after is not None and _is_number(after) and not after.gap)
        went_on = before is not None and before.text in _PARTING and len(out) > 1 and out[-2].kind == "NUMBER"
        of_piece = after is not None and after.kind == "PIECE" and after.value == SPACER and token.kind != "RANGE"
        found = _PAIR.fullmatch(token.text) if token.kind in _PAIRED else None
        if found is not None and (goes_on or went_on or of_piece):
            numbers = [token.as_("NUMBER", text=one, numbers=(float(one),), value="", ids=()) for one in found.groups()]
            out += [numbers[0], token.as_("JOIN", text=",", value=",", ids=()), numbers[1]]
        elif token.text in _PARTING and out and out[-1].kind == "NUMBER" and after is not None and _is_number(after):
            out.append(token.as_("JOIN", value=","))
        else:
            out.append(token)
    return out


def _is_number(token: Token) -> bool:
    return token.kind in ("NUMBER", "LENGTH", *_PAIRED)
