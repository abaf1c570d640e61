"""How the ring that is told seats the lens: level with the flange, above it, or behind as a spacer; what it takes."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.said import mentions
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing
from grammar.things.casting import SPACER

_RINGS: Final = frozenset(["adapter", "plain", "ring", "recessed", "thread-reducer", "", None])
_SUNK, _RING = "recessed", "adapter"
_LEVEL: Final = (0.0, 0.0)  # mm
_LENGTHS: Final = ("thickness", "numbers", "length")  # keys under which the length that is told so may be read
_THINNEST_MM: Final = 0.4  # what is less is no ring between two mounts


def as_seated(question: Question, facts: Catalogue) -> Question:
    """The question with its one ring as it is told to sit, and with the lens that such a ring takes."""
    ring = question.adapters[0] if len(question.adapters) == 1 else None
    one_each = len(question.lenses) == len(question.bodies) == 1
    if ring is None or not one_each or ring.ids or ring.piece not in _RINGS:
        return question
    question = _with_lens_taken(question, ring)
    seated = _seated(ring, question, facts)
    question = question.with_(adapters=(seated,))
    told = seated.thickness_mm is not None and ring.thickness_mm is None
    return question.without(*_LENGTHS) if told else question


def _with_lens_taken(question: Question, ring: Thing) -> Question:
    """'an LTM to M ring, 35/2, on my M': where lens and body came out alike, the lens is of the ring's mount."""
    lens, body = question.lenses[0], question.bodies[0]
    alike = bool(lens.ids) and lens.kind == body.kind == "mount" and lens.ids[:1] == body.ids[:1]
    led = bool(ring.front) and ring.front[:1] != body.ids[:1] and ring.rear[:1] in ((), body.ids[:1])
    return question.with_(lenses=(replace(lens, ids=ring.front[:1]),)) if alike and led else question


def _seated(ring: Thing, question: Question, facts: Catalogue) -> Thing:
    lens, body = question.lenses[0], question.bodies[0]
    right = _right_mm(lens, body, facts)
    above = [*{one.number for one in question.places("above-the-flange") if one.number}]  # of two phrases one number
    open_yet = ring.thickness_mm is None or (bool(above) and {*map(abs, ring.thickness_mm)} == {above[0]})
    if len(above) == 1 and right is not None and right < _THINNEST_MM and open_yet:
        return replace(ring, piece=_RING, thickness_mm=(above[0], above[0]))  # 'came out 0.3 above the flange'
    if ring.thickness_mm is None and right is not None and right < _THINNEST_MM and mentions(question, "seat-level"):
        return replace(ring, piece=_RING if ring.piece == _SUNK else ring.piece, thickness_mm=_LEVEL)
    told = ring.thickness_mm or _LEVEL
    own = ring.front[:1] == lens.ids[:1] != () and not ring.rear and ring.piece == _RING
    behind = own and mentions(question, "ring-behind-it") and told[0] == told[1] > 0
    if behind and right is not None and right < 0:
        return replace(ring, piece=SPACER)  # '2 mm C ring behind a C lens on MFT': no ring of that pair is so thick
    return ring


def _right_mm(lens: Thing, body: Thing, facts: Catalogue) -> float | None:
    """What the registers leave for a ring, mm."""
    sides = [facts.mounts.get(one.id or "") for one in (lens, body)]
    known = [one.register_mm.nominal for one in sides if one is not None and is_known(one.register_mm)]
    return known[0] - known[1] if len(known) == len(sides) else None
