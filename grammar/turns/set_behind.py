"""What stands so far behind the subject: 'background blur 5 m behind', 'the wall 3 m behind' after one at 2 m."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.hearing import Heard
from grammar.kinds import DEPTH_OF_FIELD
from grammar.questions import Question
from grammar.readings.kept_readings import mm

_BEHIND: Final = "behind"
_POINT: Final = "distance"  # the key of a distance beside that of the subject
_GLASS: Final = frozenset(["LENS", "PIECE", "ADAPTER", "MOUNT", "FRAME"])  # behind these nothing far stands


def set_behind(heard: Heard, said: Question, before: Question) -> Question:
    """What is said, with the subject where it was, and what stands behind it so far off beside it."""
    told, subject = said.distance_mm, before.distance_mm
    if told is None or subject is None or said.intent != DEPTH_OF_FIELD or not is_behind(heard):
        return said
    return said.with_(distance_mm=subject, values=(*said.rest(_POINT), (_POINT, mm(subject + told))))


def is_behind(heard: Heard) -> bool:
    """Whether a distance is told that something stands behind the subject."""
    tokens = [one for one in heard.line.tokens if one.kind not in ("DET", "MARK")]
    for at, (one, other) in enumerate(pairwise(tokens)):
        if one.kind == "LENGTH" and one.unit not in ("mm", "in") and other.value == _BEHIND:
            after = tokens[at + 2] if at + 2 < len(tokens) else None
            return after is None or after.kind not in _GLASS
    return False
