"""A body told by its mount 'or' a frame: 'MFT or APS-C for a 2/3 in lens' asks of the mount's own frame and of that."""

from __future__ import annotations

import re
from typing import Final

from engine.facts.catalogue import Catalogue
from grammar.kinds import PICTURED
from grammar.questions import Question, Thing

_SET_AGAINST: Final = "or-between"
_WORDS: Final = 3  # at most beside the join: 'an mft body or an aps-c'


def with_frames_of_both(question: Question, facts: Catalogue) -> Question:
    """The question of both frames and of no body; as it was where the frame is that of the body named."""
    body, frames = question.body, question.frames
    if question.intent not in PICTURED or len(question.bodies) != 1 or len(frames) != 1 or body is None:
        return question
    mount = facts.mounts.get(body.id or "") if body.kind == "mount" and body.format is None else None
    own = facts.formats.get(mount.format or "") if mount is not None else None
    if own is None or own.id == frames[0].id or not _are_set_apart(question, body, frames[0]):
        return question
    return question.with_(bodies=(), things=(Thing("format", (own.id,), own.name, body.column), *question.things))


def _are_set_apart(question: Question, body: Thing, frame: Thing) -> bool:
    """Whether no more than 'or' and the like stands between the two."""
    first, last = sorted((body, frame), key=lambda one: one.column)
    begin, end = first.column - 1, last.column - 1
    joins = [one for one in question.places(_SET_AGAINST) if begin <= one.at and one.end <= end]
    if not joins:
        return False
    between = question.text[begin + len(first.words) : joins[0].at]
    behind = question.text[joins[0].end : end]
    return len(re.findall(r"\w+", f"{between} {behind}")) <= _WORDS
