"""What the camera must be told: focal length for stabilisation, and the settings that lenses without contacts need."""

from __future__ import annotations

from collections import Counter

from engine.answers.advising import advice_lines, named_or_near
from engine.answers.answer import ANSWERED, NO, Answer, Line, Quantity, Told
from engine.answers.circles import glass_factor
from engine.answers.knowledge import Knowledge
from engine.answers.said import focals
from engine.answers.wording import trimmed
from engine.base.interval import Interval
from grammar.questions import Question

STABILISATION = "stabilisation"


def setting(question: Question, knowledge: Knowledge) -> Answer:
    """The setting asked about; for stabilisation the focal length to enter, with and without usual glass."""
    rows = named_or_near(question, knowledge, 2)
    told = _stabilised(question, knowledge) if any(row.id == STABILISATION for row in rows) else Told()
    lines = [*told.lines, *advice_lines(rows)]
    if not lines:
        text = (
            "Nothing in the facts answers that. Name the setting: release without lens, meter, stabilisation, peaking."
        )
        lines = [Line("text", text)]
    return Answer(
        question.text, "gear-setting", ANSWERED if rows else NO, tuple(lines), question=question,
        quantities=told.quantities,
    )  # fmt: skip


def _stabilised(question: Question, knowledge: Knowledge) -> Told:
    """Focal length times the factor of the glass told; else plain, and behind the usual reducer and extender."""
    factor = glass_factor(question, knowledge.catalogue)
    lines: list[Line] = []
    rows: list[Quantity] = []
    for focal in focals(question):
        for each in (factor, None) if factor is not None else (None, *_usual_factors(knowledge)):
            value = focal * (each or 1.0)
            case = f"with {each:g}x" if each is not None else "plain ring"
            rows.append(Quantity("ibis_focal_mm", Interval.exact(value), case))
            first = each == factor
            lines.append(Line("head" if first else "fact", f"enter {trimmed(value, 1)} mm {case}", 0 if first else 1))
    return Told(tuple(lines), tuple(rows))


def _usual_factors(knowledge: Knowledge) -> list[float]:
    """The factor that most reducers have, and that most teleconverters have."""
    out = []
    for kind in ("focal-reducer", "teleconverter"):
        factors = [row.factor for row in knowledge.catalogue.adapters.values() if row.kind == kind and row.factor]
        out += [factor for factor, _ in Counter(factors).most_common(1)]
    return out
