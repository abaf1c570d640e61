"""A converter screwed before a lens: focal length and opening grow alike, so that the f-number stays."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, number, stop
from engine.answers.parts.wording import f_number, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval
from grammar.kinds import CROP_EQUIVALENT, MACRO_DISTANCE
from grammar.questions import Question

_FACTORS: Final = (0.3, 4.0)
_SAME: Final = 0.05


def with_converter_before(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """In place of what the same glass does behind the lens. Source: trade, of converters that have no focus."""
    factor = _factor(question)
    if factor is None:
        return answer
    lenses, at = focals(question), stop(question)
    lines, rows = [], [Quantity("light_difference_stops", Interval.exact(0.0), f"{factor:g}x in front")]
    opened = f" f/{f_number(at)}" if at is not None else ""
    for focal in lenses:
        case = f"{trimmed(focal, 1)} mm with {factor:g}x in front"
        lines.append(f"{trimmed(focal, 1)} mm{opened} becomes {trimmed(focal * factor, 1)} mm{opened}")
        rows.append(Quantity("focal_length_mm", Interval.exact(focal * factor), case))
    if at is not None:
        rows.append(Quantity("f_number", Interval.exact(at), f"{factor:g}x in front"))
    made = f": {', '.join(lines)}" if lines else opened and f": f/{f_number(at or 0.0)} stays{opened}"
    text = (
        f"A {factor:g}x converter before the lens changes the view and not the light{made}. Lens and opening are"
        f" multiplied alike. Behind the lens the same factor would change the f-number by it."
    )
    more = "Its rim and glass may darken the corners, of wides first, and the edges soften: look at them stopped down."
    told = Answer(
        question.text, CROP_EQUIVALENT if answer.intent == MACRO_DISTANCE else answer.intent, ANSWERED,
        (Line("head", text), Line("text", more)), question=question, quantities=tuple(rows),
    )  # fmt: skip
    framed = bool(question.bodies or question.frames) and bool(lenses)
    return _with_views(told, factor, question, knowledge) if framed else told


def _factor(question: Question) -> float | None:
    """The factor of the one converter told; of a bare one, what was read as a size."""
    told = [piece.factor for piece in question.adapters if piece.factor]
    bare = number(question, "magnification")
    told = told or ([bare] if bare is not None and question.adapters else [])
    fits = len(told) == 1 and _FACTORS[0] <= told[0] <= _FACTORS[1] and abs(told[0] - 1) > _SAME
    return told[0] if fits else None


def _with_views(told: Answer, factor: float, question: Question, knowledge: Knowledge) -> Answer:
    """With what the lens then frames like."""
    from engine.answers.picture.equivalent import equivalent

    lenses = tuple(
        replace(lens, focal_length_mm=lens.focal_length_mm * factor) if lens.focal_length_mm else lens
        for lens in question.lenses
    )
    bare = question.without("magnification").with_(lenses=lenses, adapters=())
    view = equivalent(bare, knowledge)
    return replace(
        told, lines=(*told.lines, *view.lines), quantities=(*(told.quantities or ()), *(view.quantities or ()))
    )
