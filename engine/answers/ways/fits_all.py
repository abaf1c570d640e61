"""Which body takes several lenses at once: each mount with how many of them it takes at infinity, and their rings."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity
from engine.answers.parts.wording import listed, small_mm
from engine.base.compact import compact
from engine.base.interval import Interval
from engine.facts.records import Mount
from grammar.questions import Question

MOST_LISTED = 12


@compact
class Taken:
    """One lens on one mount: what the lens is called, and the ring that holds infinity there."""

    lens: str
    ring: Interval | None


@compact
class Home:
    """A mount that takes at least one of the lenses, and which."""

    mount: Mount
    taken: tuple[Taken, ...]
    usual: int


def homes_told(question: Question, homes: Sequence[Home], count: int) -> Answer:
    """The mounts that take most of the lenses first; of those the usual ones first."""
    rows = sorted(homes, key=lambda home: (-len(home.taken), -home.usual, home.mount.id))
    all_of = [home for home in rows if len(home.taken) == count]
    if all_of:
        first = listed([home.mount.designation for home in all_of[:MOST_LISTED]])
        head = f"All {count} reach infinity by rings on {first}."
    elif rows:
        head = f"No one body takes all {count} at infinity; {rows[0].mount.designation} takes {len(rows[0].taken)}."
    else:
        head = "Nothing in the facts takes any of them at infinity."
    lines = [Line("head", head)]
    numbers: list[Quantity] = []
    for n, home in enumerate(rows):
        numbers += [
            Quantity("ring_thickness_mm", one.ring, f"{one.lens} on {home.mount.id}")
            for one in home.taken
            if one.ring is not None
        ]
        if n < MOST_LISTED:
            rings = (f"{one.lens} {small_mm(one.ring.nominal)}" if one.ring else one.lens for one in home.taken)
            lines.append(Line("fact", f"{home.mount.designation}: {len(home.taken)} of {count}: {', '.join(rings)}", 1))
    if any(row.value.greatest < 0 for row in numbers if isinstance(row.value, Interval)):
        lines.append(
            Line("note", "Below 0: a cup that sits so far inside the body's flange; the barrel must enter it.")
        )
    return Answer(
        question.text, "list-fits", ANSWERED if rows else NO, tuple(lines), question=question, quantities=tuple(numbers)
    )
