"""A measure of the mount by its name alone: 'register?', 'and flange to film?' asks it of what was spoken of."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard, hear
from grammar.intents import Weighed
from grammar.kinds import IDENTIFY_MOUNT
from grammar.questions import Question
from grammar.words.groups import FIGURE, SCREW
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import Token

# measures that the facts tell of a mount, and how each is asked for in full
_ASKED: Final = {"flange-to-image": "what is the register", "throat": "what is the throat"}
_ASKING: Final = frozenset(["CUE", "PREP"])  # kinds of words that may stand beside the name of a figure
_OF_NAMES: Final = frozenset(["what-is", "what", "which", "it-is", "is-it", "again"])
_IT_IS: Final = frozenset(["it", "be"])
_PITCH: Final = "pitch"  # by which a thread is told
_BESIDE: Final = frozenset(["STOP", "MARK", "JOIN", "FILLER", "DET"])


def with_measure_asked(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """The line as it asks for that measure in full; the same where it holds anything else, or no mount is known."""
    lens = before.lens
    if before.intent != IDENTIFY_MOUNT and (lens is None or not lens.ids):
        return heard
    rest = [token for token in heard.line.tokens if token.kind not in _BESIDE]
    asked = _ASKED.get(rest[0].value) if len(rest) == 1 and rest[0].kind == "MEASURE" else None
    asked = asked or (_by_figure(heard, rest) if before.intent != IDENTIFY_MOUNT else None)
    if asked is None:
        return heard
    again = hear(asked, lexicon, before.intent)
    again = again.as_typed(heard)
    # where it is not known yet which mount it is, each that it may be tells its own
    return replace(again, weighed=Weighed((), {})) if before.intent == IDENTIFY_MOUNT else again


def _by_figure(heard: Heard, rest: list[Token]) -> str | None:
    """'pitch?', 'and its throat', 'how wide inside?': any figure of a mount, told by hardly more than its name."""
    terms = [one.text for one in heard.line.spoken if one.kind == "term" and FIGURE in one.groups]
    words = [token.text for token in rest if FIGURE in token.groups]
    screws = [token for token in rest if token.kind == "MOUNTWORD" and SCREW in token.groups]
    plain = [
        token for token in rest
        if token not in screws and token.kind not in _ASKING and (token.kind != "VERB" or token.value not in _IT_IS)
    ]  # fmt: skip
    idle = all(cue.tells in _OF_NAMES for cue in heard.cues)
    if len(screws) == 1 and idle and not plain and not heard.readings.values:
        return f"what is the {_PITCH}"  # 'its thread?', 'the thread on it again'
    others = [token for token in rest if FIGURE not in token.groups and token.kind not in _ASKING]
    if others or heard.readings.values or not (terms or words):
        return None
    return f"what is the {(words or terms)[0]}"
