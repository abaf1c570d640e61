"""A tube or ring put between, and nothing asked of it, after what a lens lights or frames: how near it comes."""

from __future__ import annotations

import re
from typing import Final

from grammar.hearing import Heard
from grammar.kinds import OF_FRAMES, SEATED
from grammar.questions import Question
from grammar.things.casting import DRAWN
from grammar.turns.answer_told import LACKING, SOLD_WITHIN_MM, told_as

_SPACER: Final = "spacer"
_EXTENSION: Final = "extension"
_MM: Final = re.compile(r"(\d+(?:\.\d+)?) ?mm")
_THIN: Final = 3.0  # mm, that bring no lens closer to speak of, and take infinity from it
# cues that ask nothing by themselves
_IDLE: Final = frozenset(["ok", "what-if", "what", "can", "will", "adding", "put-in", "get", "again", "now"])
_ADDED: Final = frozenset(["added", "another", "further"])  # values of words that add


def puts_between(heard: Heard, before: Question) -> bool:
    """'and if i add a 5 mm ring', 'with 10 mm of tube behind' after whether a lens covers."""
    cast, lens = heard.cast, before.lens
    others = cast.lenses or cast.bodies or cast.frames or heard.readings.f_number is not None
    known = lens is not None and lens.focal_length_mm is not None and len(before.lenses) == 1
    if before.intent not in OF_FRAMES or others or not known or any(cue.tells not in _IDLE for cue in heard.cues):
        return False
    tubes = [part for part in cast.pieces if part.piece in DRAWN and part.thickness is not None]
    if tubes and len(tubes) == len(cast.pieces):
        return True
    if not cast.pieces:
        return _EXTENSION in heard.readings.values
    rings = all(part.piece not in DRAWN and (part.thickness is not None or part.named) for part in cast.pieces)
    return rings and any(token.kind == "PREP" and token.value in _ADDED for token in heard.line.tokens)


def tube_for_gap(heard: Heard, before: Question) -> float | None:
    """'what if i add a 16 mm tube' after '16.4 mm more would set it right': how long what fills that is, mm."""
    cast = heard.cast
    lacking = told_as(before, LACKING)
    named = cast.bodies or cast.frames or any(part.focal or part.named for part in cast.lenses)
    if not lacking or not before.adapters or named or len(cast.pieces) > 1 or before.intent not in SEATED:
        return None
    tubes = [part.thickness[0] for part in cast.pieces if part.piece in DRAWN and part.thickness is not None]
    keyed = _MM.fullmatch(heard.readings.values.get(_EXTENSION, ""))
    told = tubes[0] if tubes else float(keyed[1]) if keyed and not cast.pieces else None
    return told if told is not None and any(abs(told - one) <= SOLD_WITHIN_MM for one in lacking) else None


def puts_a_washer(heard: Heard, before: Question) -> bool:
    """'with a 1 mm washer under it' after a lens on a body: what so little leaves of infinity."""
    cast = heard.cast
    others = cast.lenses or cast.bodies or cast.frames or any(cue.tells not in _IDLE | {_SPACER} for cue in heard.cues)
    lengths = [part.thickness for part in cast.pieces if part.piece in DRAWN]
    thin = len(lengths) == len(cast.pieces) == 1 and lengths[0] is not None and lengths[0][1] <= _THIN
    return before.intent in SEATED and thin and not others
