"""What a mark of the scale means on a seat of which it was told how far it is off: 'where is its 1 m mark then'."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.said import focals, mentions, numbers
from engine.base.interval import Interval, is_known
from engine.physics import calibration
from grammar.kinds import FOCUS_VERDICT, SHIM_CALIBRATION
from grammar.questions import OFF, Question
from grammar.words.mentioned import Mention

_TWO: Final = 2  # marks: that of infinity, and that asked for
_FOUND: Final = frozenset(["infinity-falls-at", "infinity-wanted"])  # heard of where infinity was found
CLOSE, FAR_OUT = "too close", "too far out"
_HEARD: Final = {CLOSE: "sits-too-close", FAR_OUT: "sits-too-far"}


def as_remark(
    question: Question, before: Question, at: float | None, end: float | None, limit: bool
) -> Question | None:
    """'where does the 1 m mark go', 'if left how bad at 1 m' after infinity at the 3 m mark: that mark on this seat.

    `at`: the mark asked for, `end`: that of infinity, or with `limit` how far focus goes, mm.
    """
    lenses = focals(before)
    if before.intent != SHIM_CALIBRATION or at is None or end is None or len(lenses) != 1:
        return None
    way = before.said(OFF) if before.said("thickness") is not None else None
    again = way in _HEARD  # 'and the 2 m one' after that
    asked = mentions(question, "mark-then") and not mentions(question, "mark-supposed")
    asked = asked or (again and question.said("mark") is not None)
    other = focals(question) not in ((), lenses)
    if (at == end and not again) or not asked or mentions(question, "infinity-named") or other:
        return None
    off = before.said("thickness") if again else _off_by(end, lenses[0])
    way = way if again else FAR_OUT if limit else CLOSE
    if off is None or way is None:
        return None
    rest, place = question.rest("mark", "thickness", "shim", OFF), len(question.text)
    values = (*rest, ("thickness", off), (OFF, way), ("mark", f"{at:g} mm"))
    heard = (*question.mentioned, Mention(_HEARD[way], place, place))
    return question.with_(intent=SHIM_CALIBRATION, distance_mm=None, topic=None, values=values, mentioned=heard)


def with_mark_asked(question: Question) -> Question:
    """'infinity at the 10 m mark, what does 3 m mean then': the nearer mark on the seat that the farther one tells."""
    told, lenses = numbers(question, "mark"), focals(question)
    asked = mentions(question, "mark-meaning", "mark-then") and not mentions(question, "between")
    if len(told) != _TWO or told[0] == told[1] or len(lenses) != 1 or not asked:
        return question
    off = _off_by(max(told), lenses[0])
    if off is None:
        return question
    rest, place = question.rest("mark", "thickness", "shim", OFF), len(question.text)
    values = (*rest, ("thickness", off), (OFF, CLOSE), ("mark", f"{min(told):g} mm"))
    # where infinity was found is used up: what is asked is the other mark
    heard = tuple(one for one in question.mentioned if one.key not in _FOUND)
    return question.with_(distance_mm=None, values=values, mentioned=(*heard, Mention(_HEARD[CLOSE], place, place)))


def on_that_seat(question: Question, before: Question) -> Question | None:
    """'85 mm on the very same ring' after a mark of another lens on a seat that is so much off: it is that seat."""
    way, off = before.said(OFF), before.said("thickness")
    if before.said("mark") is None or way not in _HEARD or off is None or question.said("thickness") != off:
        return None
    rest, place = question.rest("mark", "thickness", OFF), len(question.text)
    if way == CLOSE:
        return question.with_(values=(*rest, ("shim", off)), distance_mm=None)
    heard = (*question.mentioned, Mention(_HEARD[way], place, place))
    values = (*rest, ("thickness", off), (OFF, way))
    return question.with_(intent=FOCUS_VERDICT, distance_mm=None, values=values, mentioned=heard)


def _off_by(end: float, focal: float) -> str | None:
    error = calibration.shim_from_mark_mm(Interval.exact(end), Interval.exact(focal), Interval.exact(0.0))
    return f"{error.nominal:.4g} mm" if is_known(error) else None
