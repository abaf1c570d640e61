"""What may be seen in a follow-up of another thread or mount than the lens has: it binds, takes it, or is not it."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import (
    BUY_PLAN,
    CHAIN,
    CROP_EQUIVALENT,
    DEFINITION,
    DIY_DIMENSION,
    FOCUS_VERDICT,
    MACRO_DISTANCE,
)
from grammar.questions import RING, Question
from grammar.turns.turn_seen import Turn
from grammar.turns.whom import is_definite
from grammar.words.groups import DENYING, LOOKED_AT, MADE_SURE, SCREW

_PUT_ON: Final = frozenset([CHAIN, FOCUS_VERDICT, DIY_DIMENSION, BUY_PLAN, DEFINITION, MACRO_DISTANCE, CROP_EQUIVALENT])
_TAKES: Final = ("ok", "right", "fit-q", "will", "can", "takes", "what-if")
_SCREWS: Final = ("thread", "screw")


def binds_in_its_thread(turn: Turn) -> bool:
    """'too tight when i screw it in' after a lens on a body: whether the two threads are one."""
    screwed = any(one.kind == "MOUNTWORD" and SCREW in one.groups for one in turn.heard.line.tokens)
    screwed = screwed or bool(turn.heard.readings.values.keys() & {"turns"})
    lens = any(one.ids for one in turn.before.lenses)
    return lens and turn.was in _PUT_ON and turn.tells("wont-go") and screwed and not turn.names_things


def asks_of_a_thread(heard: Heard, before: Question) -> bool:
    """'1 mm pitch ok?', 'would an M42 thread do' after a lens of a named thread: whether that takes it, and no word."""
    cast, lens = heard.cast, before.lens is not None and bool(before.lens.ids)
    if heard.tells("what-if") and heard.tells("it-is"):
        return False  # 'what if its the M48 thread': the lens is of that
    asked = any(map(heard.tells, _TAKES)) and not (heard.tells("what-is") or heard.tells("correct"))
    screw = len(cast.lenses) == 1 and any(SCREW in one.groups for one in heard.line.tokens if one.kind == "MOUNTWORD")
    screw = screw or any(one.kind == "MOUNT" and one.text.casefold().endswith(_SCREWS) for one in heard.line.tokens)
    told = (heard.readings.pitch is not None or "thread" in heard.readings.values) and not cast.lenses
    spoken_of = heard.tells("part-named") or _is_of_talk(heard) or cast.lengths
    named = screw and not spoken_of and not any(part.focal or part.subject for part in cast.lenses)
    return lens and asked and (told or named) and not (cast.bodies or cast.frames) and before.intent in _PUT_ON


def _is_of_talk(heard: Heard) -> bool:
    """'the screw one', 'the screw lens': a lens that was spoken of, and no thread that is asked about."""
    part = heard.cast.lenses[0] if len(heard.cast.lenses) == 1 else None
    return part is not None and not part.mounts and part.noun.head is not None and is_definite(heard, part)


def fits_in_a_ring(turn: Turn) -> bool:
    """'does an M42 ring take it' after a lens on a body: what it does by that ring, and no list of bodies."""
    cast = turn.heard.cast
    ring = len(cast.pieces) == 1 and cast.pieces[0].piece == RING and bool(cast.pieces[0].mounts)
    lens = any(one.ids for one in turn.before.lenses) and bool(turn.before.bodies)
    alone = not (cast.bodies or any(not part.by_piece for part in cast.lenses))
    return ring and lens and alone and turn.was in _PUT_ON and turn.tells("takes")


def makes_sure_it_is_not(turn: Turn) -> bool:
    """'how do i make sure its not CS' after a lens: how the two are told apart, and no other lens."""
    tokens, parts = turn.heard.line.tokens, turn.heard.cast.lenses
    parts = [one for one in (*parts, *turn.heard.cast.denied) if not one.is_bare]
    denied = bool(turn.heard.cast.denied) or any(DENYING in one.groups for one in tokens)
    sure = any(MADE_SURE in one.groups for one in tokens) or turn.tells("identify", "check-it")
    sure = sure or any(LOOKED_AT in one.groups for one in tokens)
    other = len(parts) in (1, 2) and all(one.mounts and not one.focal for one in parts) and not turn.heard.cast.bodies
    asked = turn.tells("how", "what", "identify") and any(one.ids for one in turn.before.lenses)
    return other and denied and sure and asked
