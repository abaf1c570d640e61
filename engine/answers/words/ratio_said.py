"""What a magnification such as 1:4 means: how large the image is, how much of the subject a frame takes in."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, numbers
from engine.answers.parts.wording import figures, small_mm, trimmed
from engine.answers.picture.frames import frames_named
from engine.answers.words.engraved_ring import engraved
from engine.base.interval import Interval, is_known
from engine.physics import closeup
from grammar.questions import Question

_USUAL: Final = "35mm-full-frame"
_KNOWN: Final = {1.0: "life size", 0.5: "half life size", 0.25: "a quarter of life size", 2.0: "twice life size"}
_SHARE: Final = 0.02  # by which a ratio may be off a whole number


def ratio_said(question: Question, knowledge: Knowledge) -> Told:
    """Nothing where no magnification, or more than one, is told, and no front of a lens is read out."""
    front = engraved(question)
    if front.lines:
        return front
    told = numbers(question, "magnification")
    if len(told) != 1 or not told[0]:
        return Told()
    m = told[0]
    frames = frames_named(question, knowledge.catalogue)[:1] or [knowledge.catalogue.formats[_USUAL]]
    known = f", {_KNOWN[m]}" if m in _KNOWN else ""
    width = frames[0].width_mm / m
    lines = [
        Line("head", f"{_ratio(m)} is {figures(m, 3)}x{known}: the image on the sensor is {figures(m, 3)} times as "
             f"large as the subject. {frames[0].name} then takes in {small_mm(round(width, 1))} across.")
    ]  # fmt: skip
    rows = [Quantity("magnification", Interval.exact(m), _ratio(m))]
    for focal in focals(question):
        out = closeup.extension_for_magnification_mm(Interval.exact(focal), Interval.exact(m))
        if not is_known(out):
            continue
        lines.append(
            Line("fact", f"on {trimmed(focal, 1)} mm it takes {small_mm(round(out.nominal, 2))} of extension", 1)
        )
        rows.append(Quantity("extension_mm", out, f"{trimmed(focal, 1)} mm"))
    return Told(tuple(lines), tuple(rows))


def _ratio(m: float) -> str:
    """'1:4' of 0.25, '2:1' of 2."""
    over = 1 / m if m < 1 else m
    whole = round(over) if abs(over / round(over) - 1) < _SHARE else None
    number = f"{whole}" if whole is not None else trimmed(over, 2)
    return f"1:{number}" if m < 1 else f"{number}:1"
