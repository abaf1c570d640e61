"""What is wrong with something the user wrote: found, expected, and the nearest good value."""

from __future__ import annotations

from collections.abc import Iterable

from engine.base.compact import compact
from engine.base.place import Place
from engine.base.plain import plain


@compact
class Problem:
    place: Place
    found: str
    expected: str
    nearest: str | None = None

    def __str__(self) -> str:
        near = f"; nearest: {plain(self.nearest)}" if self.nearest else ""
        return f"{self.place}: found {plain(self.found)}, expected {self.expected}{near}"


def nearest_of(word: str, choices: Iterable[str]) -> str | None:
    """The choice that looks most like `word`, or None where none comes close. For error paths only."""
    from difflib import get_close_matches

    folded = {choice.casefold(): choice for choice in choices}
    close = get_close_matches(word.casefold(), folded, n=1)
    return folded[close[0]] if close else None
