"""One mount on three bodies, or three on one with their rings asked for: that is a list of what fits."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


@pytest.mark.parametrize(
    ("said", "intent"),
    [
        ("FD, C/Y and P6 lenses, one Z body. list rings", "list-fits"),
        ("half-frame Pen F lens to E, MFT and Z: ring thicknesses", "list-fits"),
        ("OM lens, bodies E, L and RF. how long is each ring", "list-fits"),
        ("P6 lenses, bodies: G 44x33, EF, RF. all ok? ring lengths please", "list-fits"),
        ("A-mount dslr: does m42, F, T2, md work w/o glass", "list-fits"),
        ("M42, K and C/Y primes on my X. shopping list n rough cost pls", "buy-plan"),
        ("50mm K lens on E, X and MFT: how wide on each", "crop-equivalent"),
        ("'hyperfocal' - one line please, my friend uses it like everyone knows", "definition"),
    ],
)
def test_it_is_read_as_meant(desk: Desk, said: str, intent: str) -> None:
    assert desk.ask(said).intent == intent
