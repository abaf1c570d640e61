"""What is a body though no word says so: the one mount of modern bodies, or a name that nobody knows beside a lens."""

from __future__ import annotations

from typing import Final

from grammar.things.cast import Cast
from grammar.things.casting import Part
from grammar.things.phrases import TOWARDS
from grammar.words.token_kinds import CHOICES

_TWO: Final = 2


def house(parts: list[Part]) -> None:
    """'X or Exakta?', 'm43 i have, how': the one mount of modern bodies is the body, where no words say otherwise."""
    bare = [part for part in parts if _may_host(part) and part.is_host]
    placed = any(part.noun.role in TOWARDS and part.has_mount for part in parts)
    if placed or any(part.sort == "body" and part.has_mount for part in parts):
        return
    if _are_chosen_from(bare, parts):
        for part in bare:
            part.sort = "body"
        return
    if len(bare) != 1:
        return
    part = bare[0]
    peers = [
        one for one in parts
        if one is not part and one.noun.listed == part.noun.listed and one.sort != "piece" and not _is_far(one)
    ]  # fmt: skip
    # 'is MFT or APS-C wider with a 25'
    frames = all(one.sort == "frame" for one in peers) and any(one.noun.join in CHOICES for one in (part, *peers))
    listed = bool(peers) and not frames and (bool(part.noun.join) or any(one.noun.join for one in peers))
    if part.noun.role not in ("", "with", "for", "of", "in") or listed:
        return
    if part.sort == "lens":
        # '20mm f5.6 mft': the numbers are the lens's, the mount is that of the body it is on
        body = Part("body", part.noun, mounts=part.mounts, formats=part.formats)
        part.mounts, part.formats = [], []
        parts.insert(parts.index(part) + 1, body)
    else:
        part.sort = "body"


def _are_chosen_from(bare: list[Part], parts: list[Part]) -> bool:
    """'E or L for M glass': mounts of modern bodies set against each other for a lens that is told with its head."""
    alone = [part for part in bare if part.sort == "mount" and part.noun.role in ("", "on")]
    lens = any(part.sort == "lens" and part.noun.head is not None and part.has_mount_or_kind for part in parts)
    return len(bare) > 1 and alone == bare and lens and any(part.noun.join in ("or", "vs") for part in bare)


def _is_far(part: Part) -> bool:
    """Whether it is a distance in front of the camera."""
    token = part.noun.first("LENGTH") if part.sort == "length" else None
    return token is not None and token.unit in ("m", "ft")


def house_beside(parts: list[Part], hosts: frozenset[str]) -> None:
    """'MFT D mount lens': of two mounts told of one lens the one of modern bodies is that of the body."""
    if any(part.sort == "body" for part in parts):
        return
    for part in [part for part in parts if part.sort == "lens" and len(part.mounts) == _TWO]:
        of_body = [mount for mount in part.mounts if mount.ids[0] in hosts]
        if len(of_body) == 1 and not part.noun.pair:
            part.mounts = [mount for mount in part.mounts if mount not in of_body]
            part.is_host = False
            parts.insert(parts.index(part) + 1, Part("body", part.noun, mounts=of_body, is_host=True))
            return


def house_stranger(cast: Cast) -> None:
    """'50 mm f/1.8 M42, kestrel k30': beside a lens that is told, a name that nobody knows is its body's."""
    told = any(part.has_mount_or_kind or part.focal for part in cast.lenses)
    if told and not cast.bodies and cast.strange:
        part = cast.strange.pop()
        part.sort = "body"
        cast.bodies.append(part)


def house_before(parts: list[Part]) -> None:
    """'E or Z for FD': modern mounts listed before what they are to take are those of bodies."""
    last = parts[-1] if parts else None
    rest = [part for part in parts[:-1] if part.sort != "nothing"]
    if (
        last is None
        or last.sort not in ("mount", "lens")
        or last.is_host
        or not last.mounts
        or last.noun.role != "for"
        or len(rest) < 2
    ):
        return
    if all(part.sort == "mount" and part.is_host and not part.noun.role for part in rest):
        for part in rest:
            part.sort = "body"
        last.sort = "lens"


def _may_host(part: Part) -> bool:
    """Whether it is a mount alone, or one with only the numbers of a lens before it."""
    if part.sort == "mount":
        return True
    told = part.noun.head is None and not part.kinds and not part.traits and (part.focal or part.f_number)
    return part.sort == "lens" and bool(told) and bool(part.mounts)
