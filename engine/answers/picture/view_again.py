"""Whether a focal length told beside or after a lens is only what that lens frames like: 'so it is a 75 then'."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.said import mentions, numbers
from engine.answers.picture.crop_factors import crop_of, is_view
from engine.answers.picture.either_focal import of_one_lens
from engine.answers.picture.frames import SAME_MM, frames_named
from engine.answers.picture.views_apart import views_apart
from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from grammar.kinds import CHAIN, CROP_EQUIVALENT, FOCUS_VERDICT, PICTURED
from grammar.questions import Question, Thing

_PAIR: Final = 2
_WAYS: Final = (CHAIN, FOCUS_VERDICT)  # kinds that another lens would be asked of


def as_view(question: Question, before: Question | None, facts: Catalogue) -> Question:
    """The question as one of what the lens of before frames like, where the length told is that; else as it is."""
    if before is None or not question.follows or len(question.lenses) != 1 or before.lens is None:
        return question
    if question.intent not in _WAYS:
        return question  # what to enter for the stabiliser is told of the length itself
    told, own = question.lenses[0].focal_length_mm, before.lens.focal_length_mm
    if told is None or own is None or not mentions(question, "likened-view"):
        return question
    for form in frames_named(question, facts):
        if is_view(own, told, crop_of(form).by_diagonal):
            # which of the body's frames is meant the length tells
            bodies = tuple(replace(body, format=body.format or form.id) for body in question.bodies)
            return question.with_(intent=CROP_EQUIVALENT, topic=None, lenses=(before.lens,), bodies=bodies)
    return question


def on_its_own(question: Question, facts: Catalogue) -> Question:
    """'on full frame' after a body whose mount is built with none so large: that frame, and no such body."""
    if not question.follows:
        return question
    told = question.prior.bodies if question.prior is not None else ()  # 'a 1 inch C camera' is what it was told to be
    # 'and on MFT' after 'a full frame camera': another camera, with the frame of its own mount
    left = {body.format for body in told if not body.ids}
    pictured = question.intent in PICTURED
    bodies = tuple(body if body in told else _as_frame(body, facts, left, pictured) for body in question.bodies)
    return question if bodies == question.bodies else question.with_(bodies=bodies)


def _as_frame(body: Thing, facts: Catalogue, left: set[str | None], pictured: bool) -> Thing:
    mount, told = facts.mounts.get(body.id or ""), facts.formats.get(body.format or "")
    largest = facts.formats.get(mount.format or "") if mount is not None else None
    if told is None or largest is None or told.diagonal_mm <= largest.diagonal_mm + SAME_MM:
        return body
    if told.id in left:
        return replace(body, format=None)
    if not pictured:
        return body
    return Thing("format", (told.id,), body.words, body.column, format=told.id)


def without_view(question: Question, facts: Catalogue) -> Question:
    """'a 50 on APS-C, is that a 75?': of the one lens, where the other length told is what it frames like there."""
    if question.intent != CROP_EQUIVALENT or not 1 <= len(question.lenses) <= _PAIR:
        return question
    if of_one_lens(question) is not question or mentions(question, "which-wider"):
        return question  # 'a 50 or a 75?' asks which of the two it is, 'which is wider' sets two lenses apart
    if views_apart(question, facts).lines:
        return question
    lens = question.lenses[0]
    own = [one.focal_length_mm for one in question.lenses if one.focal_length_mm is not None]
    told = [*own, *numbers(question, "length", "numbers")]
    if len(told) != _PAIR or any(one.ids and one.ids != lens.ids for one in question.lenses):
        return question
    short, long = sorted(told)
    # 'is a 28 on APS-C like a 42': the frame may be read as what the second is made for
    lent = tuple(Thing("format", (one.format,)) for one in question.lenses[1:] if one.format)
    question = question.with_(things=question.things or lent)
    framed = frames_named(question, facts)
    if not any(is_view(short, long, crop_of(form).by_diagonal) for form in framed):
        return question
    meant = next((one for one in question.lenses if one.focal_length_mm == short), replace(lens, focal_length_mm=short))
    values = question.rest("length", "numbers")
    return question.with_(lenses=(meant,), values=values)
