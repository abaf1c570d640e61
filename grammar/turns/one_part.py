"""Whether a fragment changes one part alone - the glass between, the frame, the stop - so that the same is asked."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import (
    CHAIN,
    COVERAGE,
    CROP_EQUIVALENT,
    DEPTH_OF_FIELD,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    MACRO_DISTANCE,
    SEATED,
)
from grammar.questions import Question
from grammar.things.casting import OPTICAL, Part
from grammar.turns.on_what import FULL, LIKENED

_EXTENDER: Final = "teleconverter"
_OF_GLASS: Final = frozenset(
    [CHAIN, FOCUS_VERDICT, COVERAGE, CROP_EQUIVALENT, EXPOSURE_ND, DEPTH_OF_FIELD, MACRO_DISTANCE]
)
_OF_FRAME: Final = frozenset([CHAIN, FOCUS_VERDICT, EXPOSURE_ND, CROP_EQUIVALENT, COVERAGE])
_OF_STOP: Final = frozenset([COVERAGE, CROP_EQUIVALENT, DEPTH_OF_FIELD, MACRO_DISTANCE, EXPOSURE_ND, FOCUS_VERDICT])
_IDLE: Final = frozenset(
    ["ok", "right", "will", "what-if", "what", "again", "same", "instead", "can", "it-is", "adding", "put-in",
     "what-is", "get", "plain-piece", "spaced"]
)  # fmt: skip
_SWAPPED: Final = (_IDLE - {"get"}) | {"could-be", "cut", "how"}  # 'actually a Z body', 'make it a 135'
_GLASS: Final = frozenset(["without_glass", "with_glass"])  # limits that a plain ring, or one with glass, sets
_SURELY: Final = 0.88  # wording that leans so far one way asks that, whatever part it changes
_IF: Final = "if"  # 'if I use my 135'
_ON_FRAME: Final = _IDLE | {"crop", "body-crop", "how"}
_AT_STOP: Final = _IDLE | {"f-stop", "wide-open", "how"}


def changes_one_part(heard: Heard, before: Question) -> bool:
    """'with a 0.71 reducer', 'on the crop body', 'stopped down to 8' after a lens that was asked about."""
    if not (before.lenses or before.bodies or before.frames):
        return False
    if is_set_anew(heard, before):
        return True
    told = _told(heard)
    if told == "light":
        return before.intent == EXPOSURE_ND and _idle(heard, _IDLE | _SWAPPED)
    if told == "piece" and _is_plain(heard) and any(one.piece in OPTICAL for one in before.adapters):
        return before.intent in _OF_GLASS and _idle(heard, _IDLE | _SWAPPED)  # 'plain ring then' after a reducer
    if told == "glass":
        extended = any(piece.piece == _EXTENDER for piece in heard.cast.pieces) and before.intent in SEATED
        return before.intent in _OF_GLASS and not extended and _idle(heard, _IDLE | _SWAPPED)
    if told == "frame":
        surely = max(heard.weighed.likely.values(), default=0.0) >= _SURELY  # 'does it light the whole chip'
        other = surely and heard.weighed.best != before.intent
        return before.intent in _OF_FRAME and not (other or _is_likened(heard)) and _idle(heard, _ON_FRAME)
    if told in ("lens", "body"):
        return before.intent in _OF_GLASS and _idle(heard, _SWAPPED | {"get"} if _is_supposed(heard) else _SWAPPED)
    return told == "stop" and before.intent in _OF_STOP and _idle(heard, _AT_STOP)


def is_set_anew(heard: Heard, before: Question) -> bool:
    """'what is it with 60 mm' after a lens: it asks for no word, but the same with what is told."""
    cast = heard.cast
    said = any(one.kind == "term" for one in heard.line.spoken)
    parts = (*cast.lenses, *cast.lengths)
    told = len(parts) == 1 and parts[0].noun.role == "with" and not parts[0].has_mount_or_kind
    return told and not (said or cast.bodies or cast.pieces) and before.lens is not None and _idle(heard, _IDLE)


def _told(heard: Heard) -> str | None:
    """The one part that is told; None where none is, or more than one."""
    cast, readings = heard.cast, heard.readings
    if readings.values.keys() - {"crop", "light"} or readings.distance_mm is not None or readings.number is not None:
        return None
    told = ["light"] if "light" in readings.values else []
    if cast.pieces:
        told.append("glass" if _is_glass(cast.pieces) else "piece")
    if cast.frames or any(part.formats or part.crop for part in cast.bodies):
        alone = len(cast.frames) + len(cast.bodies) == 1 and not any(part.mounts or part.named for part in cast.bodies)
        told.append("frame" if alone else "body" if len(cast.bodies) == 1 and not cast.frames else "else")
    elif any(not part.is_bare for part in cast.bodies):
        told.append("body" if len(cast.bodies) == 1 else "else")
    if readings.f_number is not None or heard.tells("wide-open"):
        told.append("stop")
    lenses = [part for part in (*cast.lenses, *cast.lengths) if not part.is_bare]
    if lenses:
        told.append("lens" if len(lenses) == 1 and lenses[0] in cast.lenses else "else")
    if cast.without or cast.using or cast.denied or readings.limits.keys() - _GLASS:
        told.append("else")
    return told[0] if len(told) == 1 else None


def _is_plain(heard: Heard) -> bool:
    return all(piece.piece == "adapter" and not (piece.thickness or piece.mounts) for piece in heard.cast.pieces)


def _is_supposed(heard: Heard) -> bool:
    return any(token.text.casefold() == _IF for token in heard.line.tokens)


def _is_likened(heard: Heard) -> bool:
    """'like in full frame': the frame that a view is likened to, which no body gets by that."""
    return any(
        part.noun.role in LIKENED and any(FULL in one.ids[:1] for one in part.formats) for part in heard.cast.frames
    )


def _is_glass(pieces: list[Part]) -> bool:
    """Whether a reducer or an extender of a told factor is put between, with a plain ring against it at most."""
    glass = [piece for piece in pieces if piece.piece in OPTICAL and piece.factor is not None]
    plain = [piece for piece in pieces if piece.piece == "adapter" and not (piece.thickness or piece.mounts)]
    return len(glass) == 1 and len(glass) + len(plain) == len(pieces)


def _idle(heard: Heard, idle: frozenset[str]) -> bool:
    return all(cue.tells in idle for cue in heard.cues)
