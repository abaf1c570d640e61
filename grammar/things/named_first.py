"""What is only named and told in full behind: 'three kestrel lenses, a 28, a 50 ...', 'a kestrel k30, E-mount'."""

from __future__ import annotations

from typing import Final

from grammar.things.cast import Cast
from grammar.things.casting import Part

_SEVERAL: Final = "lenses"
_LEAST: Final = 2  # lenses told one by one


def told_behind(cast: Cast) -> None:
    """Leaves the word for all lenses away where each is told behind it; gives a named camera the mount behind it."""
    each = [part for part in cast.lenses if part.focal is not None or part.zoom is not None]
    if len(each) >= _LEAST:
        cast.lenses = [part for part in cast.lenses if part in each or not _is_sum(part)]
    body = cast.bodies[0] if len(cast.bodies) == 1 else None
    lens = cast.lenses[0] if len(cast.lenses) == 1 else None
    if body is None or lens is None or not _is_bare_host(lens) or lens.noun.column < body.noun.column:
        return
    both = bool(lens.mounts and body.mounts)  # one may be named by itself, without the mount of it
    again = both and bool({*lens.mounts[0].ids} & {*body.mounts[0].ids})  # 'a kestrel RF, full frame, RF'
    if again or (body.strange is not None and not body.has_mount):
        body.mounts, cast.lenses = list(body.mounts or lens.mounts), []


def _is_sum(part: Part) -> bool:
    told = part.mounts or part.kinds or part.formats or part.traits or part.f_number or part.named
    return not told and part.noun.head is not None and part.noun.head.text.casefold() == _SEVERAL


def _is_bare_host(part: Part) -> bool:
    told = part.focal or part.f_number or part.zoom or part.kinds or part.named or part.count
    return part.is_host and not told and part.noun.head is None and not part.noun.role
