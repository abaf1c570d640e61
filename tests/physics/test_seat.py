"""Seats, registers and glass between them, against definitions and traced converters."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.base.interval import UNKNOWN, Interval, is_known
from engine.base.span import Span
from engine.physics.seat import (
    extension,
    extension_behind_glass_mm,
    glass_magnification,
    glass_shift_mm,
    right_seat_mm,
    seat_error_mm,
)

exact = Interval.exact
lengths = st.floats(-50, 120)
ZERO, ONE = exact(0.0), exact(1.0)


def test_a_ring_of_the_register_difference_adds_no_error():
    found = seat_error_mm(exact(27.46), exact(45.46), exact(18.0))
    assert found.nominal == pytest.approx(0, abs=1e-12)


def test_a_c_lens_on_a_cs_body_without_a_ring_is_5_mm_too_close():
    found = seat_error_mm(ZERO, exact(17.526), exact(12.526))
    assert found.nominal == pytest.approx(-5.0)


def test_a_helicoid_gives_an_error_at_each_end():
    ends = [seat_error_mm(exact(seat), exact(45.46), exact(18)).nominal for seat in (17, 31)]
    assert ends == pytest.approx([-10.46, 3.54])


@given(lengths, lengths, lengths, st.floats(0, 60))
def test_a_tube_shifts_the_register_error_by_its_length(seat, lens, body, tube):
    bare = seat_error_mm(exact(seat), exact(lens), exact(body)).nominal
    with_tube = seat_error_mm(exact(seat + tube), exact(lens), exact(body)).nominal
    assert with_tube - bare == pytest.approx(tube, abs=1e-9)


@given(lengths, lengths, lengths, lengths, lengths)
def test_registers_between_the_pieces_cancel(first, second, lens, between, body):
    apart = seat_error_mm(exact(first), exact(lens), exact(between)) + seat_error_mm(
        exact(second), exact(between), exact(body)
    )
    together = seat_error_mm(exact(first + second), exact(lens), exact(body))
    assert apart.nominal == pytest.approx(together.nominal, abs=1e-9)


def test_an_unknown_register_leaves_the_error_unknown():
    assert seat_error_mm(exact(5), UNKNOWN, exact(18)) is UNKNOWN
    assert right_seat_mm(exact(45.46), exact(18), UNKNOWN) is UNKNOWN


def test_the_right_seat_is_shorter_by_what_the_glass_brings_the_image_nearer():
    assert right_seat_mm(exact(46.5), exact(18), exact(7.1)).nominal == pytest.approx(21.4)


def test_extension_behind_glass_balances_the_traced_move_of_the_image(traced_glass):
    for row in traced_glass["converters"]:
        k, q = exact(row["factor"]), exact(row["focal"])
        for forward, back in row["lens_forward_image_back"]:
            counted = extension_behind_glass_mm(exact(back), k, q)
            assert forward + counted.nominal == pytest.approx(0, abs=2e-5)


def test_flat_glass_moves_focus_as_traced(traced_glass):
    for row in traced_glass["plates"]:
        assert glass_shift_mm(exact(row["thickness"]), exact(row["index"])).nominal == pytest.approx(
            row["shift"], abs=1e-6
        )


def test_without_the_focal_length_of_the_glass_the_square_of_its_factor_counts():
    assert extension_behind_glass_mm(ONE, exact(0.71), UNKNOWN).nominal == pytest.approx(1 / 0.71**2)
    assert extension_behind_glass_mm(ONE, exact(0.71), None).nominal == pytest.approx(1 / 0.71**2)
    assert glass_magnification(ONE, exact(0.71), UNKNOWN).nominal == 0.71


def test_no_extension_behind_glass_counts_nothing_whatever_the_glass():
    assert extension_behind_glass_mm(ZERO, UNKNOWN, UNKNOWN) == ZERO


def test_an_extension_beyond_the_reach_of_the_glass_is_unknown():
    assert extension_behind_glass_mm(exact(60), exact(0.71), exact(80)) is UNKNOWN


def test_extension_adds_ahead_behind_and_the_lens_s_own_travel():
    found = extension(Span(exact(1), exact(2)), Span.fixed(ONE), exact(0.5), UNKNOWN, exact(3))
    assert found == Span(exact(5), exact(9))


def test_unknown_travel_leaves_only_the_longest_setting_unknown():
    found = extension(Span.fixed(ONE), Span.fixed(ZERO), ONE, None, UNKNOWN)
    assert found.shortest == ONE
    assert found.longest is UNKNOWN


@given(
    st.tuples(st.floats(-4, 4), st.floats(0.5, 2), st.floats(40, 200)),
    st.tuples(st.floats(0, 3), st.floats(0, 0.5), st.floats(0, 50)),
    st.tuples(st.floats(0, 1), st.floats(0, 1), st.floats(0, 1)),
)
def test_extension_behind_glass_holds_every_value_inside_its_inputs(least, wide, at):
    behind, factor, focal = (Interval.between(low, low + width) for low, width in zip(least, wide, strict=True))
    found = extension_behind_glass_mm(behind, factor, focal)
    assert is_known(found)
    d, k, q = (low + width * share for low, width, share in zip(least, wide, at, strict=True))
    value = d / (k * k - k * d / q)
    assert found.least - 1e-9 <= value <= found.greatest + 1e-9
