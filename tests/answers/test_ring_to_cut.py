"""A ring to be cut: which of two mounts is the lens's, and the hole of a stop both ways."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


def test_what_is_told_as_a_lens_is_not_turned_round(asked):
    text = flat(asked("depth of cup for C lens barrel 30 on NX"))
    assert "C lens on an NX-mount body: not a ring, seat -7.97 mm" in text
    assert "NX-mount lens on" not in text


def test_two_mounts_alone_are_told_as_said_and_then_the_other_way_round(asked):
    text = flat(asked("FD to K, how thick would it need to be"))
    assert text.index("FD-mount lens on a K-mount body") < text.index("K-mount lens on an FD-mount body")


@pytest.mark.parametrize(("hole", "focal"), [(16, 100), (12.5, 50)])
def test_a_hole_tells_the_stop_that_it_makes(asked, hole, focal):
    found = asked(f"waterhouse disc {hole} mm hole in a {focal}mm lens, f?")
    assert numbers(found, "f_number") == [(pytest.approx(focal / hole),) * 2]


@pytest.mark.parametrize(
    ("text", "mounts", "left"),
    [
        ("FD ring for an X body: i have 25 mm brass bar stock, long enough?", "fd-mount", "0.7 mm comes off"),
        ("have a 30 mm blank of alu. need it as C/Y to E spacer, what length", "cy-mount", "2.5 mm comes off"),
        ("turning an M42 to Z ring from 30 mm bar, how much comes off", "m42", "0.54 mm comes off"),
        ("K to E ring from a 25 mm aluminium rod, long enough?", "k-mount", "2.46 mm too short"),
        ("I have 40 mm of brass rod. making a K to Z ring", "k-mount", "10.54 mm comes off"),
        ("a 20 mm blank, C/Y to L ring, enough?", "cy-mount", "5.5 mm too short"),
        ("need 27.46 for an M42 E ring, bar is 30 mm", "m42", "2.54 mm comes off"),
    ],
)  # fmt: skip
def test_the_stock_that_a_ring_is_turned_from_is_no_lens_and_what_comes_off_is_told(asked, text, mounts, left):
    found = asked(text)
    assert found["intent"] == "diy-dimension"
    assert left in flat(found)
    assert mounts in str(found["entities"]["lens"])
    assert not found["entities"]["lens"].get("focal_length_mm")


@pytest.mark.parametrize(
    ("text", "pitch"),
    [
        ("pitch for a 1 inch 32 tpi thread on a metric lathe", 25.4 / 32),
        ("what pitch in mm do I set on a metric lathe for the 26 tpi screw mount", 25.4 / 26),
    ],
)
def test_a_pitch_in_inches_is_told_in_mm_for_a_metric_lathe(asked, text, pitch):
    assert (pytest.approx(pitch),) * 2 in numbers(asked(text), "thread_pitch_mm")


def test_a_hole_at_a_focal_length(asked):
    assert numbers(asked("hole for f/16 at 300 mm"), "hole_mm") == [(pytest.approx(18.75),) * 2]


@pytest.mark.parametrize(
    ("text", "forgives"),
    [
        ("how far off can my 300 sit if i only shoot at f8 on aps-c", "forgives 0.16 mm"),
        ("how much can my ring be off at f2.8 on full frame", "forgives 0.084 mm"),
    ],
)
def test_how_far_off_a_seat_may_be_follows_from_the_stop(asked, text, forgives):
    assert forgives in flat(asked(text))[:120]


@pytest.mark.parametrize(("text", "wide"), [("tube for a 42.5 projector barrel, what bore", 42.5),
                                            ("bore for a 46 mm projection barrel", 46)])  # fmt: skip
def test_a_number_before_a_projector_barrel_is_how_wide_it_is(asked, text, wide):
    found = asked(text)
    assert numbers(found, "bore_mm") == [(pytest.approx(wide + 0.03), pytest.approx(wide + 0.2))]


def test_a_barrel_of_unknown_width_is_asked_for_and_its_reply_taken(talked):
    unknown = talked("sleeve for a projection barrel, what bore")
    assert numbers(unknown, "bore_mm") == []
    assert "How wide is the barrel" in flat(unknown)
    told = talked("sleeve for a projection barrel, what bore", "46 mm")
    assert numbers(told, "bore_mm") == [(pytest.approx(46.03), pytest.approx(46.2))]


@pytest.mark.parametrize(("question", "first"), [
    ("what pitch do i set on the lathe for the 1 inch C thread", "C: thread 25.4 mm, pitch 0.794 mm (32 tpi)"),
    ("which pitch and angle do i cut for LTM", "LTM: thread 39 mm, pitch 0.977 mm (26 tpi), flanks at 55"),
    ("need to single point a t2 thread, pitch?", "T2: thread 42 mm, pitch 0.75 mm"),
])  # fmt: skip
def test_the_pitch_of_a_thread_to_cut_is_told_first_where_it_is_asked(asked, question, first):
    assert flat(asked(question)).startswith(first)


@pytest.mark.parametrize(("question", "seat"), [
    ("projector lens makes its image 68 mm behind the holder lip. how long a tube to an E flange", 50),
    ("image of a projection lens lies 68 mm behind its lip, tube length for E?", 50),
    ("far tree is sharp 70 mm behind the lip of my projector lens, how long a tube for Z", 54),
    ("window comes sharp 55 behind the lip, ring length for mft", 35.75),
])  # fmt: skip
def test_what_is_sharp_behind_a_lip_counts_from_there(asked, question, seat):
    assert f"= {seat:g} mm" in flat(asked(question))


def test_diameter_and_pitch_of_a_thread_to_cut_come_first(asked):
    told = flat(asked("cutting a c thread on the lathe: diameter and pitch in metric?"))
    assert told.startswith("C: thread 25.4 mm, pitch 0.794 mm (32 tpi)")
