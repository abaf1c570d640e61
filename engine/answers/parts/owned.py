"""What the gear file knows of the lenses and pieces that a question names, put into the question."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.said import focals, mentions
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Lens
from grammar.questions import Question, Thing


def own_lens(thing: Thing | None, facts: Catalogue) -> Lens | None:
    """The record of a lens that the gear file holds; None for one that is only described."""
    if thing is None or thing.kind != "lens" or thing.id is None:
        return None
    return facts.lenses.get(thing.id)


def with_own_facts(question: Question, facts: Catalogue) -> Question:
    """The question with the focal length and widest stop of each own lens where the question does not tell them.

    Feet and inches are spoken where they are asked for.
    """
    question = _stops_apart(_frames_apart(question, facts))
    lenses = tuple(_filled(thing, facts) for thing in question.lenses)
    feet = question.feet or mentions(question, "in-inches")
    return question.with_(lenses=lenses, feet=feet)


def known_focals(question: Question, facts: Catalogue) -> tuple[float, ...]:
    """Every focal length of the lenses named, in mm, as told or as the gear file has it."""
    return focals(question.with_(lenses=tuple(_filled(thing, facts) for thing in question.lenses)))


def _filled(thing: Thing, facts: Catalogue) -> Thing:
    lens = own_lens(thing, facts)
    if lens is None:
        return thing
    focal = lens.focal_length_mm.nominal if is_known(lens.focal_length_mm) else None
    stop = lens.f_number.nominal if is_known(lens.f_number) else None
    return replace(
        thing,
        focal_length_mm=thing.focal_length_mm if thing.focal_length_mm is not None else focal,
        f_number=thing.f_number if thing.f_number is not None else stop,
    )


def _frames_apart(question: Question, facts: Catalogue) -> Question:
    """A format told beside an own lens whose own is known is the frame asked about, not what it was made for."""
    lenses, frames = [], list(question.things)
    for thing in question.lenses:
        lens = own_lens(thing, facts)
        if thing.format is not None and lens is not None and (lens.made_for or is_known(lens.image_circle_mm)):
            if thing.format != lens.made_for:
                frames.append(Thing("format", (thing.format,), thing.format))
            lenses.append(replace(thing, format=None))
        else:
            lenses.append(thing)
    return question.with_(lenses=tuple(lenses), things=tuple(frames))


_LISTING: Final = (" and", " to", " or", " vs", "&", "->")  # what leads to the second of two stops: 'f2 to f4'


def _stops_apart(question: Question) -> Question:
    """An f-number alone beside a lens whose widest stop is known ('..., f/2') is the stop used, not a second lens."""
    widest = any(thing.kind == "lens" or thing.focal_length_mm for thing in question.lenses)
    if question.f_number is not None or not widest:
        return question
    bare = [thing for thing in question.lenses if thing.f_number is not None and _is_bare(thing)]
    if len(bare) != 1:
        return question
    kept = tuple(thing for thing in question.lenses if thing is not bare[0])
    own = [thing.f_number for thing in kept if thing.f_number is not None]
    listed = question.text[: bare[0].column - 1].casefold().rstrip().endswith(_LISTING)
    stops = (own[0], bare[0].f_number) if len(own) == 1 and listed else question.stops
    return question.with_(lenses=kept, f_number=bare[0].f_number, stops=stops)


def _is_bare(thing: Thing) -> bool:
    told = (thing.ids, thing.focal_length_mm, thing.format, thing.lens_kind, thing.traits)
    return not any(told)
