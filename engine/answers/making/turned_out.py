"""A lens that stands off its seat by some turns of its thread: so far out, as if a washer lay under it."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.pitch_drift import turned_pitch
from engine.answers.parts.said import number
from engine.answers.seat.described import TUBE, UNSCREWED
from engine.facts.catalogue import Catalogue
from grammar.kinds import FOCUS_VERDICT
from grammar.questions import Question, Thing

_TURNS, _ANGLE, _WHOLE_TURN = "turns", "angle", 360.0  # keys, and degrees
_MOST_TURNS: Final = 4.0  # a lens hangs by its thread no farther out


def with_turned_out(question: Question, facts: Catalogue) -> Question:
    """'my C lens is left half a turn unscrewed, infinity?': with what the turns told hold it off its seat by."""
    told, angle = number(question, _TURNS), number(question, _ANGLE)
    turns = told if told is not None else angle / _WHOLE_TURN if angle is not None else None
    if question.intent != FOCUS_VERDICT or turns is None or not question.mentions("stands-unscrewed"):
        return question
    pitch = turned_pitch(question, facts)
    if pitch is None or not 0 < turns <= _MOST_TURNS:
        return question
    off = round(turns * pitch.nominal, 3)
    spacer = Thing(words=f"{off:g} mm of thread", piece=TUBE, thickness_mm=(off, off), traits=(UNSCREWED,))
    return question.with_(adapters=(*question.adapters, spacer), values=question.rest(_TURNS, _ANGLE))
