"""A ring that is said to be flat where it ought to be a cup, and adds nothing; one whose lip is all that it adds."""

from __future__ import annotations

from engine.answers.parts.answer import RingToMake
from engine.answers.parts.said import mentions, number
from engine.answers.seat.described import CUP
from engine.answers.seat.seat_side import is_either_asked
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.chains.setup import Setup
from grammar.questions import Question, Thing
from grammar.turns.sticking import is_open

THICKEST_MM = 6.0  # of a flat ring told by its length alone
MADE_FLAT = frozenset({"adapter", "recessed", "plain", "ring"})
REDUCES = frozenset({"focal-reducer", "thread-reducer"})  # a 'flat D reducer' of no factor reduces the thread alone


def with_flat_seat(question: Question, setup: Setup, right: RingToMake) -> Question:
    """'the C to E thing is dead flat, zero recess': the one ring named, whose thickness is not told, seats at 0.

    `right`: the ring that would be. Where no cup could be either, a flat ring is one without glass.
    """
    lens, body = setup.lens_mount.register_mm, setup.body_mount.register_mm
    lip = number(question, "spigot")
    if lip is not None and is_known(lens) and is_known(body) and abs(lens.nominal - body.nominal) <= THICKEST_MM:
        return _with_lip(question, lip, setup)
    flush = right.possible == "recessed" and mentions(question, "flush-piece")
    flat = flush or mentions(question, "no-recess")
    if not (is_known(lens) and is_known(body)) or lens.nominal >= body.nominal or not flat or is_either_asked(question):
        return question
    # 'my adapter isn't recessed' names it twice, by what it is and by what it is not
    twice = all((one.piece or "") in MADE_FLAT and is_open(one) for one in question.adapters)
    if (len(question.adapters) > 1 and not twice) or question.said("thickness") is not None:
        return question
    ring = question.adapters[0] if question.adapters else Thing(words="flat ring", piece="adapter")
    ring = replace(ring, piece="adapter") if ring.piece in REDUCES and ring.factor is None else ring
    cup = ring.piece == CUP  # 'a 0.474 cup, filed flat'
    if ring.ids or (ring.thickness_mm is not None and not cup) or (ring.piece or "") not in MADE_FLAT:
        return question
    told = number(question, "length")  # 'mine is flat, 1 mm'
    return replace(question, adapters=(_flat(ring, told if told is not None and told <= THICKEST_MM else 0.0, setup),))


def _with_lip(question: Question, lip: float, setup: Setup) -> Question:
    """'M42 on OM with a 1 mm flanged ring': between two that lie so near the lens rests on the lip of the ring."""
    ring = question.adapters[0] if len(question.adapters) == 1 else None
    sized = ring is None or ring.ids or ring.thickness_mm or ring.factor or ring.steps
    if ring is None or sized or (ring.piece or "") not in MADE_FLAT or not 0 < lip <= THICKEST_MM:
        return question
    return replace(question.without("spigot"), adapters=(_flat(ring, lip, setup),))


def _flat(ring: Thing, size: float, setup: Setup) -> Thing:
    ends = ring.front or (setup.lens_mount.id,), ring.rear or (setup.body_mount.id,)
    return replace(ring, front=ends[0], rear=ends[1], thickness_mm=(size, size), piece="adapter")
