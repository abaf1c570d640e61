"""How far the rear of a lens stands out: 'rear 11 mm out', 'the back pokes 9 in', as it is typed without a verb."""

from __future__ import annotations

from typing import Final

from grammar.questions import RING
from grammar.words.groups import REAR, STANDS_OUT
from grammar.words.tokens import Token

REACH: Final = "rear-reach"
_THIN_MM: Final = 6.0  # of a ring that hardly sets a lens out
_MOST_MM: Final = 60.0
_ENDS: Final = frozenset(["JOIN", "STOP"])
_WHOSE: Final = frozenset(["MOUNT", "LETTER", "NUMBER", "LENGTH", "LENS", "KIND", "FNUM", "DET", "LINK"])
_BE, _OF = "be", "of"


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
    for at in range(2, len(tokens)):
        size = tokens[at]
        bare = size.may_be_mm and not size.text.isalpha() and len(size.numbers) == 1
        ends = at + 1 == len(tokens) or tokens[at + 1].kind in _ENDS
        if (
            bare
            and ends
            and tokens[at - 1].value == _BE
            and 0 < size.numbers[0] <= _MOST_MM
            and _is_of_rear(tokens, at - 1)
        ):
            out[at] = size.as_("KEYED", value=REACH, unit="mm")
    return out


def _is_of_rear(tokens: list[Token], at: int) -> bool:
    """'the rear of the LTM 28 is': the rear named, and whose it is, right before the verb."""
    back = at - 1
    while back > 0 and tokens[back].kind in _WHOSE:
        back -= 1
    return back < at - 1 and tokens[back].value == _OF and back > 0 and REAR in tokens[back - 1].groups
