"""'the first one, which ring' after which bodies take a lens, or what fits a body: the mount at that place."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.own.own_places import pointed
from engine.answers.parts.answer import Answer, Quantity
from engine.facts.catalogue import Catalogue
from engine.judging.ranking import Listed
from grammar.kinds import CHAIN, COMPARE, LIST_FITS
from grammar.questions import Question, Thing

_SHOWN: Final = "ring_thickness_mm"  # each row of such a list tells it, in their order


def pointed_at(question: Question, rows: Sequence[Listed], last: Answer | None, catalogue: Catalogue) -> Question:
    """The question about that mount, or about the chain of before at that place."""
    before = last.question if last is not None and last.intent == LIST_FITS else None
    mounts = list(dict.fromkeys(row.case for row in _rows(last) if row.case in catalogue.mounts))
    number = question.number or 0
    open_side = before is not None and (bool(before.lenses) != bool(before.bodies))
    if rows or before is None or not open_side or not 1 <= number <= len(mounts) or question.intent == COMPARE:
        return pointed(question, rows) if rows else question
    mount = catalogue.mounts[mounts[number - 1] or ""]
    place = (Thing("mount", (mount.id,), mount.designation),)
    asked = question.with_(intent=CHAIN if question.intent == LIST_FITS else question.intent, number=None)
    return asked.with_(bodies=place) if before.lenses else asked.with_(lenses=place)


def _rows(last: Answer | None) -> Sequence[Quantity]:
    return [row for row in (last.quantities if last is not None else None) or () if row.name == _SHOWN]
