"""Work at the bench, as it is asked for: stops to drop in, bores to tap, glass taken off, scales against a tape."""

from __future__ import annotations

from math import sqrt

import pytest

from tests.answers.picture import close, flat, numbers, one


def test_the_hole_of_a_stop_is_focal_length_over_f_number(asked):
    found = asked("cutting a drop in paper stop for the 24mm auto110 lens, f5.6 hole how big")
    assert one(found, "hole_mm") == close(24 / 5.6)


def test_the_bore_before_a_metric_thread_is_cut(asked):
    (bore,) = numbers(asked("what hole do i bore for an M42x1 female before cutting the thread"), "bore_mm")
    assert bore[0] == pytest.approx(42 - 1.0825, abs=0.001)
    assert bore[1] - bore[0] == pytest.approx(0.236, abs=0.001)  # the tabled tolerance 6H


def test_filter_glass_that_is_gone_leaves_every_lens_too_far_out(asked):
    found = asked("had the 2mm filter glass taken off my sensor and now nothing hits infinity, how much and which way")
    assert one(found, "glass_shift_mm") == pytest.approx(2 * (1 - 1 / 1.52), abs=0.02)
    assert "too far out" in flat(found)


def test_a_scale_against_a_tape_tells_how_far_the_ring_is_off(asked):
    def travel(mark, f):
        spread = mark - 2 * f
        return (spread - sqrt(spread**2 - 4 * f**2)) / 2

    found = asked("35mm scale lies: says 2m, tape to the film plane says 2.6, infinity is still there")
    assert numbers(found, "register_error_mm")[0][0] == pytest.approx(travel(2600, 35) - travel(2000, 35), abs=0.01)


def test_a_ring_that_was_measured_is_told_by_how_much_it_is_off(asked):
    found = asked("measured my M42-E ring at 27.35, good or bad")
    assert found["chains"][0]["register_error_mm"]["least"] == pytest.approx(27.35 - 27.46)


def test_what_nothing_is_told_of_asks_which_lens_and_body(asked):
    assert asked("will it scratch anything in there?")["problem"]["expected"].startswith("which lens and which body?")
