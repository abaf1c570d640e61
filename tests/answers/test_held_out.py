"""A lens that does not come down on its seat stands too far out by what is left between, however it is said."""

from __future__ import annotations

import pytest


def _error(found):
    return found["chains"][0]["register_error_mm"]["least"]


@pytest.mark.parametrize(
    ("text", "out"),
    [
        ("my 25 C lens stops 0.8 short of seating on the E cup. infinity?", 0.8),
        ("50mm C lens on MFT, cup catches it 1.2 mm before it seats, how far can it focus", 1.2),
        ("16mm C on MFT, collar on the rim, 2mm gap left to the shoulder, how far sharp", 2.0),
        ("13mm D lens, 0.5 shy of its seat on the E adapter, where does focus end", 0.5),
    ],
)
def test_what_is_left_to_the_seat_is_too_far_out(asked, text, out):
    assert _error(asked(text)) == pytest.approx(out, abs=0.01)


def test_a_ring_that_is_short_itself_still_sits_too_close(asked):
    assert _error(asked("K 50 to Z, ring is 0.3 short. infinity?")) == pytest.approx(-0.3, abs=0.01)
