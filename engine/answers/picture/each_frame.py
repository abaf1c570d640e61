"""Which frames a circle is asked about: '20 mm circle, Super 16? and MFT?', 'a 27 mm circle on MFT and APS-C'."""

from __future__ import annotations

import re

from engine.answers.picture.frames import SAME_MM
from engine.answers.picture.matching import as_frame
from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from grammar.questions import Question, Thing


def with_each_frame(question: Question, facts: Catalogue) -> Question:
    """The question with every frame told as one of its own, where the circle is told and the lens is only 'a lens'."""
    question = as_frame(question, facts)
    bare = not any(one.ids or one.focal_length_mm or one.lens_kind or one.traits for one in question.lenses)
    if question.said("circle") is None or not bare or question.adapters:
        return question
    told = [*question.things]
    bodies: list[Thing] = []
    for body in question.bodies:
        own = _too_large(body, facts)
        if own is None:
            bodies.append(body)
            continue
        told.append(Thing("format", (own.id,), own.name, body.column))
        told.append(Thing("format", (body.format or "",), body.words, body.column + 1))
    lent = [lens for lens in question.lenses if _is_asked_behind(lens, question, facts)]
    told += [Thing("format", (lens.format or "",), lens.words, lens.column) for lens in lent]
    if len(told) == len(question.things):
        return question
    alone = [body for body in bodies if not (lent and body.kind == "mount")]
    gone = [facts.mounts[body.id or ""].format for body in bodies if body not in alone and body.id in facts.mounts]
    told += [Thing("format", (name,), "", len(question.text)) for name in gone if name]
    lenses = tuple(replace(lens, format=None) if lens in lent else lens for lens in question.lenses)
    return question.with_(things=tuple(told), bodies=tuple(alone), lenses=lenses)


def _too_large(body: Thing, facts: Catalogue) -> Format | None:
    """The frame of a mount of which no body has one so large as was told with it."""
    mount, told = facts.mounts.get(body.id or ""), facts.formats.get(body.format or "")
    largest = facts.formats.get(mount.format or "") if mount is not None and body.kind == "mount" else None
    if told is None or largest is None or told.diagonal_mm <= largest.diagonal_mm + SAME_MM:
        return None
    return largest


def _is_asked_behind(lens: Thing, question: Question, facts: Catalogue) -> bool:
    """Whether the format read of the lens is named behind its circle: 'a lens with a 20 mm circle, does it do S16'."""
    form, circles = facts.formats.get(lens.format or ""), question.places("of-circle")
    if form is None or not circles:
        return False
    behind = re.sub(r"[\s-]", "", question.text[circles[-1].end :].casefold())
    names = (re.sub(r"[\s-]", "", name.casefold()) for name in (form.name, form.id, *form.aliases))
    return any(name and name in behind for name in names)
