"""What the rings named tell of the lens and the body: an adapter's own mounts are theirs where they were not told."""

from __future__ import annotations

from typing import Final

from grammar.questions import RING
from grammar.things.beside_what_holds import BOTH_ENDS
from grammar.things.cast import Cast
from grammar.things.casting import Part
from grammar.things.phrases import TOWARDS, Noun
from grammar.words.tokens import Token

_ENDS: Final = 2  # mounts of a ring
THROUGH: Final = frozenset(["helicoid", "extension-tube"])  # the same mount before and behind


def told_by_pieces(cast: Cast) -> None:
    """An adapter's own mounts are those of the lens and the body, where these were not named."""
    pieces = [part for part in (*cast.pieces, *cast.using) if part.mounts]
    if BOTH_ENDS in cast.told:  # 'a bellows, M42 on both ends' tells nothing of the lens and the body
        pieces = [part for part in pieces if len({mount.ids[0] for mount in part.mounts}) > 1]
    if not pieces:
        return
    if _each_for_a_lens(cast, pieces) or _each_for_a_body(cast, pieces) or _to_each_body(cast, pieces):
        return
    _lens_of_each(cast, pieces)
    _turn_round(cast, pieces)
    _never_before_the_ring(cast, pieces)
    _for_another_lens(cast, pieces)
    _joined_by_another(cast, pieces)
    first, last = pieces[0], pieces[-1]
    lens, body = (cast.lenses[0] if cast.lenses else None), (cast.bodies[0] if cast.bodies else None)
    lens_open = lens is None or not lens.has_mount
    body_open = body is None or not (body.has_mount or body.crop)
    if len(pieces) > 1 and len(last.mounts) == 1 and last.is_host and body_open and not lens_open:
        _give(cast.bodies, body, last.mounts[0], last, "body")  # 'an M39 to M42 ring, a helicoid and the thin E ring'
        return
    if len(pieces) == 1 and len(first.mounts) == 1:
        goes_on = first.is_host and lens is not None and (_is_of_another(cast, lens) or _is_of_body(first, lens))
        onto = goes_on or (first.noun.role in TOWARDS and lens is not None)
        other = lens is not None and bool(lens.mounts) and lens.mounts[0].ids != first.mounts[0].ids
        if body_open and (onto or (other and first.piece not in THROUGH)):
            _give(cast.bodies, body, first.mounts[0], first, "body")
        elif lens_open and not onto and not (lens is not None and lens.implied and first.piece in THROUGH):
            _give(cast.lenses, lens, first.mounts[0], first, "lens")
        return
    front, rear = _ends(pieces, cast.hosts)
    own = lens is not None and bool(lens.implied) and front.piece in THROUGH  # its kind tells its thread
    if lens_open and not own and not _is_stepped_up_to(cast, front):
        _give(cast.lenses, lens, front.mounts[0], front, "lens")
    # 'an M42 helicoid plus the thin MFT ring' behind a lens told by its focal length
    hosted = rear.is_host and rear is not front and len(cast.pieces) > 1
    if body_open and (len(rear.mounts) > 1 or hosted):
        _give(cast.bodies, body, rear.mounts[-1], rear, "body")


def _is_stepped_up_to(cast: Cast, ring: Part) -> bool:
    """'an M42-E ring and a 39-42 one': a ring between two widths leads to this one, from a lens of the other width."""
    widths = {f"{part.steps[1]:g}" for part in cast.pieces if part.steps is not None}
    return any(width in ring.mounts[0].ids[0] for width in widths)


def _is_of_another(cast: Cast, lens: Part) -> bool:
    """'a zoom off a 16 mm reflex, E-mount adapter', 'an enlarger lens, E plate + helicoid': the ring is the body's."""
    drawn = any(part.piece in THROUGH for part in cast.pieces)
    return lens.by_camera or (bool(lens.implied or lens.kinds) and (drawn or lens.focal is not None))


def _is_of_body(ring: Part, lens: Part) -> bool:
    """'135 manual lens mft plain ring', '58 mm lens, E ring': a ring that ends on a modern body joins an old lens."""
    return ring.piece == RING and lens.focal is not None and ring.thickness is None


def _each_for_a_lens(cast: Cast, pieces: list[Part]) -> bool:
    """'my NX needs K, F and MD rings': several rings told by one mount each are those of as many lenses."""
    named = any(part.has_mount_or_kind for part in cast.lenses)
    hosts = {part.mounts[0].ids[0] for part in cast.bodies if part.mounts}
    fronts = {part.mounts[0].ids[0] for part in pieces}
    if not _are_a_row(pieces) or named or len(fronts) < 2 or not hosts or fronts & hosts:
        return False
    cast.lenses = [Part("lens", part.noun, mounts=list(part.mounts), by_piece=True) for part in pieces]
    cast.pieces = [part for part in cast.pieces if part not in pieces]
    return True


def _each_for_a_body(cast: Cast, pieces: list[Part]) -> bool:
    """'PL lenses: E, L, m43 rings': beside a lens several rings told by the mount of a body each lead to as many."""
    told = [part.mounts[0].ids[0] for part in cast.lenses if part.mounts]
    rears = {part.mounts[0].ids[0] for part in pieces}
    hosted = all(part.is_host and part.thickness is None for part in pieces)
    if not _are_a_row(pieces) or not hosted or len(rears) < 2 or not told or rears & {*told}:
        return False
    if any(part.mounts for part in cast.bodies):
        return False
    cast.bodies = [Part("body", part.noun, mounts=list(part.mounts)) for part in pieces]
    cast.pieces = [part for part in cast.pieces if part not in pieces]
    return True


def _to_each_body(cast: Cast, pieces: list[Part]) -> bool:
    """'how thick is a T2 ring to L, and to MFT', 'the rings P6 to Z and P6 to G': where each leads is one more body."""
    body = cast.bodies[0] if len(cast.bodies) == 1 else None
    ring = pieces[0] if len(pieces) == 1 and all(one is pieces[0] or one.is_bare for one in cast.pieces) else None
    if body is None or ring is None or len(ring.mounts) < _ENDS or ring.thickness or ring.piece != RING:
        return False
    onward = body.was_mount and body.noun.role in TOWARDS and body.noun.head is None and bool(body.mounts)
    front, rear = ring.mounts[0], ring.mounts[-1]
    plain = all(one.mounts and one.mounts[0].ids == front.ids and not _is_described(one) for one in cast.lenses)
    if not onward or not plain or len(cast.lenses) > 1 or rear.ids[0] not in cast.hosts:
        return False
    joined = body.noun.join or any(one.noun.join or one.noun.column > ring.noun.column for one in cast.lenses)
    if not joined or body.mounts[0].ids[0] in (front.ids[0], rear.ids[0]):
        return False  # 'I have an M42 to E ring, does it go to Z'
    cast.lenses = cast.lenses or [Part("lens", ring.noun, mounts=[front], by_piece=True)]
    cast.bodies = [Part("body", ring.noun, mounts=[rear], by_piece=True), body]
    cast.pieces.clear()
    return True


def _is_described(lens: Part) -> bool:
    """Whether more is told of a lens than its mount."""
    return bool(lens.focal or lens.f_number or lens.kinds or lens.named)


def _lens_of_each(cast: Cast, pieces: list[Part]) -> None:
    """'I have OM to E and FD to E, now a Z body': rings that end alike and begin apart are those of as many lenses."""
    fronts = {part.mounts[0].ids[0]: part for part in pieces if len(part.mounts) == 2}
    rears = {part.mounts[-1].ids[0] for part in pieces}
    if any(part.has_mount_or_kind or part.focal for part in cast.lenses) or len(fronts) < 2 or len(rears) != 1:
        return
    if len(fronts) == len(pieces) and not rears & {*fronts}:
        cast.lenses = [Part("lens", one.noun, mounts=one.mounts[:1], by_piece=True) for one in fronts.values()]


def _are_a_row(pieces: list[Part]) -> bool:
    """Whether they are rings of one list, each told by one mount."""
    single = all(len(part.mounts) == 1 and part.piece == "adapter" for part in pieces)
    return single and len({part.noun.listed for part in pieces}) == 1


def _never_before_the_ring(cast: Cast, pieces: list[Part]) -> None:
    """'a 90, M bayonet, on an M to E ring': what the ring takes in front is no body, unless the lens is of its rear.

    A body said to be one only gave its mount, where the ring ends on a modern one: 'a dead K body, a K to Z tube'.
    """
    joining = [part for part in pieces if len(part.mounts) > 1]
    lens = next((part for part in cast.lenses if part.mounts), None)
    body = cast.bodies[0] if len(cast.bodies) == 1 else None
    if len(joining) != 1 or body is None or not body.mounts:
        return
    front, rear = joining[0].mounts[0].ids[0], joining[0].mounts[-1].ids[0]
    if body.noun.head is not None and (rear not in cast.hosts or body.noun.role in TOWARDS):
        return
    if body.mounts[0].ids[0] != front or front == rear or (lens is not None and lens.mounts[0].ids[0] == rear):
        return
    cast.bodies.clear()
    if body.noun.head is not None:
        return
    if lens is None and cast.lenses:
        cast.lenses[0].mounts.extend(body.mounts)
    elif lens is not None:
        lens.mounts.extend(body.mounts)


def _for_another_lens(cast: Cast, pieces: list[Part]) -> None:
    """'have M-X, need it for FD': what a ring that ends on a modern body is wanted for is the lens."""
    body = cast.bodies[0] if len(cast.bodies) == 1 else None
    ring = pieces[0]
    if body is None or len(pieces) != 1 or ring.piece in THROUGH or any(part.has_mount for part in cast.lenses):
        return
    ends = {mount.ids[0] for mount in ring.mounts}
    wanted = body.was_mount and not body.is_host and body.noun.role == "for"
    if not wanted or not body.mounts or body.mounts[0].ids[0] in ends:
        return
    if len(ring.mounts) == 1 and ring.is_host:
        body.mounts, ring.mounts = ring.mounts, [*body.mounts, *ring.mounts]  # 'an E adapter for M42'
        if cast.lenses:
            cast.lenses[0].mounts.append(ring.mounts[0])
        else:
            cast.lenses.append(Part("lens", body.noun, mounts=ring.mounts[:1], by_piece=True))
    elif len(ring.mounts) == 2:
        cast.bodies.clear()
        body.sort = "lens"
        cast.lenses.append(body)


def _joined_by_another(cast: Cast, pieces: list[Part]) -> None:
    """'I own a DKL to M ring, do I add M to E behind it?': what the first ring ends on is no lens, a second ring is."""
    lens, body = (cast.lenses[0] if cast.lenses else None), (cast.bodies[0] if cast.bodies else None)
    if len(pieces) != 1 or lens is None or body is None or len(cast.lenses) != 1 or not (lens.mounts and body.mounts):
        return
    ring = pieces[0]
    added = lens.was_mount and lens.noun.role == "added" and lens.focal is None and len(ring.mounts) == 2
    if not added or lens.mounts[0].ids != ring.mounts[1].ids or body.mounts[0].ids == ring.mounts[1].ids:
        return
    cast.pieces.append(Part("piece", body.noun, mounts=[*lens.mounts, *body.mounts], piece="adapter"))
    lens.mounts = ring.mounts[:1]


def _ends(pieces: list[Part], hosts: frozenset[str]) -> tuple[Part, Part]:
    """The pieces next to the lens and to the body, in whatever order they were told: what no other piece leads on."""
    joining = [part for part in pieces if len(part.mounts) > 1]
    if len(joining) == 1:
        rear, drawn = joining[0].mounts[-1].ids[0], [part for part in pieces if part.piece in THROUGH]
        if any(part.mounts[0].ids[0] == rear for part in drawn):
            return joining[0], pieces[-1]  # 'an M42 helicoid plus an M39 to M42 ring': the ring is the lens's
        others = [part for part in pieces if part is not joining[0]]
        if others and rear in hosts and joining[0] is not pieces[-1]:
            return others[0], joining[0]  # 'the M42-MFT plate, an M42 helicoid': in whatever order, it ends on the body
    if len(joining) < 2:
        return pieces[0], pieces[-1]
    fronts = {part.mounts[0].ids[0]: part for part in reversed(joining)}
    rears = {part.mounts[-1].ids[0]: part for part in joining}
    first = [part for id_, part in fronts.items() if id_ not in rears]
    last = [part for id_, part in rears.items() if id_ not in fronts]
    return (first[0], last[0]) if len(first) == len(last) == 1 else (pieces[0], pieces[-1])


def _turn_round(cast: Cast, pieces: list[Part]) -> None:
    """'the M42 Adaptall ring' for an Adaptall lens: of two mounts said side by side, the lens's is the front."""
    lens = next((part for part in cast.lenses if part.mounts), None)
    for piece in pieces:
        if lens is None or len(piece.mounts) != 2:
            continue
        front, rear = piece.mounts
        beside = rear.column == front.column + len(front.text) + 1
        if beside and rear.ids == lens.mounts[0].ids != front.ids:
            piece.mounts.reverse()


def frame_of_body(cast: Cast) -> None:
    """'a 24 with a K to E ring, on full frame': the one frame spoken of is that of the body its ring ends on."""
    body = cast.bodies[0] if len(cast.bodies) == 1 else None
    if body is None or body.formats or len(cast.frames) != 1:
        return
    if body.by_piece:
        body.formats = list(cast.frames.pop().formats)
    elif _is_sensor_told(cast.frames[0]) and not any(part.formats for part in cast.lenses):
        body.formats = list(cast.frames[0].formats)  # 'a cinema camera, MFT mount, Super 16 chip'


def _is_sensor_told(frame: Part) -> bool:
    """Whether a sensor or chip is told in a row with the rest, and not asked of, or set against another."""
    return frame.noun.headed_by("FRAME") and frame.noun.role in ("", "with") and frame.noun.join in ("", ",", "and")


def _give(home: list[Part], part: Part | None, mount: Token, piece: Part, sort: str) -> None:
    if part is not None:
        part.mounts.append(mount)
    else:
        home.append(Part(sort, Noun(column=piece.noun.column, text=mount.text), mounts=[mount], by_piece=True))
