"""The rings of a plan that end on one of its mounts: 'thickness of the two that go to M' of LTM, M and C/Y lenses."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

from engine.answers.parts.answer import Answer
from engine.base.compact import replace
from grammar.kinds import BUY_PLAN, CHAIN
from grammar.questions import Question, Thing

_ONTO: Final = r"\b(?:to|onto|into) (?:the |an? )?{}(?![\w/-]| \w)"  # the mount that rings end on, said last
_PLANNED: Final = frozenset([BUY_PLAN, CHAIN])
_SEVERAL: Final = 2


def hub_rings(question: Question, before: Question | None, chains: Callable[[Question], Answer]) -> Answer | None:
    """The other lenses of the plan onto that mount, told by the way: the plan stays what is talked of."""
    hub = question.lenses[0] if len(question.lenses) == 1 else None
    if before is None or hub is None or before.intent not in _PLANNED or not question.follows:
        return None
    others = tuple(lens for lens in before.lenses if lens.ids[:1] != hub.ids[:1])
    planned = _SEVERAL <= len(others) + 1 == len(before.lenses) and question.bodies == before.bodies
    if not planned or not _is_onto(hub, question.text) or len(before.bodies) < _SEVERAL:
        return None
    asked = question.with_(intent=CHAIN, lenses=others, bodies=(hub,), adapters=())
    return replace(chains(asked), question=asked, aside=True)


def _is_onto(hub: Thing, text: str) -> bool:
    """Whether it is told as where rings end, and as no lens."""
    bare = hub.kind == "mount" and hub.focal_length_mm is None and hub.f_number is None
    name = next(iter(hub.words.split()), "")
    return bare and bool(name) and re.search(_ONTO.format(re.escape(name.casefold())), text.casefold()) is not None
