"""Threads that meet: against what was reported of real ones, and against the geometry of pitch and play."""

from __future__ import annotations

import pytest

from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval
from engine.physics.mating import (
    ScrewThread,
    flank_clearance_mm,
    mate,
    mating_limits,
    thread_depth_mm,
    turns_to_home,
)

exact = Interval.exact


@pytest.fixture(scope="module")
def limits(assumptions):
    return mating_limits(assumptions)


def measure(value):
    if value is None:
        return UNKNOWN
    return Interval.between(*value) if isinstance(value, list) else exact(value)


@pytest.fixture(scope="module")
def threads(meetings):
    keys = ("major", "pitch", "male_major", "female_minor", "angle", "engagement")
    return {
        name: ScrewThread(*(measure(thread.get(key)) for key in keys)) for name, thread in meetings["threads"].items()
    }


def test_every_reported_meeting_of_two_threads_ends_as_reported(meetings, threads, limits):
    rows = [row for row in meetings["meetings"] if row["reported"]]
    found = {(row["male"], row["female"]): mate(threads[row["male"]], threads[row["female"]], limits) for row in rows}
    assert len(rows) >= 20
    assert {pair: mating.outcome for pair, mating in found.items()} == {
        (row["male"], row["female"]): row["outcome"] for row in rows
    }


def test_computed_meetings_end_alike_except_one_told_the_other_way_round(meetings, threads, limits):
    different = [
        (row["male"], row["female"])
        for row in meetings["meetings"]
        if mate(threads[row["male"]], threads[row["female"]], limits).outcome != row["outcome"]
    ]
    # the row tells of the 8 mm barrel in the 12 mm hole: with the 12 mm thread as the male nothing can start
    assert different == [("m12x0.5", "m8x0.35")]
    assert mate(threads["m8x0.35"], threads["m12x0.5"], limits).outcome == "falls-through"


def test_39_by_26_to_the_inch_usually_runs_home_in_39_by_1(threads, limits):
    found = mate(threads["w39-26"], threads["m39x1"], limits)
    assert found.outcome == "binds"
    assert found.runs_home == "often"
    assert (found.turns.least, found.turns.nominal, found.turns.greatest) == pytest.approx((0.65, 4.1, 7.6), abs=0.05)


def test_42_by_1_never_runs_home_in_42_by_three_quarters(threads, limits):
    found = mate(threads["m42x1"], threads["m42x0.75"], limits)
    assert (found.outcome, found.runs_home) == ("binds", "no")
    assert found.turns.greatest < 1


def test_the_same_thread_runs_home_over_its_engagement(threads, limits):
    found = mate(threads["un-1-32"], threads["un-1-32"], limits)
    assert (found.outcome, found.runs_home) == ("same", "yes")
    assert found.turns.nominal == pytest.approx(3.9 / (25.4 / 32))


def test_a_thread_that_touches_only_the_crests_does_not_run_home(threads, limits):
    found = mate(threads["m25x0.75"], threads["un-1-32"], limits)
    assert (found.outcome, found.runs_home) == ("binds", "no")
    assert "crests" in found.why


def test_a_smaller_male_of_another_pitch_does_not_run_home_although_it_has_room(limits):
    found = mate(ScrewThread(exact(51.689), exact(0.635)), ScrewThread(exact(52), exact(0.75)), limits)
    assert (found.outcome, found.runs_home) == ("binds", "no")
    found = mate(ScrewThread(exact(39.9), exact(0.98)), ScrewThread(exact(40), exact(1)), limits)
    assert (found.outcome, found.runs_home) == ("binds", "no")
    assert "smaller" in found.why


def test_a_pitch_error_within_the_play_until_home_always_runs_home(limits):
    quick = Interval(0.5, 0.6, 0.55)
    found = mate(ScrewThread(exact(40), exact(0.97), engagement_mm=quick), ScrewThread(exact(40), exact(1.0)), limits)
    assert (found.outcome, found.runs_home) == ("binds", "often")
    tight = replace(limits, axial_play_mm=Interval(0.02, 0.175, 0.1))
    found = mate(ScrewThread(exact(40), exact(0.97), engagement_mm=quick), ScrewThread(exact(40), exact(1.0)), tight)
    assert found.runs_home == "yes"


def test_a_male_a_millimetre_small_hangs_by_its_crests(threads, limits):
    found = mate(threads["m39x1"], threads["m40x1"], limits)
    assert (found.outcome, found.runs_home) == ("loose", "no")


def test_a_male_a_little_small_holds_by_part_of_its_flanks(limits):
    male, female = ScrewThread(exact(39.8), exact(1), form_angle_deg=exact(60)), ScrewThread(exact(40), exact(1))
    found = mate(male, female, limits)
    assert (found.outcome, found.runs_home) == ("loose", "yes")
    assert "not published" in found.why


def test_a_male_a_little_large_of_the_same_pitch_binds(limits):
    found = mate(
        ScrewThread(exact(40.08), exact(1), Interval(39.9, 40.05, 40)), ScrewThread(exact(40), exact(1)), limits
    )
    assert found.outcome == "binds"


def test_whether_threads_of_unknown_pitch_mate_is_unknown_but_a_large_male_never_starts(limits):
    bare = ScrewThread(exact(40))
    assert mate(bare, bare, limits).outcome == "unknown"
    assert mate(ScrewThread(exact(40)), ScrewThread(exact(40), exact(1)), limits).outcome == "unknown"
    assert mate(ScrewThread(exact(42)), bare, limits).turns == exact(0)
    assert mate(ScrewThread(exact(38)), ScrewThread(exact(40), exact(1)), limits).outcome == "falls-through"


def test_a_pitch_that_may_be_equal_or_not_may_never_bind(limits):
    male, female = ScrewThread(exact(40), Interval(0.9, 1.1, 1.05)), ScrewThread(exact(40), exact(1))
    assert mate(male, female, limits).turns.greatest == float("inf")


def test_basic_thread_depth_follows_from_pitch_and_form():
    assert thread_depth_mm(exact(1), exact(60)).nominal == pytest.approx(1.0825, abs=1e-4)
    assert thread_depth_mm(exact(1), UNKNOWN).nominal == pytest.approx(1.0825, abs=1e-4)
    # 39 mm at 26 to the inch, 55 degrees: basic minor diameter 37.749
    assert 39 - thread_depth_mm(exact(25.4 / 26), exact(55)).nominal == pytest.approx(37.749, abs=1e-3)


def test_play_along_the_axis_is_flank_clearance_by_the_flank_angle(limits):
    one = ScrewThread(exact(39), exact(1))
    found = flank_clearance_mm(one, one, limits)
    assert found.greatest * 3**-0.5 == pytest.approx(limits.axial_play_mm.greatest)


def test_the_shorter_of_two_engagements_counts(limits):
    long, short = (
        ScrewThread(exact(42), exact(1), engagement_mm=exact(5)),
        ScrewThread(exact(42), engagement_mm=exact(3)),
    )
    assert turns_to_home(long, short, limits) == exact(3)
    assert turns_to_home(ScrewThread(exact(42), exact(1)), ScrewThread(exact(42)), limits) == limits.usual_turns


def test_outcomes_are_among_those_named(meetings, threads, limits):
    for row in meetings["meetings"]:
        found = mate(threads[row["male"]], threads[row["female"]], limits)
        assert found.outcome in ("same", "loose", "binds", "falls-through", "unknown")
        assert found.runs_home in ("yes", "often", "no")
