"""Who is who in a question: the lenses, the bodies they go on, the pieces between, and the formats spoken of."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.cast import Cast, merge
from grammar.casting import OPTICAL, Part, glass_of, part_of, split
from grammar.gathering import complete
from grammar.heads import share_heads
from grammar.housing import house, house_before, house_stranger
from grammar.phrases import Between, Noun, Phrase
from grammar.rows_of_mounts import paired, route, takers, taking, told_of_lens, whole_pieces
from grammar.saying_of import with_said, without_denied
from grammar.standins import stands_in
from grammar.tokens import Token
from grammar.written import TELECONVERTER

_AND: Final = frozenset(["and", "+", "&"])
_TOWARDS: Final = frozenset(["on", "to"])
_USED: Final = frozenset(["via"])
_OF: Final = frozenset(["of", "in", "for", "with", "made-for"])
# what is asked where a factor above 1 is that of an extender, and where it is a magnification
_OF_GLASS: Final = frozenset(["put-in", "equiv", "exposure", "f-stop", "nd", "stabilisation", "lose", "shutter-speed"])
_MAGNIFIED: Final = frozenset(
    ["macro", "how-close", "how-big", "working-distance", "effective-f", "bellows-factor", "factor-word", "dof",
     "touch-subject", "dimensions"]
)  # fmt: skip
_EXPOSES: Final = frozenset(["SHUTTER", "ISO", "ND", "STOPS", "FPS"])  # values that tell of an exposure
_BESIDE: Final = frozenset(["with", "without", "via", "behind", "added"])  # where glass stands, or is put
_EXTENDS: Final = (1.2, 3.0)  # factors that extenders have
_MADE: Final = frozenset(["made-for", "for", "from"])


def cast_of(phrases: list[Phrase], hosts: frozenset[str] = frozenset(), told: frozenset[str] = frozenset()) -> Cast:
    """Everybody in their role, by the words beside them and by the order they come in.

    `hosts`: mounts that, named alone, are those of a body. `told`: what the cues of the line tell.
    """
    parts = [part_of(noun) for phrase in phrases if isinstance(phrase, Noun) for noun in split(phrase)]
    for part in parts:
        part.is_host = bool(part.mounts) and part.mounts[0].ids[0] in hosts
    parts, denied = without_denied(with_said(parts))
    parts = whole_pieces(parts)
    if "takes" in told:
        parts = taking(parts)
        takers(parts)
    route(parts)
    share_heads(parts)
    told_of_lens(parts)
    parts = paired(parts, told)
    house_before(parts)
    house(parts)
    lit = any(isinstance(one, Between) and one.token.kind in _EXPOSES for one in phrases)
    cast = Cast(denied=denied, told=told | {"exposure"} if lit else told)
    for at, part in enumerate(parts):
        before = parts[at - 1] if at else None
        _place(cast, part, before, parts)
    house_stranger(cast)
    complete(cast)
    cast.swapped = _is_swapped(parts)
    return cast


def _place(cast: Cast, part: Part, before: Part | None, parts: list[Part]) -> None:
    role = part.noun.role
    last_lens = cast.lenses[-1] if cast.lenses else None
    if part.sort == "piece":
        (cast.without if role == "without" else cast.using if role in _USED else cast.pieces).append(part)
        if role in _USED and part.factor is not None and part.piece in OPTICAL:
            cast.pieces.append(part)  # 'through a 0.7 reducer': its glass counts, whatever is asked
    elif part.sort == "factor":
        _place_factor(cast, part, before)
    elif part.sort == "body":
        _place_body(cast, part, before, last_lens)
    elif part.sort == "lens":
        _place_lens(cast, part, before)
    elif part.sort == "frame":
        _place_frame(cast, part, before)
    elif part.sort == "mount":
        _place_mount(cast, part, before, parts)
    elif part.sort == "trait":
        if last_lens is not None:
            last_lens.traits.extend(part.traits)
        else:
            part.sort = "lens"
            cast.lenses.append(part)
    elif part.sort == "length":
        _place_length(cast, part, before)
    elif part.sort == "strange":
        cast.strange.append(part)


def _place_factor(cast: Cast, part: Part, before: Part | None) -> None:
    """A bare factor is that of a reducer or of an extender: '.71', 'the 2x'."""
    token = part.noun.first("TIMES")
    factor = token.numbers[0] if token else 1.0
    last = cast.pieces[-1] if cast.pieces else None
    if last is not None and last.piece in OPTICAL and last.factor is None:
        last.factor = factor
        return
    glass = part.noun.role in _BESIDE or 0.4 <= factor <= 0.95
    if glass or (token is not None and _is_extender(cast, part, token, before)):
        part.sort, part.piece, part.factor = "piece", glass_of(factor), factor
        (cast.without if part.noun.role == "without" else cast.pieces).append(part)
    else:
        cast.lengths.append(part)


def _is_extender(cast: Cast, part: Part, token: Token, before: Part | None) -> bool:
    """'300/4 + 1.4x', 'flip in the 2x, what do I lose': not a magnification, where light or view is asked about."""
    if token.unit == TELECONVERTER:
        return True
    if not _EXTENDS[0] <= token.numbers[0] <= _EXTENDS[1] or cast.told & _MAGNIFIED or part.noun.role == "at":
        return False
    if any(one.piece in OPTICAL for one in (*cast.without, *cast.pieces)):
        return True  # 'without the 2x converter, 1.4x instead'
    added = (
        before is not None
        and before.sort in ("lens", "length", "piece")
        and (part.noun.join in _AND or part.noun.role == "on")
    )
    return added or bool(cast.told & _OF_GLASS)


def _place_length(cast: Cast, part: Part, before: Part | None) -> None:
    """'my ring is 26.0': a short length in the same sentence as a piece without one is the piece's."""
    token = part.noun.first("LENGTH")
    turned = bool(cast.lenses) and "reversed" in (*cast.lenses[-1].traits, *cast.lenses[-1].kinds)
    if turned and token is not None and part.noun.role in ("on", "behind") and token.unit == "mm":
        part.sort, part.focal = "lens", token.numbers[0]  # 'a 25 mm reversed on a 50 mm'
        cast.lenses.append(part)
        return
    piece = before if before is not None and before.sort == "piece" and before.thickness is None else None
    if (
        token is None
        or piece is None
        or part.noun.measured
        or token.unit != "mm"
        or piece.noun.sentence != part.noun.sentence
    ):
        cast.lengths.append(part)
    elif piece.piece in ("bellows", "helicoid") and part.noun.role in ("", "to"):
        piece.thickness = (token.numbers[0], token.numbers[0])  # 'bellows pulled out to 100mm'
    elif part.noun.role == "" and (token.numbers[0] <= 40 or any(lens.focal for lens in cast.lenses)):
        piece.thickness = (token.numbers[0], token.numbers[0])
    else:
        cast.lengths.append(part)


def _place_body(cast: Cast, part: Part, before: Part | None, last_lens: Part | None) -> None:
    if part.noun.role == "from" and last_lens is None and before is not None and _is_focal(before):
        before.sort, before.focal = "lens", before.noun.mods[0].numbers[0]  # 'a 25 mm off an 8 mm camera'
        cast.lengths.remove(before)
        cast.lenses.append(before)
        last_lens = before
    if part.noun.role == "from" and last_lens is not None and not part.mounts:
        last_lens.traits.extend(f"from {trait}" for trait in part.traits)
        last_lens.formats.extend(part.formats)
        last_lens.by_camera = True
        return
    if part.noun.role == "from" and last_lens is None and (part.traits or part.formats) and not part.mounts:
        # 'came off an old reflex': told of the lens spoken of before
        part.sort, part.by_camera = "lens", True
        part.traits = [f"from {trait}" for trait in part.traits]
        cast.lenses.append(part)
        return
    if part.focal is not None and last_lens is not None and last_lens.focal is None:
        last_lens.focal, part.focal = part.focal, None  # 'a K lens on my F body, 50 mm': no body has one
    cast.bodies.append(part)


def _place_lens(cast: Cast, part: Part, before: Part | None) -> None:
    if stands_in(part.noun.head) and part.noun.role == "on" and part.formats and not part.mounts and not part.focal:
        cast.frames.append(part)  # 'on a full frame one': what a lens is put on is no lens
        return
    same = [lens for lens in cast.lenses if part.focal is not None and lens.focal == part.focal]
    if same and same[-1].has_mount_or_kind and _is_focal_alone(part) and part.noun.listed != same[-1].noun.listed:
        return  # 'a 50mm f1.8 M42 lens ... at the 10 m mark on my 50'
    told = part.mounts or part.named  # a lens by itself, no more said of the one before
    described = part.noun.role in ("from", "of", "in", "made-for") and cast.lenses and not told
    apposed = bool(cast.lenses) and before is cast.lenses[-1] and _is_apposed(before, part)
    if apposed or (described and before is cast.lenses[-1]):
        merge(cast.lenses[-1], part)
    else:
        cast.lenses.append(part)


def _is_apposed(lens: Part, part: Part) -> bool:
    """'a 16 mm projector lens, 50mm f1.2': behind a comma stands the focal length of the one lens."""
    bare = part.noun.head is None and not (part.mounts or part.kinds or part.traits or part.named or part.count)
    open_ = bool(lens.kinds) and lens.focal is None and not lens.count and not lens.zoom
    return bare and open_ and part.focal is not None and part.noun.join == "," and not part.noun.role


def _is_focal_alone(part: Part) -> bool:
    rest = (part.mounts, part.kinds, part.traits, part.formats, part.zoom, part.f_number, part.named, part.strange)
    return not any(rest) and not part.count


def _place_frame(cast: Cast, part: Part, before: Part | None) -> None:
    if part.formats and before is not None and before.sort == "lens" and part.noun.role in _MADE:
        before.formats.extend(part.formats)
    elif part.noun.role == "from" and cast.lenses:
        cast.lenses[-1].formats.extend(part.formats)
    elif part.formats and part.noun.role == "made-for" and before is not None and before.sort == "length":
        _made_for(before, part, cast)
    elif before is not None and before.sort == "body" and part.noun.role in ("", "with") and not before.formats:
        before.formats.extend(part.formats)
        before.crop = before.crop or part.crop
        cast.frames.append(part)
    else:
        cast.frames.append(part)


def _made_for(length: Part, frame: Part, cast: Cast) -> None:
    """'lens 8 mm made for 1/2 inch', 'a 10 mm made for 1/2 inch': only a lens is made for a format."""
    if not cast.lenses:
        token = length.noun.first("LENGTH", "FOCAL")
        length.sort, length.focal = "lens", token.numbers[0] if token else None
        cast.lengths.remove(length)
        cast.lenses.append(length)
    cast.lenses[-1].formats.extend(frame.formats)


def _place_mount(cast: Cast, part: Part, before: Part | None, parts: list[Part]) -> None:
    role, group = part.noun.role, part.noun.listed
    lens = cast.lenses[-1] if cast.lenses else None
    screwed_on = "thread" in part.noun.text.casefold() and not part.is_host and (not role or part.noun.join)
    if screwed_on and lens is not None and not lens.has_mount:
        lens.mounts.extend(part.mounts)  # 'a 100 mm enlarger lens on EF, M39 thread'
        part.sort = "lens"
        return
    peer = before if before is not None and before.noun.listed == group and before.was_mount else None
    if peer is not None and part.is_host and role in ("for", *_TOWARDS) and peer.noun.role != role:
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
    if part.noun.join in _AND and not role and beside and not part.is_host:
        _as(part, "lens", cast)  # '3 MD lenses + 1 Exakta'
        return
    near = before is not None and (not part.noun.apart or part.noun.told)
    if before is not None and near and role in ("in", "of") and _is_focal(before):
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
    unmounted = near and before is not None and before.sort in ("lens", "body") and not before.has_mount
    if lens is not None and lens.by_camera and part.is_host and not role:
        _as(part, "body", cast)  # 'lens off a half frame slr, E mount': where it is to go
        return
    if unmounted and before is not None and before.implied and part.is_host and not role:
        _as(part, "body", cast)  # 'an enlarger lens, E mount': no such lens is made for it
        return
    if unmounted and before is not None and (role in _OF or (not role and before.noun.head is not None)):
        before.mounts.extend(part.mounts)
        before.traits.extend(part.traits)
        before.is_host = before.is_host or part.is_host
        part.sort = before.sort
        return
    if part.noun.heads == "MOUNTWORD" and lens is not None and not lens.has_mount and role not in _TOWARDS:
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
    elif role in _TOWARDS:
        screwed = part.noun.head is not None and part.noun.head.text.casefold().startswith("thread")
        _as(part, "lens" if screwed and lens is None else "body", cast)
    elif role in _USED or (role == "behind"):
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


def _told_of_bodies(part: Part, parts: list[Part]) -> bool:
    """'the bodies are an RF and a Z': what follows several bodies of which nothing else is told, in their sentence."""
    heads = (one for one in parts if one.noun.heads == "BODY" and not one.noun.all("MOUNT") and one.is_several)
    return any(one.noun.sentence == part.noun.sentence and one.noun.column < part.noun.column for one in heads)


def _is_focal(part: Part) -> bool:
    token = part.noun.mods[0] if part.sort == "length" and not part.noun.role and len(part.noun.mods) == 1 else None
    return token is not None and token.kind == "LENGTH" and token.unit == "mm" and token.numbers[0] >= 8


def _as(part: Part, sort: str, cast: Cast) -> None:
    part.sort = sort
    (cast.bodies if sort == "body" else cast.lenses).append(part)


def _is_swapped(parts: list[Part]) -> bool:
    """'an E-mount body on a C-mount lens': the body named first, then put on something that says it is a lens."""
    for one, other in pairwise(parts):
        put = one.noun.heads == "BODY" and one.mounts and one.noun.role not in _TOWARDS
        if put and other.noun.heads == "LENS" and other.noun.role in _TOWARDS and other.has_mount:
            return True
    return False
