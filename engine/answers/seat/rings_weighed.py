"""By how much each of several measured rings is off, the worst first, where that is asked of them."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import right_seat_mm
from engine.answers.parts.wording import small_mm
from engine.answers.seat.described import TUBE
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.chains.walk import ADDED_FOCUSING
from grammar.questions import Question, Thing

RINGS_OFF: Final = "rings-off"
_SUNK: Final = "its seat lies in a cup, so its length does not tell; measure how deep the cup is"
_SEVERAL: Final = 2


def rings_weighed(question: Question, knowledge: Knowledge) -> Told:
    """Each ring named by both its mounts and its thickness, with its error; nothing of fewer than two.

    Nothing either beside what spaces: a plate under a helicoid is not cut to the difference of its two registers.
    """
    if any(one.piece in (TUBE, *ADDED_FOCUSING) for one in question.adapters):
        return Told()
    lenses = {one.ids[0] for one in question.lenses if one.kind == "mount" and one.ids}
    question = question.with_(adapters=tuple(_for_lens(one, lenses) for one in question.adapters))
    told_so = [one for one in question.adapters if (one.front or one.rear) and one.thickness_mm is not None]
    rows = [(piece, right) for piece in told_so if (right := _right_mm(piece, knowledge)) is not None]
    sunk = [one for one, right in rows if right < 0 < (one.thickness_mm or (0.0,))[0] and not _is_bush(one, knowledge)]
    rows = [row for row in rows if row[0] not in sunk]
    if len(rows) + len(sunk) < _SEVERAL or len(rows) + len(sunk) < len(told_so):
        return Told()
    errors = [(round((piece.thickness_mm or (0.0,))[0] - right, 4), piece, right) for piece, right in rows]
    errors.sort(key=lambda row: -abs(row[0]))
    near = right_seat_mm(knowledge.catalogue)
    off = [_named(piece, knowledge) for error, piece, _ in errors if abs(error) >= near]
    head = "None of them is off." if not off else "All of them are off." if len(off) == len(told_so) else ""
    head = head or f"Off: {', '.join(off)}."
    lines = [Line("head", head)]
    for error, piece, right in errors:
        way = "as it should be" if abs(error) < near else f"{small_mm(abs(error))} too {_way(error)}"
        size = small_mm((piece.thickness_mm or (0.0,))[0])
        lines.append(Line("fact", f"{_named(piece, knowledge)}, {size}: {way}; right is {small_mm(right)}", 1))
    lines += [Line("fact", f"{_named(piece, knowledge)}: {_SUNK}", 1) for piece in sunk]
    told = tuple(
        Quantity("register_error_mm", Interval.exact(error), _named(piece, knowledge)) for error, piece, _ in errors
    )
    return Told(tuple(lines), told)


def _for_lens(piece: Thing, lenses: set[str]) -> Thing:
    """The ring with the mount of the lens told first of those that its own word may mean."""
    meant = [name for name in piece.front if name in lenses]
    return replace(piece, front=(*meant, *(name for name in piece.front if name not in meant))) if meant else piece


def _is_bush(piece: Thing, knowledge: Knowledge) -> bool:
    """A ring from screw to screw, which has no cup: as thick as its lip."""
    mounts = knowledge.catalogue.mounts
    return mounts[piece.front[0]].thread is not None and mounts[piece.rear[0]].thread is not None


def _way(error: float) -> str:
    return "thick" if error > 0 else "thin"


def _right_mm(piece: Thing, knowledge: Knowledge) -> float | None:
    """The register of its front less that of its rear, for a ring that is told by both and by one thickness."""
    thick = piece.thickness_mm
    if not (piece.front and piece.rear) or thick is None or thick[0] != thick[1]:
        return None
    mounts = knowledge.catalogue.mounts
    front, rear = mounts[piece.front[0]].register_mm, mounts[piece.rear[0]].register_mm
    return round(front.nominal - rear.nominal, 4) if is_known(front) and is_known(rear) else None


def _named(piece: Thing, knowledge: Knowledge) -> str:
    mounts = knowledge.catalogue.mounts
    return f"{mounts[piece.front[0]].designation} to {mounts[piece.rear[0]].designation}"
