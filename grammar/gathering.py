"""Parts of a question made whole: descriptions that only complete one another become one, empty ones fall away."""

from __future__ import annotations

from itertools import takewhile
from typing import Final

from engine.base.compact import compact, field
from grammar.casting import Part
from grammar.phrases import Noun
from grammar.tokens import Token

_THROUGH: Final = frozenset(["helicoid", "extension-tube"])  # the same mount before and behind
_TOWARDS: Final = frozenset(["on", "to"])


@compact(frozen=False)
class Cast:
    """The parts of a question, in the order they were named."""

    lenses: list[Part] = field(default_factory=list)
    bodies: list[Part] = field(default_factory=list)
    pieces: list[Part] = field(default_factory=list)
    frames: list[Part] = field(default_factory=list)
    without: list[Part] = field(default_factory=list)
    using: list[Part] = field(default_factory=list)
    lengths: list[Part] = field(default_factory=list)  # lengths that belong to nothing named
    strange: list[Part] = field(default_factory=list)
    denied: list[Part] = field(default_factory=list)  # mounts that it is said not to have: 'M42, not LTM'
    told: frozenset[str] = frozenset()  # what the cues of the line tell
    swapped: bool = False  # a body was to be put on a lens

    @property
    def mounts_told(self) -> int:
        return sum(len(part.mounts) for part in (*self.lenses, *self.bodies, *self.pieces))


# '25 mm' and '1 inch' are one focal length told twice
_SAME_FOCAL = 0.03


def merge(kept: Part, more: Part) -> None:
    """What the second says of the first: 'a 38mm from an 8mm projector'."""
    kept.kinds.extend(more.kinds)
    kept.traits.extend(more.traits)
    kept.formats.extend(more.formats)
    kept.mounts.extend(more.mounts)
    kept.implied = kept.implied or more.implied
    kept.focal = kept.focal if kept.focal is not None else more.focal
    kept.f_number = kept.f_number if kept.f_number is not None else more.f_number
    kept.zoom = kept.zoom or more.zoom
    kept.count = kept.count or more.count


def complete(cast: Cast) -> None:
    """Descriptions that only complete one another become one; empty ones fall away; pieces tell what was not said."""
    _gather_lenses(cast)
    if len(cast.bodies) > 1:
        full = [part for part in cast.bodies if part.has_mount or part.formats or part.crop]
        rest = [part for part in cast.bodies if part not in full]
        if len(full) == 1:
            for part in rest:
                full[0].traits.extend(part.traits)
                full[0].formats.extend(part.formats)
        cast.bodies = full or rest[:1]
        _lens_by_its_body(cast)
    if not any(part.focal for part in cast.lenses):
        _take_focal(cast)
    _rings_of_route(cast)
    _told_by_pieces(cast)


def _rings_of_route(cast: Cast) -> None:
    """'LTM to M to E, rings 1.0 + 9.8': as many rings as there are steps are each one's, in their order."""
    plain = [part for part in cast.pieces if part.piece == "adapter" and not part.mounts]
    route = [part.mounts[0] for part in (*cast.lenses[:1], *cast.using, *cast.bodies[:1]) if part.mounts]
    if not cast.using or len(route) != len(cast.using) + 2 or len(plain) != len(route) - 1:
        return
    for part, front, rear in zip(plain, route, route[1:], strict=False):
        part.mounts = [front, rear]


def _lens_by_its_body(cast: Cast) -> None:
    """'my old slr is M42, the new body an E': of two bodies without a lens, the older lends its mount to one."""
    told = [part for part in cast.bodies if part.mounts]
    older = [part for part in told if not part.is_host]
    if len(told) != 2 or len(older) != 1 or any(part.has_mount_or_kind for part in cast.lenses):
        return
    lens = cast.lenses[0] if cast.lenses else Part("lens", older[0].noun)
    lens.mounts = list(older[0].mounts)
    cast.lenses = cast.lenses or [lens]
    cast.bodies.remove(older[0])


def _gather_lenses(cast: Cast) -> None:
    _count_out(cast)
    told = [part for part in cast.lenses if not part.is_bare]
    if not told:
        cast.lenses = cast.lenses[:1]
        return
    told = _each_one(told)
    counts = [part.count for part in told if part.count]
    kept: list[Part] = []
    homes: dict[int, Part] = {}  # list of mounts -> the lens that has the first of them
    for part in told:
        home = next((one for one in kept if _completes(one, part)), None)
        if home is not None:
            merge(home, part)
            homes[part.noun.listed] = home
            continue
        one = homes.get(part.noun.listed)
        if one is not None and part.was_mount and part.noun.join and not part.focal:
            part.focal, part.f_number = one.focal, one.f_number  # 'the same 6 mm comes as C or CS'
        kept.append(part)
    if counts and len(kept) == 1 and kept[0].count is None:
        kept[0].count = counts[0]
    cast.lenses = kept


def _count_out(cast: Cast) -> None:
    """'2 enlarger lenses (50 and 75mm)': lengths listed behind several lenses are those of each."""
    several = next((part for part in cast.lenses if part.is_several and not part.focal), None)
    listed = [part for part in cast.lengths if (one := part.noun.first("LENGTH")) and one.unit == "mm"]
    listed = [part for part in listed if part.noun.listed == listed[0].noun.listed and not part.noun.role]
    if several is None or len(listed) < 2 or (several.count or len(listed)) != len(listed):
        return
    for part in listed:
        token = part.noun.first("LENGTH")
        part.sort, part.focal = "lens", token.numbers[0] if token else None
        cast.lengths.remove(part)
    at = cast.lenses.index(several) + 1
    cast.lenses[at:at] = listed


def _each_one(lenses: list[Part]) -> list[Part]:
    """'2 M42 lenses, a 50 and a 135', 'the C ones, one says 25 mm': what is said of several is said of each."""
    group = next((part for part in lenses if part.is_several and part.has_mount_or_kind and not part.focal), None)
    if group is None:
        return lenses
    at = lenses.index(group)
    behind, before = lenses[at + 1 :], reversed(lenses[:at])
    each = list(takewhile(_is_numbers, behind)) or list(takewhile(_is_numbers, before))
    if not each and not group.mounts:
        each = list(takewhile(_has_no_kind, behind))  # 'enlarger lenses 50 and 75, 39 mm thread'
    if len(each) < 2 or (group.count or len(each)) < len(each):
        return lenses
    for part in each:
        part.mounts, part.implied = list(group.mounts) or part.mounts, group.implied
        part.kinds = [*part.kinds, *group.kinds]
        part.traits, part.formats = [*part.traits, *group.traits], part.formats or list(group.formats)
    return [part for part in lenses if part is not group]


def _is_numbers(part: Part) -> bool:
    """Whether it tells which of several lenses it is, and nothing of its mount."""
    return bool(part.focal or part.zoom) and not part.has_mount_or_kind


def _has_no_kind(part: Part) -> bool:
    return bool(part.focal) and part.noun.head is None and not part.kinds and part.named is None


def _completes(one: Part, other: Part) -> bool:
    """Whether the two can only be one lens: no quality told by both, and not members of one list."""
    if one.noun.listed == other.noun.listed:
        return False
    if one.named or other.named:
        return not other.named and other.is_stop_alone  # 'the avocet in full sun, f/2'
    same_focal = one.focal and other.focal and abs(one.focal / other.focal - 1) < _SAME_FOCAL
    clash = (
        (one.mounts and other.mounts) or (one.focal and other.focal and not same_focal)
        or (one.f_number and other.f_number) or (one.zoom and other.zoom)
    )  # fmt: skip
    apart = "reversed" in one.traits or "reversed" in other.traits or other.noun.role in ("on", "behind")
    return not clash and not apart


def _take_focal(cast: Cast) -> None:
    """A length that belongs to nothing else is the focal length of the lens spoken of."""
    for part in cast.lengths:
        token = part.noun.first("LENGTH")
        if token is None or token.unit != "mm" or not 2 <= token.numbers[0] <= 2000 or part.noun.role == "from":
            continue
        focal = token.numbers[0]
        if cast.lenses and all(one.zoom is None for one in cast.lenses):
            cast.lenses[0].focal = focal
        elif not cast.lenses and focal >= 4:
            part.sort, part.focal = "lens", focal
            cast.lenses.append(part)
            _take_listed(cast, part)
        else:
            return
        cast.lengths.remove(part)
        return


def _take_listed(cast: Cast, first: Part) -> None:
    """'a 12.5 mm and a 50 mm': where no pieces are told of, what is listed with a focal length is another."""
    if cast.pieces or cast.using or cast.without:
        return
    listed = [one for one in cast.lengths if one is not first and one.noun.listed == first.noun.listed]
    for part in [one for one in listed if one.noun.join in ("and", "or")]:
        token = part.noun.first("LENGTH")
        if token is not None and token.unit == "mm" and 4 <= token.numbers[0] <= 2000 and not part.noun.role:
            part.sort, part.focal = "lens", token.numbers[0]
            cast.lenses.append(part)
            cast.lengths.remove(part)


def _told_by_pieces(cast: Cast) -> None:
    """An adapter's own mounts are those of the lens and the body, where these were not named."""
    pieces = [part for part in (*cast.pieces, *cast.using) if part.mounts]
    if not pieces:
        return
    if _each_for_a_lens(cast, pieces):
        return
    _turn_round(cast, pieces)
    _never_before_the_ring(cast, pieces)
    first, last = pieces[0], pieces[-1]
    lens, body = (cast.lenses[0] if cast.lenses else None), (cast.bodies[0] if cast.bodies else None)
    lens_open = lens is None or not lens.has_mount
    body_open = body is None or not (body.has_mount or body.crop)
    if len(pieces) > 1 and len(last.mounts) == 1 and last.is_host and body_open and not lens_open:
        _give(cast.bodies, body, last.mounts[0], last, "body")  # 'an M39 to M42 ring, a helicoid and the thin E ring'
        return
    if len(pieces) == 1 and len(first.mounts) == 1:
        goes_on = first.is_host and lens is not None and lens.by_camera  # 'a zoom off a 16 mm reflex, E-mount adapter'
        onto = goes_on or (first.noun.role in _TOWARDS and lens is not None)
        other = lens is not None and bool(lens.mounts) and lens.mounts[0].ids != first.mounts[0].ids
        if body_open and (onto or (other and first.piece not in _THROUGH)):
            _give(cast.bodies, body, first.mounts[0], first, "body")
        elif lens_open and not onto and not (lens is not None and lens.implied and first.piece in _THROUGH):
            _give(cast.lenses, lens, first.mounts[0], first, "lens")
        return
    front, rear = _ends(pieces)
    if lens_open:
        _give(cast.lenses, lens, front.mounts[0], front, "lens")
    if body_open and len(rear.mounts) > 1:
        _give(cast.bodies, body, rear.mounts[-1], rear, "body")


def _each_for_a_lens(cast: Cast, pieces: list[Part]) -> bool:
    """'my NX needs K, F and MD rings': several rings told by one mount each are those of as many lenses."""
    single = all(len(part.mounts) == 1 and part.piece == "adapter" for part in pieces)
    named = any(part.has_mount_or_kind for part in cast.lenses)
    hosts = {part.mounts[0].ids[0] for part in cast.bodies if part.mounts}
    fronts = {part.mounts[0].ids[0] for part in pieces}
    if not single or named or len(fronts) < 2 or not hosts or fronts & hosts:
        return False
    same = {part.noun.listed for part in pieces}
    if len(same) > 1:
        return False
    cast.lenses = [Part("lens", part.noun, mounts=list(part.mounts), by_piece=True) for part in pieces]
    cast.pieces = [part for part in cast.pieces if part not in pieces]
    return True


def _never_before_the_ring(cast: Cast, pieces: list[Part]) -> None:
    """'a 90, M bayonet, on an M to E ring': what the ring takes in front is no body, unless the lens is of its rear."""
    joining = [part for part in pieces if len(part.mounts) > 1]
    lens = next((part for part in cast.lenses if part.mounts), None)
    body = cast.bodies[0] if len(cast.bodies) == 1 else None
    if len(joining) != 1 or body is None or not body.mounts or body.noun.head is not None:
        return
    front, rear = joining[0].mounts[0].ids[0], joining[0].mounts[-1].ids[0]
    if body.mounts[0].ids[0] != front or front == rear or (lens is not None and lens.mounts[0].ids[0] == rear):
        return
    cast.bodies.clear()
    if lens is None and cast.lenses:
        cast.lenses[0].mounts.extend(body.mounts)
    elif lens is not None:
        lens.mounts.extend(body.mounts)


def _ends(pieces: list[Part]) -> tuple[Part, Part]:
    """The pieces next to the lens and to the body, in whatever order they were told: what no other piece leads on."""
    joining = [part for part in pieces if len(part.mounts) > 1]
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


def _give(home: list[Part], part: Part | None, mount: Token, piece: Part, sort: str) -> None:
    if part is not None:
        part.mounts.append(mount)
    else:
        home.append(Part(sort, Noun(column=piece.noun.column, text=mount.text), mounts=[mount], by_piece=True))
