"""What the one ring that is named tells: that a tube is only another word for it, and on which side each mount is."""

from __future__ import annotations

from typing import Final

from engine.answers.making.as_seated import as_seated
from engine.answers.parts.said import mentions
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.base.units import UNITS
from engine.facts.catalogue import Catalogue
from grammar.kinds import CHAIN, FOCUS_VERDICT, WHY
from grammar.questions import RING, Question, Thing
from grammar.things.casting import SPACER

_WAYS: Final = (CHAIN, FOCUS_VERDICT)
_BOTH: Final = 2
_NAMES_AND_RING: Final = 3
_HOST: Final = "mirrorless"


def with_ring_named(question: Question) -> Question:
    """The question with the ring itself in place of one bare tube, where nothing close is wanted."""
    pieces = question.adapters
    alone = len(pieces) == 1 and pieces[0].piece == SPACER and _tells_nothing(pieces[0])
    if not alone or question.intent not in _WAYS or not (question.lenses and question.bodies):
        return question
    if question.follows or mentions(question, "tube-for-close"):
        return question
    return question.with_(adapters=(replace(pieces[0], piece=RING),))


def with_sides_by_ring(question: Question, facts: Catalogue) -> Question:
    """'my E-Z ring is 2.1, E 35 on it': what a ring takes is the lens's mount, where no ring leads the other way."""
    question = as_seated(question, facts)
    lens, body = question.lens, question.body
    ring = question.adapters[0] if len(question.adapters) == 1 else None
    if lens is None or body is None or ring is None or len(question.lenses) > 1 or len(question.bodies) > 1:
        return question
    if _names_host_first(ring, facts) and lens.ids[:1] == ring.front[:1] and body.ids[:1] == ring.rear[:1]:
        ring = replace(ring, front=ring.rear, rear=ring.front)
        return question.with_(
            lenses=(replace(lens, ids=body.ids),), bodies=(replace(body, ids=lens.ids),), adapters=(ring,)
        )
    turned = ring.front[:1] == body.ids[:1] and ring.rear[:1] == lens.ids[:1] and lens.ids[:1] != body.ids[:1]
    sides = [facts.mounts.get(one.id or "") for one in (lens, body) if one.kind == "mount"]
    known = [one.register_mm.nominal for one in sides if one is not None and is_known(one.register_mm)]
    if not turned or len(known) < _BOTH or known[0] >= known[1]:
        return question
    return question.with_(lenses=(replace(lens, ids=body.ids),), bodies=(replace(body, ids=lens.ids),))


def _names_host_first(ring: Thing, facts: Catalogue) -> bool:
    """'my MFT C adapter': three words of which the first is a body's, where rings are sold the other way alone."""
    ends = [facts.mounts.get(one[0]) if one else None for one in (ring.front, ring.rear)]
    words = [one for one in ring.words.split() if not one[0].isdigit() and one not in UNITS]  # but for its length
    if len(words) != _NAMES_AND_RING or ends[0] is None or ends[1] is None:
        return False
    sold = {(one.front, one.rear) for one in facts.adapters.values()}
    pair = ends[0].id, ends[1].id
    return ends[0].kind == _HOST and ends[1].kind != _HOST and pair not in sold and pair[::-1] in sold


def with_second_as_body(question: Question) -> Question:
    """'why do the registers of FD and EF rule out a plain ring': the mount named first goes on that named second."""
    pair = question.lenses
    bare = len(pair) == _BOTH and all(one.kind == "mount" and one.focal_length_mm is None for one in pair)
    if question.intent != WHY or not bare or question.bodies or not question.places("why-of-registers"):
        return question
    if pair[0].ids[:1] == pair[1].ids[:1]:
        return question
    return question.with_(lenses=pair[:1], bodies=pair[1:], adapters=())


def _tells_nothing(thing: Thing) -> bool:
    """Whether a piece is told by its kind alone, and as one."""
    told = (thing.ids, thing.thickness_mm, thing.steps, thing.front, thing.rear)
    return not any(told) and thing.count in (None, 1)
