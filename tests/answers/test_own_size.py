"""Tubes behind a lens whose own largest magnification is told."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, flat, numbers


@pytest.mark.parametrize(
    ("text", "focal", "own", "tubes"),
    [
        ("lens is a 35mm with 0.21x max. with 10 or 21mm tubes?", 35, 0.21, (10, 21)),
        ("28mm f2.8 spec sheet .14x, 8 mm of tube behind", 28, 0.14, (8,)),
        ("85/1.8 max mag 0.13x + 36 mm tube", 85, 0.13, (36,)),
    ],
)
def test_the_tube_adds_to_what_the_lens_has(talked, text, focal, own, tubes):
    found = [row[0] for row in numbers(talked(text), "magnification")]
    for tube in tubes:
        assert close(own + tube / focal) in found


def test_what_is_short_of_the_size_wanted(talked):
    text = flat(talked("does a 16 mm ring take my 80 (half life size already) up to 1:1?"))
    assert "24 mm short: 0.7x" in text
    text = flat(talked("my 80 does 0.5x natively. will a 40 mm tube get it to life size"))
    assert "is enough: 1x" in text
