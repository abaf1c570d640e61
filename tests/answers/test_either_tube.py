"""Two tubes to choose from, a ring that is missing, and targets and filters that will or will not do."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


@pytest.mark.parametrize(
    ("say", "best"),
    [
        ("do i need 5 or 10 mm for coins with a 50mm on E", "10 mm of tube comes nearest"),
        ("10 or 16mm for a close-up of stamps on my 50mm", "16 mm of tube comes nearest"),
    ],
)
def test_of_two_lengths_before_a_longer_lens_one_is_the_tube(club, say, best):
    (answer,) = talk(club, say)
    assert best in flat(answer)


def test_a_ring_that_is_missing_is_not_there(club):
    (answer,) = talk(club, "C mount lens on a CS cctv board with the 5mm ring missing")
    assert "5 mm too close" in flat(answer)


@pytest.mark.parametrize(
    ("say", "ruling"),
    [
        ("window 40 m away good enough for a 200?", "No, 40 m is too near for 200 mm."),
        ("to set the ring on my 50, will a tree 60 m off do", "No, 60 m is too near for 50 mm."),
        ("is the church 400 m off ok for a 135", "Yes, 400 m is far enough for 135 mm."),
    ],
)
def test_whether_a_target_is_far_enough(club, say, ruling):
    (answer,) = talk(club, say)
    assert flat(answer).startswith(ruling)


def test_whether_a_polariser_counts_as_so_many_stops(club):
    (answer,) = talk(club, "does a CPL count as two stops")
    assert "1 to 2 stops" in flat(answer)
