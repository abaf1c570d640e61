"""Rings of one name that seat apart: which sort is said, and what comes of the flat sort where none is."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import Final

from engine.answers.parts.knowledge import Knowledge
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.records import Adapter
from grammar.questions import Thing

_LEAST: Final = (4, 3)  # letters of a word that tells a sort, and of one behind a 'with'
_LEADS: Final = frozenset(["with", "from", "into", "without"])  # before a ring, and in the name of some
_ANY: Final = frozenset(["adapter", "ring", ""])


def of_its_word(thing: Thing, pairs: Sequence[str], text: str, knowledge: Knowledge) -> list[str]:
    """'a flush D-C ring', 'with a 39-42 bush', 'the ring with a lip': of the rings between two mounts those that a word
    for it names."""
    at = text.casefold().find(thing.words.casefold()) if thing.words else -1
    before = re.findall(r"[a-z]+", text[: max(0, at)].casefold())[-1:]
    itself = re.findall(r"[a-z]+", thing.words.casefold())[-1:] if thing.piece not in _ANY else []
    behind = text[at + len(thing.words) :] if at >= 0 else ""
    with_it = re.match(r"\W+with (?:an? |the )?([a-z]+)", behind.casefold())
    after = with_it.groups() if with_it is not None else ()
    rows = _between(pairs, knowledge)
    for word in (*before, *itself, *after):
        said = (
            [row.id for row in rows if word in _words(row)]
            if len(word) >= _LEAST[word in after] and word not in _LEADS
            else []
        )
        if said and len(said) < len(rows):
            return said
    return []


def as_flat_sort(pieces: Sequence[Thing], knowledge: Knowledge) -> tuple[Thing, ...] | None:
    """The pieces with the first that is only called a ring as the flat one of its mounts; None where there is none.

    Only where a cup is sold under the same name: there the seat is what decides, and the name tells nothing of it.
    """
    for n, thing in enumerate(pieces):
        if thing.ids or thing.thickness_mm or (thing.piece or "") not in _ANY or not (thing.front and thing.rear):
            continue
        rows = _between([f"{thing.front[0]}>{thing.rear[0]}"], knowledge)
        flat = next((row for row in rows if _is_flat(row)), None)
        if flat is not None and any(row.cup is not None for row in rows):
            meant = replace(thing, kind="adapter", ids=(flat.id,), words=flat.name)
            return (*pieces[:n], meant, *pieces[n + 1 :])
    return None


def _between(pairs: Iterable[str], knowledge: Knowledge) -> list[Adapter]:
    named = set(pairs)
    return [row for row in knowledge.catalogue.adapters.values() if f"{row.front}>{row.rear}" in named]


def _is_flat(ring: Adapter) -> bool:
    seat = ring.thickness_mm.shortest
    return ring.thickness_mm.is_fixed and is_known(seat) and seat.nominal == 0


def _words(ring: Adapter) -> set[str]:
    return set(re.findall(r"[a-z]+", " ".join((ring.name, *ring.aliases)).casefold()))
