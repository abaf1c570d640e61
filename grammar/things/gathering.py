"""Parts of a question made whole: descriptions that only complete one another become one, empty ones fall away."""

from __future__ import annotations

from itertools import takewhile
from typing import Final

from grammar.things.cast import Cast, merge
from grammar.things.casting import Part
from grammar.things.ends_behind import ends_behind
from grammar.things.made_for import frame_beside_lens, lens_by_its_camera, lens_by_its_frame, lens_of_its_frame
from grammar.things.one_lens import body_beside_lens, host_before_lens, put_together
from grammar.things.told_by_pieces import frame_of_body, told_by_pieces
from grammar.words.tokens import Token

_STRETCHED: Final = frozenset(["helicoid", "bellows"])
_OF_SUBJECT: Final = frozenset(["macro", "cover"])  # cues of a thing that is to fill the frame


# '25 mm' and '1 inch' are one focal length told twice
_SAME_FOCAL = 0.03
_SHORTEST_ZOOM, _ZOOMED = 8.0, (1.4, 20.0)  # mm, and how many times longer its long end is


def complete(cast: Cast) -> None:
    """Descriptions that only complete one another become one; empty ones fall away; pieces tell what was not said."""
    _stretch(cast)
    _zoom(cast)
    _gather_lenses(cast)
    body_beside_lens(cast)
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
    _old_on_new(cast)
    lens_by_its_camera(cast)
    _rings_of_route(cast)
    ends_behind(cast)
    told_by_pieces(cast)
    lens_of_its_frame(cast)
    lens_by_its_frame(cast)
    frame_beside_lens(cast)
    frame_of_body(cast)


def _zoom(cast: Cast) -> None:
    """'the zoom one, what is 2.8-12': the range told behind a zoom of which none was told is its."""
    zooms = [part for part in cast.lenses if "zoom" in part.kinds and part.zoom is None and part.focal is None]
    ranges = [part for part in cast.lengths if part.noun.first("RANGE") is not None]
    token = ranges[0].noun.first("RANGE") if len(zooms) == len(ranges) == 1 and not cast.pieces else None
    if token is not None and token.unit in ("", "mm") and min(token.numbers) > 0:
        zooms[0].zoom = (token.numbers[0], token.numbers[1])
        cast.lengths.remove(ranges[0])


def _old_on_new(cast: Cast) -> None:
    """'I want MFT and L, have K, OM, C/Y': bare mounts that only lenses have go on those that only bodies have."""
    several = len(cast.lenses) > 1 or len(cast.bodies) > 1
    bare = all(
        one.was_mount and not (one.noun.head or one.noun.role or one.focal) for one in (*cast.lenses, *cast.bodies)
    )
    modern = bool(cast.lenses) and all(one.is_host for one in cast.lenses)
    if several and bare and modern and cast.bodies and not any(one.is_host for one in cast.bodies):
        cast.lenses, cast.bodies = cast.bodies, cast.lenses


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


def _stretch(cast: Cast) -> None:
    """'helicoid m42 15-26 with M42 50mm': beside a lens a range of nothing else is what a piece stretches to."""
    piece = next((one for one in cast.pieces if one.piece in _STRETCHED and one.thickness is None), None)
    rows = (*cast.lenses, *cast.lengths, *cast.bodies)
    ranges = [one for one in rows if one.noun.first("RANGE") and (one.sort == "body" or _tells_no_lens(one))]
    if piece is None or len(ranges) != 1 or not any(one.focal for one in cast.lenses if one is not ranges[0]):
        return
    told = ranges[0].noun.first("RANGE")
    assert told is not None
    piece.thickness = (min(told.numbers), max(told.numbers))
    for row in (cast.lenses, cast.lengths):
        row[:] = [one for one in row if one is not ranges[0]]


def _tells_no_lens(part: Part) -> bool:
    told = (part.noun.head, part.focal, part.f_number, part.formats, part.traits, part.named)
    return not any(told) and part.kinds in ([], ["zoom"])


def _gather_lenses(cast: Cast) -> None:
    _count_out(cast)
    told = [part for part in cast.lenses if not part.is_bare]
    if not told:
        cast.lenses = cast.lenses[:1]
        return
    told = _each_one(told)
    if not cast.bodies:
        host_before_lens(cast, told)
    if any(part.is_bare and part.count == len(told) > 1 for part in cast.lenses):
        cast.lenses = told  # 'two lenses: an 85 C/Y and a projector lens'
        return
    put_together(told)
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
    group = next((part for part in lenses if _is_group(part)), None)
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


def _is_group(part: Part) -> bool:
    """Whether what tells mount or kind may be told of several: 'M42 lenses', and 'OM lens' before a 24 and a 100."""
    return (part.is_several or part.noun.heads == "LENS") and part.has_mount_or_kind and not part.focal


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
    if not cast.lenses and cast.told >= _OF_SUBJECT:
        return  # 'bug 8 mm, fill aps-c': that is how large the subject is
    for part in cast.lengths:
        zoom = part.noun.first("RANGE")
        if not cast.lenses and zoom is not None and _is_zoom(zoom):
            part.sort, part.zoom = "lens", (zoom.numbers[0], zoom.numbers[1])
            cast.lenses.append(part)
            cast.lengths.remove(part)
            return
        token = part.noun.first("LENGTH")
        if token is None or token.unit != "mm" or not 2 <= token.numbers[0] <= 2000 or part.noun.role == "from":
            continue
        focal = token.numbers[0]
        _leave_host(cast, part)
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


def _is_zoom(token: Token) -> bool:
    """'18-35 with a 0.71 booster': as far apart, and as long, as the ends of a zoom are."""
    low, high = min(token.numbers), max(token.numbers)
    metric = token.unit in ("", "mm") and low > 0
    return metric and low >= _SHORTEST_ZOOM and _ZOOMED[0] <= high / low <= _ZOOMED[1]


def _leave_host(cast: Cast, length: Part) -> None:
    """'X, 24 mm and a 0.71x reducer': the mount that mostly means a body, before the one length, is no lens's."""
    alone = len(cast.lenses) == 1 and not cast.bodies and length.noun.join == "," and cast.lenses[0].was_mount
    if alone and cast.lenses[0].is_host and cast.lenses[0].noun.head is None:
        cast.lenses[0].sort = "body"
        cast.bodies, cast.lenses = cast.lenses, []


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
