"""A ring that was gauged in a talk by a bare number: 'i bought one, caliper 23.7' where it should be 23.5 mm."""

from __future__ import annotations

import re
from typing import Final

from grammar.kinds import FOCUS_VERDICT
from grammar.questions import RING, Question, Thing
from grammar.turns.told_before import RIGHT

_THREAD: Final = "thread"
_GAUGED: Final = re.compile(r"(\d+\.\d+) ?mm")
_OF_SCREWS: Final = re.compile(r"thread|pitch|tpi|screw|turns", re.IGNORECASE)
_MADE_WITHIN: Final = 0.6  # mm, by which a ring at hand may differ from the right one


def with_ring_gauged(got: Question, before: Question) -> Question:
    """The question with that number as the length of a ring, where it was heard as how wide a thread is."""
    told = _GAUGED.fullmatch(got.said(_THREAD) or "")
    anew = got.follows and told is not None and before.said(_THREAD) is None and not _OF_SCREWS.search(got.text)
    right = [value for name, value in before.told if name == RIGHT and value > 0]
    if not anew or told is None or got.adapters or not any(abs(float(told[1]) - one) <= _MADE_WITHIN for one in right):
        return got
    size = float(told[1])
    ring = Thing(words=f"{size:g} mm ring", piece=RING, thickness_mm=(size, size))
    return got.with_(
        intent=FOCUS_VERDICT, topic=None, lenses=got.lenses or before.lenses, bodies=got.bodies or before.bodies,
        adapters=(ring,), values=got.rest(_THREAD), number=None,
    )  # fmt: skip
