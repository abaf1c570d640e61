"""A pitch told in threads per inch, in mm a turn; and one in mm in threads per inch, where that is asked."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions, pitch_mm
from engine.answers.parts.wording import trimmed
from engine.base.interval import Interval
from engine.base.units import MM_PER_INCH
from grammar.questions import Question

_PER_INCH = "tpi"
_INCHES = "in-"
_USED = ("turns", "other_pitch", "travel")  # keys of what a pitch is told for; else it is asked itself


def pitch_said(question: Question) -> Told:
    """'what is 32 tpi in mm', 'set my lathe for 26 tpi, what pitch in mm'."""
    pitch = pitch_mm(question)
    if pitch is None or any(question.said(key) is not None for key in _USED):
        return Told()
    per_inch = MM_PER_INCH / pitch
    thread = question.said("thread") or ""
    in_mm = _INCHES in thread and mentions(question, "pitch-in-mm")  # '1 in-32', for a metric lathe
    if in_mm or _PER_INCH in (question.said("pitch") or "") + thread:
        text = f"{trimmed(per_inch, 2)} tpi is {trimmed(pitch, 4)} mm a turn: 25.4 / {trimmed(per_inch, 2)}."
    elif mentions(question, "per-inch"):
        text = (
            f"{trimmed(pitch, 3)} mm of pitch is {trimmed(per_inch, 2)} threads per inch: 25.4 / {trimmed(pitch, 3)}."
        )
    else:
        return Told()
    return Told((Line("head", text),), (Quantity("thread_pitch_mm", Interval.exact(pitch), "as told"),))
