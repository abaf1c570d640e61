"""What fills the frame: a thing of known size by its name, one told with its size, a frame of film by its format."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, numbers


@pytest.mark.parametrize(
    "text",
    [
        "a4 sheet has to fill the frame, 50mm on full frame. how much tube",
        "copying an A4 page with a 50 on full frame, how far away",
        "50mm, full frame: what extension so that a sheet of paper fills the frame",
    ],
)
def test_a_sheet_of_known_size_fills_the_frame_whole_or_without_a_border(asked, text):
    found = asked(text)
    whole, cropped = 24 / 210, 36 / 297
    assert found["intent"] == "macro-distance"
    assert [row[0] for row in numbers(found, "extension_mm")] == [close(50 * whole), close(50 * cropped)]
    assert min(row[0] for row in numbers(found, "magnification")) == close(whole)


def test_the_width_alone_is_the_long_side(asked):
    found = asked("a letter sized page fills the width, 90mm on full frame. where does the camera hang")
    assert numbers(found, "extension_mm") == [(close(90 * 36 / 279.4),) * 2]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("ant 4mm long shall fill a full frame width with a 50 enlarger. how long must the bellows be", 50 * 9.0),
        ("a bug 12 mm long, want it half the frame width on full frame, with a 60mm", 60 * 1.5),
        ("passport photo 45mm high has to fill the height, full frame, 50mm, tube?", 50 * 24 / 45),
        ("a 24 mm wide stamp filling the width of full frame, 50mm lens", 50 * 1.5),
    ],
)
def test_a_size_told_beside_the_thing_is_no_tube_and_no_lens(asked, text, wanted):
    assert close(wanted) in [row[0] for row in numbers(asked(text), "extension_mm")]


def test_film_is_told_by_its_format(asked):
    found = asked("copy 6x9 negs w 105 enlarger lens filling full frame. bellows draw?")
    assert close(105 * 36 / 84) in [row[0] for row in numbers(found, "extension_mm")]
    assert "6x9" in found["reading"]


def test_a_lens_made_for_a_film_is_told_by_it_and_fills_nothing(asked):
    assert asked("does an enlarger lens made for 6x9 negatives cover full frame")["intent"] == "coverage"


def test_paper_held_behind_a_lens_is_no_motif(asked):
    found = asked("held a sheet of paper behind it, image is sharp at 45 mm from the flange. which mount")
    assert "fill the frame" not in found["reading"]


def test_where_no_frame_is_named_each_of_the_usual_ones_is_told(asked):
    found = asked("a 24mm wide stamp has to fill the width, 60mm lens")
    told = [row[0] for row in numbers(found, "extension_mm")]
    assert told == [close(60 * 36 / 24), close(60 * 23.6 / 24), close(60 * 17.3 / 24)]


def test_a_thing_of_known_size_needs_no_word_for_filling(asked):
    found = asked("a business card with 35mm on full frame at what distance")
    assert close(24 / 55) in [row[0] for row in numbers(found, "magnification")]


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("I see exactly 31 millimetres of ruler on apsc. ratio?", 23.6 / 31),
        ("my picture shows 12 cm of tape measure, full frame, 50mm lens: extension?", 36 / 120),
        ("how close must i be with a 200 so a 6cm butterfly fills half the apsc frame", 23.6 / 120),
    ],
)
def test_what_is_seen_of_a_ruler_and_a_share_of_the_frame(asked, text, size):
    assert close(size) in [row[0] for row in numbers(asked(text), "magnification")]


def test_film_beside_the_frame_it_is_put_on_needs_no_word_for_copying(asked):
    found = asked("645 negs to full frame, 90mm lens. draw and total height")
    assert found["intent"] == "macro-distance"
    assert close(24 / 41.5) in [row[0] for row in numbers(found, "magnification")]
