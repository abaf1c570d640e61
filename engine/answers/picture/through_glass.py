"""A lens with a reducer or an extender behind it, as the one lens that both make: its focal length and its stops."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.wording import f_number, trimmed
from engine.base.compact import replace
from grammar.questions import Question
from grammar.things.casting import DRAWN, OPTICAL


def through_glass(question: Question) -> tuple[Question, Told]:
    """The question of that one lens, and what is said of it; as it was where no factor or no focal length is told.

    With tubes or bellows between it hangs on which side of the glass they stand: such a question is left alone.
    """
    factors = [one.factor for one in question.adapters if one.piece in OPTICAL and one.factor]
    lenses = [one for one in question.lenses if one.kind != "lens" and one.focal_length_mm is not None]
    spaced = any(one.piece in DRAWN for one in question.adapters)
    if len(factors) != 1 or factors[0] == 1 or spaced or not lenses or len(lenses) < len(question.lenses):
        return question, Told()
    factor = factors[0]
    seen = tuple(
        replace(one, focal_length_mm=_by(one.focal_length_mm, factor), f_number=_by(one.f_number, factor))
        for one in lenses
    )
    whole = question.with_(
        lenses=seen, f_number=_by(question.f_number, factor), stops=tuple(round(n * factor, 3) for n in question.stops),
        adapters=tuple(one for one in question.adapters if one.piece not in OPTICAL),
    )  # fmt: skip
    lines = []
    for old, new in zip(lenses, seen, strict=True):
        at, then = question.f_number or old.f_number, whole.f_number or new.f_number
        focals = f"{trimmed(old.focal_length_mm or 0, 1)} mm", f"{trimmed(new.focal_length_mm or 0, 1)} mm"
        stops = (f" at f/{f_number(at)}", f" f/{f_number(then)}") if at and then else ("", "")
        lines.append(Line("note", f"With {trimmed(factor, 2)}x, {focals[0]}{stops[0]} works as {focals[1]}{stops[1]}."))
    return whole, Told(tuple(lines))


def _by(value: float | None, factor: float) -> float | None:
    return round(value * factor, 3) if value is not None else None
