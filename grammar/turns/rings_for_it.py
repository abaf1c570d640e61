"""'an X ring for that?' after a lens: the one mount told of the ring is that of the body which the lens shall go on."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard, hear
from grammar.questions import RING, Question
from grammar.things.casting import SPACER, Part
from grammar.words.lexicon import Lexicon

_FOR: Final = "for"
_ONE: Final = "one"
_NO_RING: Final = ("held-direct", "only-no-ring", "flush")  # mentioned where nothing stands between
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


def with_ring_meant(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """'with the 5 mm one?' after a lens with no ring, or with its ring left off: the text with that ring."""
    off = {RING, SPACER} & set(before.limits.without) or before.limits.pieces == 0
    if not (off or before.mentions(*_NO_RING)) or before.adapters or not before.bodies:
        return heard
    for sized, one in pairwise(heard.line.tokens):
        metric = sized.kind == "NUMBER" or sized.is_mm
        if metric and sized.text[:1].isdigit() and one.text.casefold() == _ONE:
            text = f"{heard.text[: one.column - 1]}ring{heard.text[one.end :]}"
            again = hear(text, lexicon, before.intent)
            return replace(again, line=replace(again.line, text=heard.text))
    return heard
