"""What one key costs where very much is known by name: in steps, which are the same on a busy machine.

The milliseconds are those of the benchmark: python -m tests.bench.keystroke.
"""

from __future__ import annotations

import cProfile
from collections.abc import Sequence
from pathlib import Path

import pytest

from engine.ask import Desk
from engine.doors.prompt import Guide
from engine.talk import Talk
from tests.bench.keystroke import gear_of, made_up, milliseconds_of_work, typed

ALIKE = ("how do I get my l", "how do I get my lens", "how do I get my lens 0123", "how do I get my lesn 01x")


def steps(names: list[str], lines: Sequence[str], folder: Path) -> list[int]:
    """Calls that each line takes, of Python and of what is built in."""
    folder.mkdir()
    memory = Talk()
    guide = Guide(Desk((), gear_of(names, folder)), memory, lambda: 80)
    assert len(guide.offers.keys) > len(names)
    counts = []
    for line in lines:
        list(milliseconds_of_work(guide, memory, iter([line])))  # what is made once is made here
        guide.offers.after.clear()
        profile = cProfile.Profile()
        profile.enable()
        list(milliseconds_of_work(guide, memory, iter([line])))
        profile.disable()
        counts.append(sum(entry.callcount for entry in profile.getstats()))
    return counts


@pytest.mark.parametrize(
    ("named", "lines"),
    [
        (made_up, lambda names: list(typed(names))[::12]),
        (lambda count: [f"lens {n:05}" for n in range(count)], lambda names: ALIKE),
    ],
    ids=["names-of-all-kinds", "names-that-begin-alike"],
)
@pytest.mark.parametrize("count", [5_000, pytest.param(20_000, marks=pytest.mark.long)])
def test_a_key_takes_about_as_many_steps_among_many_names_as_among_few(named, lines, count, tmp_path: Path) -> None:
    many = named(count)
    few, asked = many[::50], lines(many)
    among_many, among_few = (steps(names, asked, tmp_path / f"{len(names)}") for names in (many, few))
    assert max(among_few) > 500  # something was done
    assert sum(among_many) < 2 * sum(among_few)
    assert max(among_many) < 3 * max(among_few)
