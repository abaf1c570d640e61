"""A sentence that is nothing but 'why' asks for the reason of all that was told before it."""

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
        "lens with a 20 mm circle on mft: dark corners in 4:3, none in 16:9 video. why",
        "fat 35mm C lens wont screw all the way into the C-MFT adapter. why?",
        "25mm tube on a 50 gives half life size, on a 100 just a quarter. why",
        "m42 50 on my E ring stops at 4 m, why?",
    ],
)
def test_it_asks_for_the_reason(desk: Desk, said: str) -> None:
    assert desk.ask(said).intent == "why"


@pytest.mark.parametrize(
    ("said", "intent"),
    [("will a 50mm M42 reach infinity on E, and if not why", "focus-verdict"), ("C lens on MFT?", "chain")],
)
def test_else_it_is_what_it_was(desk: Desk, said: str, intent: str) -> None:
    assert desk.ask(said).intent == intent
