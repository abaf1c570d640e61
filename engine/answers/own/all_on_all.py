"""All of one's own lenses on all of one's own bodies at a glance: how far each focuses, and how much it lights."""

from __future__ import annotations

from collections.abc import Iterator

from engine.answers.own.own_cases import Case, as_interval, on_body
from engine.answers.own.own_places import own
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.wording import FULL, distance, percent
from engine.base.interval import Interval
from engine.facts.kinds import VERDICTS
from grammar.questions import Question

IS_MISSING = "Behind a question mark a fact is missing."


def all_on_all(question: Question, knowledge: Knowledge) -> Answer:
    """A row for each lens, a column for each body."""
    facts = knowledge.catalogue
    lenses = [side for thing in own(facts, "lens") if isinstance(side := lens_side(thing, facts), LensSide)]
    things = question.bodies or own(facts, "body")
    bodies = [body for thing in things if isinstance(body := body_side(thing, facts), BodySide)]
    if not lenses or not bodies:
        what = "lenses" if not lenses else "bodies"
        example = "my avocet is a 25mm f/1.4 C-mount lens" if not lenses else "my skiff is an E-mount APS-C body"
        text = f"No {what} of yours are known. Tell them, one by one: '{example}'; then 'yes'."
        return Answer(question.text, question.intent, NO, (Line("ask", text),), question=question)
    head = f"{len(lenses)} lenses on {len(bodies)} {'bodies' if len(bodies) > 1 else 'body'}, each by its best way:"
    lines = [Line("head", head), Line("columns", "\t".join(["lens", *(body.words for body in bodies)]))]
    rows: list[Quantity] = []
    for lens in lenses:
        cells = [lens.words]
        for body in bodies:
            case = on_body(question, lens, body, knowledge)
            cells.append(cell(case, question.feet))
            rows += _quantities(case, f"{lens.words} on {body.words}")
        lines.append(Line("row", "\t".join(cells)))
    lines += _legend(lenses[0].words, bodies[0].words, any("?" in line.text for line in lines))
    return Answer(question.text, question.intent, ANSWERED, tuple(lines), question=question, quantities=tuple(rows))


def _legend(lens: str, body: str, is_open: bool) -> Iterator[Line]:
    missing = f" {IS_MISSING}" if is_open else ""
    yield Line("text", f"How far it focuses by its best way, then the share of the frame lit.{missing}")
    yield Line("caution", (
        f"before you mount one, ask for it by name ('{lens} on {body}'): that tells the ring, the iris, what to "
        "measure first and what to beware of."
    ))  # fmt: skip


def cell(case: Case, feet: bool = False) -> str:
    """'infinity 100 %'; 'to 3.6 m 62 %'; 'no way': how far it focuses, then the share of the frame lit."""
    far = far_text(case, feet)
    return far if case.judged is None or "no use" in far else f"{far} {lit_text(case)}"


def far_text(case: Case, feet: bool = False) -> str:
    """How far it focuses, in a word or two; a question mark behind what hangs on a fact that is missing."""
    judged = case.judged
    if judged is None:
        return "no way"
    best = judged.best if judged.certainty == "unknown" else judged.verdict
    open_ = "?" if judged.certainty in ("unknown", "borderline") and judged.best != judged.worst else ""
    danger = "DANGER " if any(row.severity == "danger" and row.decided for row in judged.findings) else ""
    if best == VERDICTS[-1]:
        return f"{danger}no use{open_}"
    far = "infinity"
    if best != VERDICTS[0]:
        value = as_interval(judged.measured_trace.value("far_from_sensor_mm"))
        far = f"to {distance(value.nominal, feet)}" if value is not None and value.nominal > 0 else "close up"
    return f"{danger}{far}{open_}"


def lit_text(case: Case) -> str:
    lit = case.value("lit_share")
    if not isinstance(lit, Interval):
        return "lit unknown"
    low, high = (percent(share).removesuffix(" %") for share in (lit.least, lit.greatest))
    return "100 %" if lit.least > FULL else f"{high} %" if low == high else f"{low}-{high} %"


def _quantities(case: Case, name: str) -> list[Quantity]:
    judged = case.judged
    if judged is None:
        return []
    found = [Quantity("reaches_infinity", _reach(case), name)]
    for quantity in ("lit_share", "far_from_sensor_mm"):
        value = as_interval(case.value(quantity))
        if value is not None:
            found.append(Quantity(quantity, value, name))
    return found


def _reach(case: Case) -> Interval:
    judged = case.judged
    assert judged is not None
    if judged.certainty in ("certain", "likely"):
        return Interval.exact(float(judged.verdict == VERDICTS[0]))
    return Interval.between(float(judged.worst == VERDICTS[0]), float(judged.best == VERDICTS[0]))
