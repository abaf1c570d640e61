"""A ring that was measured, or by how much it is off, which holds on past what is asked beside it.

'does it cover full frame' after a ring that is 0.3 too thick asks nothing of the ring; 'and how far does a 28 get' then
asks of the lens on that ring still.
"""

from __future__ import annotations

from typing import Final

from grammar.kinds import DEPTH_OF_FIELD, FOCUS_VERDICT, MACRO_DISTANCE, SHIM_CALIBRATION, WHY
from grammar.questions import OFF, RING, Question, Thing
from grammar.turns.sticking import is_open

_ASKED_OF: Final = frozenset([FOCUS_VERDICT, SHIM_CALIBRATION, WHY, MACRO_DISTANCE, DEPTH_OF_FIELD])
_OF_SEAT: Final = frozenset([FOCUS_VERDICT, SHIM_CALIBRATION])
_ERRORS: Final = ("thickness", "mark", "shim", "turns")  # keys that tell by how much it is off
_MEASURED: Final = frozenset(["thickness", OFF, "nominal"])
_LEFT: Final = ("without-piece", "piece-gone")  # what is mentioned where the ring is no longer there


def seat_of(before: Question) -> Question | None:
    """The last question of the talk that told how a ring seats the lens; a reason or a close-up leaves it that."""
    if not tells_seat(before) or _stands_as_told(before):
        return before.seat
    return before.with_(prior=None, seat=None)


def _stands_as_told(before: Question) -> bool:
    """Whether it asks something else of the ring whose seat was asked about before, between the same two mounts."""
    seat = before.seat
    if seat is None or before.intent in _OF_SEAT or _rings(before) != _rings(seat):
        return False
    return same_mounts(before.lenses, seat.lenses) and same_mounts(before.bodies, seat.bodies)


def _rings(question: Question) -> list[Thing]:
    return [one for one in question.adapters if one.piece == RING and one.thickness_mm is not None]


def tells_seat(question: Question) -> bool:
    """Whether it tells how long the ring is, or by how much what stands between is off."""
    pair = any(lens.ids for lens in question.lenses) and any(body.ids for body in question.bodies)
    sized = any(one.piece == RING and one.thickness_mm is not None for one in question.adapters)
    return pair and question.intent in _ASKED_OF and (sized or any(question.said(key) for key in _ERRORS))


def with_seat_held(got: Question, before: Question) -> Question:
    """The question with the ring of before, where lens mount and body are the same and nothing else stands there."""
    seat = seat_of(before)
    got = got.with_(seat=seat)
    if seat is None or not got.follows or got.intent not in _ASKED_OF or tells_seat(before) or tells_seat(got):
        return got
    if not (same_mounts(got.lenses, seat.lenses) and same_mounts(got.bodies, seat.bodies)):
        return got
    told = got.distance_mm is not None and got.intent != DEPTH_OF_FIELD
    if told or got.limits.without or got.mentions(*_LEFT) or not all(map(is_open, got.adapters)):
        return got
    values = {**dict(row for row in seat.values if row[0] in _MEASURED), **dict(got.values)}
    if "thickness" in values and seat.off_word:
        values[OFF] = seat.off_word
    pieces = tuple(one for one in seat.adapters if one.piece == RING)
    return got.with_(adapters=pieces or got.adapters, values=tuple(values.items()))


def same_mounts(things: tuple[Thing, ...], before: tuple[Thing, ...]) -> bool:
    return [one.ids for one in things] == [one.ids for one in before]


def all_of_mount(things: tuple[Thing, ...], before: tuple[Thing, ...]) -> bool:
    """Whether those have the mounts of before, however many they are: 'the 35 or a 24' on the ring of the 35."""
    return same_mounts(things, before) or (bool(things) and {one.ids for one in things} == {one.ids for one in before})


def without_its_error(values: dict[str, str], before: Question, now: Question) -> dict[str, str]:
    """'on a Z body?' after a ring on E that is 0.15 too thin: another ring, of which no error was told.

    So it is with a lens of another mount.

    `now`: with the lenses and bodies it is about, and the pieces that are kept.
    """
    rings = [one for one in before.adapters if one.piece == RING]
    gone = len(rings) == 1 and bool(rings[0].front or rings[0].rear) and rings[0] not in now.adapters
    named = bool(before.bodies and now.bodies) and all(body.ids for body in (*before.bodies, *now.bodies))
    moved = named and not any(set(one.ids) & set(old.ids) for one in now.bodies for old in before.bodies)
    held = bool(before.lenses and now.lenses) and all(lens.ids for lens in (*before.lenses, *now.lenses))
    other = held and not any(set(one.ids) & set(old.ids) for one in now.lenses for old in before.lenses)
    told = (_MEASURED if gone or moved or other else frozenset()) | (frozenset(_ERRORS) if moved else frozenset())
    return {key: text for key, text in values.items() if key not in told or now.said(key) is not None}
