"""The things a question names, for the record: lens, body, adapters and the rest."""

from __future__ import annotations

from typing import Any

from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing


def entities_of(question: Question, catalogue: Catalogue) -> dict[str, Any]:
    """Role -> thing, or a list where the question names several."""
    out: dict[str, Any] = {}
    for role, things in (("lens", question.lenses), ("body", question.bodies)):
        rows = [_thing(thing, catalogue) for thing in things]
        if rows:
            out[role] = rows[0] if len(rows) == 1 else rows
    for role, things in (("adapters", question.adapters), ("things", question.things)):
        if things:
            out[role] = [_thing(thing, catalogue) for thing in things]
    if question.f_number is not None:
        out["f_number"] = question.f_number
    if question.distance_mm is not None:
        out["distance_mm"] = question.distance_mm
    if question.topic is not None:
        out["topic"] = question.topic
    out.update(dict(question.values))
    return out


def _thing(thing: Thing, catalogue: Catalogue) -> dict[str, Any]:
    row: dict[str, Any] = {"kind": thing.kind, "id": thing.id, "words": thing.words}
    if thing.kind == "lens" and thing.id is not None and thing.id in catalogue.lenses:
        row["mount"] = catalogue.lenses[thing.id].mount
    elif thing.kind == "body" and thing.id is not None and thing.id in catalogue.bodies:
        row["mount"] = catalogue.bodies[thing.id].mount
    elif thing.kind == "mount":
        row["mount"] = thing.id
    if thing.ambiguous:
        row["may_mean"] = list(thing.ids)
    for name in ("focal_length_mm", "f_number", "format", "lens_kind", "factor", "count"):
        value = getattr(thing, name)
        if value is not None:
            row[name] = value
    if thing.traits:
        row["traits"] = list(thing.traits)
    if thing.thickness_mm is not None:
        row["thickness_mm"] = list(thing.thickness_mm)
    return row
