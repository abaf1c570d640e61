"""What is engraved round the front of a lens, '1:1.4/25': its widest stop and its focal length."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.wording import small_mm, trimmed
from engine.base.interval import Interval
from grammar.questions import Question

# '1:1.4/25', '1 : 2.8 f=35mm', '1:2 50'
_ENGRAVED: Final = re.compile(
    r"(?<![\d.])1 ?: ?(\d{1,2}(?:\.\d{1,2})?)(?: ?[/,] ?| ?f ?= ?| )(?:f ?= ?)?(\d{1,4})(?: ?mm)?(?![\d.:/])", re.I
)
_WIDEST, _SMALLEST = 0.6, 22.0  # stops that lenses open to
_SHORTEST_MM: Final = 3.0


def engraved(question: Question) -> Told:
    """Both numbers, and how wide the opening looks from the front, focal length over f-number; nothing without them."""
    found = _ENGRAVED.search(question.text)
    if found is None:
        return Told()
    stop, focal = float(found[1]), float(found[2])
    if not (_WIDEST <= stop <= _SMALLEST and focal >= _SHORTEST_MM):
        return Told()
    text = (
        f"{found[0].strip()} on a lens: its widest stop is f/{trimmed(stop, 2)}, its focal length {focal:g} mm; "
        f"1:{trimmed(stop, 2)} is the opening against the focal length, {small_mm(round(focal / stop, 1))} wide."
    )
    rows = (
        Quantity("f_number", Interval.exact(stop), "widest"),
        Quantity("focal_length_mm", Interval.exact(focal), "engraved"),
    )
    return Told((Line("head", text),), rows)
