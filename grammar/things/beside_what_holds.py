"""A mount told right behind a piece, or behind what a lens is put on: it is the mount of that."""

from __future__ import annotations

from typing import Final

from grammar.things.cast import Cast
from grammar.things.casting import Part
from grammar.things.phrases import TOWARDS

BOTH_ENDS: Final = "both-ends"  # the cue that a piece has the same mount at either end
_HOLDS: Final = ("frame", "strange")  # sorts of what a lens may be put on that is no mount


def is_held_by(cast: Cast, part: Part, before: Part | None) -> bool:
    """Whether it is the mount of a piece, or of what a lens is put on; it is then placed there."""
    return _is_at_both_ends(cast, part, before) or _is_of_what_is_put_on(cast, part, before)


def _is_at_both_ends(cast: Cast, part: Part, before: Part | None) -> bool:
    """'a bellows, 50 to 150 mm, M42 on both ends': the mount of the piece, and of no lens."""
    piece = cast.pieces[-1] if cast.pieces else None
    if BOTH_ENDS not in cast.told or piece is None or piece.mounts or piece is not before:
        return False
    piece.mounts.extend([part.mounts[0], part.mounts[0]])
    part.sort = "nothing"
    return True


def _is_of_what_is_put_on(cast: Cast, part: Part, before: Part | None) -> bool:
    """'can that go on my full frame, E mount': behind what a lens is put on it is the mount of that."""
    if before is None or part.noun.role or not part.is_host or part.noun.join != "," or before.mounts or before.focal:
        return False
    if before.noun.role not in TOWARDS or before.sort not in _HOLDS:
        return False
    part.formats.extend(before.formats)
    for row in (cast.frames, cast.strange):
        if before in row:
            row.remove(before)
    part.sort = "body"
    cast.bodies.append(part)
    return True
