"""What a ring measures that must be a cup is its depth: less of it sets the lens farther out, not nearer."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, flat, one

RIGHT = 17.526 - 19.25  # C on MFT


@pytest.mark.parametrize(
    ("text", "depth"),
    [
        ("my C to MFT cup measures 1.6 deep, should be 1.72, 25mm lens, infinity?", 1.6),
        ("can a 25 mm C lens reach infinity on MFT with my 1.6 mm cup", 1.6),
        ("my C to MFT cup is 1.80 deep, 25mm lens, infinity?", 1.8),
    ],
)
def test_a_cup_told_by_its_depth_sits_inside_the_flange(asked, text, depth):
    found = asked(text)
    chain = found["chains"][0]
    assert chain["register_error_mm"]["least"] == close(-depth - RIGHT)


def test_a_shallow_cup_is_never_mended_by_a_shim(asked):
    found = asked("C to MFT cup came 1.60 instead of 1.72, how thick a shim")
    assert one(found, "register_error_mm") == close(-1.6 - RIGHT)
    assert "too far out" in flat(found)
    assert "add a shim" not in flat(found)


@pytest.mark.parametrize(
    ("text", "error"),
    [
        ("can a 25 mm C lens reach infinity on MFT with a C to MFT ring 1.7 mm thick", 1.7 - RIGHT),
        ("can a 25 mm C lens reach infinity on E with a 0.6 mm plate", 0.6 - (17.526 - 18)),
    ],
)
def test_a_flat_ring_is_no_cup(asked, text, error):
    found = asked(text)
    assert found["chains"][0]["register_error_mm"]["least"] == close(error)
