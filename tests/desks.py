"""Desks that tests ask at: made once in each process, for the facts cost as much as ten questions."""

from __future__ import annotations

from copy import copy
from functools import cache
from pathlib import Path

from engine.ask import Desk


@cache
def desk_of(gear: Path | None = None) -> Desk:
    """The desk of a gear file that no test writes to; without one, that of no gear."""
    made = Desk(gear=gear)
    assert not made.problems
    return made


def desk_in(folder: Path, gear: Path | None = None) -> Desk:
    """The same desk, saving drawings and cards in the folder."""
    shared = desk_of(gear)
    shared.knowledge, shared.lexicon  # noqa: B018  (made once, for all copies)
    made = copy(shared)
    made.folder = folder
    return made
