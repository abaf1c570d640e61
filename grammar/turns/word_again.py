"""The same word is asked of another mount or format: 'and M645' after 'what is the register of P6'."""

from __future__ import annotations

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import DEFINITION
from grammar.questions import Question


def word_again(heard: Heard, before: Question) -> Question | None:
    """The definition with what is named now in place of what was; None where more is said."""
    terms = tuple(thing for thing in before.things if thing.kind == "term")
    cast = heard.cast
    told = (*cast.lenses, *cast.bodies, *cast.frames)
    if before.intent != DEFINITION or not terms or len(told) != 1 or cast.pieces or heard.readings.values or heard.cues:
        return None
    thing = replace(told[0], sort="frame" if told[0] in cast.frames else "lens").thing()
    if not thing.ids or thing.focal_length_mm is not None:
        return None
    is_mount = thing.kind == "mount"
    return before.with_(
        text=heard.text, lenses=(thing,) if is_mount else (), bodies=(), follows=True,
        things=terms if is_mount else (thing, *terms),
    )  # fmt: skip
