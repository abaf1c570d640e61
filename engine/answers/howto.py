"""How a lens gets on a body, whether it then reaches infinity, and from where to where it focuses."""

from __future__ import annotations

from engine.answers.found.dropped_through import dropped_through
from engine.answers.parts.answer import ANSWERED, Answer, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import number
from engine.answers.parts.usual_mounts import as_held_by_ring, taken_by_format
from engine.answers.picture.filters import filter_answer, for_filters
from engine.answers.seat.told_register import (
    against_name,
    not_of_its_name,
    with_mount_by_register,
    without_claim,
    without_paper,
)
from engine.answers.shims.error_told import error_judged
from engine.answers.shims.loose import off_by_mm
from engine.answers.shims.plate_changed import plate_changed
from engine.answers.ways.pairs import of_known, sides_of
from engine.answers.ways.ring_off import is_gauged, of_ring
from engine.base.compact import replace
from grammar.questions import BODY_OFF, Question


def how_to(question: Question, knowledge: Knowledge, intent: str | None = None) -> Answer:
    """Answer a question about a chain: for one lens on one body, for each pair of several, or for what is missing."""
    facts, question = knowledge.catalogue, without_paper(question, knowledge)
    if for_filters(question, facts):
        return filter_answer(question, knowledge)
    plate = plate_changed(question, knowledge)
    if plate is not None:
        return plate
    bare = not any(lens.ids for lens in question.lenses) and number(question, "flange_to_image") is None
    bare = bare or question.said(BODY_OFF) is not None
    if is_gauged(question) or (bare and off_by_mm(question) is not None):
        mended = of_ring(question, knowledge)[0]
        if mended.lines:  # by how much is told, whatever the lens
            matters = error_judged(question, knowledge)
            told = matters.told + mended
            return Answer(
                question.text, intent or question.intent, ANSWERED, told.lines, question=question,
                chains=matters.chains or None, quantities=told.quantities,
            )  # fmt: skip
    held = as_held_by_ring(question, facts)
    dropped = dropped_through(question, knowledge) if held is question else None
    if dropped is not None:
        return dropped
    question = held
    not_so = against_name(question, knowledge)
    asked = without_claim(question) if not_so.lines else question
    sides = sides_of(with_mount_by_register(asked, knowledge), facts)
    found = of_known(sides, knowledge, intent)
    if found is not None:
        if asked is question:
            return _first(not_of_its_name(question, knowledge), found)
        return _first(not_so, replace(found, question=question))
    usual = _of_usual_mount(asked, knowledge, intent)
    if usual is not None:
        return _first(not_so, usual)
    from engine.answers.incomplete import incomplete  # much that a whole question does without

    answer = incomplete(sides.question, sides.lenses, sides.bodies, knowledge)
    return _first(not_so, answer) if not_so.lines else answer


def _of_usual_mount(question: Question, knowledge: Knowledge, intent: str | None) -> Answer | None:
    """The chains for a lens told by its film alone, by the mount that such lenses mostly have, which is said."""
    usual, taken = taken_by_format(question, knowledge.catalogue)
    found = of_known(sides_of(usual, knowledge.catalogue), knowledge, intent) if taken else None
    return replace(found, lines=(*found.lines[:1], *taken, *found.lines[1:])) if found is not None else None


def _first(told: Told, answer: Answer) -> Answer:
    """The answer with what speaks against a mount that was named before all else."""
    quantities = (*told.quantities, *(answer.quantities or ()))
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=quantities)
