"""'a mount swap' names no mount; 'a mount lens' does."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    "text",
    ["QBM 50 to EF, ring or is it a mount swap", "is a mount conversion the only way, 50 QBM lens on an EF body"],
)
def test_what_is_exchanged_is_no_mount_by_the_letter(asked, text):
    reading = asked(text)["reading"]
    assert "A-mount" not in reading
    assert "50 mm QBM" in reading


def test_a_lens_of_that_mount_is_read_in_small_letters(asked):
    assert "A-mount lens on an E-mount body" in asked("a mount lens on E")["reading"]


@pytest.mark.parametrize(
    "text",
    [
        "screw-on swap mount or ring, for QBM on EF",
        "replacement mount or ring for QBM on EF",
        "mount conversion vs adapter ring, 50 QBM on EF",
    ],
)
def test_an_exchanged_mount_is_set_against_a_loose_ring(asked, text):
    told = " ".join(asked(text)["text"].split())
    assert "less than about a millimetre a loose ring has no room for two bayonets" in told
    assert "0.46 mm" in told
