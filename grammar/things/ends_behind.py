"""'a stepping ring, M39 to M42': a piece with the two mounts that it joins told behind a comma is one piece."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.things.cast import Cast
from grammar.things.casting import Part

_BEHIND: Final = 4  # signs at most from the end of the one to the other: ', an '
_ENDS: Final = 2


def ends_behind(cast: Cast) -> None:
    """Gives the piece named without a mount the ends told right behind it, and leaves those away as a piece."""
    told = [(one, other) for one, other in pairwise(cast.pieces) if _is_open(one) and _tells_ends(one, other)]
    for piece, ends in told:
        piece.mounts = list(ends.mounts)
        cast.pieces.remove(ends)


def _is_open(piece: Part) -> bool:
    return not (piece.mounts or piece.named or piece.factor or piece.strange)


def _tells_ends(piece: Part, ends: Part) -> bool:
    """Whether it stands right behind the comma, with no word of its own for what it is."""
    gap = ends.noun.column - (piece.noun.column + len(piece.noun.text))
    head = ends.noun.head
    said = head is not None and head.text.casefold() in ends.noun.text.casefold()
    bare = not (ends.thickness or ends.named or ends.factor or said)
    return bare and len(ends.mounts) == _ENDS and ends.noun.join == "," and 0 < gap <= _BEHIND
