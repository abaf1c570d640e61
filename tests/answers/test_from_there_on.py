"""What is asked from there on: how far off it is, how long a holder must be, what of the mirror; rings counted."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, rows, talk


@pytest.mark.parametrize("asked", ["how far from the sensor is that", "how far from the chip?"])
def test_how_far_from_the_sensor_after_a_tube_is_the_subject(club, asked):
    *_, answer = talk(club, "50 1.8 k mount, 25mm k tube, my E body. magnification at infinity mark?", asked)
    assert answer.intent == "macro-distance"
    assert next(iter(rows(answer, "far_from_sensor_mm").values())) == pytest.approx(225, rel=0.1)


def test_holder_of_a_lens_without_register_is_told_by_measure(club):
    _, asked, told = talk(
        club,
        "making a lens holder: projection lens 62.5 barrel. what bore",
        "for the Z mount. how long must it be",
        "got 96 mm on paper",
    )
    assert "less the 16 mm of Z-mount" in flat(asked)
    assert pytest.approx(80, abs=0.01) in rows(told, "stack_mm").values()


def test_mirror_after_a_seat_is_a_danger(club):
    *_, answer = talk(club, "can a DKL lens go on EF", "what do I do about the mirror")
    assert answer.intent == "hazard"
    assert "some touch the mirror" in flat(answer)


def test_rings_for_so_many_systems_are_counted_both_ways(club):
    (answer,) = talk(club, "3 SLR systems, bodies X and L. hub on M or direct, count the rings for me")
    assert rows(answer, "adapter_count") == {"direct": 6, "hub m-mount": 5}


def test_lens_is_seen_on_the_frame_it_is_put_on_and_not_that_it_was_made_for(club):
    (answer,) = talk(club, "80mm 645 normal lens on 44x33. wider or longer than a 50 on ff, give me the number")
    assert rows(answer, "equivalent_focal_mm")["80 mm on 44x33"] == pytest.approx(63.2, abs=0.1)


def test_none_of_a_measure_leaves_the_number_to_the_next(club):
    (answer,) = talk(club, "tiny lens no flange just a 12mm fine thread the whole length")
    assert "S (M12)" in flat(answer)


def test_lens_on_bellows_is_a_lens(club):
    (answer,) = talk(club, "i want 1.5x from my 75mm on a bellows, how far drawn out")
    assert pytest.approx(112.5, abs=0.1) in rows(answer, "extension_mm").values()


def test_small_letter_before_the_mount_it_goes_on_is_a_mount(club):
    (answer,) = talk(club, "why does c on micro four thirds need that sunken adapter, not an ordinary ring")
    assert "1.72 mm inside" in flat(answer)
