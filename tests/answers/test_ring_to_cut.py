"""A ring to be cut: which of two mounts is the lens's, and the hole of a stop both ways."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


def test_what_is_told_as_a_lens_is_not_turned_round(asked):
    text = flat(asked("depth of cup for C lens barrel 30 on NX"))
    assert "C lens on an NX-mount body: not a ring, seat -7.97 mm" in text
    assert "NX-mount lens on" not in text


def test_two_mounts_alone_are_told_as_said_and_then_the_other_way_round(asked):
    text = flat(asked("FD to K, how thick would it need to be"))
    assert text.index("FD-mount lens on a K-mount body") < text.index("K-mount lens on an FD-mount body")


@pytest.mark.parametrize(("hole", "focal"), [(16, 100), (12.5, 50)])
def test_a_hole_tells_the_stop_that_it_makes(asked, hole, focal):
    found = asked(f"waterhouse disc {hole} mm hole in a {focal}mm lens, f?")
    assert numbers(found, "f_number") == [(pytest.approx(focal / hole),) * 2]
