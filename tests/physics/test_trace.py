"""Named quantities worked out from what is given, and how they came about."""

from __future__ import annotations

from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.base.interval import INFINITE, UNKNOWN, Interval
from engine.base.span import Span
from engine.physics.given import ASSUMED_NAMES, GIVEN_NAMES
from engine.physics.quantities import NAMES, QUANTITIES
from engine.physics.trace import Given, Trace

exact = Interval.exact
ZERO, ONE = exact(0.0), exact(1.0)


def chain(**changes):
    """A 25 mm f/1.4 lens whose planes are known, 5 mm too far out, with 2 mm of its own travel, on 17.3 x 13."""
    values = {
        "lens_register_mm": exact(17.526), "body_register_mm": exact(19.25), "seat_mm": Span.fixed(exact(3.276)),
        "error_before_glass_mm": Span.fixed(exact(5.0)), "error_behind_glass_mm": Span.fixed(ZERO),
        "glass_factor": ONE, "glass_focal_mm": UNKNOWN, "image_shift_mm": ZERO, "focal_length_mm": exact(25),
        "f_number": exact(1.4), "used_width_mm": exact(17.3), "used_height_mm": exact(13), "travel_mm": exact(2),
        "usual_travel_mm": exact(2), "hiatus_mm": exact(-4.52), "front_focal_offset_mm": exact(5.85),
        "front_to_sensor_mm": exact(39.63), "pupil_magnification": exact(1.3126), "optics_error": ZERO,
        "focusing": "unit", "image_circle_mm": exact(18), "collar_mm": exact(30), "cup_bore_mm": None,
        "clear_depth_mm": UNKNOWN, "rear_reach_mm": exact(4), "rear_diameter_mm": UNKNOWN, "narrowest_mm": exact(23),
        "throat_mm": exact(38), "thread_depth_mm": UNKNOWN, "thread_length_mm": exact(3.8),
        "blur_divisor": exact(1442), "circle_growth": Interval.between(0.65, 1.1),
        "circle_growth_without_pupil": Interval.between(0.45, 1.1),
    } | changes  # fmt: skip
    return Trace({name: Given(value, name) for name, value in values.items()})


def test_the_worked_numbers_come_out_of_the_table():
    trace = chain()
    assert trace.value("register_error_mm") == Span.fixed(exact(5))
    assert trace.value("extension_mm") == Span(exact(5), exact(7))
    for name, value in {
        "far_from_sensor_mm": 175.48, "near_from_sensor_mm": 141.766, "far_from_front_glass_mm": 130.85,
        "near_from_front_glass_mm": 95.136, "far_magnification": 0.2, "near_magnification": 0.28,
        "effective_f_number": 1.4 * 1.21332, "infinity_miss_mm": 5, "excess_mm": 5, "shortfall_mm": 0,
        "overhang_mm": 0.724, "crop_factor": 2.0, "equivalent_focal_mm": 50.0,
    }.items():  # fmt: skip
        assert trace.value(name).nominal == pytest.approx(value, rel=1e-3), name


def test_every_quantity_can_be_worked_out_and_is_known_by_name():
    trace = chain()
    for name, quantity in QUANTITIES.items():
        trace.value(name)
        assert set(quantity.needs) <= NAMES
        assert quantity.says
        assert quantity.source
    assert not set(QUANTITIES) & set(GIVEN_NAMES)
    assert set(ASSUMED_NAMES) <= set(GIVEN_NAMES)


def test_every_assumption_that_a_quantity_stands_for_is_shipped(assumptions):
    assert set(ASSUMED_NAMES.values()) <= set(assumptions)


def test_a_name_neither_given_nor_in_the_table_is_an_error():
    with pytest.raises(KeyError, match="shoe_size_mm"):
        chain().value("shoe_size_mm")


def test_a_needed_quantity_that_was_left_out_is_an_error_not_a_zero():
    with pytest.raises(KeyError, match="focal_length_mm"):
        Trace({"glass_factor": Given(ONE, "none")}).value("combined_focal_mm")


def test_what_is_given_stands_before_what_could_be_worked_out():
    trace = chain(allowed_blur_mm=exact(0.0075))
    assert trace.value("infinity_allowance_mm").nominal == pytest.approx(1.4 * 0.0075)


def test_the_trace_tells_what_a_quantity_came_from():
    step = chain().step("far_from_sensor_mm")
    assert step.unit == "mm"
    assert step.given is None
    names = [entry.name for entry in step.inputs]
    assert names == list(QUANTITIES["far_from_sensor_mm"].needs)
    extension = step.inputs[names.index("extension_mm")]
    leaf = extension.inputs[0]
    assert leaf.name == "error_before_glass_mm"
    assert leaf.given is not None
    assert leaf.inputs == ()
    assert leaf.unit == "mm"


def test_a_quantity_is_worked_out_once():
    trace = chain()
    assert trace.step("extension_mm") is trace.step("extension_mm")


@pytest.mark.parametrize("focusing", ["front-cell", "internal", "zoom"])
def test_a_lens_that_moves_a_part_of_itself_is_given_no_distances_but_its_seat_is_judged(focusing):
    trace = chain(focusing=focusing)
    for name in (
        "far_from_sensor_mm", "near_from_sensor_mm", "far_from_front_glass_mm", "near_from_front_glass_mm",
        "far_magnification", "near_magnification", "infinity_mark_mm", "effective_f_number", "light_lost_stops",
    ):  # fmt: skip
        assert trace.value(name) is None, name
    assert trace.value("infinity_miss_mm") == exact(5)


def test_where_no_focal_length_applies_no_distance_does_but_the_seat_does():
    trace = chain(focal_length_mm=None)
    assert trace.value("far_from_sensor_mm") is None
    assert trace.value("equivalent_focal_mm") is None
    assert trace.value("extension_mm") == Span(exact(5), exact(7))


def test_without_a_cup_no_collar_clearance_applies():
    assert chain().value("collar_clearance_mm") is None
    assert chain(cup_bore_mm=exact(30.4)).value("collar_clearance_mm").nominal == pytest.approx(0.4)


def test_unknown_facts_leave_what_needs_them_unknown():
    trace = chain(hiatus_mm=UNKNOWN, travel_mm=UNKNOWN, usual_travel_mm=UNKNOWN)
    assert trace.value("far_from_sensor_mm") is UNKNOWN
    assert trace.value("near_from_front_glass_mm") is UNKNOWN
    assert trace.value("far_from_front_glass_mm").nominal == pytest.approx(130.85)
    assert trace.value("extension_mm").longest is UNKNOWN


def test_the_usual_travel_is_judged_by_only_where_the_lens_s_own_is_not_known():
    too_close = {"error_before_glass_mm": Span.fixed(exact(-1.0)), "usual_travel_mm": Interval(1, 4, 2.5)}
    assert chain(**too_close, travel_mm=UNKNOWN).value("reachable_extension_mm").longest == Interval(0, 3, 1.5)
    assert chain(**too_close, travel_mm=exact(0.4)).value("reachable_extension_mm").longest == exact(-0.6)
    assert chain(**too_close, travel_mm=UNKNOWN).value("infinity_miss_mm") == exact(0)


def test_a_lens_a_little_too_close_reaches_infinity_on_its_scale():
    trace = chain(error_before_glass_mm=Span.fixed(exact(-0.21)), focal_length_mm=exact(50), hiatus_mm=ZERO)
    assert trace.value("far_from_sensor_mm") == INFINITE
    assert trace.value("infinity_mark_mm").nominal == pytest.approx(12005, abs=1)
    assert trace.value("infinity_from_f_number") is None
    assert trace.value("far_blur_mm") == ZERO
    assert trace.value("shortfall_mm").nominal == pytest.approx(0.21)


def test_a_lens_too_far_out_says_which_stop_cures_it():
    trace = chain(error_before_glass_mm=Span.fixed(exact(0.26)), used_width_mm=exact(36), used_height_mm=exact(24))
    assert trace.value("infinity_from_f_number").nominal == pytest.approx(8.6653, abs=1e-3)
    assert trace.value("infinity_mark_mm") is None


def test_the_circle_grows_only_where_the_lens_is_held_out():
    assert chain(error_before_glass_mm=Span.fixed(exact(-0.3))).value("image_circle_at_far_mm") == exact(18)
    grown = chain().value("image_circle_at_far_mm")
    assert grown.least == pytest.approx(18 * (1 + 0.65 * 0.2 / 1.3126))
    assert grown.greatest == pytest.approx(18 * (1 + 1.1 * 0.2 / 1.3126))


@given(
    e=st.floats(-0.5, 5), d=st.floats(-0.5, 2), k=st.sampled_from([0.64, 0.71, 1.4, 2.0]), q=st.floats(60, 200),
    shift=st.floats(-15, 15), travel=st.floats(0, 4),
)  # fmt: skip
def test_behind_glass_distances_and_magnification_follow_the_converter_formulas(e, d, k, q, shift, travel):
    q = q if k < 1 else -q
    trace = chain(
        error_before_glass_mm=Span.fixed(exact(e)), error_behind_glass_mm=Span.fixed(exact(d)), glass_factor=exact(k),
        glass_focal_mm=exact(q), image_shift_mm=exact(shift), travel_mm=exact(travel),
    )  # fmt: skip
    near = e + travel
    x = near + d / (k * k - k * d / q)
    extension = trace.value("extension_mm").longest.nominal
    assert extension == pytest.approx(x, abs=1e-12)
    if extension <= 0.01:
        return
    assert trace.value("near_from_sensor_mm").nominal == pytest.approx(50 - 4.52 + 625 / x - shift + near + d, rel=1e-9)
    assert trace.value("near_from_front_glass_mm").nominal == pytest.approx(5.85 + 625 / x, rel=1e-9)
    assert trace.value("near_magnification").nominal == pytest.approx(((k - d / q) * near + d / k) / 25, rel=1e-9)
    assert trace.value("combined_focal_mm").nominal == pytest.approx(25 * k)


def test_glass_without_a_focal_length_counts_by_its_factor_alone():
    trace = chain(
        error_behind_glass_mm=Span.fixed(ONE), glass_factor=exact(0.71), glass_focal_mm=None, image_shift_mm=UNKNOWN
    )
    assert trace.value("extension_mm").shortest.nominal == pytest.approx(5 + 1 / 0.71**2)
    assert trace.value("far_magnification").nominal == pytest.approx(0.71 * 5 / 25 + 1 / (0.71 * 25))
    assert trace.value("far_from_sensor_mm") is UNKNOWN
    assert trace.value("combined_f_number").nominal == pytest.approx(1.4 * 0.71)


def test_an_assumed_plane_adds_the_error_of_the_model():
    sure, assumed = chain(), chain(optics_error=Interval(0, 0.01, 0))
    d = sure.value("far_from_sensor_mm").nominal
    found = assumed.value("far_from_sensor_mm")
    assert (found.least, found.nominal, found.greatest) == pytest.approx((d * 0.99, d, d * 1.01))
    assert sure.value("far_from_sensor_mm").is_exact


def test_a_seat_that_may_be_right_reaches_from_a_near_limit_to_infinity():
    trace = chain(error_before_glass_mm=Span.fixed(Interval(-0.05, 0.05, 0)))
    far = trace.value("far_from_sensor_mm")
    assert far.greatest == inf
    assert far.nominal == inf
    assert far.least > 12000


@given(st.floats(-1, 6), st.floats(0, 0.2), st.floats(0, 0.2), st.floats(0, 3))
def test_a_wider_tolerance_never_narrows_what_is_told(error, below, above, wide_gap):
    narrow = chain(error_before_glass_mm=Span.fixed(exact(error)))
    wide = chain(
        error_before_glass_mm=Span.fixed(exact(error).widened(below, above)),
        hiatus_mm=exact(-4.52).widened(wide_gap, wide_gap),
    )
    for name in (
        "far_from_sensor_mm", "near_from_sensor_mm", "far_from_front_glass_mm", "near_magnification", "far_blur_mm",
        "image_circle_at_far_mm", "lit_share", "effective_f_number", "infinity_miss_mm", "excess_mm",
    ):  # fmt: skip
        one, other = narrow.value(name), wide.value(name)
        assert other.least <= one.least + 1e-9, name
        assert other.greatest >= one.greatest - 1e-9, name
