"""Whether the chains listed last are those of the lens, the body and the ring that are spoken of now."""

from __future__ import annotations

from engine.answers.parts.wording import READS_MM
from engine.base.interval import Interval, is_known
from engine.judging.ranking import Listed
from grammar.questions import Question, Thing


def of_lens(question: Question, rows: tuple[Listed, ...]) -> tuple[Listed, ...]:
    """Of a list of several lenses those of the one that is spoken of now; all of them where none is."""
    setups = {(row.judged.setup.lens.id, row.judged.setup.lens.name) for row in rows}
    if len(setups) < 2 or len(question.lenses) != 1 or question.number is not None:
        return rows
    return tuple(row for row in rows if _is_lens(question.lenses[0], row)) or rows


def is_of(question: Question, rows: tuple[Listed, ...]) -> bool:
    """Whether the chains listed last are those of the lens and the body that are spoken of now."""
    return any(_is_lens(question.lens, row) and _is_body(question, row) and _has_ring(question, row) for row in rows)


def _is_lens(thing: Thing | None, row: Listed) -> bool:
    setup = row.judged.setup
    if thing is None or not thing.ids:
        return True
    if thing.kind == "lens":
        return setup.lens.id in ("", *thing.ids)
    focal = setup.lens.focal_length_mm
    same = thing.focal_length_mm is None or not isinstance(focal, Interval) or focal.nominal == thing.focal_length_mm
    return same and setup.lens_mount.id in thing.ids


def _is_body(question: Question, row: Listed) -> bool:
    """A piece alone on its own mount goes on being spoken of while it is named."""
    setup, body = row.judged.setup, question.body
    if body is None or not body.ids or question.between:
        return True
    return setup.body.id in ("", *body.ids) if body.kind == "body" else setup.body_mount.id in body.ids


def _has_ring(question: Question, row: Listed) -> bool:
    """Whether a ring that was measured is in it: what is listed since without it is no answer for that ring."""
    told = [one.thickness_mm[0] for one in question.adapters if one.thickness_mm and one.is_of_one_length]
    spans = [one.thickness_mm for one in row.judged.chain.adapters]
    seats = [abs(one.shortest.nominal) for one in spans if is_known(one.shortest)]
    return len(told) != 1 or any(abs(seat - abs(told[0])) <= READS_MM for seat in seats)
