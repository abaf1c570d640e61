"""Whether a close-up question is one of a lens on a body, so that the seat counts beside what is put between."""

from __future__ import annotations

from typing import Final

from engine.answers.close.coupled import is_turned
from engine.answers.close.drawn import is_drawn
from engine.answers.close.image_side import size_told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import ring_or_tube_mm, sold_ring_mm
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side, setup_of
from engine.answers.seat.described import CUP, TUBE, are_it_together
from engine.base.interval import is_known
from engine.chains.lens_and_body import likely_register_of_lens
from grammar.kinds import SEATED, SHIM_CALIBRATION
from grammar.questions import CLOSE_UP_LENS, RING, Question, Thing
from grammar.turns.spans import span_of
from grammar.turns.tubes_added import with_tube_told

_HELICOID: Final = "helicoid"
_ASKED_OF: Final = SEATED | {SHIM_CALIBRATION}


def goes_by_chain(question: Question, knowledge: Knowledge) -> bool:
    """Whether a lens on a body is looked at with what is put between, so that the seat counts too."""
    asks = size_told(question) is None and not any(thing.piece == CLOSE_UP_LENS for thing in question.adapters)
    lens = lens_side(question.lens, knowledge.catalogue)
    drawn = _is_seated(question, lens, knowledge) and any(_is_drawn(thing, lens) for thing in question.adapters)
    reversed_ = any(is_turned(lens) for lens in question.lenses)
    own = any(lens.kind == "lens" for lens in question.lenses)
    held = _is_its_ring(question, lens, knowledge) or _is_held_out(question, lens, knowledge)
    return asks and (own or drawn or held or _is_on_ring_of_another(question, lens, knowledge)) and not reversed_


def with_tube_on_ring(question: Question, knowledge: Knowledge) -> Question:
    """'and with 30 mm of tube' on a ring for another mount than the lens's: so long a tube, behind that seat."""
    told = with_tube_told(question)
    lens = lens_side(told.lens, knowledge.catalogue)
    return told if told is not question and _is_on_ring_of_another(told, lens, knowledge) else question


def _is_on_ring_of_another(question: Question, lens: LensSide | object, knowledge: Knowledge) -> bool:
    """Whether tubes stand with a ring for another mount than the lens's: 'M39 SLR on an LTM to MFT ring and a tube'."""
    body = body_side(question.body, knowledge.catalogue)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)) or not is_known(lens.mount.register_mm):
        return False
    rings = [thing for thing in question.adapters if thing.piece == RING and thing.front and thing.rear]
    others = [thing for thing in rings if lens.mount.id not in thing.front and body.mount.id in thing.rear]
    tubes = [thing for thing in question.adapters if thing.piece == TUBE and thing.thickness_mm is not None]
    return len(others) == len(rings) == 1 and bool(tubes)


def _is_seated(question: Question, lens: LensSide | object, knowledge: Knowledge) -> bool:
    """Whether it is known, or usual for such a lens, how far from its flange the image falls."""
    body = body_side(question.body, knowledge.catalogue)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return isinstance(lens, LensSide) and is_known(lens.mount.register_mm)
    return is_known(likely_register_of_lens(setup_of(lens, body, knowledge.catalogue), knowledge.catalogue))


def _is_drawn(thing: Thing, lens: LensSide | object) -> bool:
    """Whether a piece is drawn out, or a helicoid set to a length that is the only focusing that the lens has."""
    alone = isinstance(lens, LensSide) and not is_known(lens.mount.register_mm) and thing.piece == _HELICOID
    return is_drawn(thing) or span_of(thing) is not None or (alone and thing.thickness_mm is not None)


def _is_held_out(question: Question, lens: LensSide | object, knowledge: Knowledge) -> bool:
    """Whether a helicoid set to one length, with what else is told, is as long as the ring of this lens on this body.

    '31 mm on the helicoid and the 1 mm plate' of M42 on E: they are what holds the lens, and no tubes behind a ring.
    """
    body = body_side(question.body, knowledge.catalogue)
    told = [thing.thickness_mm for thing in question.adapters if thing.thickness_mm is not None]
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)) or len(told) < len(question.adapters):
        return False
    one, other = lens.mount.register_mm, body.mount.register_mm
    helicoid = any(thing.piece == _HELICOID for thing in question.adapters)
    if not helicoid or not (is_known(one) and is_known(other)):
        return False
    return sum(size[0] for size in told) >= one.nominal - other.nominal - ring_or_tube_mm(knowledge.catalogue)


def _is_its_ring(question: Question, lens: LensSide | object, knowledge: Knowledge) -> bool:
    """Whether the one ring told is about as long as that of this lens on this body: it seats the lens, no tube.

    Tubes told beside it stand behind it: '27.6 mm ring and a 10 mm tube'. Where none is made that could seat it, and
    where the seat on that ring was asked about before, it is that one however long it is.
    """
    body = body_side(question.body, knowledge.catalogue)
    rings = [thing for thing in question.adapters if thing.piece != TUBE or thing.thickness_mm is None]
    told = _length(rings[0], knowledge) if len(rings) == 1 else None
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return False
    if _are_its_rings(question, lens, body):
        return True
    if told is None or rings[0].piece not in (RING, CUP) or told[0] != told[1]:
        return False
    if rings[0].piece == CUP or told[0] < 0:
        return True  # a seat inside the body's flange is no tube
    if lens.mount.id in rings[0].front and body.mount.id in rings[0].rear:
        return True  # 'C to MFT ring sits at 0.3 mm': named by the two mounts, however long it is
    one, other = lens.mount.register_mm, body.mount.register_mm
    if not (is_known(one) and is_known(other)):
        return False
    room = one.nominal - other.nominal
    lacking = room <= 0 and not _is_made(lens.mount.id, body.mount.id, room, knowledge)
    return lacking or abs(told[0] - room) <= ring_or_tube_mm(knowledge.catalogue) or _was_its_seat(question, rings[0])


def _are_its_rings(question: Question, lens: LensSide, body: BodySide) -> bool:
    """'rings end to end, 2.5 + 1 + 26' of F on E, 'd on Q, spacer 3.1': they are what holds the lens."""
    one, other = lens.mount.register_mm, body.mount.register_mm
    return is_known(one) and is_known(other) and are_it_together(question.adapters, one.nominal - other.nominal)


def _is_made(front: str, rear: str, room: float, knowledge: Knowledge) -> bool:
    """Whether a cup without glass is made that seats the one on the other, so that any other ring stands behind it."""
    between = [one for one in knowledge.catalogue.adapters.values() if (one.front, one.rear) == (front, rear)]
    seats = [one.thickness_mm.hull() for one in between if not one.has_glass]
    return front == rear or any(
        is_known(seat) and abs(seat.nominal - room) <= sold_ring_mm(knowledge.catalogue) for seat in seats
    )


def _was_its_seat(question: Question, ring: Thing) -> bool:
    """Whether it was asked before, last or long ago, how the lens sits on the body with that ring."""
    asked = (question.prior, question.seat) if question.follows else ()
    return any(one is not None and one.intent in _ASKED_OF and ring in one.adapters for one in asked)


def _length(ring: Thing, knowledge: Knowledge) -> tuple[float, float] | None:
    """How long a ring is, as told or as one of the facts is sold: 'the 5 mm C to CS ring'."""
    known = knowledge.catalogue.adapters.get(ring.id or "") if ring.kind == RING else None
    if ring.thickness_mm is not None or known is None:
        return ring.thickness_mm
    at = known.thickness_mm.hull()
    return (at.nominal, at.nominal) if is_known(at) and at.is_exact else None
