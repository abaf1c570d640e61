"""What a meter beside the camera says with glass behind the lens, filters of two kinds, and a ruler in the picture."""

from __future__ import annotations

import pytest

from tests.answers.talks import talk


def first(answer, name):
    return next(row.value.nominal for row in answer.quantities or () if row.name == name)


@pytest.mark.parametrize(
    ("say", "stops"),
    [
        ("EV 12 @ ISO 100, I'm at ISO 800, f/2.8, 1/50. how much nd", 6.4),
        ("meter reads EV 14 (iso 400), camera at iso 800, f/4 1/50, which nd", 5.36),
    ],
)
def test_an_ev_is_of_the_speed_right_behind_it(club, say, stops):
    (answer,) = talk(club, say)
    assert first(answer, "nd_stops") == pytest.approx(stops, abs=0.02)


@pytest.mark.parametrize(
    ("say", "set_to"),
    [
        ("light meter says f/8 at 1/50, I have a 2x converter on. what do i set on the lens", 4.0),
        ("my handheld meter reads f/4, with the 0.71x reducer which f do i set", 5.63),
        ("meter says f8, tubes cost 1 stop, what f on the lens", 5.66),
    ],
)
def test_the_ring_is_set_so_that_the_light_is_that_of_the_meter(club, say, set_to):
    (answer,) = talk(club, say)
    assert first(answer, "f_number") == pytest.approx(set_to, abs=0.02)


@pytest.mark.parametrize(
    ("say", "time"),
    [
        ("1/500 without, then an ND8 and a polariser of 1 2/3 stops. new shutter", 1 / 500 * 2**4.667),
        ("ND 1.2 plus polarizer (2 stops) on, was 1/2000. shutter now?", 1 / 2000 * 2**5.986),
    ],
)
def test_a_polariser_takes_its_stops_beside_the_grey_filter(club, say, time):
    (answer,) = talk(club, say)
    assert first(answer, "shutter_s") == pytest.approx(time, rel=0.03)


def test_filters_asked_for_together_are_summed_where_a_scene_was_told_before(club):
    lit = "f2 50fps full sun iso 100, 1/100. which nd"
    _, both = talk(club, lit, "nd8 plus nd4 makes")
    assert first(both, "nd_stops") == pytest.approx(5, abs=0.05)
    _, picked = talk(club, lit, "i only have an nd8 and nd64, which do i take")
    assert first(picked, "nd_stops") == pytest.approx(6.4, abs=0.05)


@pytest.mark.parametrize(
    ("say", "size"),
    [
        ("my ruler fills 25 mm of the APS-C frame, 50 mm lens, what extension is that", 23.6 / 25),
        ("I see 30 mm of ruler across my MFT picture with a 35mm lens. how much extension", 17.3 / 30),
        ("shot a ruler: 18mm on the long side, full frame. mag?", 2.0),
    ],
)
def test_what_is_seen_of_a_ruler_is_the_field(club, say, size):
    (answer,) = talk(club, say)
    assert first(answer, "magnification") == pytest.approx(size, rel=0.01)


def test_extension_past_infinity_is_no_lens_that_goes_past_it(club):
    say = "copying 6x6 negs on full frame with an 80 mm enlarger lens, magnification and extension past infinity?"
    (answer,) = talk(club, say)
    assert answer.intent == "macro-distance"
    assert first(answer, "magnification") == pytest.approx(24 / 56, abs=0.005)
