"""Shims, spacers and pitches against worked answers; spacers against trying every stack."""

from __future__ import annotations

from itertools import combinations
from math import inf

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.base.interval import INFINITE, UNKNOWN, Interval
from engine.physics import calibration, focus

exact = Interval.exact
THIN = exact(0)
C_PITCH = exact(25.4 / 32)
FOIL = Interval.between(0.011, 0.018)


@pytest.mark.parametrize(
    ("focal", "mark", "shim"),
    [(50, 10000, 0.25253), (50, 15000, 0.16779), (28, 3000, 0.26633), (25, 2000, 0.32057), (12.5, 1000, 0.16028)],
)
def test_a_shim_from_the_mark_at_which_infinity_is_sharp(focal, mark, shim):
    assert calibration.shim_from_mark_mm(exact(mark), exact(focal), THIN).nominal == pytest.approx(shim, abs=1e-5)


def test_a_lens_that_stops_short_of_infinity_tells_what_to_take_off():
    found = calibration.thinning_from_limit_mm(exact(8000), exact(50), THIN)
    assert found.nominal == pytest.approx(0.31647, abs=1e-5)


@given(st.floats(8, 200), st.floats(-0.3, 0.8), st.floats(1e-3, 0.5))
def test_a_shim_and_its_mark_are_each_others_way_back(f, gap_share, m):
    gap, short = exact(f * gap_share), exact(-m * f)
    mark = focus.infinity_mark_mm(exact(f), gap, short)
    assert calibration.shim_from_mark_mm(mark, exact(f), gap).nominal == pytest.approx(m * f, rel=1e-6)


def test_turns_of_a_thread_and_back():
    assert calibration.shim_from_turns_mm(exact(0.25), C_PITCH).nominal == pytest.approx(0.19844, abs=1e-5)
    assert calibration.turns_for_mm(exact(0.32057), C_PITCH).nominal == pytest.approx(0.40386, abs=1e-5)
    assert calibration.shim_from_turns_mm(exact(0.25), UNKNOWN) is UNKNOWN
    assert calibration.turns_for_mm(exact(1), exact(0)) is UNKNOWN


def test_layers_of_foil_are_whole():
    tenth = calibration.layer_count(exact(0.1), FOIL)
    assert (tenth.least, tenth.greatest, tenth.nominal) == (6, 9, 7)
    more = calibration.layer_count(exact(0.16779), FOIL)
    assert (more.least, more.greatest) == (9, 15)
    assert calibration.layer_count(exact(0.1), exact(0.024)) == exact(4)
    assert calibration.layers_mm(4, exact(0.024)).nominal == pytest.approx(0.096)
    assert calibration.layer_count(exact(0.1), UNKNOWN) is UNKNOWN


@given(st.floats(0.01, 2), st.floats(0.01, 0.5), st.floats(0.01, 0.5), st.floats(0, 1))
def test_layers_hold_every_sheet_between_the_thinnest_and_the_thickest(shim, one, other, share):
    sheets = Interval.between(one, other)
    sheet = exact(min(sheets.least + sheets.width * share, sheets.greatest))
    found = calibration.layer_count(exact(shim), sheet)
    assert calibration.layer_count(exact(shim), sheets).holds(found.nominal)
    assert abs(calibration.layers_mm(int(found.nominal), sheet).nominal - shim) <= sheet.nominal / 2 + 1e-12


@pytest.mark.parametrize(("tpi", "ten"), [(26, 9.7692), (32, 7.9375), (36, 7.0556)])
def test_ten_pitches_tell_threads_apart(tpi, ten):
    assert calibration.length_of_spaces_mm(exact(25.4 / tpi)).nominal == pytest.approx(ten, abs=1e-4)


def test_a_focusing_thread_of_several_starts_advances_by_all_of_them():
    assert calibration.advance_per_turn_mm(exact(5), exact(0.5)) == exact(10)


def made(wanted, spacers, near=0.0):
    found = calibration.spacers_for_mm(exact(wanted), [exact(n) for n in spacers], exact(near))
    return found.pieces, round(found.left.nominal, 6)


def test_spacers_make_a_length_to_the_micrometre():
    assert made(20.3, [0.3, 0.5, 1, 5, 10, 10, 20]) == ((6, 0), 0)
    assert made(20.3, [0.3, 0.5, 1, 5, 10, 10]) == ((4, 5, 0), 0)


def test_the_thinner_of_two_as_near_is_taken():
    assert made(1.5, [1, 2]) == ((0,), 0.5)


def test_one_spacer_that_is_near_enough_goes_before_several():
    spacers = [20.28, 10, 10.3]
    assert made(20.3, spacers) == ((2, 1), 0)
    assert made(20.3, spacers, near=0.02) == ((0,), 0.02)


def test_what_is_at_hand_but_of_no_use_is_left():
    assert made(0.2, [0.5]) == ((), 0.2)
    found = calibration.spacers_for_mm(exact(2), [UNKNOWN, exact(0), exact(-2), exact(inf), exact(2)], exact(0))
    assert found.pieces == (4,)
    assert calibration.spacers_for_mm(UNKNOWN, [exact(1)], exact(0)) is UNKNOWN
    assert calibration.spacers_for_mm(INFINITE, [exact(1)], exact(0)) is UNKNOWN
    assert calibration.spacers_for_mm(exact(1), [exact(1)], UNKNOWN) is UNKNOWN


def slowly(wanted, sizes, near):
    """The best stack by trying each: misses beyond `near` first, then fewest, nearest, thinner, thickest, first."""

    def rank(places):
        total = sum(sizes[n] for n in places)
        miss = abs(total - wanted)
        thickest = tuple(-sizes[n] for n in places)
        return max(miss - near, 0), len(places), miss, total > wanted, thickest, places

    order = sorted(range(len(sizes)), key=lambda n: (-sizes[n], n))
    stacks = (places for count in range(len(sizes) + 1) for places in combinations(order, count))
    return min(rank(places) for places in stacks)[-1]


LENGTHS = st.one_of(st.integers(1, 30000), st.integers(1, 12).map(lambda n: n * 500))


@settings(deadline=None)
@given(st.integers(0, 40000), st.lists(LENGTHS, max_size=9), st.integers(0, 300))
def test_the_spacers_are_the_best_of_all_stacks(wanted, sizes, near):
    found = calibration.spacers_for_mm(exact(wanted / 1000), [exact(n / 1000) for n in sizes], exact(near / 1000))
    assert found.pieces == slowly(wanted, sizes, near)
    assert found.total.nominal == pytest.approx(sum(sizes[n] for n in found.pieces) / 1000)


@given(st.lists(st.integers(1, 5000), min_size=1, max_size=8), st.data())
def test_a_length_that_can_be_made_is_made_exactly(sizes, data):
    some = data.draw(st.sets(st.sampled_from(range(len(sizes))), min_size=1))
    wanted = sum(sizes[n] for n in some)
    found = calibration.spacers_for_mm(exact(wanted / 1000), [exact(n / 1000) for n in sizes], exact(0))
    assert abs(found.left.nominal) < 1e-9
    assert len(found.pieces) <= len(some)
