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
