"""'and besides E?' after a lens on E: which other bodies take it, and no way onto that body without it."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.kinds import BUY_PLAN, CHAIN, FOCUS_VERDICT, LIST_FITS
from grammar.questions import Question

APART: Final = "apart-from"  # what a question mentions that sets something apart
ELSEWHERE: Final = "other-source"  # and that a figure is printed otherwise elsewhere
MORE_ASKED: Final = "all-cautions"  # 'what else do i need' is asked of that body
MEASURED: Final = "flange_to_image"
PLACED: Final = frozenset([CHAIN, FOCUS_VERDICT, BUY_PLAN])


def as_elsewhere(question: Question) -> Question:
    """The question for all other bodies, where the body of before is set apart and no other is named."""
    before = question.prior
    if before is None or not question.follows or question.intent not in PLACED or before.intent not in PLACED:
        return question
    if question.distance_mm is not None and question.distance_mm != before.distance_mm:
        return question  # 'sharp at 3 m but not at the horizon'
    if question.said(MEASURED) != before.said(MEASURED) or question.mentions(ELSEWHERE, MORE_ASKED):
        return question  # 'and another is 28.8': another lens; 'another table has 45.5'
    if any(one.thickness_mm is not None for one in question.adapters if one not in before.adapters):
        return question  # 'another adapter measures 26.81'
    if any(question.said(key) not in (None, before.said(key)) for key in ("thickness", "extension", "length")):
        return question  # 'can i add another 2 mm'
    if question.adapters and question.intent == BUY_PLAN:
        return question  # 'another ring to buy, cost': for the same body
    bodies = {thing.ids[:1] for thing in before.bodies if thing.ids}
    new = [lens for lens in question.lenses if lens not in (*before.lenses, *before.known)]
    if any(lens.ids[:1] not in bodies for lens in new):
        return question  # 'i got another lens too, a K 28': on that body
    apart = {(name,) for name in question.limits.without} | {thing.ids[:1] for thing in question.bodies if thing.ids}
    if not (question.mentions(APART) and bodies and apart == bodies and before.lenses):
        return question
    left = replace(question.limits, without=tuple(name for row in sorted(bodies) for name in row))
    return question.with_(intent=LIST_FITS, lenses=before.lenses, bodies=(), adapters=(), limits=left)
