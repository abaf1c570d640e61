"""Talks about the picture: shapes, frames, views and fields that a turn changes."""

from __future__ import annotations

import pytest

from engine.render.record import record_of
from tests.answers.picture import numbers
from tests.answers.talks import talk


def _told(club, answer, name):
    return [(low + high) / 2 for low, high in numbers(record_of(answer, club.knowledge), name)]


def test_one_to_one_after_a_crop_is_a_shape(club):
    *_, last = talk(club, "image circle 22mm. aps-c?", "2.39", "1:1 then")
    assert last.intent == "coverage"
    assert _told(club, last, "crop_width_mm")[0] == pytest.approx(22 / 2**0.5, rel=0.01)


def test_a_frame_larger_than_a_body_is_built_with_stands_for_itself(club):
    *_, last = talk(club, "what focal length fills 3m at 10m on mft", "on ff")
    assert _told(club, last, "focal_length_mm")[0] == pytest.approx(117.2, rel=0.01)
    assert "Micro Four Thirds" not in last.reading


def test_a_field_changed_keeps_its_distance(club):
    *_, last = talk(club, "what focal length fills 3m at 10m on mft", "5m wide")
    m = 17.3 / 5000
    assert _told(club, last, "focal_length_mm")[0] == pytest.approx(10_000 / (2 + m + 1 / m), rel=0.01)


def test_how_wide_at_a_distance_goes_on_with_the_lens(club):
    *_, last = talk(club, "whats 35mm on mft in ff terms", "at 5m how wide")
    assert _told(club, last, "field_width_mm")[0] == pytest.approx(17.3 * (5000 - 70) / 35, rel=0.02)


def test_the_normal_lens_is_asked_of_the_next_format_too(club):
    *_, film, portrait = talk(club, "normal lens for mft", "and s16", "portrait?")
    assert _told(club, film, "focal_length_mm")[0] == pytest.approx(16.9, abs=0.1)
    assert _told(club, portrait, "focal_length_mm")[0] == pytest.approx(29.1, abs=0.2)


def test_inches_alone_are_the_next_frame(club):
    *_, last = talk(club, "does a 2/3 inch cctv lens cover s16", 'what about 1"')
    assert _told(club, last, "format_diagonal_mm")[0] == pytest.approx(15.86, abs=0.02)
