"""Pairs told one after the other: 'OM to L and FD to L', 'K to Z, M42 to E', 'LTM goes on E, why not E on LTM'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.things.casting import Part
from grammar.things.phrases import TOWARDS

_GOALS: Final = TOWARDS | {"for"}
_LENS_SORTS: Final = frozenset(["mount", "lens"])
_BODY_SORTS: Final = frozenset(["mount", "body"])
LEAST_PAIRS: Final = 2

Pair = tuple[Part, Part]


def pairs_told(parts: list[Part]) -> list[Pair]:
    """Each lens and the body that it is to go on, where two or more such pairs are told and nothing else has a mount.

    None where a pair ends on what the next begins with: 'M42 to EF and EF to E' leads through both.
    """
    mounted = [part for part in parts if part.mounts and part.sort in _LENS_SORTS | _BODY_SORTS]
    if len(mounted) % 2 or len(mounted) < 2 * LEAST_PAIRS:
        return []
    pairs = list(zip(mounted[::2], mounted[1::2], strict=True))
    if not all(_is_pair(one, other) for one, other in pairs):
        return []
    ends = [(one.mounts[0].ids[0], other.mounts[0].ids[0]) for one, other in pairs]
    chained = any(front == rear for (_, rear), (front, _) in pairwise(ends))
    back = all(end[::-1] in ends for end in ends)  # there and back is no way through
    return pairs if not chained or back else []


def _is_pair(lens: Part, body: Part) -> bool:
    """Whether the second is what the first goes on, with no other word for what it is."""
    leads = body.noun.role in _GOALS and body.noun.heads in ("", "BODY", "MOUNTWORD") and not body.focal
    return leads and lens.sort in _LENS_SORTS and body.sort in _BODY_SORTS and not lens.noun.role


def set_apart(parts: list[Part]) -> tuple[tuple[str, str], ...]:
    """Gives each part of the pairs told its role; what is told twice stands once.

    The mounts of each pair, where not every lens is to go on every body.
    """
    pairs = pairs_told(parts)
    for lens, body in pairs:
        lens.sort, body.sort = "lens", "body"
        lens.was_mount = body.was_mount = False
    seen: set[tuple[str, str, float | None]] = set()
    for part in [one for pair in pairs for one in pair]:
        key = (part.sort, part.mounts[0].ids[0], part.focal)
        if key in seen:
            part.sort = "nothing"
        seen.add(key)
    ends = dict.fromkeys((lens.mounts[0].ids[0], body.mounts[0].ids[0]) for lens, body in pairs)
    crossed = len({lens for lens, _ in ends}) * len({body for _, body in ends})
    return tuple(ends) if len(ends) < crossed else ()
