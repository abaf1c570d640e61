"""Which of the usual sensors a circle fills, where that is what is asked: 'what sensor would it cover'."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.parts.answer import Line
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import FULL, trimmed
from engine.answers.picture.circles import Thrown
from engine.answers.picture.which_cover import lit_of
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from grammar.questions import Question

# sensors in use, the smallest first
_SENSORS: Final = (
    "1-3-type", "s-123", "1-2-type", "2-3-type", "1-inch-type", "four-thirds", "aps-c-1.6", "aps-c-1.5",
    "35mm-full-frame", "44x33", "54x40",
)  # fmt: skip

_FILMS: Final = ("35mm-full-frame", "645", "6x6", "6x7", "6x9", "4x5-sheet")  # and films, where a format is asked for


def filled_by(question: Question, circles: Sequence[Thrown], factor: float | None, facts: Catalogue) -> list[Line]:
    """The largest that each circle surely fills, the largest that it may, and what the next one takes."""
    if not mentions(question, "sensor-filled"):
        return []
    what, names = ("format", _FILMS) if mentions(question, "film-too") else ("sensor", _SENSORS)
    names = (*_SENSORS, *names) if what == "format" else names
    frames = sorted({facts.formats[name] for name in names if name in facts.formats}, key=lambda one: one.diagonal_mm)
    return [Line("head", _of(thrown, factor, frames, what)) for thrown in circles]


def _of(thrown: Thrown, factor: float | None, sensors: Sequence[Format], what: str) -> str:
    surely, maybe = [], []
    for form in sensors:
        lit = lit_of(thrown, factor, form)
        if is_known(lit) and lit.least > FULL:
            surely.append(form)
        elif is_known(lit) and lit.greatest > FULL and not thrown.made_for:
            maybe.append(form)
    words = f"{thrown.words[:1].upper()}{thrown.words[1:]}"
    text = (
        f"{words}: the largest {what} that it surely fills is {surely[-1].name}" if surely else f"{words}: none surely"
    )
    if maybe:
        text += f"; with luck {maybe[-1].name}"
    beyond = [form for form in sensors if form not in surely and form not in maybe]
    more = f"; {beyond[0].name} needs a circle of {trimmed(beyond[0].diagonal_mm, 1)} mm" if beyond else ""
    return f"{text}{more}."
