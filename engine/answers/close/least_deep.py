"""Of several lenses, which is least deep or blurs most: by what is sharp around the distance told, by where infinity
begins, or by how wide the opening is.
"""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import focals, mentions, stop
from engine.answers.parts.wording import distance, f_number, trimmed
from engine.base.interval import Interval, is_known
from engine.physics.openings import pupil_width_mm
from grammar.questions import Question

_AROUND, _HYPERFOCAL, _BLURRED = "dof_mm", "hyperfocal_mm", "wants-blur"


def least_deep(question: Question, told: Told) -> Told:
    """The order of the lenses told, where it is asked which is shallower or deeper; nothing of one lens."""
    if ranks_blur(question):
        return _by_opening(question)
    if len(question.lenses) < 2 or not mentions(question, "which-deeper"):
        return Told()
    rows = _rows(told, _AROUND)
    if len(rows) < 2:
        return _by_hyperfocal(_rows(told, _HYPERFOCAL))
    ordered = "; ".join(f"{row.case}, {distance(size, question.feet)}" for size, row in rows)
    return Told((Line("head", f"Least deep first: {ordered}."),))


def ranks_blur(question: Question) -> bool:
    """Whether it is asked of several lenses how much they blur what is behind, at no distance told."""
    told = [one for one in question.lenses if one.focal_length_mm is not None and one.f_number is not None]
    return len(told) > 1 and question.distance_mm is None and mentions(question, _BLURRED)


def likens_blur(question: Question) -> bool:
    """Whether the blur of a lens, or of a stop on one frame, is set against another's: 'f/2.8 on MFT is what on ..'."""
    frames = len((*question.bodies, *question.things)) > 1
    return ranks_blur(question) or (frames and stop(question) is not None and not focals(question))


def _by_opening(question: Question) -> Told:
    """Framed alike a far background is blurred as wide as the opening, f/N, is; wide open, or at the stop told."""
    rows: list[tuple[float, str, Interval]] = []
    for lens in question.lenses:
        if lens.focal_length_mm is None or lens.f_number is None:
            continue
        at = max(lens.f_number, question.f_number or 0.0)
        wide = pupil_width_mm(Interval.exact(lens.focal_length_mm), Interval.exact(1.0), Interval.exact(at))
        if is_known(wide):
            rows.append((-wide.nominal, f"{trimmed(lens.focal_length_mm, 1)} mm f/{f_number(at)}", wide))
    rows.sort(key=lambda row: row[0])
    first = rows[0][1]
    ordered = "; ".join(f"{case} {trimmed(wide.nominal, 0)} mm" for _, case, wide in rows)
    text = f"Most blur behind: the {first}. Framed alike, the widest opening blurs most: {ordered}."
    near = "From the same place a longer lens gains more still, as it shows the thing larger."
    quantities = tuple(Quantity("opening_mm", wide, case) for _, case, wide in rows)
    return Told((Line("head", text), Line("note", near)), quantities)


def _by_hyperfocal(rows: list[tuple[float, Quantity]]) -> Told:
    """From the same place, and not close up, depth goes by the hyperfocal distance alone: the farther, the less."""
    if len(rows) < 2:
        return Told()
    ordered = "; ".join(row.case or "" for _, row in reversed(rows))
    text = f"From the same place least deep first: {ordered}. Framed alike it goes by the stop in full frame terms."
    return Told((Line("head", text),))


def _rows(told: Told, name: str) -> list[tuple[float, Quantity]]:
    rows = [(row.value.nominal, row) for row in told.quantities if row.name == name and is_known(row.value)]
    return sorted(rows, key=lambda row: row[0])
