"""Of several lenses, which cover a frame, which may and which do not: told first, in one line a frame."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import Line
from engine.answers.parts.wording import FULL, listed
from engine.answers.picture.circles import Thrown
from engine.base.interval import Interval, Unknown, is_known
from engine.facts.records import Format
from engine.physics import coverage

MOST_FRAMES = 2  # more are told one by one
YES, MAYBE, NO = "covered by", "perhaps by", "not by"


def which_cover(circles: Sequence[Thrown], factor: float | None, frames: Sequence[Format]) -> list[Line]:
    """One line a frame where several lenses are set against it; none where it is one lens or nothing is known."""
    if len({thrown.words for thrown in circles}) < 2 or len(frames) > MOST_FRAMES:
        return []
    lines = []
    for form in frames:
        groups: dict[str, list[str]] = {YES: [], MAYBE: [], NO: []}
        for thrown in circles:
            lit = lit_of(thrown, factor, form)
            if is_known(lit):
                group = YES if lit.least > FULL else MAYBE if lit.greatest > FULL else NO
                groups[group].append(thrown.words.removesuffix(" lens"))
        told = [f"{how} {listed(names)}" for how, names in groups.items() if names]
        if told:
            lines.append(Line("head", f"{form.name}: {'; '.join(told)}."))
    return lines


def lit_of(
    thrown: Thrown, factor: float | None, form: Format, right: float = 0.0, up: float = 0.0
) -> Interval | Unknown:
    """The share of the frame that is lit; all of it may be where only the format a lens was made for is known."""
    circle = thrown.circle_mm * factor if factor is not None else thrown.circle_mm
    lit = coverage.lit_share_shifted(circle, Interval.exact(form.width_mm), Interval.exact(form.height_mm), right, up)
    if is_known(lit) and thrown.made_for and lit.least <= FULL:
        return Interval(lit.least, 1.0, lit.nominal)
    return lit
