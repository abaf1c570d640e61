"""A reducer told by its mounts and its factor, in any order, and kept for the next lens of a talk."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat


@pytest.mark.parametrize(
    "text",
    [
        "EF to MFT 0.71 reducer, K lens: infinity?",
        "got 0.71 EF to MFT reducer and a K lens, does it work",
        "EF to MFT reducer 0.71x, K lens, infinity?",
    ],
)
def test_the_factor_is_that_of_the_reducer_wherever_it_stands(asked, text):
    found = asked(text)
    assert "0.71x EF-mount to Micro Four Thirds focal reducer" in found["reading"]
    assert [piece["id"] for piece in found["chains"][0]["pieces"]] == ["k-ef", "ef-mft-reducer-0.71"]


def test_a_reducer_behind_another_ring_is_there_for_the_next_lens(talked):
    first = "got 0.71 EF to E reducer and a K lens, does it work"
    assert "M42 to EF ring + EF to E reducer 0.71x" in flat(talked(first, "and M42?"))
    assert "OM to EF ring + EF to E reducer 0.71x" in flat(talked(first, "now with an OM lens"))


def test_a_plain_ring_is_not_the_reducer_that_was_named(asked):
    found = flat(asked("got 0.71 EF to E reducer and a FD lens, does it work"))
    assert "Not that way" not in found
    assert "FD to EF ring without glass + EF to E reducer 0.71x" in found
