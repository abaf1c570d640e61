"""A number that is asked about by itself: what is known to measure just that, as finely as it was typed."""

from __future__ import annotations

import re
from collections import Counter
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.base.interval import Interval, Measure, is_known
from grammar.questions import Question

_NUMBER: Final = re.compile(r"(?<![\w.])\d+\.(\d+)(?![\w.]*\d)")
_MOST: Final = 6


def number_alone(question: Question, knowledge: Knowledge) -> Told:
    """'what does 17.526 stand for': the mounts whose register it is, and the formats that are so wide across."""
    found = _NUMBER.search(question.text)
    if found is None:
        return Told()
    value, text = float(found[0]), found[0]
    within = 0.5 * 10 ** -len(found[1])

    def is_it(size: Measure) -> bool:
        return is_known(size) and abs(size.nominal - value) <= within

    facts = knowledge.catalogue
    mounts = [one for one in facts.mounts.values() if not one.adjustable and is_it(one.register_mm)]
    fronts = Counter(ring.front for ring in facts.adapters.values())
    mounts = sorted(mounts, key=lambda one: -fronts[one.id])[:_MOST]  # those that are met most
    lines, rows = [], []
    if mounts:
        names = ", ".join(one.designation for one in mounts)
        lines.append(Line("head", f"{text} mm is a register, from flange to image: that of {names}."))
        rows += [Quantity("register_mm", one.register_mm, one.id) for one in mounts if is_known(one.register_mm)]
    for form in facts.formats.values():
        if is_it(Interval.exact(form.diagonal_mm)):
            lines.append(Line("head", f"{text} mm is the diagonal of {form.name}."))
    for thread in facts.threads.values():
        if is_it(thread.major_mm):
            lines.append(Line("head", f"{text} mm is the width across the thread {thread.designation}."))
    return Told(tuple(lines[:_MOST]), tuple(rows))
