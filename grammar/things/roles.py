"""Who is who in a question: the lenses, the bodies they go on, the pieces between, and the formats spoken of."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.things import rows_of_mounts as rows
from grammar.things.cast import Cast, merge
from grammar.things.casting import OPTICAL, Part, glass_of, part_of
from grammar.things.each_to_its_own import set_apart
from grammar.things.gathering import complete
from grammar.things.heads import share_heads
from grammar.things.housing import house, house_before, house_beside, house_stranger
from grammar.things.marked_lens import is_marked_lens
from grammar.things.mount_roles import AND, USED, has_lens, is_focal, is_focal_alone, place_mount
from grammar.things.phrases import TOWARDS, Between, Noun, Phrase
from grammar.things.saying_of import with_said, without_denied
from grammar.things.splitting import split
from grammar.things.standins import stands_in
from grammar.words.tokens import Token
from grammar.words.written import TELECONVERTER

# what is asked where a factor above 1 is that of an extender, and where it is a magnification
_OF_GLASS: Final = frozenset(["put-in", "equiv", "exposure", "f-stop", "nd", "stabilisation", "lose", "shutter-speed"])
_MAGNIFIED: Final = frozenset(
    ["macro", "how-close", "how-big", "working-distance", "effective-f", "bellows-factor", "factor-word", "dof",
     "touch-subject", "dimensions"]
)  # fmt: skip
_EXPOSES: Final = frozenset(["SHUTTER", "ISO", "ND", "STOPS", "FPS"])  # values that tell of an exposure
_WITH_GLASS: Final = ("LIMIT", "with-glass")
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
    parts = rows.threads_of_bodies(rows.whole_pieces(parts))
    if "takes" in told:
        parts = rows.taking(parts)
    apart = set_apart(parts) if rows.HELD not in told else ()
    rows.route(parts)
    rows.rowed(parts)
    share_heads(parts)
    rows.hosts_in_row(parts)
    rows.told_of_lens(parts)
    parts = rows.paired(parts, told)
    house_before(parts)
    house_beside(parts, hosts)
    house(parts)
    between = [one.token for one in phrases if isinstance(one, Between)]
    lit = {"exposure"} if any(one.kind in _EXPOSES for one in between) else set()
    if any((one.kind, one.value) == _WITH_GLASS for one in between):
        told = told | {"put-in"}  # 'one with glass in it, 1.2x'
    cast = Cast(denied=denied, apart=apart, told=told | lit, hosts=hosts)
    for at, part in enumerate(parts):
        _place(cast, part, parts[at - 1] if at else None, parts)
    house_stranger(cast)
    complete(cast)
    cast.swapped = _is_swapped(parts)
    return cast


def _place(cast: Cast, part: Part, before: Part | None, parts: list[Part]) -> None:
    role = part.noun.role
    last_lens = cast.lenses[-1] if cast.lenses else None
    if part.sort == "piece":
        # 'through a ring' is no condition, as any lens goes on through one
        any_ring = part.piece == "adapter" and not (part.mounts or part.named)
        role = "" if any_ring and part.noun.join == "," and cast.without else role  # 'skip the reducer, ring length'
        used = role in USED and not (any_ring or part.is_at_hand(cast.told))
        (cast.without if role == "without" else cast.using if used else cast.pieces).append(part)
        if role in USED and part.factor is not None and part.piece in OPTICAL:
            cast.pieces.append(part)  # 'through a 0.7 reducer': its glass counts, whatever is asked
    elif part.sort == "factor":
        _place_factor(cast, part, before)
    elif part.sort == "body" and (role != "without" or part.has_mount):  # none of those 'besides cctv cams'
        _place_body(cast, part, before, last_lens)
    elif part.sort == "lens" and _is_that_body(part, before):
        part.sort = "nothing"  # 'my camera is one of those E ones'
    elif part.sort == "lens" and _is_put_on(part, before, last_lens):
        part.sort = "body"
        _place_body(cast, part, before, last_lens)
    elif part.sort == "lens":
        _place_lens(cast, part, before)
    elif part.sort == "frame":
        _place_frame(cast, part, before)
    elif part.sort == "mount":
        place_mount(cast, part, before, parts)
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


def _is_that_body(part: Part, before: Part | None) -> bool:
    """Whether it only stands for the body told right before it, which then has its mount."""
    if not (stands_in(part.noun.head) and part.mounts and (part.is_host or part.noun.told)) or part.focal or part.kinds:
        return False
    if before is None or before.sort != "body" or before.has_mount or part.noun.sentence != before.noun.sentence:
        return False
    before.mounts.extend(part.mounts)
    before.is_host = part.is_host
    return True


def _is_put_on(part: Part, before: Part | None, last_lens: Part | None) -> bool:
    """Whether what reads like a lens is a body: 'M42 on E 50 mm', 'for the R body and the E one'."""
    if not part.mounts or part.kinds or part.traits or part.named:
        return False
    if stands_in(part.noun.head):
        beside = before is not None and before.sort == "body" and before.has_mount and not part.noun.role
        return beside and part.is_host and part.focal is None and last_lens is not None and last_lens.has_mount
    open_ = last_lens is not None and last_lens.has_mount and not (last_lens.focal or last_lens.zoom)
    return open_ and part.noun.head is None and part.noun.role in TOWARDS and part.focal is not None


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
        and (part.noun.join in AND or part.noun.role == "on")
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
        or (not part.noun.role and is_marked_lens(token, cast.told))
    ):
        cast.lengths.append(part)
    elif piece.piece in ("bellows", "helicoid") and part.noun.role in ("", "to"):
        piece.thickness = (token.numbers[0], token.numbers[0])  # 'bellows pulled out to 100mm'
    elif part.noun.role == "" and (token.numbers[0] <= 40 or any(lens.focal for lens in cast.lenses)):
        piece.thickness = (token.numbers[0], token.numbers[0])
    else:
        cast.lengths.append(part)


def _place_body(cast: Cast, part: Part, before: Part | None, last_lens: Part | None) -> None:
    if part.noun.role == "from" and last_lens is None and before is not None and is_focal(before):
        before.sort, before.focal = "lens", before.noun.mods[0].numbers[0]  # 'a 25 mm off an 8 mm camera'
        cast.lengths.remove(before)
        cast.lenses.append(before)
        last_lens = before
    came_off = part.noun.role == "from" or has_lens(part, before, last_lens)
    if came_off and last_lens is not None and part.mounts and not last_lens.has_mount_or_kind:
        last_lens.mounts.extend(part.mounts)  # 'a 38 mm off a half frame SLR': what it came off tells its mount
        last_lens.kinds.extend(part.kinds if not last_lens.kinds else [])
        last_lens.by_camera = True
        return
    if came_off and last_lens is not None and not part.mounts:
        last_lens.traits.extend(f"from {trait}" for trait in part.traits)
        last_lens.kinds.extend(part.kinds if not last_lens.kinds else [])
        last_lens.formats.extend(part.formats)
        last_lens.by_camera = True
        last_lens.focal = last_lens.focal or part.focal  # 'off a 6x9 camera, 105 mm f/4.5': no camera has one
        last_lens.f_number = last_lens.f_number or part.f_number
        return
    if part.noun.role == "from" and last_lens is None and (part.traits or part.formats) and not part.mounts:
        # 'came off an old reflex': told of the lens spoken of before
        part.sort, part.by_camera = "lens", True
        part.traits = [f"from {trait}" for trait in part.traits]
        cast.lenses.append(part)
        return
    if part.focal is not None and last_lens is not None and last_lens.focal is None:
        last_lens.focal, part.focal = part.focal, None  # 'a K lens on my F body, 50 mm': no body has one
        last_lens.f_number, part.f_number = last_lens.f_number or part.f_number, None
    cast.bodies.append(part)


def _place_lens(cast: Cast, part: Part, before: Part | None) -> None:
    if stands_in(part.noun.head) and part.noun.role == "on" and part.formats and not part.mounts and not part.focal:
        part.sort = "frame"  # 'on a full frame one': what a lens is put on is no lens
        cast.frames.append(part)
        return
    if _is_one_more_body(part, before, cast):
        part.sort = "body"
        cast.bodies.append(part)
        return
    same = [lens for lens in cast.lenses if part.focal is not None and lens.focal == part.focal]
    if same and same[-1].has_mount_or_kind and is_focal_alone(part) and part.noun.listed != same[-1].noun.listed:
        return  # 'a 50mm f1.8 M42 lens ... at the 10 m mark on my 50'
    described = part.noun.role in ("from", "of", "in", "made-for") and cast.lenses and not (part.mounts or part.named)
    apposed = bool(cast.lenses) and before is cast.lenses[-1] and (_is_apposed(before, part) or _bears(before, part))
    if apposed or (described and before is cast.lenses[-1] and not (part.focal and before.focal)):
        merge(cast.lenses[-1], part)
    else:
        cast.lenses.append(part)


def _is_one_more_body(part: Part, before: Part | None, cast: Cast) -> bool:
    """'a K lens on my old F body and the E one': what stands in right behind a body that a lens goes on is a body."""
    bare = part.is_host and not (part.focal or part.f_number or part.kinds or part.named)
    behind = before is not None and before.sort == "body" and bool(before.mounts)
    return stands_in(part.noun.head) and bare and behind and any(one.has_mount for one in cast.lenses)


def _is_apposed(lens: Part, part: Part) -> bool:
    """'a 16 mm projector lens, 50mm f1.2': behind a comma stands the focal length of the one lens."""
    bare = part.noun.head is None and not (part.mounts or part.kinds or part.traits or part.named or part.count)
    open_ = bool(lens.kinds) and lens.focal is None and not lens.count and not lens.zoom
    return bare and open_ and part.focal is not None and part.noun.join == "," and not part.noun.role


def _bears(thread: Part, part: Part) -> bool:
    """'42 mm thread on a tele': the lens behind the thread is the one that has it."""
    of_mount = thread.was_mount and "thread" in thread.noun.text.casefold()
    return of_mount and part.noun.role == "on" and not part.has_mount


def _place_frame(cast: Cast, part: Part, before: Part | None) -> None:
    if part.formats and before is not None and before.sort == "lens" and part.noun.role in _MADE:
        before.formats.extend(part.formats)
    elif part.noun.role == "from" and cast.lenses:
        cast.lenses[-1].formats.extend(part.formats)
    elif part.formats and part.noun.role == "made-for" and before is not None and before.sort == "length":
        _made_for(before, part, cast)
    elif _is_of_body(part, before):
        assert before is not None
        before.formats.extend(part.formats)
        before.crop = before.crop or part.crop
        cast.frames.append(part)
    else:
        cast.frames.append(part)


def _is_of_body(part: Part, before: Part | None) -> bool:
    """'an E body, APS-C'; in 'MFT or APS-C' they are two."""
    beside = part.noun.role in ("", "with") and part.noun.join not in ("or", "vs")
    return before is not None and before.sort == "body" and beside and not before.formats


def _made_for(length: Part, frame: Part, cast: Cast) -> None:
    """'lens 8 mm made for 1/2 inch', 'a 10 mm made for 1/2 inch': only a lens is made for a format."""
    if not cast.lenses:
        token = length.noun.first("LENGTH", "FOCAL")
        length.sort, length.focal = "lens", token.numbers[0] if token else None
        cast.lengths.remove(length)
        cast.lenses.append(length)
    cast.lenses[-1].formats.extend(frame.formats)


def _is_swapped(parts: list[Part]) -> bool:
    """'an E-mount body on a C-mount lens': the body named first, then put on something that says it is a lens."""
    return any(
        one.noun.heads == "BODY" and one.mounts and one.noun.role not in TOWARDS
        and other.noun.heads == "LENS" and other.noun.role in TOWARDS and other.has_mount
        for one, other in pairwise(parts)
    )  # fmt: skip
