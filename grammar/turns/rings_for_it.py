"""'an X ring for that?' after a lens: the one mount told of the ring is that of the body which the lens shall go on."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.questions import Question
from grammar.things.casting import Part

_FOR: Final = "for"
_THAT: Final = frozenset(["it", "that", "this", "them", "these", "those"])


def with_ring_for_it(heard: Heard, before: Question) -> Heard:
    """The text with the body that the ring is for; as it was where the ring tells of no body, or not of a lens."""
    cast = heard.cast
    ring = cast.pieces[0] if len(cast.pieces) == 1 else None
    if ring is None or len(ring.mounts) != 1 or cast.bodies or not before.lenses:
        return heard
    lent = [part for part in cast.lenses if part.by_piece]
    mine = {id_ for lens in before.lenses for id_ in lens.ids}
    if len(lent) != len(cast.lenses) or not ring.is_host or mine & set(ring.mounts[0].ids):
        return heard
    if not _is_for_it(heard) and not _is_on_another(ring, before, cast.hosts):
        return heard
    body = Part("body", ring.noun, mounts=list(ring.mounts), is_host=True)
    return replace(heard, cast=replace(cast, lenses=[], bodies=[body], pieces=[replace(ring, mounts=[])]))


def _is_on_another(ring: Part, before: Question, hosts: frozenset[str]) -> bool:
    """'what does the E ring cost' after a lens on EF: the ring that puts that lens on E."""
    stood = any(body.ids for body in before.bodies) and all(lens.ids for lens in before.lenses)
    return stood and not any(hosts & set(lens.ids[:1]) for lens in before.lenses) and ring.mounts[0].ids[0] in hosts


def _is_for_it(heard: Heard) -> bool:
    said = f" {' '.join(token.text.casefold() for token in heard.line.tokens)} "
    return any(f" {_FOR} {that} " in said for that in _THAT)
