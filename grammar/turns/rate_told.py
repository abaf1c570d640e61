"""A frame rate told after a shutter: 'whats the shutter at 60 fps', 'and at 120p' after 1/50 s."""

from __future__ import annotations

import re
from typing import Final

from grammar.hearing import Heard
from grammar.questions import Question

_SHUTTER: Final = "shutter"
_RATE: Final = "frame_rate"
_ASKED: Final = "shutter-speed"  # the cue that the shutter itself is asked for
_TIME: Final = re.compile(r"1/(\d+(?:\.\d+)?) s")


def without_old_shutter(heard: Heard, said: Question, before: Question) -> Question:
    """The question before without its shutter where another is asked for, or where no frame is open so long."""
    rate, told = said.said(_RATE), before.said(_SHUTTER)
    if rate is None or told is None or said.said(_SHUTTER) is not None:
        return before
    time, number = _TIME.fullmatch(told), re.match(r"\d+(?:\.\d+)?", rate)
    longer = time is not None and number is not None and float(time[1]) < float(number[0])
    if not (longer or heard.tells(_ASKED)):
        return before
    return before.without(_SHUTTER)
