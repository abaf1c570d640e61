"""Whether a follow-up asks which of two mounts a lens has, or whether its mount is the same as another."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import COMPARE, IDENTIFY_MOUNT, LIST_FITS, LOOK_ALIKE
from grammar.questions import Question

_SPOKEN: Final = frozenset([IDENTIFY_MOUNT, LIST_FITS, LOOK_ALIKE])  # what is asked of a mount by itself
_NOT: Final = "not"
_PUT_ON: Final = frozenset(["on", "to", "in", "for"])  # before what a lens goes on
# idle where one more is named
_ONE_MORE: Final = frozenset(["ok", "what", "adding", "will", "what-if", "can", "put-in"])


def chooses_between(heard: Heard, before: Question) -> bool:
    """'does it have to be C or can it be CS' while a lens is identified: it may have either, and none is a body."""
    parts = (*heard.cast.lenses, *heard.cast.bodies)
    either = any(token.kind == "JOIN" and token.value == "or" for token in heard.line.tokens)
    mounts = len(parts) > 1 and all(part.has_mount and not part.focal for part in parts)
    placed = any(part.noun.role in ("on", "to") for part in parts)
    return before.intent == IDENTIFY_MOUNT and not before.bodies and either and mounts and not placed


def is_likened(heard: Heard, before: Question) -> bool:
    """'same as an M42?', 'how does it differ from M42' after one lens of another mount."""
    cast, old = heard.cast, before.lens
    named = [part for part in (*cast.lenses, *cast.bodies) if part.mounts]
    if old is None or old.kind != "mount" or len(before.lenses) != 1 or len(named) != 1 or before.intent not in _SPOKEN:
        return False
    if old.ids[0] in named[0].mounts[0].ids or named[0].focal or named[0].noun.role in _PUT_ON:
        return False
    asked = heard.weighed.best == LOOK_ALIKE or heard.tells("compare-word") or _denies_it(heard, before)
    others = cast.frames or heard.readings.values or any(part.mounts for part in cast.pieces)
    return asked and not others


def _denies_it(heard: Heard, before: Question) -> bool:
    """'not T2?', 'why not T2' after what a lens is: what sets that mount apart from the one that was found."""
    denied = heard.tells("why-not") or any(one.kind == "VERB" and one.value == _NOT for one in heard.line.tokens)
    return before.intent == IDENTIFY_MOUNT and denied and heard.tells("short")


def is_third(heard: Heard, before: Question) -> bool:
    """'and M42?' after two lenses set side by side: the third."""
    cast = heard.cast
    others = cast.bodies or cast.pieces or cast.frames or heard.readings.values or heard.readings.limits
    if before.intent != COMPARE or len(before.lenses) < 2 or len(cast.lenses) != 1 or others:
        return False
    known = {id_ for lens in before.lenses for id_ in lens.ids}
    part = cast.lenses[0]
    new = bool(part.mounts) and not known & set(part.mounts[0].ids)
    return new and not part.subject and all(cue.tells in _ONE_MORE for cue in heard.cues)
