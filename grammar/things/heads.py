"""What the noun at the end of a list heads: 'FD and M42 lenses' are both lenses, '10 and 16 mm tubes' both tubes."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import Part, part_of
from grammar.things.phrases import TOWARDS
from grammar.words.token_kinds import CHOICES
from grammar.words.tokens import is_plural

_ONE_MORE: Final = frozenset(["", "with"])  # 'and a' leads to one more
_LENS_LIKE: Final = 16.0  # mm
_LEAST_BARE: Final = 24.0  # mm, of a lens told without a unit
_LONGER_THAN_TUBES: Final = 40.0  # mm, of a set's


def share_heads(parts: list[Part]) -> None:
    """'FD, F, OM and M42 lenses': what ends the list heads all of it; a preposition at its start holds for all."""
    _bodies_each(parts)
    for at in range(len(parts) - 1, 0, -1):
        part, before = parts[at], parts[at - 1]
        if part.noun.listed != before.noun.listed:
            continue
        headless = before.noun.head is None and before.sort in ("mount", "length", "factor")
        # 'Super 16 or 1 inch lens': both are what a lens is made for
        either = before.sort == "frame" and part.sort == "lens" and part.noun.join in CHOICES and bool(part.formats)
        headless = headless or (either and before.noun.head is None)
        if (
            headless
            and part.noun.role in ("", before.noun.role)  # 'on Z, with a 10 mm tube' is no list of tubes
            and part.noun.head is not None
            and (part.noun.mods or part.noun.tails)  # 'FD, OM, bodies E and X': such a head is of what follows
            and part.sort in ("lens", "body", "piece")
            and not _is_another(before, part)
            and _one_kind(before, part, parts)
            and not _is_goal(before, part)
            and not _is_put_on(before, part)
            and not _is_stacked_on(before, part)
        ):
            _recast(before, part)
        if before.noun.role and not part.noun.role and part.sort == before.sort:
            part.noun.role = before.noun.role
    for at in range(1, len(parts)):
        part, before = parts[at], parts[at - 1]
        same = part.noun.listed == before.noun.listed
        if same and before.noun.role and not part.noun.role and part.sort == before.sort:
            part.noun.role = before.noun.role
        length = part.noun.first("LENGTH")
        short = length is None or length.unit in ("", "mm")  # '50 f2, 3m' is a lens and a distance
        if same and part.sort == "length" and before.sort == "lens" and before.focal and not before.noun.head and short:
            _recast(part, before)


def _bodies_each(parts: list[Part]) -> None:
    """'one E and one Z body', 'two bodies, an RF and an L', beside lenses of other mounts: each is a body."""
    if not any(one.sort == "lens" or (one.sort == "mount" and not one.is_host) for one in parts):
        return
    each = False  # whether a plural word for bodies alone was said before
    for part in parts:
        head = part.noun.head
        if part.sort == "body":
            each = not part.mounts and head is not None and is_plural(head)
            continue
        each = each and part.sort == "mount" and part.is_host and head is None and part.noun.role in _ONE_MORE
        if each:
            part.sort = "body"
    for at in range(len(parts) - 2, -1, -1):
        part, after = parts[at], parts[at + 1]
        ends = after.sort == "body" and after.is_host and after.noun.role in _ONE_MORE
        alone = part.sort == "mount" and part.is_host and part.noun.head is None and part.noun.role in _ONE_MORE
        # 'E, Z and L bodies': the one word heads all of its list
        headed = after.noun.head is not None or part.noun.listed == after.noun.listed
        if ends and alone and headed and (not part.noun.role or _heads_several(parts[at + 1 :])):
            part.sort = "body"


def _heads_several(after: list[Part]) -> bool:
    """Whether the list goes on to a word for several bodies: 'customers come with E, Z and L bodies'."""
    head = next((one.noun.head for one in after if one.noun.head is not None), None)
    return head is not None and head.kind == "BODY" and is_plural(head)


def _is_goal(before: Part, part: Part) -> bool:
    """'to E, rings 1 mm': where it goes; 'on a 10 and a 16 tube' are two pieces."""
    return part.sort == "piece" and before.sort != "length" and before.noun.role in TOWARDS and not part.noun.role


def _is_put_on(before: Part, part: Part) -> bool:
    """'on mft, 50mm M42 lens': what it goes on, and behind the comma the lens, which has a mount of its own."""
    onto = before.noun.role in TOWARDS and before.is_host and before.was_mount
    single = part.noun.head is not None and part.noun.head.text.casefold() == "lens"
    return onto and single and part.sort == "lens" and bool(part.mounts) and part.noun.join == ","


def _is_stacked_on(before: Part, part: Part) -> bool:
    """'Z mount + flat M42 ring 2 mm', 'RF + helicoid 12-17': the body, and the first piece of its stack."""
    body = before.was_mount and before.is_host and not before.noun.tails
    single = part.noun.head is not None and not is_plural(part.noun.head)
    return body and single and part.sort == "piece" and part.thickness is not None and not part.is_host


def _is_another(before: Part, part: Part) -> bool:
    """'an Exakta and an L body' are a lens and a body; 'E and Z bodies', 'an E and a Z body' two bodies.

    'L, a C/Y 50 mm lens' are a body and a lens, and 'EF + a C/Y 50 mm lens' too.
    """
    if part.sort == "lens" and before.mounts and not (part.is_several or part.is_host or before.focal):
        return before.is_host or (part.noun.join == "+" and bool(part.focal))
    if part.sort != "body" or part.noun.join not in ("and", ",") or part.noun.head is None or not before.mounts:
        return False
    return not is_plural(part.noun.head) and not before.is_host


def _one_kind(part: Part, headed: Part, parts: list[Part]) -> bool:
    """'10, 16 and 26mm tubes' are all tubes; '20 ft, 75mm lens' and '200mm vs 25mm ring' are two things."""
    if part.sort != "length":
        return True
    if not headed.noun.first("LENGTH", "RANGE") or all(
        token in headed.noun.tails for token in headed.noun.all("LENGTH")
    ):
        return False  # '105 mm and tubes 16 mm'
    single = headed.noun.head is not None and not is_plural(headed.noun.head)
    lens_told = any(one.sort == "lens" and one.focal for one in parts)
    if headed.noun.join == "," and single and not lens_told and _is_focal_length(part, headed):
        return False  # '50mm, 20mm tube'
    two = sum(bool(one.noun.first("LENGTH", "RANGE")) and one.noun.listed == part.noun.listed for one in parts) == 2
    if two and not single and not lens_told and _is_longer_than_tubes(part, headed):
        return False  # '75 and 26 mm tubes'
    if headed.noun.join == "+" and single and not lens_told:
        return False  # '50mm + 12mm tube' is a lens and a tube, '5 + 2 spacer under a 35mm lens' two spacers
    token = part.noun.first("LENGTH", "RANGE")
    return token is not None and token.unit in ("", "mm") and headed.noun.join not in ("vs", "or")


def _is_focal_length(part: Part, headed: Part) -> bool:
    """Whether the first of two lengths that stand in a list is as long as a lens."""
    one, other = part.noun.first("LENGTH"), headed.noun.first("LENGTH")
    if one is None or other is None:
        return False
    bare = one.text[-1:].isdigit()
    return one.numbers[0] >= (max(_LEAST_BARE, other.numbers[0]) if bare else _LENS_LIKE)


def _is_longer_than_tubes(part: Part, headed: Part) -> bool:
    """Whether the first of two lengths is longer than tubes are made, and than the other: the lens's."""
    one, other = part.noun.first("LENGTH"), headed.noun.first("LENGTH")
    if one is None or other is None or one.unit not in ("", "mm"):
        return False
    return one.numbers[0] >= _LONGER_THAN_TUBES and one.numbers[0] > other.numbers[0]


def _recast(part: Part, like: Part) -> None:
    part.noun.head = like.noun.head
    fresh = part_of(part.noun)
    part.sort, part.piece = fresh.sort, fresh.piece
    part.thickness, part.focal, part.factor = fresh.thickness, fresh.focal, fresh.factor
    part.steps = fresh.steps
    if part.sort == "length" and like.sort == "lens":
        part.sort = "lens"
