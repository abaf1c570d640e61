"""What the pieces that are told come to: sheets alone, or rings with the depth of the body behind them."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.wording import READS_MM, small_mm, trimmed
from engine.answers.shims.sheets import sheets_summed
from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.base.span import Span
from engine.judging.judge import Judged
from grammar.kinds import SHIM_CALIBRATION
from grammar.questions import Question

TO_SENSOR: Final = "flange-to-sensor"


def with_total(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what all pieces come to, from flange to flange and on to the sensor; sheets by themselves."""
    sized = any(one.thickness_mm is not None for one in question.adapters)
    if question.spaced is not None and question.spaced.asked:
        return answer
    if (sized or question.mentions(TO_SENSOR)) and answer.chains:
        whole = _of_chain(answer.chains[0].listed.judged, question, knowledge)
        return answer if whole is None else replace(
            answer, lines=(whole[0], *answer.lines), quantities=(*whole[1], *(answer.quantities or ()))
        )  # fmt: skip
    summed = sheets_summed(question)
    if sized or not summed.lines:
        return answer
    return replace(answer, status=ANSWERED, lines=summed.lines, chains=None, quantities=summed.quantities)


def _of_chain(judged: Judged, question: Question, knowledge: Knowledge) -> tuple[Line, tuple[Quantity, ...]] | None:
    """How long the pieces are, with the body and without it, and how far that is from what the lens wants."""
    seat = judged.measured_trace.value("seat_mm")
    sides = body_side(question.body, knowledge.catalogue), lens_side(question.lens, knowledge.catalogue)
    body, lens = (side.mount.register_mm if isinstance(side, (BodySide, LensSide)) else UNKNOWN for side in sides)
    if not isinstance(seat, Span) or not seat.is_fixed or not is_known(seat.shortest) or not is_known(body):
        return None
    thick, deep = seat.shortest.nominal, body.nominal
    whole = round(thick + deep, 3)
    laid = question.laid[0]
    parts = f" (the ring {trimmed(thick - laid, 3)}, the sheet under it {trimmed(laid, 3)})" if laid else ""
    text = f"{small_mm(thick)} from flange to flange{parts}"
    text += f", and with the {trimmed(deep, 3)} mm behind the body's flange {trimmed(whole, 3)} mm to the sensor"
    if is_known(lens):
        off = round(whole - lens.nominal, 3)
        way = f"{small_mm(abs(off))} {'more' if off > 0 else 'less'} than" if abs(off) > READS_MM else "just"
        text += f": {way} the {trimmed(lens.nominal, 3)} mm that the lens wants"
    rows = (Quantity("stack_mm", Interval.exact(thick), "pieces"), Quantity("stack_mm", Interval.exact(whole), "whole"))
    return Line("head", f"{text}."), rows


def with_sheets_weighed(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Behind how far off a lens was before: how far it is with the sheets that lie there now."""
    laid = question.laid[0]
    off = [
        row.value.nominal
        for row in answer.quantities or ()
        if row.name == "shim_mm" and isinstance(row.value, Interval)
    ]
    if answer.intent != SHIM_CALIBRATION or not laid or not off:
        return answer
    left = round(laid - off[0], 3)
    way = "too far out" if left > 0 else "too close"
    now = f"it sits {small_mm(abs(left))} {way}" if abs(left) > READS_MM else "it sits right"
    head = Line("head", f"It was {small_mm(off[0])} too close; with the {small_mm(laid)} that lie there now {now}.")
    row = Quantity("register_error_mm", Interval.exact(left), "with the sheets")
    return replace(answer, lines=(head, *answer.lines), quantities=(row, *(answer.quantities or ())))
