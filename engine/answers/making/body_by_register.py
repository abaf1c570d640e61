"""A body told by its register alone, 'a 46.5 body': taken for the mounts that have it."""

from __future__ import annotations

from collections import Counter
from typing import Final

from engine.answers.parts.said import mentions, number
from engine.answers.parts.usual_mounts import BY_RING
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.kinds import CHAIN, FOCUS_VERDICT, WHY
from grammar.questions import BODY_REGISTER, RING, Question, Thing

_NEAR_MM: Final = 0.011  # as registers are told, to a hundredth
_HOSTS: Final = frozenset({"slr", "mirrorless", "rangefinder"})  # kinds of mounts that a body is mostly told so of
_MIRRORLESS: Final = "mirrorless"
_OFF_MM: Final = 0.2  # that a ring is off by at most, and is meant for the body still
_LEAST_RING_MM: Final = 5.0  # of rings to mirrorless bodies; what is shorter may be a tube
_SEATED: Final = (CHAIN, FOCUS_VERDICT, WHY)


def with_body_by_register(question: Question, facts: Catalogue) -> Question:
    """The question with those mounts as the body's; as it is where no body in use has that register.

    Where no body is told of by anything, a ring told by its length under a lens of a mount stands for it.
    """
    question = _with_body_by_ring(question, facts)
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
    named = replace(body, kind="mount", ids=_usual_first(ids, facts), focal_length_mm=None)
    return question.without(BODY_REGISTER).with_(bodies=(named,))


def _with_body_by_ring(question: Question, facts: Catalogue) -> Question:
    """'my OM 21 on this camera, ring 28.05': a mirrorless body for which a ring of nearly that length is made."""
    lens, rings = question.lens, question.adapters
    ring = rings[0] if len(rings) == 1 else None
    bodiless = not any(body.ids for body in question.bodies) and number(question, BODY_REGISTER) is None
    if lens is None or ring is None or question.follows or not bodiless or len(question.lenses) > 1:
        return question
    mount = facts.mounts.get(lens.id or "") if lens.kind == "mount" else None
    size = ring.thickness_mm[0] if ring.is_of_one_length and ring.thickness_mm is not None else 0.0
    told_so = ring.piece == RING and not ring.ids and not ring.rear and size >= _LEAST_RING_MM
    if mount is None or not is_known(mount.register_mm) or not told_so or question.intent not in _SEATED:
        return question
    left = mount.register_mm.nominal - size
    ids = [
        one.id
        for one in facts.mounts.values()
        if one.kind == _MIRRORLESS and is_known(one.register_mm) and abs(one.register_mm.nominal - left) <= _OFF_MM
    ]
    if not ids:
        return question
    body = question.bodies[0] if question.bodies else Thing(words="body")
    taken = replace(body, kind="mount", ids=_usual_first(ids, facts), traits=(*body.traits, BY_RING))
    return question.with_(bodies=(taken,))


def _usual_first(ids: list[str], facts: Catalogue) -> tuple[str, ...]:
    """The mounts of bodies, that which most rings lead to first."""
    led_to = Counter(ring.rear for ring in facts.adapters.values())
    return tuple(sorted(ids, key=lambda id_: -led_to[id_]))
