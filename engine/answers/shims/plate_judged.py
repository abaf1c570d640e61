"""Whether infinity is there with glass put behind a lens, or taken out from behind it, where no body is told."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions, stop
from engine.answers.parts.wording import distance, ranged, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import USUAL_FORMAT
from engine.answers.seat.standin import as_listed, judged_alone
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from grammar.kinds import FOCUS_VERDICT
from grammar.questions import Question


def with_plate_judged(
    answer: Answer, question: Question, glass_mm: float, shift: Interval, knowledge: Knowledge
) -> Answer:
    """The answer for the one lens named, on a seat that was right without the glass, or with it where it is gone.

    `shift`: how far the glass, `glass_mm` thick, moves the image back, mm. The answer as it is where a body is told.
    """
    lenses = [one for one in focals(question) if one != glass_mm]
    ringed = any(one.thickness_mm is not None for one in question.adapters if one.piece != "filter")
    if answer.intent != FOCUS_VERDICT or answer.chains or question.bodies or len(lenses) != 1 or ringed:
        return answer
    (focal,), gone = lenses, mentions(question, "glass-gone", "glass-left-out")
    error = shift if gone else -shift
    lens, by, what = Distances(focal, knowledge.catalogue), ranged(shift, small_mm), f"{trimmed(glass_mm, 2)} mm"
    end = lens.from_sensor(error.nominal) if gone else lens.mark(error.nominal)
    if not is_known(end):
        return answer
    at, of = distance(end.nominal, question.feet), f"{trimmed(focal, 1)} mm lens"
    if gone:
        text = (
            f"With its {what} of glass out from behind it the image lies {by} nearer to the lens: on a seat that was"
            f" right with it the {of} sits {by} too far out, and nothing beyond {at} comes sharp, unless it turns past"
            f" infinity. Put a clear plate as thick back in, or take {by} off the seat."
        )
    else:
        text = (
            f"Yes: {what} of glass behind the lens moves the image {by} back, t(1 - 1/n): on a seat that was right the"
            f" {of} sits {by} too close, infinity at its {at} mark. A shim of {by} puts it back on the sign; then the"
            " glass, or a clear one as thick, has to stay in."
        )
    name = "far_from_sensor_mm" if gone else "scale_mark_mm"
    rows = (
        Quantity("glass_shift_mm", shift), Quantity("register_error_mm", error), Quantity("shim_mm", shift),
        Quantity(name, end, of),
    )  # fmt: skip
    pieces = (("extension-tube", error.nominal, error.nominal),)
    judged = judged_alone(focal, stop(question), pieces, knowledge.catalogue.formats[USUAL_FORMAT], knowledge)
    chain = as_listed(judged, f"a {of} with {what} of glass {'taken out' if gone else 'behind it'}")
    return replace(answer, lines=(Line("head", text),), quantities=rows, chains=(chain,))
