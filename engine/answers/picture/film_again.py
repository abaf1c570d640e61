"""'6x9?' after 6x6 negatives that are copied: the film that shall fill the frame, and no sensor so large."""

from __future__ import annotations

from typing import Final

from engine.facts.catalogue import Catalogue
from grammar.numbers.motifs import MOTIF
from grammar.questions import Question

LARGEST_SENSOR: Final = "largest-sensor-diagonal"  # the assumption of what is still a sensor


def with_film_again(question: Question, facts: Catalogue) -> Question:
    """The question with a frame of film told anew as what is copied, onto the frame of before; else as it is."""
    before = question.prior
    copied = before.said(MOTIF) if before is not None and question.follows else None
    if before is None or copied is None or copied != question.said(MOTIF) or not _is_film(copied, facts):
        return question
    old = _frames(before)
    of_lens = {lens.format for lens in question.lenses} - {lens.format for lens in before.lenses}  # '645 ones'
    new = [one for one in (_frames(question) | of_lens) - old if _is_large(one, facts)]
    if len(new) != 1 or not old:
        return question
    things = (*(one for one in question.things if one.kind != "format"), *before.frames)
    values = (*question.rest(MOTIF), (MOTIF, str(new[0])))
    lenses = before.lenses if new[0] in of_lens else question.lenses
    return question.with_(things=things, lenses=lenses, bodies=before.bodies, values=values)


def _frames(question: Question) -> set[str | None]:
    return {*(one.id for one in question.frames), *(body.format for body in question.bodies)} - {None}


def _is_film(copied: str, facts: Catalogue) -> bool:
    """A frame by its name, or a thing as large as one: a slide."""
    thing = facts.motifs.get(copied)
    sides = (thing.long_mm, thing.short_mm) if thing is not None else None
    return copied in facts.formats or sides in {(form.width_mm, form.height_mm) for form in facts.formats.values()}


def _is_large(format_id: str | None, facts: Catalogue) -> bool:
    """Larger than any sensor, so a frame of film."""
    form = facts.formats.get(format_id or "")
    return form is not None and form.diagonal_mm > facts.assumptions[LARGEST_SENSOR].value.nominal
