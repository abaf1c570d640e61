"""The chains that a reason or a remedy is asked of, where the seat was told to be off since they were listed."""

from __future__ import annotations

from collections.abc import Callable

from engine.answers.parts.answer import Answer
from engine.answers.parts.wording import READS_MM
from engine.answers.shims.loose import off_by_limit, off_by_mm
from engine.base.interval import Interval
from engine.base.span import Span
from engine.facts.catalogue import Catalogue
from engine.judging.ranking import Listed
from grammar.kinds import WHY
from grammar.questions import OFF, Question

REMEDY = "remedy"  # what would put right the chain that was told


def as_off(
    question: Question, rows: tuple[Listed, ...], facts: Catalogue, chains_first: Callable[[Question], Answer]
) -> tuple[Listed, ...]:
    """The chains listed last; where none of them is off by as much as was told since, those of a seat that is.

    'why' after 'it stops at 4 m' is asked of the ring that is there, and not of one that would be right.
    """
    asked = question.intent == WHY or question.topic == REMEDY
    if not (question.follows and asked and rows) or question.adapters:
        return rows
    told = off_by_mm(question) if question.said(OFF) is not None else off_by_limit(question, facts)
    if told is None or any(abs(error_mm(row) - told) < READS_MM for row in rows):
        return rows
    return tuple(chain.listed for chain in chains_first(question.with_(topic=None)).chains or ()) or rows


def error_mm(row: Listed) -> float:
    """By how much the ring of a chain leaves the lens too far out; below 0 too close, as rings are made."""
    error = row.judged.trace.value("register_error_mm")
    shortest = error.shortest if isinstance(error, Span) and error.is_fixed else None
    return shortest.nominal if isinstance(shortest, Interval) else 0.0
