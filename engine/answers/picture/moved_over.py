"""Which frame one comes from and which one goes to: 'a full-frame shooter with a 50, going over to MFT'."""

from __future__ import annotations

from typing import Final

from engine.answers.picture.same_depth import formats_told
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from grammar.questions import Question

_TO: Final = "moves-over-to"
_NEAR: Final = 16  # characters from the phrase to the frame


def moved_over(question: Question, facts: Catalogue) -> tuple[Format, Format] | None:
    """The frame that was used and the one that takes its place; None where no move between two is told."""
    told = sorted(formats_told(question, facts), key=lambda row: row[0].column)
    for said in question.places(_TO):
        rows = [form for thing, form in told if thing.column and 0 <= thing.column - 1 - said.end <= _NEAR]
        others = [form for _, form in told if rows and form.id != rows[0].id]
        if others:
            return others[0], rows[0]
    return None
