"""A frame told after a body whose mount has none so large: 'on APS-C' after MFT is another body's frame."""

from __future__ import annotations

from typing import Final

from engine.answers.picture.film_again import with_film_again
from engine.answers.picture.frame_of_mount import with_frame_of_mount
from engine.answers.picture.frames_of_both import with_frames_of_both
from engine.answers.picture.sensor_width import with_both_sides as with_both_sides  # of a frame too
from engine.facts.catalogue import Catalogue
from grammar.kinds import PICTURED
from grammar.questions import Question, Thing

_LARGER: Final = 1.1  # by so much a frame is larger than what a mount is built for


def with_frame_alone(question: Question, facts: Catalogue) -> Question:
    """The question of that frame alone, where the body spoken of before cannot have it; else of the mount's own."""
    question = with_frames_of_both(with_frame_of_mount(with_film_again(question, facts), facts), facts)
    body = question.body
    if not question.follows or question.intent not in PICTURED or len(question.bodies) != 1 or body is None:
        return question
    mount = facts.mounts.get(body.id or "") if body.kind == "mount" else None
    told = facts.formats.get(body.format or "")
    before = question.prior.body if question.prior is not None else None
    if mount is None or told is None or not mount.formats or before is None or before.ids != body.ids:
        return question
    largest = max((facts.formats[one].diagonal_mm for one in mount.formats if one in facts.formats), default=0.0)
    if not largest or told.diagonal_mm <= _LARGER * largest:
        return question
    return question.with_(bodies=(), things=(*question.things, Thing("format", (told.id,), told.name)))
