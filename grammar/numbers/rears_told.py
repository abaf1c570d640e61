"""How far the rear of a lens stands out: 'rear 11 mm out', 'the back pokes 9 in', as it is typed without a verb."""

from __future__ import annotations

from typing import Final

from grammar.questions import RING
from grammar.words.groups import REAR, STANDS_OUT
from grammar.words.tokens import Token

REACH: Final = "rear-reach"
_THIN_MM: Final = 6.0  # of a ring that hardly sets a lens out
_MOST_MM: Final = 60.0


def with_rears_told(tokens: list[Token]) -> list[Token]:
    """The number between the word for the rear and what says where it stands becomes KEYED as its reach.

    'the ring sticks out 1 mm' tells how far out the ring sets the lens, and nothing of the lens.
    """
    out = list(tokens)
    for at in range(1, len(tokens) - 1):
        ring, stands, size = tokens[at - 1 : at + 2]
        ringed = (ring.kind, ring.value) == ("PIECE", RING) and (stands.kind, stands.value) == ("MEASURE", REACH)
        if ringed and size.may_be_mm and not size.text.isalpha() and 0 < size.numbers[0] <= _THIN_MM:
            out[at], out[at + 1] = stands.as_("CUE", value=""), size.as_("LENGTH", unit="mm")
    for at in range(1, len(tokens) - 1):
        rear, size, stands = tokens[at - 1 : at + 2]
        bare = size.may_be_mm and not size.text.isalpha()
        named = REAR in rear.groups and STANDS_OUT in stands.groups
        if bare and named and 0 < size.numbers[0] <= _MOST_MM:
            out[at] = size.as_("KEYED", value=REACH, unit="mm")
            if stands.kind == "MEASURE":
                out[at + 1] = stands.as_("CUE")
    return out
