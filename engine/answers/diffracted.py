"""What diffraction makes of a stop, by the f-number that counts where the lens is moved out."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.answers.by_stack import drawn_ends
from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, focals, number
from engine.answers.parts.wording import f_number, times
from engine.answers.picture.fine import diffraction
from engine.answers.picture.moved_out import extension_mm
from engine.facts.records import Format
from grammar.questions import Question

_LEAST: Final = 0.05  # times; smaller, the stop counts for what it is


def largest_scale(question: Question, knowledge: Knowledge) -> float | None:
    """The magnification told, else that of what moves the lens out the farthest; None where nothing does."""
    told, of = number(question, "magnification"), focals(question)
    if told is not None or not of or distance_mm(question) is not None:
        return told
    ends = [x.nominal for _, _, x in drawn_ends(question, knowledge)]
    drawn = max(ends) if ends else extension_mm(question, knowledge.catalogue)
    return drawn / of[0] if drawn and drawn / of[0] >= _LEAST else None


def diffracted(at: float | None, frames: list[Format], question: Question, knowledge: Knowledge) -> Iterator[Told]:
    """The disc at the stop that counts, against what each frame allows."""
    m = largest_scale(question, knowledge)
    if at is not None and m is not None:
        text = f"At {times(m)} f/{f_number(at)} counts as f/{f_number(at * (1 + m))}, taking the pupils for even."
        yield Told((Line("text", text),))
        at *= 1 + m
    for form in frames:
        yield diffraction(at, form, question, knowledge, always=True)


def spread_beside(at: float, form: Format, question: Question, knowledge: Knowledge) -> Told:
    """The same beside the depth at a stop: only where it is past what the frame allows."""
    m = largest_scale(question, knowledge)
    return diffraction(at * (1 + m) if m is not None else at, form, question, knowledge)
