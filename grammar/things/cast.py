"""Who is in a question: its lenses, bodies and pieces, each a part, in the order they were named."""

from __future__ import annotations

from engine.base.compact import compact, field
from grammar.things.casting import Part


@compact(frozen=False)
class Cast:
    """The parts of a question, in the order they were named."""

    lenses: list[Part] = field(default_factory=list)
    bodies: list[Part] = field(default_factory=list)
    pieces: list[Part] = field(default_factory=list)
    frames: list[Part] = field(default_factory=list)
    without: list[Part] = field(default_factory=list)
    using: list[Part] = field(default_factory=list)
    lengths: list[Part] = field(default_factory=list)  # lengths that belong to nothing named
    strange: list[Part] = field(default_factory=list)
    denied: list[Part] = field(default_factory=list)  # mounts that it is said not to have: 'M42, not LTM'
    apart: tuple[tuple[str, str], ...] = ()  # mounts of lens and body, where each lens has its own body
    told: frozenset[str] = frozenset()  # what the cues of the line tell
    hosts: frozenset[str] = frozenset()  # mounts that, named alone, are those of a body
    never_full: frozenset[str] = frozenset()  # mounts of which no body is of full frame
    threaded: frozenset[str] = frozenset()  # mounts that are screws
    by_trait: dict[str, frozenset[str]] = field(default_factory=dict)  # mounts and formats by what they have
    swapped: bool = False  # a body was to be put on a lens

    def having(self, trait: str) -> frozenset[str]:
        """The mounts or formats that have the trait."""
        return self.by_trait.get(trait, frozenset())


def merge(kept: Part, more: Part) -> None:
    """What the second says of the first: 'a 38mm from an 8mm projector'."""
    kept.kinds.extend(more.kinds)
    kept.traits.extend(more.traits)
    kept.formats.extend(more.formats)
    kept.mounts.extend(more.mounts)
    kept.implied = kept.implied or more.implied
    kept.focal = kept.focal if kept.focal is not None else more.focal
    kept.f_number = kept.f_number if kept.f_number is not None else more.f_number
    kept.zoom = kept.zoom or more.zoom
    kept.count = kept.count or more.count
