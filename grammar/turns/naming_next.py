"""'what is a helicoid' - 'and a bellows?': a few words that only name a thing ask what that is, too.

'what is an E mount' - 'and Z' names a second mount, no body that lenses of the first are to go on.
"""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import DEFINITION
from grammar.questions import Question
from grammar.telling import built

_GOING_ON: Final = frozenset(["and", "or", "so", "its"])  # words that open what goes on
_ABOUT: Final = ("what about", "how about")
_TOO: Final = (" too", " as well", " also")
_PLACING: Final = frozenset(["on", "to", "for", "with", "from", "in", "at", "without"])
_PITCH: Final = "pitch"
_MOST_WORDS: Final = 6


def named_next(heard: Heard, before: Question) -> Question | None:
    """What a thing is that is only named after another was told of; None where the text asks or tells more.

    What a mount has is asked of the mount that was told of.
    """
    if before.intent != DEFINITION or before.wants or len(heard.line.tokens) > _MOST_WORDS or not _goes_on(heard.text):
        return None
    tells_more = heard.readings.values or heard.readings.limits or heard.readings.f_number or heard.readings.number
    placed = any(token.kind == "PREP" and token.text.casefold() in _PLACING for token in heard.line.tokens)
    terms = any(spoken.kind == "term" for spoken in heard.line.spoken)
    mounts = [part for part in (*heard.cast.lenses, *heard.cast.bodies) if part.has_mount]
    described = any(part.focal for part in heard.cast.lenses)
    if tells_more or placed or described or not (terms or mounts):
        return None
    asked = built(heard, DEFINITION)
    if mounts or not (_is_of_a_mount(heard) and (before.lenses or before.bodies)):
        return asked
    # 'flange distance of Z' - 'and throat?': that of the mount spoken of
    return asked.with_(lenses=before.lenses, bodies=before.bodies, follows=True, prior=before)


def _is_of_a_mount(heard: Heard) -> bool:
    """Whether it is a measure that a mount has: its register, throat, pitch."""
    return heard.tells(_PITCH) or any(token.kind == "MEASURE" for token in heard.line.tokens)


def _goes_on(text: str) -> bool:
    line = text.casefold().strip()
    first = line.partition(" ")[0].rstrip(",")
    return first in _GOING_ON or line.startswith(_ABOUT) or line.rstrip("?! .").endswith(_TOO)
