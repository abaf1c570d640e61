"""Where a distance stands on a focus scale: 'where is 3 m on the scale', which tells of no infinity."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions, number
from engine.answers.parts.wording import distance
from engine.answers.remarking import remarked
from engine.answers.shims.carried import is_limit
from engine.answers.shims.loose import off_by_mm
from engine.base.interval import Interval, is_known
from engine.physics import calibration
from grammar.questions import OFF, Question
from grammar.words.mentioned import Mention

ASKED = "mark-wanted"


def where_on_scale(question: Question, knowledge: Knowledge) -> Told:
    """Its own mark while nothing is told of an error; after a mark of infinity the scale as it is then."""
    told = question.distance_mm or number(question, "mark")
    if told is None or not mentions(question, ASKED) or off_by_mm(question) is not None:
        return Told()
    if mentions(question, "infinity-falls-at", "past-infinity"):
        return Told()
    before = question.prior
    if before is not None and (mark := number(before, "mark")) is not None:
        return _on_that_seat(question, before, mark, knowledge)
    if before is not None and _is_off(before):
        return Told()
    at, other = distance(told, question.feet), distance(told, not question.feet)
    text = (
        f"At its {at} mark ({other}), while the lens sits right on its body. By how much is it too far out or too"
        " close? With that, or the mark where infinity is sharp, the scale is told anew."
    )
    return Told((Line("head", text),))


def _is_off(before: Question) -> bool:
    """Whether the turn before told of an error, or of a ring by its length: then the scale is told for that seat."""
    sized = any(one.thickness_mm is not None for one in before.adapters)
    return sized or before.distance_mm is not None or off_by_mm(before) is not None


def _on_that_seat(question: Question, before: Question, mark_mm: float, knowledge: Knowledge) -> Told:
    """The scale on a seat that puts infinity on a mark: too close by f²/(mark - 2f), thin lens."""
    lenses = focals(before)
    if len(lenses) != 1 or is_limit(before):
        return Told()
    error = calibration.shim_from_mark_mm(Interval.exact(mark_mm), Interval.exact(lenses[0]), Interval.exact(0.0))
    if not is_known(error):
        return Told()
    at = len(question.text)
    asked = question.with_(
        values=(*question.values, ("thickness", f"{error.nominal:.4g} mm"), (OFF, "too close")),
        mentioned=(*question.mentioned, Mention("sits-too-close", at, at)),
    )
    return remarked(asked, knowledge)
