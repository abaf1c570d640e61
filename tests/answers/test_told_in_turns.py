"""A bare number told after an answer, in the sense that the answer asks for: a speed of the camera, a circle."""

from __future__ import annotations

from math import log2

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from tests.answers.picture import numbers
from tests.answers.talks import talk


@pytest.mark.parametrize("said", ["camera only goes down to 800 in log", "the cam base is 800 actually"])
def test_a_round_number_of_the_camera_is_its_speed(club: Desk, said: str) -> None:
    last = talk(club, "nd for full sun f2 1/50 s", said)[-1]
    low, high = numbers(record_of(last, club.knowledge), "nd_stops")[0]
    assert (low + high) / 2 == pytest.approx(15 - log2(2**2 * 50) + log2(8), abs=0.01)


def test_a_size_measured_clean_is_the_circle(club: Desk) -> None:
    last = talk(club, "16mm c lens on X cover?", "i measured 13 mm clean. largest 16:9?")[-1]
    wide = 13 * 16 / (16**2 + 9**2) ** 0.5
    assert numbers(record_of(last, club.knowledge), "crop_width_mm")[0] == (pytest.approx(wide, abs=0.02),) * 2
