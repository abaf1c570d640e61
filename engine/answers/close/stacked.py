"""How far to step between pictures that are put together in depth, and how many it takes."""

from __future__ import annotations

from math import ceil
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import depth_words, f_number, percent, times
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.physics import depth
from grammar.questions import Question

STEP: Final = "stack-step-share"  # the assumption of how far the next picture begins behind one


def stacked(magnification: float, stop: float, blur: Interval, question: Question, facts: Catalogue) -> Told:
    """The step, and the pictures for the depth told; nothing where neither is asked for."""
    if not mentions(question, "how-many-frames"):
        return Told()
    each = depth.close_up_depth_mm(Interval.exact(magnification), Interval.exact(stop), blur, Interval.exact(1.0))
    if not is_known(each):
        return Told()
    share = facts.assumptions[STEP].value.nominal
    step = each.nominal * share
    case = f"{times(magnification)} at f/{f_number(stop)}"
    text = f"Step by {depth_words(step, question.feet)} at {case}, {percent(share)} of what one picture holds"
    deep = number(question, "depth", "length", "thickness")
    rows = [Quantity("step_mm", Interval.exact(step), case)]
    if deep is not None and deep > each.nominal:
        count = ceil((deep - each.nominal) / step) + 1
        rows.append(Quantity("frame_count", Interval.exact(float(count)), case))
        text += (
            f": {count} pictures for {depth_words(deep, question.feet)}, {ceil(deep / each.nominal)} at the very least"
        )
    return Told((Line("head", f"{text}."),), tuple(rows))
