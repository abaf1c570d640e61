"""One ring under several lenses, of which one alone falls short: whose distance was told, and where the others end."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, rows, talk


@pytest.mark.parametrize(
    "say",
    [
        "same ring, the 28 stops at 5 m and the 135 reaches, whats wrong",
        "the 135 reaches but the 28 stops at 5 m, one ring. how much off",
        "28 won't go past 5m, 135 is fine. same adapter. how much do i take off",
        "i have a 28 and a 135. the 28 stops at 5 m. ring thickness error?",
    ],
)
def test_the_error_is_that_of_the_lens_whose_end_was_told(club, say):
    (answer,) = talk(club, say)
    assert rows(answer, "shim_mm") == {"28 mm lens": pytest.approx(0.159, abs=0.002)}
    assert rows(answer, "far_from_sensor_mm") == {"135 mm lens": pytest.approx(115e3, rel=0.02)}


def test_two_that_reach_are_told_where_they_would_end(club):
    (answer,) = talk(
        club, "the 24 never gets sharp beyond 3 m on this ring, the 50 and the 90 reach. how much off is it"
    )
    assert set(rows(answer, "shim_mm")) == {"24 mm lens"}
    assert set(rows(answer, "far_from_sensor_mm")) == {"50 mm lens", "90 mm lens"}


def test_lenses_that_all_end_there_are_each_told(club):
    (answer,) = talk(club, "28, 50 and 85 on one ring, they all stop at 5 m?")
    assert set(rows(answer, "shim_mm")) == {"28 mm lens", "50 mm lens", "85 mm lens"}


def test_an_end_for_each_is_set_against_the_other(club):
    (answer,) = talk(club, "28 stops at 5 m, 50 stops at 16 m, same ring, what is it off by")
    assert "They agree" in flat(answer)


def test_sheet_at_hand_after_another_lens_still_makes_up_the_same_error(club):
    *_, layers = talk(
        club,
        "OM 28mm on my E ring, infinity comes at the 5m mark. shim?",
        "if i leave it as is where will infinity be on the 100mm",
        "all i have is 0.05mm brass shim stock, how many layers",
    )
    assert list(rows(layers, "layer_count").values()) == [3]
