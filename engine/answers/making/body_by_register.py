"""A body told by its register alone, 'a 46.5 body': taken for the mounts that have it."""

from __future__ import annotations

from collections import Counter
from typing import Final

from engine.answers.parts.said import mentions, number
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.questions import BODY_REGISTER, Question

_NEAR_MM: Final = 0.011  # as registers are told, to a hundredth
_HOSTS: Final = frozenset({"slr", "mirrorless", "rangefinder"})  # kinds of mounts that a body is mostly told so of


def with_body_by_register(question: Question, facts: Catalogue) -> Question:
    """The question with those mounts as the body's; as it is where no body in use has that register."""
    told = number(question, BODY_REGISTER)
    if told is None or question.follows or len(question.bodies) != 1 or mentions(question, "register-spoken"):
        return question
    body = question.bodies[0]
    if body.ids or not any(lens.ids for lens in question.lenses):
        return question
    ids = [
        mount.id
        for mount in facts.mounts.values()
        if mount.kind in _HOSTS and is_known(mount.register_mm) and abs(mount.register_mm.nominal - told) <= _NEAR_MM
    ]
    if not ids:
        return question
    led_to = Counter(ring.rear for ring in facts.adapters.values())  # the body that most rings are made for comes first
    ids.sort(key=lambda id_: -led_to[id_])
    named = replace(body, kind="mount", ids=tuple(ids), focal_length_mm=None)
    return question.without(BODY_REGISTER).with_(bodies=(named,))
