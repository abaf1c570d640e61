"""Where the size of an image circle comes from that an answer told: 'why is the circle 13'."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.resolve import LensSide, lens_side
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import ranged, trimmed
from engine.answers.picture.circles import Thrown, circles_of
from engine.base.interval import is_known
from engine.chains.setup import usual_circle
from engine.facts.catalogue import Catalogue
from engine.facts.records import Circle
from grammar.questions import Question

_NUMBER: Final = re.compile(r"(?<![\w./])(\d+(?:\.\d+)?)(?: ?mm)?(?![\w/])")
_SLACK_MM: Final = 0.06
_WHOLE_MM: Final = 0.6  # of a number without decimals
_ONE_LENGTH: Final = 500.0  # mm; a row for more than that is one for any focal length
_HOW: Final = "To know yours, measure the bright disc that a far scene makes on paper held at the focus, and tell it."


def circle_explained(question: Question, facts: Catalogue) -> Told:
    """That it is what such lenses usually throw, and for which lengths; nothing where no circle is asked for."""
    told, asked = Told(), mentions(question, "of-circle")
    for thrown in circles_of(question.with_(values=_without_circle(question)), facts):
        row = _row_of(thrown, facts)
        ends = (thrown.circle_mm.least, thrown.circle_mm.greatest)
        typed = [float(found) for found in _NUMBER.findall(question.text)]
        near = [one for one in typed if any(abs(one - end) <= _slack(one) for end in ends)]
        meant = bool(near) and (asked or question.follows) if typed else asked
        if thrown.thing is None or not thrown.typical or not meant:
            continue
        told += _explained(thrown, row, facts)
    return told


def _slack(typed: float) -> float:
    """How far a number may be off by its rounding."""
    return _WHOLE_MM if typed == int(typed) else _SLACK_MM


def _without_circle(question: Question) -> tuple[tuple[str, str], ...]:
    return tuple(value for value in question.values if value[0] != "circle")


def _row_of(thrown: Thrown, facts: Catalogue) -> Circle | None:
    """The row of the facts that the circle was taken from."""
    side = lens_side(thrown.thing, facts) if thrown.thing is not None else None
    return usual_circle(facts, side.lens, side.mount)[1] if isinstance(side, LensSide) else None


def _explained(thrown: Thrown, row: Circle | None, facts: Catalogue) -> Told:
    rows = (Quantity("image_circle_mm", thrown.circle_mm, thrown.case),)
    size = ranged(thrown.circle_mm, lambda value: f"{trimmed(value, 1)} mm")
    if thrown.made_for:
        text = (
            f"{size} is the diagonal of {thrown.made_for}: such lenses light that much, and how much more is not known."
        )
        return Told((Line("head", text), Line("text", _HOW)), rows)
    made_for = facts.formats[row.made_for].name if row is not None and row.made_for in facts.formats else ""
    lengths = row.focal_length_mm if row is not None and is_known(row.focal_length_mm) else None
    of_lengths = ""
    if lengths is not None and lengths.greatest < _ONE_LENGTH:
        of_lengths = f" of {ranged(lengths, lambda value: f'{trimmed(value, 1)} mm')}"
    note = f" {row.note}" if row is not None and row.note else ""
    what = f"lenses{of_lengths}{f' made for {made_for}' if made_for else ''}"
    text = f"Nobody measured it: {size} is what {what} usually throw, the least of it claimed.{note}"
    return Told((Line("head", text), Line("text", _HOW)), rows)
