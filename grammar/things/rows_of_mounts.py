"""Mounts in a row: two that are those of a ring, those that a chain leads through, a camera that tells of a lens."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.things.casting import Part
from grammar.things.phrases import TOWARDS

HELD: Final = "held"  # what a cue tells where a thing is one's own
_FILM_CAMERA: Final = "slr"
_AND_A: Final = "with"  # the role of what stands behind 'and a'
_LISTING: Final = frozenset([",", "and", "+"])


def paired(parts: list[Part], told: frozenset[str]) -> list[Part]:
    """'an M39 lens, I only have LTM to E': where a lens is named already, two mounts joined by 'to' are a ring."""
    out: list[Part] = []
    parts = linked(parts)
    for at, part in enumerate(parts):
        last = out[-1] if out else None
        joined = (
            last is not None and last.sort == part.sort == "mount" and part.noun.role == "to" and not part.noun.apart
        )
        if last is None or not joined or last.noun.role:
            out.append(part)
            continue
        before = out[-2] if len(out) > 1 else None
        if before is not None and _goes_on_from(before, last):
            last.sort, last.piece = "piece", "adapter"  # 'an OM to EF ring plus EF to X'
            last.mounts.extend(part.mounts)
            continue
        if before is not None and _tells_of(before, last):
            before.mounts.extend([*last.mounts, *part.mounts])  # 'my only adapter is F to E'
            out.pop()
            continue
        later = parts[at + 1 :]
        kept = HELD in told and _are_bare(last, part) and any(one.mounts for one in later)
        kept = kept and not any(one.sort == "piece" and len(one.mounts) > 1 for one in later)  # that one is owned
        again = any(one.mounts and one.mounts[0].ids[0] == last.mounts[0].ids[0] for one in out[:-1])
        if not kept and (last.noun.join or again or not any(one.has_mount for one in out[:-1])):
            out.append(part)
            continue
        last.sort, last.piece = "piece", "adapter"
        last.mounts.extend(part.mounts)
    return out


def _are_bare(*parts: Part) -> bool:
    """Whether each is a mount and nothing else: 'I already own FD to M, now I have a Z camera'."""
    return all(one.noun.head is None and not (one.focal or one.kinds or one.f_number or one.formats) for one in parts)


def linked(parts: list[Part]) -> list[Part]:
    """'M42 to EF then EF to E': where two pairs of mounts meet in one of them, each pair is a ring."""
    for at in range(len(parts) - 3):
        four = parts[at : at + 4]
        bare = all(one.sort == "mount" and one.noun.head is None and not one.focal for one in four)
        towards = [one.noun.role for one in four[1::2]] == ["to", "to"] and not four[0].noun.role
        if bare and towards and four[1].mounts[0].ids[0] == four[2].mounts[0].ids[0] and four[2].noun.join:
            for front, rear in (four[:2], four[2:]):
                front.sort, front.piece, front.noun.role = "piece", "adapter", ""
                front.mounts.extend(rear.mounts)
            return [*parts[:at], four[0], four[2], *parts[at + 4 :]]
    return parts


def _goes_on_from(piece: Part, mount: Part) -> bool:
    """Whether a mount, added behind a ring, is the one that the ring ends on."""
    joins = piece.sort == "piece" and len(piece.mounts) > 1 and mount.noun.join in ("and", "+", "&", ",")
    return joins and piece.mounts[-1].ids[0] == mount.mounts[0].ids[0]


def taking(parts: list[Part]) -> list[Part]:
    """What is said to take something: a ring its lenses, bodies theirs."""
    parts = _with_ring_taking(parts)
    _takers(parts)
    return parts


def _with_ring_taking(parts: list[Part]) -> list[Part]:
    """'the adapter takes F lenses and goes on MFT; mine is a K 28': beside another lens it tells of the ring."""
    for at in range(len(parts) - 2):
        piece, front, rear = parts[at : at + 3]
        told = front.sort in ("lens", "mount") and front.mounts and not front.focal and not front.noun.role
        leads = rear.sort in ("mount", "body") and rear.mounts and rear.noun.role in TOWARDS
        together = piece.noun.sentence == front.noun.sentence == rear.noun.sentence
        other = any(one.focal and one.mounts for one in parts if one is not front and one.sort in ("lens", "mount"))
        if piece.sort == "piece" and not piece.mounts and told and leads and together and other:
            piece.mounts = [front.mounts[0], rear.mounts[0]]
            return [one for one in parts if one is not front and one is not rear]
    return parts


def _takers(parts: list[Part]) -> None:
    """'which of E, X and MFT takes a C mount': the several before it are bodies, what they take is the lens.

    'which bodies take an Exakta and a PL': behind bodies that are asked for there are lenses alone.
    """
    named = [part for part in parts if part.mounts and part.sort in ("mount", "lens")]
    asked_for = bool(parts) and parts[0].sort == "body" and not parts[0].has_mount and len(named) == len(parts) - 1
    if asked_for and all(not part.is_host and part.noun.role in ("", _AND_A) for part in named):
        for part in named:
            part.sort = "lens"
        return
    hosts = [part for part in parts if part.sort in ("mount", "lens") and part.is_host and not part.focal]
    taken = [part for part in parts if part.mounts and part not in hosts and part.sort in ("mount", "lens")]
    several = len(hosts) > 1 and len({part.noun.listed for part in hosts}) == 1
    if several and len(taken) == 1 and taken[0].noun.column > hosts[-1].noun.column:
        for part in hosts:
            part.sort = "body"
        taken[0].sort = "lens"


def threads_of_bodies(parts: list[Part]) -> list[Part]:
    """'a camera with CS thread and a 16 mm C lens': what a camera is told with, before a lens told whole, it has."""
    for at in range(len(parts) - 2):
        body, mount, lens = parts[at : at + 3]
        bare = body.sort == "body" and not body.has_mount and body.noun.head is not None and not body.noun.role
        alone = mount.sort == "mount" and mount.noun.role == _AND_A and mount.noun.head is None and not mount.focal
        if bare and alone and lens.mounts and lens.focal and lens.noun.join:
            body.mounts, body.is_host = list(mount.mounts), mount.is_host
            return [*parts[: at + 1], *parts[at + 2 :]]
    return parts


def hosts_in_row(parts: list[Part]) -> None:
    """'a 13 mm D, got a Q and an MFT': beside one lens that is told whole, mounts of bodies in a row are bodies."""
    _bodies_in_row(parts)
    if any(part.sort == "body" for part in parts):
        return
    bare = [part for part in parts if part.sort == "mount" and part.noun.head is None and not part.focal]
    rows = [one for one in bare if one.is_host and one.noun.role in ("", "on", _AND_A)]
    others = [part for part in parts if part.sort in ("lens", "mount", "length") and part not in rows]
    lens = [part for part in others if part.mounts]
    told = any(one.focal or one.kinds or one.sort == "length" for one in others)
    listed = len(rows) > 1 and parts[parts.index(rows[0]) :][: len(rows)] == rows
    listed = listed and all(one.noun.join or one.noun.role == _AND_A for one in rows[1:])
    if listed and len(lens) == 1 and told and not lens[0].noun.role:
        for part in rows:
            part.sort = "body"


def _bodies_in_row(parts: list[Part]) -> None:
    """'class has EF, MFT and E cameras, one M42 lens': what a list ends on it is a list of, where the lens is told."""
    ends = [at for at, part in enumerate(parts) if part.sort == "body" and part.mounts and part.is_several]
    for at in ends:
        first = at
        while first and _is_bare_in(parts[first - 1], parts[at]):
            first -= 1
        row = parts[first:at]
        rest = [part for part in parts if part not in row and part.sort in ("lens", "mount") and part.mounts]
        if row and parts[at].noun.join and len(rest) == 1 and all(one.noun.join for one in row[1:]):
            for part in row:
                part.sort = "body"


def _is_bare_in(part: Part, last: Part) -> bool:
    """Whether a part is a mount and nothing else, of the list that another ends."""
    alone = part.sort == "mount" and part.noun.head is None
    bare = (alone or part.sort == "body") and part.mounts and not (part.focal or part.kinds or part.noun.role)
    return bool(bare) and part.noun.listed == last.noun.listed


def _tells_of(piece: Part, mount: Part) -> bool:
    """Whether a mount tells what the piece before it joins: 'the adapter I have is F ...'."""
    if piece.sort != "piece" or piece.mounts or piece.noun.role == "without":
        return False
    alone = bool(piece.count == 1) and not piece.is_several  # 'one adapter only, M42 to EF'
    return mount.noun.sentence == piece.noun.sentence and (mount.noun.told or alone or not mount.noun.apart)


def whole_pieces(parts: list[Part]) -> list[Part]:
    """'a smart EF-MFT': the two mounts right behind a piece without any are that piece's."""
    out: list[Part] = []
    for part in parts:
        last = out[-1] if out else None
        bare = part.sort == "piece" and part.piece == "adapter" and len(part.mounts) > 1 and part.noun.head is None
        if (
            bare
            and last is not None
            and last.sort == "piece"
            and not last.mounts
            and last.thickness is None
            and not (part.noun.role or part.noun.join)
            and part.noun.column - (last.noun.column + len(last.noun.text)) <= 1
        ):
            last.mounts.extend(part.mounts)
        else:
            out.append(part)
    return out


def route(parts: list[Part]) -> None:
    """'LTM 50 to M to E': of mounts that each lead to the next, only the last is the body's."""
    for at in range(1, len(parts) - 1):
        part, after = parts[at], parts[at + 1]
        leads = part.sort == "mount" and part.noun.role == "to" and part.noun.head is None
        if leads and after.noun.role == "to" and after.mounts and parts[at - 1].has_mount and not after.noun.join:
            part.noun.role = "via"


def rowed(parts: list[Part]) -> None:
    """'someone with M42 K and OM on RF': where a list ends in 'and' and goes on a body, all of it is listed."""
    for at in range(len(parts) - 3):
        first, part, last, goal = parts[at : at + 4]
        bare = all(one.sort == "mount" and one.noun.head is None for one in (first, part, last))
        listed = first.noun.listed == part.noun.listed == last.noun.listed and last.noun.join in ("and", "+", ",")
        if bare and listed and not part.noun.join and goal.mounts and goal.noun.role in TOWARDS:
            part.noun.join = "and"


def told_of_lens(parts: list[Part]) -> None:
    """'one R (the SLR one)', listed among lenses that go on a body: the kind of camera tells of the lens."""
    hosted = any(part.noun.role in TOWARDS and (part.sort == "body" or part.is_host) for part in parts)
    for part, before in zip(parts[1:], parts, strict=False):
        other = [one for one in part.mounts if one.ids[0] not in {mine.ids[0] for mine in before.mounts}]
        if part.noun.aside and part.sort in ("body", "mount") and not other and before.sort in ("lens", "mount"):
            # 'a Pen F lens (the half frame SLR)': what stands in brackets tells of the thing before
            part.sort = "nothing"
            before.formats.extend(part.formats)
    for part in parts:
        beside = any(one.sort == "lens" for one in parts if one is not part)
        kind = part.noun.head.value if part.noun.heads == "BODY" and part.noun.head is not None else ""
        if hosted and beside and kind == "slr" and part.sort == "body" and part.mounts and not part.noun.role:
            part.sort = "lens"
    _listed_with_lenses(parts)


def _listed_with_lenses(parts: list[Part]) -> None:
    """'rings for an L body: R slr, M and K lenses': a film camera that opens a list of lenses is one of them."""
    for part, after in pairwise(parts):
        filmed = part.sort == "body" and bool(part.mounts) and not part.is_host and not part.noun.role
        kind = part.noun.text.casefold().split()[-1:] == [_FILM_CAMERA]
        listed = after.sort == "lens" and after.noun.join in _LISTING and after.noun.listed == part.noun.listed
        apart = any(one.sort == "body" and one.is_host and one.noun.listed != part.noun.listed for one in parts)
        if filmed and kind and listed and apart and not part.noun.join:
            part.sort = "lens"
