"""Rings that are told by what only a lens or a tube has: 'a 20mm f2.8 ring', 'rings of 20, 5 and 2, how big'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.number_rows import is_number
from grammar.things.casting import SPACER
from grammar.words.tokens import Token

_RINGS: Final = "rings"
_LONGEST_RING: Final = 100.0  # mm
_BETWEEN: Final = frozenset(["JOIN", "DET", "MARK"])


def tell_lens_of_ring(tokens: list[Token]) -> None:
    """'tolerance for a 20mm f2.8 ring': no ring has a stop, so the length before it is that of its lens."""
    for at in range(len(tokens) - 2):
        length, stop, ring = tokens[at : at + 3]
        if (
            length.kind in ("LENGTH", "NUMBER")
            and stop.kind == "FNUM"
            and (ring.kind, ring.value) == ("PIECE", "adapter")
        ):
            tokens[at] = length.as_("FOCAL", unit="mm")
            tokens.insert(at + 2, Token("PREP", "", ring.column, value="with"))
            return


def tell_rings_as_tubes(tokens: list[Token]) -> None:
    """'rings of 20, 5 and 2 behind a 50, how big': where close-ups are asked for, rings of told lengths are tubes."""
    for at, token in enumerate(tokens):
        named = token.kind == "PIECE" and token.value == "adapter" and token.text.casefold().endswith(_RINGS)
        joins_mounts = at > 1 and all(one.kind in ("MOUNT", "LINK", "LETTER") for one in tokens[at - 2 : at])
        place = at + 1
        while place < len(tokens) and (tokens[place].kind in ("JOIN", "MARK") or tokens[place].value == "of"):
            place += 1
        row = [one for one in tokens[place : place + 3] if one.kind != "MARK"]
        several = len(row) > 1 and is_number(row[0]) and (is_number(row[1]) or row[1].kind in _BETWEEN)
        if named and not joins_mounts and several and all(one.numbers[0] <= _LONGEST_RING for one in row[:1]):
            tokens[at] = token.as_("PIECE", value=SPACER)
