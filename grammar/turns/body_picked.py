"""One of the bodies of before, named alone: 'so for E' after a lens on Q or E is asked of that body."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard, hear
from grammar.intents import Weighed
from grammar.kinds import COMPARE
from grammar.questions import Question
from grammar.turns.taking_back import left_out
from grammar.words.lexicon import Lexicon

_BESIDE: Final = frozenset(["STOP", "MARK", "JOIN", "FILLER", "DET", "PREP", "BODY"])
_TWO: Final = 2
_SMALL: Final = frozenset(["and", "so", "then", "on", "just", "only"])  # words that ask nothing


def with_body_picked(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """The line as it names that body; the same where it names anything else, or where no two bodies were told."""
    if len(before.bodies) < _TWO or left_out(heard) or any(cue.tells not in _SMALL for cue in heard.cues):
        return heard
    rest = [one for one in heard.line.tokens if one.kind not in _BESIDE and one.value not in _SMALL and one.text]
    rest = [one for one in rest if one.text.casefold() not in _SMALL]
    known = {body.ids[0]: body for body in before.bodies if body.kind == "mount" and body.ids}
    if len(rest) != 1 or rest[0].kind not in ("MOUNT", "LETTER"):
        return heard
    picked = next((id_ for id_ in rest[0].ids if id_ in known), None)
    if picked is None:
        return heard
    again = hear(f"on {rest[0].text} body", lexicon, before.intent)
    return replace(again, line=replace(again.line, text=heard.text), weighed=Weighed((), {}))


def picks_one_body(heard: Heard, before: Question) -> bool:
    """Whether it is asked of that body after the two were compared: then how the lens goes on it."""
    cast = heard.cast
    named = [mount.ids[:1] for part in cast.bodies for mount in part.mounts]
    alone = not (cast.lenses or cast.pieces or cast.frames or heard.readings.values or heard.weighed.best)
    one = len(named) == 1 and named[0] in [body.ids[:1] for body in before.bodies]
    return before.intent == COMPARE and len(before.bodies) >= _TWO and alone and one
