"""Whose a mount is that stands alone: of the lens or of the body, by its preposition and by what stands beside it."""

from __future__ import annotations

from typing import Final

from grammar.things.cast import Cast
from grammar.things.casting import Part

AND: Final = frozenset(["and", "+", "&"])
TOWARDS: Final = frozenset(["on", "to"])
USED: Final = frozenset(["via"])
_OF: Final = frozenset(["of", "in", "for", "with", "made-for"])


def place_mount(cast: Cast, part: Part, before: Part | None, parts: list[Part]) -> None:
    role, group = part.noun.role, part.noun.listed
    if _ends_ring(part, before) or _is_told_again(part, cast):
        part.sort = "nothing"
        return
    lens = cast.lenses[-1] if cast.lenses else None
    if role in USED and cast.lenses:
        cast.using.append(part)  # 'bodies L and X, through M': never one more of the list
        return
    screwed_on = "thread" in part.noun.text.casefold() and not part.is_host and (not role or part.noun.join)
    if screwed_on and lens is not None and not lens.has_mount:
        lens.mounts.extend(part.mounts)  # 'a 100 mm enlarger lens on EF, M39 thread'
        part.sort = "lens"
        return
    peer = before if before is not None and before.noun.listed == group and before.was_mount else None
    if peer is not None and part.is_host and role in ("for", *TOWARDS) and peer.noun.role != role:
        peer = None  # 'in C and in CS, for MFT'
    if peer is not None and part.is_host and not peer.is_host and role == "with" and part.noun.join == ",":
        peer, role = None, ""  # 'a lens with C mount, MFT?'
    if peer is not None and part.noun.join:
        # one of a list goes where the one before it went, unless two bare names can only be lens and body
        only_two = part.noun.join == "," and len(parts) == 2
        _as(part, "body" if peer.sort == "body" or only_two else "lens", cast)
        numbered = peer.noun.first("LENGTH", "FOCAL", "COMBO") or part.focal
        if part.sort == peer.sort == "lens" and lens is not None and lens.focal and not numbered:
            # '50 mm lenses in FD, OM and K': the first was told of that lens, the others are more of the kind
            part.focal, part.f_number, part.kinds = lens.focal, lens.f_number, list(lens.kinds)
        return
    beside = before is not None and before.noun.listed == group and before.sort == "lens" and before.has_mount
    counted = part.count is not None and before is not None and before.sort == "lens" and before.has_mount
    if not role and not part.is_host and (counted or (part.noun.join in AND and beside)):
        _as(part, "lens", cast)  # '3 MD lenses + 1 Exakta', 'two K lenses one OM'
        return
    near = before is not None and (not part.noun.apart or part.noun.told)
    if before is not None and near and role in ("in", "of") and is_focal(before):
        before.sort, before.focal = "lens", before.noun.mods[0].numbers[0]  # 'a 135 mm in M42'
        before.mounts.extend(part.mounts)
        cast.lengths.remove(before)
        cast.lenses.append(before)
        return
    if role in ("", "with") and part.noun.join and _told_of_bodies(part, parts):
        _as(part, "body", cast)
        return
    bare_body = before is not None and before.sort == "body" and before.is_bare
    if bare_body and role == "for" and not part.is_host:
        _as(part, "lens", cast)  # 'a body for Exakta': that is what it is to take
        return
    if not role and part.is_host and before is not None and before.sort == "lens" and before.implied and near:
        _as(part, "body", cast)  # 'a 100 enlarger lens, mft': its kind has a thread of its own
        return
    unmounted = near and before is not None and before.sort in ("lens", "body") and not before.has_mount
    if lens is not None and lens.by_camera and part.is_host and not role:
        _as(part, "body", cast)  # 'lens off a half frame slr, E mount': where it is to go
        return
    if unmounted and before is not None and (role in _OF or (not role and before.noun.head is not None)):
        before.mounts.extend(part.mounts)
        before.traits.extend(part.traits)
        before.is_host = before.is_host or part.is_host
        part.sort = before.sort
        return
    if part.noun.heads == "MOUNTWORD" and lens is not None and not lens.has_mount and role not in TOWARDS:
        lens.mounts.extend(part.mounts)
        return
    loose = lens is not None and not lens.has_mount and not lens.implied and not lens.strange
    if role == "" and loose and lens is not None and cast.pieces and not part.noun.join:
        lens.mounts.extend(part.mounts)  # 'lens stuck on the adapter, it is FD'
        lens.traits.extend(part.traits)
        part.sort = "lens"
        return
    if role == "added" and part.is_host and cast.bodies and cast.bodies[-1] is before:
        _as(part, "body", cast)  # 'I keep the EF dslr and add Z'
    elif role in TOWARDS:
        screwed = part.noun.head is not None and part.noun.head.text.casefold().startswith("thread")
        _as(part, "lens" if screwed and lens is None else "body", cast)
    elif role in USED or (role == "behind"):
        cast.using.append(part)
    elif role == "without":
        cast.without.append(part)
    elif role == "from" or lens is None or (role == "for" and not lens.mounts and not lens.named):
        described = before is not None and (before.mounts or (lens is not None and not lens.is_bare))
        after_piece = before is not None and before.sort == "piece" and role == "for" and described
        _as(part, "body" if after_piece else "lens", cast)
    elif not role and not part.is_host and any(one.sort == "body" and one.has_mount for one in parts):
        _as(part, "lens", cast)  # 'MD lenses, an Exakta, and an L body'
    elif role == "in" and lens is not None:
        _as(part, "lens", cast)  # 'the same 8 mm lens is sold in C and in CS'
        part.focal, part.f_number = lens.focal, lens.f_number
    elif not cast.bodies or role == "for" or _told_of_bodies(part, parts):
        _as(part, "body", cast)
    else:
        _as(part, "lens" if role == "with" else "body", cast)


def _ends_ring(part: Part, before: Part | None) -> bool:
    """'LTM-to-dslr rings (EF)': a mount in brackets behind a ring that takes another is what the ring ends on."""
    if before is None or before.sort != "piece" or len(before.mounts) != 1 or part.noun.role:
        return False
    if not part.noun.aside or before.mounts[0].ids[0] == part.mounts[0].ids[0]:
        return False
    before.mounts.extend(part.mounts)
    return True


def _is_told_again(part: Part, cast: Cast) -> bool:
    """'off a half frame SLR (the Pen F bayonet)': in brackets only the mount that the lens has already."""
    told = {mount.ids[0] for lens in cast.lenses for mount in lens.mounts}
    return part.noun.aside and part.mounts[0].ids[0] in told


def _told_of_bodies(part: Part, parts: list[Part]) -> bool:
    """'the bodies are an RF and a Z': what follows several bodies of which nothing else is told, in their sentence."""
    heads = (one for one in parts if one.noun.heads == "BODY" and not one.noun.all("MOUNT") and one.is_several)
    return any(one.noun.sentence == part.noun.sentence and one.noun.column < part.noun.column for one in heads)


def is_focal(part: Part) -> bool:
    token = part.noun.mods[0] if part.sort == "length" and not part.noun.role and len(part.noun.mods) == 1 else None
    return token is not None and token.kind == "LENGTH" and token.unit == "mm" and token.numbers[0] >= 8


def _as(part: Part, sort: str, cast: Cast) -> None:
    part.sort = sort
    (cast.bodies if sort == "body" else cast.lenses).append(part)
