"""Where nobody sells a ring: the one that would have to be made, or the lens held flush, judged as a chain."""

from __future__ import annotations

from engine.answers.parts.answer import ListedChain, RingToMake
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import AS_TOLD
from engine.answers.parts.wording import small_mm
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.standin import as_listed
from engine.answers.seat.telling import chain_title
from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval
from engine.base.span import Span
from engine.chains.setup import Setup
from engine.chains.walk import Chain
from engine.facts.records import Adapter, Cup
from grammar.questions import Limits

TO_MAKE = "ring-to-make"  # id of the piece that nobody sells, and its kind where it cannot be made either
IMPOSSIBLE = "impossible"


def is_free(limits: Limits) -> bool:
    """Whether the limits leave it open which pieces are used."""
    usual = Limits()
    rest = ("with_glass", "owned_only", "price_usd", "without", "using", "at_least")
    return all(getattr(limits, name) == getattr(usual, name) for name in rest) and limits.pieces != 0


def made_chain(ring: RingToMake, setup: Setup, knowledge: Knowledge) -> ListedChain | None:
    """The chain of the ring to make; where none is possible, what holding the lens as near as it goes would give."""
    if ring.thickness_mm is None:
        return None
    judged = knowledge.judge_chain(Chain((_piece(ring.thickness_mm, ring.possible, setup),), {}), setup)
    return as_listed(judged, chain_title(judged, knowledge))


def flush_chain(setup: Setup, knowledge: Knowledge) -> ListedChain:
    """The lens held against the body with nothing between."""
    judged = knowledge.judge_chain(Chain((_flush(setup),), {}), setup)
    return as_listed(judged, chain_title(judged, knowledge))


def lacks_the_step(limits: Limits, setup: Setup, knowledge: Knowledge) -> bool:
    """'a C lens on a CS camera without the 5 mm ring': the one ring between two that screw together is left out."""
    ends = (setup.lens_mount.id, setup.body_mount.id)
    named = (knowledge.catalogue.adapters.get(name) for name in limits.without)
    step = any(one is not None and (one.front, one.rear) == ends for one in named)
    return step and any(joint.rear == ends[1] for joint in knowledge.joints.onward(ends[0]))


def off_ring(off_mm: float, setup: Setup, knowledge: Knowledge, worked: bool = False) -> ListedChain | None:
    """One ring of the user's that is this much too thick (below 0: too thin), by their own measurement.

    `worked`: metal was taken off. Where no cup is made between the two it can only have been the mount's, and counts
    from where the lens lies flush. None where it is not known how thick the ring should be.
    """
    ring = ring_to_make(setup, knowledge.catalogue)
    right = ring.thickness_mm
    if right is None:
        return None
    if worked and off_mm < 0 and right.nominal < 0 and ring.possible == "no":
        cut = replace(_flush(setup), name=f"held flush, {small_mm(-off_mm)} off its mount",
                      thickness_mm=Span.fixed(Interval.exact(off_mm)))  # fmt: skip
        judged = knowledge.judge_chain(Chain((cut,), {}), setup)
        return as_listed(judged, chain_title(judged, knowledge))
    seat = Span.fixed(Interval.exact(right.nominal + off_mm))
    way = ("thick" if off_mm > 0 else "thin") if right.nominal >= 0 else ("shallow" if off_mm > 0 else "deep")
    name = f"your {'ring' if right.nominal >= 0 else 'cup'}, {small_mm(abs(off_mm))} too {way}"
    piece = Adapter("described-1", name, setup.lens_mount.id, setup.body_mount.id, "plain", AS_TOLD, seat, "measured",
                    owned=1)  # fmt: skip
    judged = knowledge.judge_chain(Chain((piece,), {}), setup)
    return as_listed(judged, chain_title(judged, knowledge))


def _piece(right: Interval, possible: str, setup: Setup) -> Adapter:
    front, rear = setup.lens_mount.id, setup.body_mount.id
    if possible != "no":
        kind = "plain" if right.nominal >= 0 else "recessed"
        cup = Cup(UNKNOWN, -right) if right.greatest < 0 else None
        name = f"a {'ring' if kind == 'plain' else 'cup'} of {small_mm(right.nominal)} to be made"
        return Adapter(TO_MAKE, name, front, rear, kind, AS_TOLD, Span.fixed(right), "derived", cup)
    if right.nominal >= 0:
        # room between the flanges, but not enough for a ring that carries both mounts
        return Adapter(TO_MAKE, "a ring that cannot be made", front, rear, IMPOSSIBLE, AS_TOLD,
                       Span.fixed(right), "measured")  # fmt: skip
    return _flush(setup)


def _flush(setup: Setup) -> Adapter:
    front, rear = setup.lens_mount.id, setup.body_mount.id
    seat = Span.fixed(Interval.exact(0.0))
    return Adapter("held-flush", "held flush on the body, nothing between", front, rear, "plain", AS_TOLD, seat,
                   "measured", owned=1)  # fmt: skip
