"""What is assumed of a lens from its length alone: does the stated interval hold what was traced?"""

from __future__ import annotations

from statistics import median

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.base.interval import UNKNOWN, Interval, is_known
from engine.physics import focus
from engine.physics.enclose import widened_by_share
from engine.physics.optics import constructions, resolve_optics

exact = Interval.exact
PLANES = ("hiatus_mm", "front_focal_offset_mm", "front_to_sensor_mm")


def traced_ends(traced, lens):
    """(x, traced at f/8) for both ends of every register error and travel at which something is in focus."""
    for error in traced["register_errors"]:
        for travel in traced["travels"]:
            for x in (error, error + travel):
                rows = lens["x"].get(repr(float(round(x, 6))))
                if rows and rows[1]:
                    yield float(x), rows[1]


@pytest.mark.parametrize("front_glass", ["measured", "not measured"])
def test_from_focal_length_register_and_front_glass_the_stated_distances_hold_the_traced_ones(
    traced, assumptions, front_glass
):
    held_d = held_w = total = 0
    widths, report = [], []
    for name, lens in traced["lenses"].items():
        f, register = exact(lens["f"]), exact(lens["register"])
        to_sensor = register + exact(lens["front_glass_to_flange"]) if front_glass == "measured" else UNKNOWN
        optics = resolve_optics(f, front_to_sensor_mm=to_sensor, register_mm=register, assumptions=assumptions)
        own_d = own_w = own_total = 0
        own_widths = []
        for x, (true_d, true_w, true_m, _) in traced_ends(traced, lens):
            d = widened_by_share(focus.from_sensor_mm(f, optics.hiatus_mm, exact(x)), optics.relative_error)
            error = focus.model_error_at(optics.relative_error, focus.magnification(f, exact(x)))
            w = widened_by_share(focus.from_front_glass_mm(f, optics.front_focal_offset_mm, exact(x)), error)
            own_total += 1
            own_d += d.holds(true_d)
            own_w += w.holds(true_w)
            own_widths.append(d.width / true_d)
            assert focus.magnification(f, exact(x)).nominal == pytest.approx(true_m, rel=0.006)
        report.append(f"{name}: D {own_d}/{own_total}, w {own_w}/{own_total}, width of D {median(own_widths):.1%}")
        assert own_d >= 0.8 * own_total
        assert own_w >= 0.8 * own_total
        held_d, held_w, total = held_d + own_d, held_w + own_w, total + own_total
        widths += own_widths
    print(f"front glass {front_glass}: D held in {held_d}, w in {held_w} of {total}")
    print(f"median width of D {median(widths):.1%}", *report, sep="\n  ")
    assert held_d >= 0.95 * total
    assert held_w >= 0.95 * total
    if front_glass == "measured":
        assert median(widths) <= 0.10


def test_with_all_facts_nothing_is_assumed_and_nothing_is_added(traced, assumptions):
    for lens in traced["lenses"].values():
        optics = resolve_optics(
            exact(lens["f"]),
            front_to_sensor_mm=exact(lens["front_glass_to_sensor_first_order"]),
            hiatus_mm=exact(lens["hiatus"]),
            pupil_magnification=exact(lens["pupil_magnification"]),
            assumptions=assumptions,
        )
        assert optics.assumed == ()
        assert optics.relative_error == exact(0)
        assert optics.front_focal_offset_mm.nominal == pytest.approx(lens["front_focal_offset"], abs=2e-4)


def test_any_two_of_hiatus_front_focus_and_front_glass_give_the_third(assumptions):
    full = {"hiatus_mm": exact(-4.52), "front_focal_offset_mm": exact(5.85), "front_to_sensor_mm": exact(39.63)}
    for missing in PLANES:
        known = {name: value for name, value in full.items() if name != missing}
        optics = resolve_optics(exact(25), **known, assumptions=assumptions)
        assert getattr(optics, missing).nominal == pytest.approx(full[missing].nominal)
        assert optics.assumed == ("pupil_magnification",)
        assert optics.relative_error == exact(0)


@pytest.mark.parametrize("known", PLANES)
def test_with_one_of_them_the_link_still_holds_between_the_likeliest_values(known, assumptions):
    optics = resolve_optics(exact(50), **{known: exact(60.0)}, assumptions=assumptions)
    a, t0, gap = optics.front_focal_offset_mm, optics.front_to_sensor_mm, optics.hiatus_mm
    assert getattr(optics, known) == exact(60.0)
    assert gap.nominal == pytest.approx(a.nominal + t0.nominal - 100)
    assert set(optics.assumed) == {*PLANES, "pupil_magnification"} - {known}
    assert optics.relative_error.greatest > 0


def test_a_measured_front_glass_ties_the_working_distance_to_the_distance_from_the_sensor(assumptions):
    f, t0, x = exact(50), exact(62.5), exact(5)
    optics = resolve_optics(f, front_to_sensor_mm=t0, assumptions=assumptions)
    d = focus.from_sensor_mm(f, optics.hiatus_mm, x)
    w = focus.from_front_glass_mm(f, optics.front_focal_offset_mm, x)
    assert w.width == pytest.approx(d.width)
    assert d.nominal - w.nominal == pytest.approx(62.5 + 5)


def test_without_a_focal_length_nothing_is_assumed(assumptions):
    optics = resolve_optics(UNKNOWN, front_to_sensor_mm=exact(60), assumptions=assumptions)
    assert optics.hiatus_mm is UNKNOWN
    assert optics.pupil_magnification is UNKNOWN
    assert optics.assumed == ()


def test_with_no_constructions_told_nothing_is_assumed():
    optics = resolve_optics(exact(50), front_to_sensor_mm=exact(60), assumptions={})
    assert optics.hiatus_mm is UNKNOWN
    assert optics.assumed == ()


def test_a_short_lens_behind_a_long_register_must_be_a_retrofocus(assumptions):
    optics = resolve_optics(exact(20), register_mm=exact(45.46), assumptions=assumptions)
    row = constructions(assumptions)[-1]
    assert optics.hiatus_mm.least == pytest.approx(row.hiatus_share.least * 20)
    assert optics.hiatus_mm.greatest == pytest.approx(row.hiatus_share.greatest * 20)


def test_of_a_lens_of_unknown_length_the_thin_lens_is_likeliest(assumptions):
    optics = resolve_optics(exact(25), register_mm=exact(17.526), assumptions=assumptions)
    assert optics.hiatus_mm.nominal == 0
    assert optics.pupil_magnification.nominal == 1
    assert optics.front_focal_offset_mm.nominal == pytest.approx(25)


def test_between_two_classes_either_may_hold(assumptions):
    rows = constructions(assumptions)
    between = (rows[1].t0_share.greatest + rows[2].t0_share.least) / 2
    optics = resolve_optics(exact(10), front_to_sensor_mm=exact(10 * between), assumptions=assumptions)
    assert optics.hiatus_mm.least == pytest.approx(10 * rows[1].hiatus_share.least)
    assert optics.hiatus_mm.greatest == pytest.approx(10 * rows[2].hiatus_share.greatest)


def test_a_lens_longer_than_any_sample_has_a_wider_interval_not_a_wrong_one(assumptions):
    # two thin groups, -15.4 and 12.6 mm, 29.5 apart: f = 6, front glass to sensor 47, HH' = 28
    optics = resolve_optics(exact(6), front_to_sensor_mm=exact(47), assumptions=assumptions)
    assert optics.hiatus_mm.holds(28)


@given(
    f=st.floats(5, 200),
    share=st.floats(0.6, 4),
    wide=st.floats(0, 1.5),
    wide_f=st.floats(0, 0.05),
)
def test_a_less_certain_length_never_narrows_what_is_assumed(assumptions, f, share, wide, wide_f):
    t0 = exact(f * share)
    narrow = resolve_optics(exact(f), front_to_sensor_mm=t0, assumptions=assumptions)
    wider = resolve_optics(
        exact(f).widened(f * wide_f, f * wide_f),
        front_to_sensor_mm=t0.widened(f * wide / 2, f * wide),
        assumptions=assumptions,
    )
    for name in ("hiatus_mm", "front_focal_offset_mm", "pupil_magnification"):
        one, other = getattr(narrow, name), getattr(wider, name)
        assert is_known(one)
        assert is_known(other)
        assert other.least <= one.least + 1e-9
        assert other.greatest >= one.greatest - 1e-9
