"""What a number in a message is of, told by its neighbours, by usual sizes and by the mounts named."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers, one


def test_readings_a_hair_apart_are_of_one_ring_and_tell_its_mean_and_its_tilt(asked):
    found = asked("om to e ring, four corners 28.02 28.05 27.98 28.01, good enough?")
    assert one(found, "register_error_mm") == pytest.approx(0.015)
    assert "0.07 mm apart" in flat(found)


def test_numbers_that_are_the_registers_named_are_neither_lenses_nor_rings(asked):
    found = asked("PL prime on an EF dslr. 52 is way more than 44 so easy, right")
    assert found["chains"][0]["verdict"] == "unusable"
    assert "mirror" in flat(found)


def test_two_bare_numbers_behind_a_helicoid_are_its_ends(asked):
    found = asked(
        "M42 helicoid 15 shut 26 open, 1mm M42-E plate, 1mm m39-m42 ring, 50 enlarger, window image 43 behind its"
        " shoulder, infinity?"
    )
    (setting,) = numbers(found, "helicoid_setting_mm")
    assert setting[0] == pytest.approx(43 - 18 - 1 - 1)


def test_a_mark_told_of_one_lens_is_carried_to_another_on_the_same_ring(asked):
    found = asked("my 28 shows infinity at 3m on this ring. where will the 135 show it")
    assert numbers(found, "scale_mark_mm")[0][0] == pytest.approx(69_000, rel=0.02)


def test_a_thread_longer_than_its_socket_is_told_what_clears_it_and_what_that_costs(asked):
    found = asked("c lens thread is 4.8mm long, socket only takes 4, washer how thick")
    assert 0.8 in [pytest.approx(low) for low, _ in numbers(found, "shim_mm")]
    assert "infinity is lost" in flat(found)


def test_glass_of_a_few_millimetres_gone_from_a_sensor_is_no_lens(asked):
    found = asked("shop pulled the 2mm glass off my E sensor. will a 28 m42 still do infinity")
    assert found["chains"][0]["verdict"] == "macro-only"


def test_sheets_at_hand_are_counted_out(asked):
    found = asked("0.3 shim needed, have 0.05 brass sheet, how many")
    assert 6 in [low for low, _ in numbers(found, "layer_count")]


def test_what_was_said_last_tells_whether_a_distance_is_where_focus_ends(asked):
    found = asked("put a 0.2 washer in as the 24 went past infinity, now it stops at 5.8m, too much by?")
    assert one(found, "register_error_mm") == pytest.approx(0.1, abs=0.003)


def test_a_smooth_barrel_is_told_by_its_width(asked):
    found = asked("slide projector lens, smooth barrel 42.5 mm, no thread. what mount")
    assert "Projection barrel 42.5 mm" in flat(found)


def test_the_one_for_another_body_is_the_same_ring_there(asked):
    told = flat(asked("length of the m42 ring for Z and the one for E"))
    assert "29.46 mm" in told
    assert "27.46 mm" in told
