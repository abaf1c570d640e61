"""A ring that was gauged in a talk by a bare number: 'i bought one, caliper 23.7' where it should be 23.5 mm."""

from __future__ import annotations

import re
from typing import Final

from grammar.kinds import FOCUS_VERDICT
from grammar.questions import RING, Question, Thing
from grammar.turns.answer_told import MADE_WITHIN_MM, RIGHT, told_as
from grammar.words.grouping import Groups
from grammar.words.groups import OF_SCREWS

_THREAD: Final = "thread"
_GAUGED: Final = re.compile(r"(\d+\.\d+) ?mm")


def with_ring_gauged(got: Question, before: Question, groups: Groups) -> Question:
    """The question with that number as the length of a ring, where it was heard as how wide a thread is."""
    told = _GAUGED.fullmatch(got.said(_THREAD) or "")
    screwed = re.search(groups.one_of(OF_SCREWS), got.text, re.IGNORECASE) is not None
    anew = got.follows and told is not None and before.said(_THREAD) is None and not screwed
    right = [one for one in told_as(before, RIGHT) if one > 0]
    if (
        not anew
        or told is None
        or got.adapters
        or not any(abs(float(told[1]) - one) <= MADE_WITHIN_MM for one in right)
    ):
        return got
    size = float(told[1])
    ring = Thing(words=f"{size:g} mm ring", piece=RING, thickness_mm=(size, size))
    return got.with_(
        intent=FOCUS_VERDICT, topic=None, lenses=got.lenses or before.lenses, bodies=got.bodies or before.bodies,
        adapters=(ring,), values=got.rest(_THREAD), number=None,
    )  # fmt: skip
