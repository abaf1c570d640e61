"""Whether a fragment changes one part alone - the glass between, the frame, the stop - so that the same is asked."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.questions import Question
from grammar.things.casting import OPTICAL, Part
from grammar.turns.on_what import FULL, LIKENED

_EXTENDER: Final = "teleconverter"
_PLACED: Final = frozenset(["chain", "focus-verdict"])
_OF_GLASS: Final = frozenset(
    ["chain", "focus-verdict", "coverage", "crop-equivalent", "exposure-nd", "depth-of-field", "macro-distance"]
)
_OF_FRAME: Final = frozenset(["chain", "focus-verdict", "exposure-nd", "crop-equivalent", "coverage"])
_OF_STOP: Final = frozenset(
    ["coverage", "crop-equivalent", "depth-of-field", "macro-distance", "exposure-nd", "focus-verdict"]
)
_IDLE: Final = frozenset(
    ["ok", "right", "will", "what-if", "what", "again", "same", "instead", "can", "it-is", "adding", "put-in",
     "what-is", "get", "plain-piece"]
)  # fmt: skip
_ON_FRAME: Final = _IDLE | {"crop", "body-crop", "how"}
_AT_STOP: Final = _IDLE | {"f-stop", "wide-open", "how"}


def changes_one_part(heard: Heard, before: Question) -> bool:
    """'with a 0.71 reducer', 'on the crop body', 'stopped down to 8' after a lens that was asked about."""
    if not (before.lenses or before.bodies or before.frames):
        return False
    if is_set_anew(heard, before):
        return True
    told = _told(heard)
    if told == "glass":
        extended = any(piece.piece == _EXTENDER for piece in heard.cast.pieces) and before.intent in _PLACED
        return before.intent in _OF_GLASS and not extended and _idle(heard, _IDLE)
    if told == "frame":
        return before.intent in _OF_FRAME and not _is_likened(heard) and _idle(heard, _ON_FRAME)
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
    if readings.values.keys() - {"crop"} or readings.distance_mm is not None or readings.number is not None:
        return None
    told = []
    if cast.pieces:
        told.append("glass" if _is_glass(cast.pieces) else "piece")
    if cast.frames or any(part.formats or part.crop for part in cast.bodies):
        told.append("frame" if not any(part.mounts or part.named for part in cast.bodies) else "body")
    elif any(not part.is_bare for part in cast.bodies):
        told.append("body")
    if readings.f_number is not None or heard.tells("wide-open"):
        told.append("stop")
    if cast.without or cast.using or any(not part.is_bare for part in (*cast.lenses, *cast.lengths)):
        told.append("else")
    return told[0] if len(told) == 1 else None


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
