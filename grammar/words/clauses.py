"""A text in its clauses, and what each of them mentions: 'the first is 11.9, the other 0.2 under' tells two rings."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import compact
from grammar.words.mentioned import Mention

_PARTING: Final = "parts-clauses"  # words between two clauses: 'and', 'but'
_SIGNS: Final = re.compile(r"[,;.]\s")  # and signs


@compact
class Clause:
    """A clause in small letters, with what stands in it, counted from where it begins."""

    text: str
    mentioned: tuple[Mention, ...]

    def mentions(self, *keys: str) -> bool:
        """Whether it holds a phrase of one of the keys."""
        return any(one.key in keys for one in self.mentioned)

    def places(self, *keys: str) -> tuple[Mention, ...]:
        """Where in it phrases of the keys stand, in their order."""
        return tuple(sorted((one for one in self.mentioned if one.key in keys), key=lambda one: one.at))


def clauses_of(text: str, mentioned: tuple[Mention, ...]) -> tuple[Clause, ...]:
    """The clauses of a text, in their order. `mentioned`: what stands in it as a whole."""
    flat = text.casefold()
    parting = {(one.at, one.end) for one in mentioned if one.key == _PARTING and one.end <= len(flat)}
    begins, clauses = 0, list[Clause]()
    for at, end in (*sorted(parting | {one.span() for one in _SIGNS.finditer(flat)}), (len(flat), len(flat))):
        held = (one for one in mentioned if begins <= one.at and one.end <= at)
        placed = tuple(one._replace(at=one.at - begins, end=one.end - begins) for one in held)
        clauses.append(Clause(flat[begins:at], placed))
        begins = end
    return tuple(clauses)
