"""A reducer against a plain ring, for a lens that is told: by the factor that most have, where none is."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, flat, numbers


@pytest.mark.parametrize(
    ("text", "focal"),
    [("reducer or plain ring, apsc body, old full frame 50", 35.5), ("booster vs plain ring, 85mm f1.8", 60.35)],
)
def test_the_lens_behind_the_usual_reducer(asked, text, focal):
    found = asked(text)
    assert any(low == close(focal) for low, _ in numbers(found, "focal_length_mm"))
    assert "Assumed: a factor of 0.71x" in flat(found)


def test_without_a_lens_no_factor_is_taken(asked):
    assert "Assumed" not in flat(asked("reducer or plain ring"))


@pytest.mark.parametrize("say", ["is a 0.71 reducer for F on MFT worth it", "is a reducer worth it for OM on MFT"])
def test_a_reducer_that_is_worth_it_or_not_is_no_need_where_a_plain_ring_does(asked, say):
    found = flat(asked(say))
    assert "no plain ring gives it infinity" not in found
    assert "Plain ring is the cheaper" in found
