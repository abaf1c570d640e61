"""An answer with its document: made, saved in a folder where there is one, and where it is."""

from __future__ import annotations

import os
from pathlib import Path

from engine.answers.parts.answer import NO, Answer, Document, Line
from engine.base.compact import replace
from engine.base.newfile import save_new
from engine.base.problem import Problem


def with_document(answer: Answer, folder: Path | None) -> Answer:
    """The answer with the file of its cards; saved as it was named, never over another, where there is a folder."""
    cards = answer.cards
    if cards is None:
        return answer
    from engine.render.cards import page_of

    document = Document(cards.name, ".html", page_of(cards))
    answer = replace(answer, document=document)
    if folder is None:
        return answer
    told = answer.question.said("file") if answer.question else None
    saved = save_new(folder, told or document.name, document.ending, document.text)
    if isinstance(saved, Problem):
        line = Line("ask", f"Not saved: {saved.place.file}: found {saved.found}, expected {saved.expected}.")
        return replace(answer, lines=(line,), status=NO)
    count = len(cards.cards)
    line = Line("head", f"{count} card{'' if count == 1 else 's'} saved as {saved.name} in this folder.")
    return replace(answer, lines=(line, *answer.lines), saved=os.path.abspath(saved))
