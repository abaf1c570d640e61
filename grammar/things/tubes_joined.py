"""A tube named by its length in a row with others: '12 and 16 mm M42 tubes' are two lengths, no one name."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from grammar.things.names_numbered import with_names_numbered
from grammar.words.tokens import Token

_NAME: Final = re.compile(r"(?P<n>\d+(?:\.\d+)?)\s?mm\s.*\b(?P<of>tubes?|rings?|spacers?)$", re.IGNORECASE)
_TUBE: Final = "extension-tube"
_TUBES_MM: Final = (3.0, 100.0)  # of one in a set
_ROW: Final = frozenset(["and", "+", "plus", ",", "and a"])


def with_tubes_joined(typed: Sequence[Token]) -> list[Token]:
    """Such a name becomes LENGTH and PIECE, as the lengths before it are read; the mount is that of the lens."""
    tokens = with_names_numbered(typed)
    out: list[Token] = []
    for at, token in enumerate(tokens):
        name = _NAME.match(token.text) if token.kind == "ADAPTER" else None
        if name is None or not _is_row(tokens, at):
            out.append(token)
            continue
        size, piece = float(name["n"]), token.column + name.start("of")
        out += [
            Token("LENGTH", f"{name['n']} mm", token.column, name["n"], (size,), unit="mm", listed=token.listed),
            Token("PIECE", name["of"], piece, _TUBE, end=token.end, listed=token.listed),
        ]
    return out


def _is_row(tokens: list[Token], at: int) -> bool:
    """Whether a bare length of a tube stands before it, joined to it."""
    before = [one for one in tokens[max(0, at - 3) : at] if one.kind != "DET"]
    if len(before) < 2 or before[-1].text.casefold() not in _ROW:
        return False
    size = before[-2]
    return size.kind in ("NUMBER", "LENGTH") and _TUBES_MM[0] <= size.numbers[0] <= _TUBES_MM[1]
