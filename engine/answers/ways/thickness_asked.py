"""Whether a ring that is told by its length is too thick or too thin, first of all where that is asked."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import right_seat_mm
from engine.answers.parts.wording import small_mm
from engine.answers.shims.loose import off_by_mm
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.judging.judge import Judged
from grammar.questions import Question

_EXACT_MM: Final = 1e-6  # lengths as typed
_DESCRIBED: Final = "described-"
CONFIRMED: Final = "length-confirmed"  # key of 'right?', 'is that correct'
_OFF: Final = ("off-too-thick", "off-too-thin", "off-too-long", "off-too-short")


def with_thickness_asked(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind a yes or no, where the one ring of the first chain was told by its length."""
    if not answer.chains:
        return answer
    judged = answer.chains[0].listed.judged
    off = _off_mm(judged) if off_by_mm(question) is None else None
    if off is not None and question.mentions(CONFIRMED) and not question.mentions(*_OFF) and _is_of_pair(judged):
        return replace(answer, lines=(Line("head", _confirmed(off, judged, knowledge)), *answer.lines))
    if answer.ring is None or answer.ring.thickness_mm is None:
        return answer
    if off is None:
        said_off = question.mentions(*_OFF) or question.asks_which_way
        return _unmeasured(answer, question) if said_off else answer  # 'two rings, same thing, right?'
    if "?" not in question.text and not question.asks_which_way and not question.mentions("by-how-much"):
        return answer
    right = small_mm(answer.ring.thickness_mm.nominal)
    if abs(off) < right_seat_mm(knowledge.catalogue):
        return replace(answer, lines=(Line("head", f"No, it is as it should be: {right}."), *answer.lines))
    over = question.mentions("off-too-thick", "off-too-long")
    thick = "too thick" if off > 0 else "too thin"
    under = question.mentions("off-too-thin", "off-too-short")
    text = f"{small_mm(abs(off))} {thick}: right is {right}."
    either = (over and under) or question.asks_which_way or question.mentions("by-how-much")
    if not either:  # 'too short? too long?', 'how much too long is that'
        text = f"{'Yes' if over == (off > 0) else 'No'}, {text}"
    return replace(answer, lines=(Line("head", text), *answer.lines))


def _off_mm(judged: Judged) -> float | None:
    """By how much the one ring there is, told by its length, is off, above nought too thick; None of any other."""
    pieces, error = judged.chain.adapters, judged.measured_trace.value("register_error_mm")
    told = len(pieces) == 1 and pieces[0].id.startswith(_DESCRIBED)
    return error.shortest.nominal if told and isinstance(error, Span) and is_known(error.shortest) else None


def _is_of_pair(judged: Judged) -> bool:
    """Whether a lens and a body have registers, so that some length is right."""
    ends = [judged.measured_trace.value(f"{side}_register_mm") for side in ("lens", "body")]
    return all(isinstance(one, Interval) and one.nominal > 0 for one in ends)


def _rounds_to(right_mm: float, told_mm: float) -> bool:
    """Whether a length told to a tenth is what the right one rounds to."""
    return abs(told_mm - round(told_mm, 1)) < _EXACT_MM and abs(round(right_mm, 1) - told_mm) < _EXACT_MM


def _confirmed(off: float, judged: Judged, knowledge: Knowledge) -> str:
    """'the ring is 9 mm, right?': yes or no, what is right and how that comes about, and by how much it is off."""
    allowed = judged.measured_trace.value("infinity_allowance_mm")
    near = right_seat_mm(knowledge.catalogue)
    good = abs(off) <= max(near, allowed.nominal if isinstance(allowed, Interval) else 0.0)
    lens, body = (judged.measured_trace.value(f"{side}_register_mm") for side in ("lens", "body"))
    right, sunk = "that", False
    if isinstance(lens, Interval) and isinstance(body, Interval):
        room, sunk = lens.nominal - body.nominal, lens.nominal < body.nominal
        longer, shorter = max(lens.nominal, body.nominal), min(lens.nominal, body.nominal)
        sums = f"{small_mm(longer)} - {small_mm(shorter)}"
        right = f"a cup {small_mm(-room)} deep ({sums})" if sunk else f"{small_mm(room)} ({sums})"
    if good:
        return f"Yes: {right} is right."
    if right != "that" and _rounds_to(abs(room), abs(room + off)):
        return f"Yes, as it is rounded: right is {right}. Measure yours: by {small_mm(abs(off))} it would be off."
    way = ("shallow", "deep") if sunk else ("thick", "thin")
    told = f"right is {right}; yours" if right != "that" else "it"
    return f"No: {told} is {small_mm(abs(off))} too {way[off < 0]}."


def _unmeasured(answer: Answer, question: Question) -> Answer:
    """The answer behind what a ring would have to be that is said to be off, and nobody tells by how much."""
    said = off_by_mm(question) is None and not any(one.thickness_mm or one.factor for one in question.adapters)
    if (
        not (said and question.adapters)
        or question.said("thickness") is not None
        or answer.ring is None
        or answer.ring.thickness_mm is None
    ):
        return answer
    judged = answer.chains[0].listed.judged if answer.chains else None
    forgives = judged.measured_trace.value("infinity_allowance_mm") if judged is not None else None
    right = small_mm(answer.ring.thickness_mm.nominal)
    text = f"By how much is not told: right is {right}"
    if isinstance(forgives, Interval):
        text += f", and what is more than {small_mm(forgives.nominal)} thicker loses infinity"
    ask = Line("ask", "How thick is your ring, from seat to seat, by caliper at four points?", wants="thickness")
    return replace(
        answer, lines=(Line("head", f"{text}. What follows is of a ring as it should be."), ask, *answer.lines)
    )
