"""Whether a ring that is told by its length is too thick or too thin, first of all where that is asked."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import small_mm
from engine.answers.shims.loose import off_by_mm
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.judging.judge import Judged
from grammar.questions import Question

_RIGHT_MM: Final = 0.02  # what is nearer is as it should be
_DESCRIBED: Final = "described-"
CONFIRMED: Final = "length-confirmed"  # key of 'right?', 'is that correct'
_OFF: Final = ("off-too-thick", "off-too-thin", "off-too-long", "off-too-short")


def with_thickness_asked(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind a yes or no, where the one ring of the first chain was told by its length."""
    if not answer.chains:
        return answer
    judged = answer.chains[0].listed.judged
    if question.mentions(CONFIRMED) and _is_as_it_should_be(judged):
        return replace(answer, lines=(Line("head", f"Yes: {_sums(judged)} is right."), *answer.lines))
    if answer.ring is None or answer.ring.thickness_mm is None:
        return answer
    pieces, error = judged.chain.adapters, judged.measured_trace.value("register_error_mm")
    told = len(pieces) == 1 and pieces[0].id.startswith(_DESCRIBED) and off_by_mm(question) is None
    if not told or not isinstance(error, Span) or not is_known(error.shortest):
        return _unmeasured(answer, question)
    if "?" not in question.text and not question.asks_which_way:
        return answer
    off, right = error.shortest.nominal, small_mm(answer.ring.thickness_mm.nominal)
    if question.mentions(CONFIRMED) and not question.mentions(*_OFF):
        return replace(answer, lines=(Line("head", _confirmed(off, judged)), *answer.lines))
    if abs(off) < _RIGHT_MM:
        return replace(answer, lines=(Line("head", f"No, it is as it should be: {right}."), *answer.lines))
    over = question.mentions("off-too-thick", "off-too-long")
    thick = "too thick" if off > 0 else "too thin"
    under = question.mentions("off-too-thin", "off-too-short")
    text = f"{small_mm(abs(off))} {thick}: right is {right}."
    if not ((over and under) or question.asks_which_way):  # 'too short? too long?'
        text = f"{'Yes' if over == (off > 0) else 'No'}, {text}"
    return replace(answer, lines=(Line("head", text), *answer.lines))


def _is_as_it_should_be(judged: Judged) -> bool:
    """Whether the one ring there is, told by its length, seats the lens within what the depth of focus forgives."""
    pieces, error = judged.chain.adapters, judged.measured_trace.value("register_error_mm")
    told = len(pieces) == 1 and pieces[0].id.startswith(_DESCRIBED)
    if not told or not isinstance(error, Span) or not is_known(error.shortest):
        return False
    allowed = judged.measured_trace.value("infinity_allowance_mm")
    forgiven = allowed.nominal if isinstance(allowed, Interval) else _RIGHT_MM
    return abs(error.shortest.nominal) <= max(_RIGHT_MM, forgiven)


def _sums(judged: Judged) -> str:
    """The right length, and how it comes about."""
    lens, body = judged.setup.lens_mount.register_mm, judged.setup.body_mount.register_mm
    if not (is_known(lens) and is_known(body)):
        return "that"
    room = lens.nominal - body.nominal
    return f"{small_mm(room)} ({small_mm(lens.nominal)} - {small_mm(body.nominal)})"


def _confirmed(off: float, judged: Judged) -> str:
    """'the ring is 9 mm, right?': no, what is, and by how much it is off."""
    return f"No: right is {_sums(judged)}; yours is {small_mm(abs(off))} too {'thick' if off > 0 else 'thin'}."


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
