"""A ring whose glass is taken out is never said to reach infinity by it."""

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
        "md 35-70 zoom on my F dslr. ring has a little lens in it, can i unscrew that and still shoot landscapes?",
        "FD 50 on EF, ring comes with a glass element, ok to take that out and still have infinity?",
        "MD on EF ring with the optic removed, infinity?",
        "i took the glass out of my FD-EF ring. infinity gone?",
        "F ring for my OM lens has a lens in it. if i knock that out will i still get the moon",
    ],
)
def test_no_way_with_glass_is_told(desk: Desk, said: str) -> None:
    answer = desk.ask(said)
    judged = [row.listed.judged for row in answer.chains or ()]
    assert all(not adapter.has_glass for one in judged for adapter in one.chain.adapters)
    assert all(one.verdict != "infinity" for one in judged)
    assert judged or answer.status != "answered"


def test_glass_that_stays_in_reaches_it(desk: Desk) -> None:
    answer = desk.ask("FD 50 on EF, ring comes with a glass element, infinity?")
    assert (answer.chains or ())[0].listed.judged.verdict == "infinity"
