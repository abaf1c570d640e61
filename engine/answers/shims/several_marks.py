"""Infinity found at a mark on one lens, or its focus ending, and what that means for another on the same ring."""

from __future__ import annotations

import re
from itertools import pairwise

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import focals
from engine.answers.parts.wording import distance, listed, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.chains.setup import Facts
from grammar.questions import Question, Thing
from grammar.readings.ends_in_order import place_of


def of_another(question: Question, mark: float, facts: Facts) -> tuple[Told, float] | None:
    """The error by the lens that the mark was told of, and the mark of each other one; None where all have it."""
    own, others = _told_of(question, mark)
    error = Distances(own, facts).extension_at(mark) if own is not None else UNKNOWN
    if own is None or not is_known(error):
        return None
    lens = f"{trimmed(own, 1)} mm"
    by = small_mm(error.nominal)
    lines = [Line("head", f"Infinity at the {distance(mark, question.feet)} mark of the {lens} lens: it sits {by} too"
                          f" close; add a shim of {by}.")]  # fmt: skip
    rows = [Quantity("shim_mm", error, f"{lens} lens"), Quantity("register_error_mm", -error, f"{lens} lens")]
    for other in others:
        at, name = Distances(other, facts).mark(-error.nominal), trimmed(other, 1)
        if is_known(at):
            rows.append(Quantity("scale_mark_mm", at, f"{name} mm"))
            text = f"On the same ring a {name} mm lens has infinity at its {distance(at.nominal, question.feet)} mark"
            lines.append(Line("head", f"{text}; if it does not, the error is one lens's own, not the ring's."))
    return Told(tuple(lines), tuple(rows)), error.nominal


def end_of_one(question: Question, end: float, facts: Facts) -> tuple[Told, float] | None:
    """The error by the lens whose focus ends at `end` mm, and where each other then ends; None where all end there."""
    own, others = _told_of(question, end)
    if own is None:
        return None
    error = Distances(own, facts).extension_at(end)
    if not is_known(error) or error.nominal <= 0:
        return None
    far = [(other, at) for other in others if is_known(at := Distances(other, facts).from_sensor(error.nominal))]
    by, lens = small_mm(error.nominal), trimmed(own, 1)
    lines = [Line("head", f"By the {lens} mm lens, which ends at {distance(end, question.feet)}, the ring is {by} too"
                          f" thick: take {by} off it.")]  # fmt: skip
    if far:
        parts = listed([f"the {trimmed(other, 1)} mm at {distance(at.nominal, question.feet)}" for other, at in far])
        lines.append(Line("text", f"So much too far out, {parts} would end: that may pass for infinity, as it goes by"
                                  " the square of the focal length. Where such a lens plainly reaches farther, the"
                                  f" error is the {lens} mm's own and no fault of the ring."))  # fmt: skip
    rows = [Quantity(name, error, f"{lens} mm lens") for name in ("shim_mm", "register_error_mm")]
    rows += [Quantity("far_from_sensor_mm", at, f"{trimmed(other, 1)} mm lens") for other, at in far]
    return Told(tuple(lines), tuple(rows)), error.nominal


def of_each(
    question: Question, marks: tuple[float, ...], facts: Facts, ends: bool = False
) -> tuple[Told, float] | None:
    """A mark for each lens, in the order told: the error by each, and whether the ring alone is the cause.

    `ends`: the distances are those where each lens ends, and no marks of infinity.
    """
    named = focals(question)
    if len(named) < 2 or len(marks) != len(named):
        return None
    errors = [Distances(focal, facts).extension_at(mark) for focal, mark in zip(named, marks, strict=True)]
    sizes = [error.nominal for error in errors if is_known(error)]
    if len(sizes) != len(named):
        return None
    rows, parts = [], []
    for focal, size in zip(named, sizes, strict=True):
        case = f"{trimmed(focal, 1)} mm lens"
        rows += [
            Quantity("shim_mm", Interval.exact(size), case),
            Quantity("register_error_mm", Interval.exact(size if ends else -size), case),
        ]
        parts.append(f"the {trimmed(focal, 1)} mm {small_mm(size)}")
    least, most = min(sizes), max(sizes)
    whole = small_mm(sum(sizes) / len(sizes))
    cure = f"take {whole} off it" if ends else f"a shim of {whole} cures both"
    text = f"Too far out by where it ends: {listed(parts)}. " if ends else f"Too close by its mark: {listed(parts)}. "
    if most - least <= facts.assumptions["marks-are-read-to"].value.nominal:
        text += f"They agree, so it is the ring: {cure}."
    else:
        first = f"Take {small_mm(least)} off the ring" if ends else f"Shim the ring by {small_mm(least)}"
        text += f"{first}; the {small_mm(most - least)} more is that lens's own."
    return Told((Line("head", text),), tuple(rows)), least


def _told_of(question: Question, at: float) -> tuple[float | None, list[float]]:
    """The focal length that a distance in mm was told of, the last named before it, and the others; None for all."""
    lenses = [lens for lens in question.lenses if lens.focal_length_mm is not None]
    if len(set(focals(question))) < 2:
        return None, []
    ends = [(lens.column - 1, lens.column - 1 + len(lens.words)) for lens in lenses]
    found = place_of(at, question.text, ends)
    told_at = found if found is not None else len(question.text)
    own = _named_again(question, lenses, told_at)
    if own is None and all(_only_lists(question, one[1], other[0]) for one, other in pairwise(ends)):
        return None, []
    if own is None:
        behind = [n for n, (start, _) in enumerate(ends) if start < told_at]
        own = lenses[behind[-1] if behind else 0].focal_length_mm
    named = (lens.focal_length_mm for lens in lenses)
    return own, [focal for focal in named if focal is not None and focal != own]


def _named_again(question: Question, lenses: list[Thing], told_at: int) -> float | None:
    """'a 28 and a 50. the 28 stops at 5 m': the focal length that is said once more, nearest before the distance."""
    again = []
    for lens in lenses:
        focal = lens.focal_length_mm or 0.0
        for found in re.finditer(rf"(?<![\d./]){re.escape(f'{focal:g}')}(?![\d./])", question.text[:told_at]):
            if found.start() >= lens.column - 1 + len(lens.words):
                again.append((found.start(), focal))
    return max(again)[1] if again else None


def _only_lists(question: Question, start: int, end: int) -> bool:
    """Whether between two lenses there are but words that list them."""
    listing = {place.at for place in question.places("listing")}
    return all(start + one.start() in listing for one in re.finditer(r"\w+", question.text[start:end]))
