"""Exposure against worked answers, its round trips, and the shipped scenes."""

from __future__ import annotations

from math import log2
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from engine.base.interval import UNKNOWN, Interval, is_known
from engine.physics import exposure
from grammar.values import Fault, measured

exact = Interval.exact
LIGHT = Path(__file__).parents[2] / "kb" / "light.yaml"


@pytest.fixture(scope="module")
def scenes() -> dict[str, Interval]:
    """The shipped scenes by id."""
    rows = yaml.load(LIGHT.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)["assumptions"]
    read = {name: measured(fields["value"]) for name, fields in rows.items() if name.startswith("scene-")}
    assert all(not isinstance(value, Fault) and value[1] == "EV" for value in read.values())
    return {name: value[0] for name, value in read.items()}


@pytest.mark.parametrize(
    ("scene", "f_number", "shutter", "iso", "least", "greatest"),
    [
        ("scene-full-sun", 1.6, 1 / 50, 100, 8.0, 8.0),
        ("scene-full-sun", 1.2, 1 / 50, 800, 11.83, 11.83),
        ("scene-full-sun", 1.9, 1 / 50, 200, 8.504, 8.504),
        ("scene-open-shade", 1.9, 1 / 50, 200, 4.504, 5.504),
        ("scene-full-sun", 16, 1 / 100, 100, 0.356, 0.356),
    ],
)
def test_light_to_hold_back_by_scene(scenes, scene, f_number, shutter, iso, least, greatest):
    found = exposure.stops_to_hold_back(scenes[scene], exact(f_number), exact(shutter), exact(iso))
    assert (found.least, found.greatest) == (pytest.approx(least, abs=0.005), pytest.approx(greatest, abs=0.005))


def test_what_is_lacking_is_below_zero(scenes):
    found = exposure.stops_to_hold_back(scenes["scene-candle"], exact(2.8), exact(1 / 50), exact(400))
    assert found.greatest < 0


def test_the_scenes_darken_from_sun_to_moon(scenes):
    by_day = ["scene-snow-in-sun", "scene-full-sun", "scene-hazy-sun", "scene-bright-cloud", "scene-overcast"]
    values = [scenes[name].nominal for name in [*by_day, "scene-office", "scene-candle", "scene-full-moon"]]
    assert values == sorted(values, reverse=True)


def test_no_scene_no_stops():
    assert exposure.stops_to_hold_back(UNKNOWN, exact(2), exact(0.02), exact(100)) is UNKNOWN
    assert exposure.stops_to_hold_back(exact(15), UNKNOWN, exact(0.02), exact(100)) is UNKNOWN
    assert exposure.stops_to_hold_back(exact(15), exact(2), exact(0), exact(100)) is UNKNOWN
    assert exposure.stops_to_hold_back(exact(15), exact(2), exact(0.02), Interval(-1, 100, 50)) is UNKNOWN


def test_half_a_turn_at_25_frames_is_a_fiftieth():
    assert exposure.shutter_of_angle_s(exact(25), exact(180)).nominal == pytest.approx(0.02)
    assert exposure.shutter_of_angle_s(exact(24), exact(172.8)).nominal == pytest.approx(0.02)
    assert exposure.angle_of_shutter_deg(exact(50), exact(0.01)).nominal == pytest.approx(180)


def test_a_shutter_angle_is_no_more_than_a_turn():
    assert exposure.shutter_of_angle_s(exact(25), exact(400)) is UNKNOWN
    assert exposure.shutter_of_angle_s(exact(0), exact(180)) is UNKNOWN


def test_three_stops_make_a_640th_an_80th():
    assert exposure.shutter_behind_s(exact(1 / 640), exact(3)).nominal == pytest.approx(0.0125)


def test_half_the_shutter_time_is_a_stop_less():
    assert exposure.shutter_stops(exact(0.02), exact(0.01)).nominal == pytest.approx(-1)


def test_halfway_from_f4_to_f5_6_is_half_a_stop_by_the_marks():
    found = exposure.f_number_between(exact(4), exact(5.6), exact(0.5))
    assert found.nominal == pytest.approx(4.733, abs=1e-3)
    assert exposure.f_number_after(exact(4), exact(0.5)).nominal == pytest.approx(4.7568, abs=1e-4)
    assert exposure.f_number_stops(exact(4), exact(8)).nominal == pytest.approx(2)


def test_a_t_stop_is_slower_than_its_f_number():
    assert exposure.f_number_of_t_stop(exact(2.2), exact(0.8)).nominal == pytest.approx(1.9677, abs=1e-4)
    assert exposure.t_stop_of_f_number(exact(1.9677), exact(0.8)).nominal == pytest.approx(2.2, abs=1e-4)
    assert exposure.transmission_lost_stops(exact(0.5)).nominal == pytest.approx(1)


@pytest.mark.parametrize("transmission", [UNKNOWN, exact(0), exact(1.1), Interval(0.9, 1.2, 1)])
def test_without_a_transmission_a_t_stop_says_nothing_of_the_f_number(transmission):
    assert exposure.f_number_of_t_stop(exact(2.2), transmission) is UNKNOWN


def test_a_bellows_factor_is_told_by_its_logarithm_not_by_its_half():
    assert exposure.stops_of_factor(exact(1.44)).nominal == pytest.approx(0.52607, abs=1e-5)


def intervals(least, greatest):
    return st.tuples(st.floats(least, greatest), st.floats(least, greatest)).map(lambda two: Interval.between(*two))


@given(st.floats(-6, 18), st.floats(0.7, 64), st.floats(1e-4, 60), st.floats(25, 25600))
def test_what_is_held_back_exposes_the_scene_right_by_any_of_the_three(scene, f_number, shutter, iso):
    n, t, s, ev = exact(f_number), exact(shutter), exact(iso), exact(scene)
    held = exposure.stops_to_hold_back(ev, n, t, s)
    assert held.nominal == pytest.approx(scene - log2(f_number**2 / shutter) + log2(iso / 100), abs=1e-9)
    assert exposure.shutter_for_s(ev, n, s, held).nominal == pytest.approx(shutter)
    assert exposure.f_number_for(ev, t, s, held).nominal == pytest.approx(f_number)
    assert exposure.iso_for(ev, n, t, held).nominal == pytest.approx(iso)
    assert exposure.scene_ev(n, t, s).nominal + held.nominal == pytest.approx(scene, abs=1e-9)


@given(
    intervals(-4, 16), intervals(0.7, 32), intervals(1e-4, 10), intervals(25, 6400), intervals(-3, 15),
    st.lists(st.floats(0, 1), min_size=5, max_size=5),
)  # fmt: skip
def test_exposure_holds_every_value_inside_its_inputs(scene, f_number, shutter, iso, held, shares):
    inputs = (scene, f_number, shutter, iso, held)
    at = [exact(min(v.least + v.width * share, v.greatest)) for v, share in zip(inputs, shares, strict=True)]
    for whole, point in (
        (exposure.stops_to_hold_back(*inputs[:4]), exposure.stops_to_hold_back(*at[:4])),
        (exposure.shutter_for_s(scene, f_number, iso, held), exposure.shutter_for_s(at[0], at[1], at[3], at[4])),
        (exposure.f_number_for(scene, shutter, iso, held), exposure.f_number_for(at[0], at[2], at[3], at[4])),
        (exposure.iso_for(scene, f_number, shutter, held), exposure.iso_for(at[0], at[1], at[2], at[4])),
    ):
        slack = 1e-9 * max(abs(point.nominal), 1)
        assert whole.least - slack <= point.nominal <= whole.greatest + slack


@given(st.floats(0.5, 45), st.floats(0.05, 1))
def test_t_stop_and_f_number_are_each_others_way_back(f_number, transmission):
    t_stop = exposure.t_stop_of_f_number(exact(f_number), exact(transmission))
    assert exposure.f_number_of_t_stop(t_stop, exact(transmission)).nominal == pytest.approx(f_number)
    lost = exposure.transmission_lost_stops(exact(transmission))
    assert exposure.f_number_stops(exact(f_number), t_stop).nominal == pytest.approx(lost.nominal, abs=1e-9)


@given(st.floats(-100000, 100000))
def test_no_number_of_stops_breaks_it(stops):
    found = exposure.shutter_behind_s(exact(0.02), exact(stops))
    assert is_known(found)
    assert found.least >= 0
