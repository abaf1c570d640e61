"""A ring told by its length, and by how much that is off: the length decides, for what it is off by is asked about."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.answers.parts.near_enough import lens_off_mm, right_seat_mm
from engine.answers.parts.said import numbers
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing

_CLOSE_MM: Final = 0.035  # within which a length is that of a pair of mounts
_TOLD: Final = ("thickness",)
_HOSTS: Final = "mirrorless"  # kind of the mounts that nearly everything is put on


def by_its_length(question: Question, facts: Catalogue) -> Question:
    """'M42 to E ring is 27.3, 0.16 too thin?': a ring of 27.3 mm, whatever the difference is guessed to be.

    Not where the length told is what the ring should have: then it is off by what is told.
    Where no body is named it is that on which a ring of the length less the difference keeps infinity.
    """
    if len(question.adapters) != 1 or not question.lenses or question.follows:
        return question
    ring = question.adapters[0]
    found = _length_and_difference(question, ring, lens_off_mm(facts))
    lens = facts.mounts.get(question.lenses[0].id or "")
    if found is None or lens is None or not is_known(lens.register_mm):
        return question
    total, off = found
    register = lens.register_mm.nominal
    body = question.bodies[0] if question.bodies else _body_of(register - total, off, facts)
    mount = facts.mounts.get(body.ids[0]) if body is not None and body.ids else None
    if body is None or mount is None or not is_known(mount.register_mm):
        return question
    over = total - (register - mount.register_mm.nominal)
    if not right_seat_mm(facts) <= abs(over) <= lens_off_mm(facts):
        return question
    sized = replace(ring, thickness_mm=(total, total), rear=ring.rear or body.ids)
    return question.without(*_TOLD).with_(adapters=(sized,), bodies=question.bodies or (body,))


def _length_and_difference(question: Question, ring: Thing, most_off_mm: float) -> tuple[float, float] | None:
    """How long the ring is, and by how much it is said to be off, in mm; None where not just the two are told."""
    own = (ring.thickness_mm[0],) if ring.is_of_one_length and ring.thickness_mm is not None else ()
    told = (*own, *numbers(question, *_TOLD))
    if len(told) != 2 or ring.ids:
        return None
    off, total = sorted(told)
    return (total, off) if 0 < off <= most_off_mm < total else None


def _body_of(room_mm: float, off: float, facts: Catalogue) -> Thing | None:
    """The mirrorless mounts whose register is what the lens leaves, with or without what it is off by."""
    for register in (room_mm + off, room_mm - off):
        ids = tuple(id_ for id_, own in _hosts(facts) if abs(own - register) <= _CLOSE_MM)
        if ids:
            return Thing("mount", ids, facts.mounts[ids[0]].designation)
    return None


def _hosts(facts: Catalogue) -> Iterator[tuple[str, float]]:
    """Each mount of mirrorless bodies with its register, mm."""
    for mount in facts.mounts.values():
        if mount.kind == _HOSTS and is_known(mount.register_mm):
            yield mount.id, mount.register_mm.nominal
