"""An objective that bears the infinity sign is none for a fixed tube, whatever most of its thread are."""

from __future__ import annotations

from typing import Final

from engine.answers.found.thread_told import NEEDS_TUBE_LENS
from engine.answers.parts.near_enough import thread_width_mm
from engine.answers.parts.said import mentions, numbers
from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from grammar.questions import Question

SAID: Final = "infinity-objective"  # key of the words for it
MICROSCOPE: Final = "microscope"  # kind of the mounts


def with_infinite_objective(question: Question, facts: Catalogue) -> Question:
    """The question with the mount of infinity objectives of the thread told, or of the thread of the one named."""
    lens = question.lens
    own = facts.mounts.get(lens.ids[0]) if lens is not None and lens.ids else None
    if lens is None or own is None or own.kind != MICROSCOPE or NEEDS_TUBE_LENS in own.traits:
        return question
    if not mentions(question, SAID):
        return question
    rows = [one for one in facts.mounts.values() if one.kind == MICROSCOPE and NEEDS_TUBE_LENS in one.traits]
    told = numbers(question, "thread")[:1]
    threads = {one.id: facts.threads[one.thread or ""].major_mm.nominal for one in rows if one.thread in facts.threads}
    near = thread_width_mm(facts)
    wide = [one.id for one in rows if told and abs(threads.get(one.id, 0.0) - told[0]) <= near]
    ids = wide or [one.id for one in rows if one.thread == own.thread]
    if not ids:
        return question
    lenses = tuple(replace(one, ids=tuple(ids)) if one is lens else one for one in question.lenses)
    return question.with_(lenses=lenses)
