"""A screw of still cameras on a lens of an inspection camera tells no register: nothing is promised of infinity."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


@pytest.mark.parametrize(
    "said",
    [
        "line scan lens 50mm M42 thread, infinity on E with a 27.46 ring?",
        "industrial 28mm, m42x1, does it see stars on my EF dslr thru M42-EF",
        "25mm machine vision lens screw M42 on Z body, infinity?",
    ],
)
def test_nothing_is_promised(desk: Desk, said: str) -> None:
    answer = desk.ask(said)
    best = (answer.chains or ())[0].listed.judged
    assert best.certainty == "unknown"
    assert any("flange-to-image" in line.text for line in answer.lines)


@pytest.mark.parametrize(
    "said",
    ["machine vision 16mm C mount on MFT, infinity?", "my 50 M42 from an old slr on E, infinity?"],
)
def test_what_has_a_register_keeps_it(desk: Desk, said: str) -> None:
    first = (desk.ask(said).chains or ())[0].listed.judged
    assert first.verdict == "infinity"
