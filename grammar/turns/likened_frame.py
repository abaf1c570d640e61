"""Full frame that a view was only likened to is no frame of what is asked later on."""

from __future__ import annotations

from typing import Final

from grammar.kinds import CROP_EQUIVALENT
from grammar.questions import Question, Thing

_FULL: Final = "35mm-full-frame"


def frames_kept(said: Question, before: Question) -> tuple[Thing, ...]:
    """The frames that stay: 'a 25 on MFT, what is that in full frame', then 'does it cover' asks of MFT."""
    frames = tuple(thing for thing in before.things if thing.kind == "format")
    likened = CROP_EQUIVALENT == before.intent != said.intent
    rest = tuple(thing for thing in frames if thing.id != _FULL)
    return rest if likened and (rest or before.bodies) else frames
