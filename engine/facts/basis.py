"""How far a record can be trusted, and where it came from."""

from __future__ import annotations

from engine.base.compact import compact, field
from engine.base.place import NOWHERE, Place
from engine.facts.kinds import STRONG


@compact
class Basis:
    """How far a record can be trusted, and where it came from."""

    confidence: str
    sources: tuple[str, ...]

    @property
    def is_strong(self) -> bool:
        return self.confidence in STRONG


@compact
class Source:
    id: str
    title: str
    place: Place = field(default=NOWHERE, compare=False)
