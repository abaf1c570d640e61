"""A mount told by what is seen and measured of it: candidates by name, and the measurement that parts them."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat


@pytest.mark.parametrize(
    ("text", "candidates"),
    [
        ("3 lug slr bayonet, found in a box, roughly 45.5 on paper", ("K-mount", "C/Y")),
        ("window on paper sharp 46.5 behind the flange. bayonet, 3 lugs. ideas", ("F-mount",)),
        ("4 claw bayonet from an old slr, 44.0 on paper", ("EF-mount",)),
    ],
)
def test_what_is_read_on_paper_of_a_bayonet_is_its_register_and_no_circle(asked, text, candidates):
    found = asked(text)
    assert found["intent"] == "identify-mount"
    assert all(name in flat(found) for name in candidates)


def test_what_is_read_on_paper_of_a_lens_alone_stays_its_circle(asked):
    assert "image circle" in asked("it throws 45.5 on paper, does it cover full frame")["reading"]


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("6x6 lens, no thread, wide lugs, the locking ring stayed on the camera", "P6"),
        ("heavy tv zoom, three chips it says, bayonet with a pin. mount name?", "B4"),
        ("2/3 inch broadcast zoom lens with a bayonet, what mount", "B4"),
    ],
)
def test_what_was_seen_alone_leaves_the_mounts_that_nothing_speaks_against(asked, text, first):
    said = flat(asked(text))
    assert first in said
    assert "flange to" in said


@pytest.mark.parametrize(
    "text", ["38.9 by calipers, male. 26 tpi or metric?", "41.9 across the thread, 1.0 or 0.75 pitch"]
)
def test_of_two_pitches_set_side_by_side_neither_is_told(asked, text):
    said = flat(asked(text))
    assert "What is the pitch?" in said
    assert "mm of pitch may be" not in said


def test_a_thread_counted_names_the_enlarger_lens_of_its_pitch_too(asked):
    said = flat(asked("39mm thread, laid paper on it: ten threads = 9.77 mm. so which one"))
    assert "Enlarger 39" in said
    assert said.index("LTM") < said.index("M39x1 SLR")


@pytest.mark.parametrize(
    ("text", "thread"), [("inner dia of a female ring 40.98, what screws into that", "M42x1"),
                         ("female thread, 38.0 inside. which male goes in?", "M39x1")]
)  # fmt: skip
def test_a_female_thread_is_told_by_what_stands_between_its_crests(asked, text, thread):
    assert thread in flat(asked(text))


def test_whether_a_tube_goes_through_an_opening_is_told_by_both_widths(asked):
    assert "Yes: 45.5 mm across goes through 46 mm" in flat(
        asked("outer diameter 54 throat 46, will a 45.5 tube go in")
    )
    assert "does not go through 43 mm" in flat(
        asked("throat is 43 and the rear cell is 43.4 wide, does it go through?")
    )


def test_names_of_an_unknown_lens_are_said_of_the_one_lens(talked):
    found = talked("nameless tele, 42mm screw, m42 or not", "ten threads are 7.5mm")
    assert "by these it is T2" in flat(found)
    assert "body" not in found["reading"]


def test_what_has_no_lugs_is_smooth(asked):
    assert "Projection barrel 42.5 mm" in flat(asked("plain smooth tube 42.5 diameter. no thread no lugs no iris"))


def test_an_image_distance_beside_a_thread_is_a_register(asked):
    assert "that is M42x1 at C register" in flat(asked("industrial lens 42 thread pitch 1, image 17.5"))


def test_a_width_alone_asks_which_mount_it_is_and_is_answered_by_a_reply(talked):
    assert "M39x1 SLR" in flat(talked("39mm screw lens, has focus ring and preset rings. what is it", "its about 45"))
    assert "pitch 1 mm" in talked("42mm screw, no markings. what mount", "1.0")["reading"]
