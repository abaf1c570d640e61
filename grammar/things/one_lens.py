"""What is told in a row and is one lens, or a body and a lens: 'M42, 50 mm, f/1.8', 'MFT, my 105'."""

from __future__ import annotations

from typing import Final

from grammar.things.cast import Cast, merge
from grammar.things.casting import Part
from grammar.words.token_kinds import CHOICES

_TWICE: Final = 2
_OF_MOUNTS: Final = frozenset(["same", "versus", "mix", "which"])  # cues of what is asked of mounts, or of several


def put_together(lenses: list[Part]) -> None:
    """'105 mm, a D-mount lens', 'FD, 58 mm reversed', 'M42, 50 mm, f/1.8': one lens, where nothing is told twice."""
    for first in list(lenses):
        row = [part for part in lenses if part.noun.listed == first.noun.listed]
        if first is row[0] and len(row) > 1 and all(_adds(part, first) for part in row[1:]) and _tells_none_twice(row):
            for part in row[1:]:
                merge(first, part)
                lenses.remove(part)


def _adds(part: Part, first: Part) -> bool:
    """Whether a part may only say more of the first in its row."""
    listed = part.noun.join == "," and part.noun.role in ("", first.noun.role)
    return listed and not (part.is_several or first.is_several or part.count or part.named or first.named)


def _tells_none_twice(row: list[Part]) -> bool:
    told = (
        [part for part in row if part.has_mount_or_kind], [part for part in row if part.focal or part.zoom],
        [part for part in row if part.f_number], [part for part in row if part.formats],
    )  # fmt: skip
    return all(len(one) < _TWICE for one in told)


def body_beside_lens(cast: Cast) -> None:
    """'an EF with a 58 mm C/Y', 'a 50 mm FD and my EF': of two mounts the one that nothing tells as a lens's."""
    if cast.bodies or len(cast.lenses) != 2 or cast.told & _OF_MOUNTS:
        return
    if not all(one.mounts for one in cast.lenses):
        return
    lenses = [one for one in cast.lenses if _is_told_as_lens(one)]
    rest = [one for one in cast.lenses if one not in lenses]
    if len(lenses) != 1 or cast.lenses[1].noun.join in CHOICES:
        return
    body = rest[0]
    if body.noun.role == "from" or body.mounts[0].ids[0] == lenses[0].mounts[0].ids[0]:
        return
    body.sort = "body"
    cast.lenses, cast.bodies = lenses, rest


def host_before_lens(cast: Cast, lenses: list[Part]) -> None:
    """'MFT, my 105, f/8': the mount that mostly means a body, before a lens told by its numbers alone."""
    if len(lenses) < _TWICE or any(part.has_mount for part in lenses[1:]):
        return
    one, other = lenses[:2]
    if one.is_host and not _is_told_as_lens(one) and other.focal and other.noun.join == ",":
        one.sort = "body"
        cast.bodies.append(one)
        lenses.remove(one)


def _is_told_as_lens(part: Part) -> bool:
    return bool(part.focal or part.f_number or part.zoom or part.kinds or part.traits) or part.noun.heads == "LENS"
