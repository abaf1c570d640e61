"""A lens measured from flange to image, in a holder of the length that this leaves on a body: judged as a chain."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ListedChain
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import AS_TOLD, BodySide, LensSide, setup_of
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.unsold import made_chain
from engine.base.compact import replace
from engine.base.interval import Interval, exact_or_unknown
from engine.facts.records import Lens, Mount
from grammar.questions import Thing

MEASURED: Final = "mount-as-measured"


def held_at(measured_mm: float, thing: Thing | None, body: BodySide, knowledge: Knowledge) -> ListedChain | None:
    """None where no plain ring, holder or tube of that length can stand between."""
    mount = Mount(MEASURED, "its own barrel", "", AS_TOLD, register_mm=Interval.exact(measured_mm))
    facts = replace(knowledge.catalogue, mounts={**knowledge.catalogue.mounts, MEASURED: mount})
    setup = setup_of(_side(thing, mount), body, facts, thing.f_number if thing else None)
    ring = ring_to_make(setup, facts)
    return made_chain(ring, setup, Knowledge(facts, knowledge.cases)) if ring.possible == "plain" else None


def _side(thing: Thing | None, mount: Mount) -> LensSide:
    focal, stop = (thing.focal_length_mm, thing.f_number) if thing is not None else (None, None)
    lens = Lens("", "the lens as measured", mount.id, AS_TOLD, exact_or_unknown(focal), exact_or_unknown(stop))
    return LensSide(lens, mount, focal is None, lens.name)
