"""Pieces that stretch: the draw of a bellows, and whether a piece is told by both ends of its draw."""

from __future__ import annotations

from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import numbers
from engine.answers.parts.usual_mounts import TUBES, usual_mount
from engine.answers.parts.wording import trimmed
from engine.base.interval import is_known
from grammar.questions import Question, Thing

BELLOWS = "bellows"
ENLARGER = "enlarger"


def is_told_by_kind(lens: Thing, question: Question) -> bool:
    """An enlarger lens on a bellows: its flange-to-image follows from its kind, and it stands on no register."""
    return lens.lens_kind == ENLARGER and any(one.piece == BELLOWS for one in question.adapters)


def is_drawn(thing: Thing) -> bool:
    """Whether a piece is told by both ends of its draw: what it adds then hangs on the rings beside it."""
    return thing.thickness_mm is not None and thing.thickness_mm[0] < thing.thickness_mm[1]


def draws(question: Question, knowledge: Knowledge) -> list[tuple[str, float]]:
    """Both ends of the draw of each bellows named: in words, and in mm of extension."""
    return [
        (f"{BELLOWS} drawn {end} to {trimmed(length, 1)} mm", length)
        for thing in question.adapters
        for end, length in zip(("in", "out"), draw_of(thing, question, knowledge) or (), strict=False)
    ]


def draw_of(thing: Thing, question: Question, knowledge: Knowledge) -> tuple[float, float] | None:
    """The shortest and the longest draw of a bellows, mm; None where it is none, or set to one length."""
    adapters = knowledge.catalogue.adapters
    named = adapters.get(thing.id or "") if thing.kind == "adapter" else None
    if (named.kind if named else thing.piece) != BELLOWS:
        return None
    if thing.thickness_mm is not None:
        return thing.thickness_mm if is_drawn(thing) else None
    if numbers(question, "extension", "thickness"):
        return None
    mounts = [*thing.front[:1], *(lens.id for lens in question.lenses if lens.id)]
    mounts += usual_mount(TUBES, knowledge.catalogue)
    for mount in mounts:
        rows = [named] if named else [row for row in adapters.values() if row.kind == BELLOWS and row.front == mount]
        known = [draw for row in rows if is_known(draw := row.thickness_mm.hull())]
        if known:
            return min(draw.least for draw in known), max(draw.greatest for draw in known)
    return None
