"""Close up and depth as people throw them down: bare numbers, rows of tubes, zones, a tape laid; worked by hand."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, flat, numbers, one


@pytest.mark.parametrize(
    ("text", "sums"),
    [
        ("how close with tubes 12 20 36 and a 50mm lens", (12, 20, 36, 68)),
        ("50mm lens with tubes 12/20/36, how close", (12, 20, 36, 68)),
        ("how near does a 50mm lens come with a 1 and a 5mm spacer ring", (1, 5, 6)),
        ("how near does a 50mm lens come with two 25 tubes", (25, 50)),
        ("how near does a 50mm lens come with 2x 10mm tubes", (10, 20)),
        ("5 + 2 spacer under a 50mm C lens, distance?", (5, 2, 7)),
    ],
)
def test_every_number_of_a_row_beside_tubes_is_the_length_of_one(asked, text, sums):
    found = asked(text)
    assert {round(least, 3) for least, _ in numbers(found, "extension_mm")} >= set(sums)
    for x in sums:
        assert one(found, "magnification", f"{x} mm") == close(x / 50)


def test_a_lens_before_a_tube_is_no_tube(asked):
    found = asked("50 + 12 tube, how near")
    assert one(found, "magnification", "12 mm") == close(12 / 50)


def test_where_a_lens_stops_by_itself_is_its_nearest_mark(asked):
    found = asked("135 that stops at 1.5 with a 12mm tube, how near")
    spread = 1500 - 270
    own = (spread - (spread**2 - 4 * 135**2) ** 0.5) / 2
    assert one(found, "magnification", "1.5 m mark") == close((own + 12) / 135, rel=0.01)


def test_where_nothing_is_close_up_a_lens_that_stops_at_a_distance_is_seated_wrong(asked):
    assert not numbers(asked("50 stops at 15 m, how much must come off"), "magnification")


def test_a_tape_before_the_glass_tells_of_every_other_tube(asked):
    found = asked("50mm + 10mm tube = 210 from front glass. what will a 20 tube be")
    assert one(found, "working_distance_mm", "20 mm") == close(210 - 250 + 125)


def test_a_construction_that_is_told_narrows_what_is_assumed(asked):
    found = asked("working distance of a 28mm retrofocus lens with a 14mm tube")
    ((least, greatest),) = numbers(found, "working_distance_mm", "14 mm")
    assert (least, greatest) == close(56 - 0.16 * 28, 56 - 0.02 * 28)
    ((low, high),) = numbers(asked("working distance of a 28mm lens with a 14mm tube"), "working_distance_mm", "14 mm")
    assert low < least < greatest < high


def test_the_stop_for_a_zone_follows_from_its_ends(asked):
    blur = (36**2 + 24**2) ** 0.5 / 1442
    far = asked("35mm on full frame, 2m to infinity sharp, which stop")
    assert one(far, "f_number", "to infinity") == close(35**2 / (blur * (4000 - 35)), rel=0.01)
    assert one(far, "focus_from_sensor_mm") == close(4000)
    between = asked("everything sharp between 2 and 6 m with a 35mm on full frame, what aperture")
    wanted = 35**2 * (1 / 2000 - 1 / 6000) * 3000 / (2 * blur * (3000 - 35))
    assert one(between, "f_number", "2 m to 6 m") == close(wanted, rel=0.01)


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("ff at f4 looks like what f on mft, same framing", 2.0),
        ("what f on full frame gives the same depth of field as f2 on mft, framed the same", 4.0),
    ],
)
def test_the_like_stop_on_another_format_goes_from_the_one_beside_the_stop(asked, text, wanted):
    found = asked(text)
    assert numbers(found, "f_number")[0][0] == pytest.approx(wanted, rel=0.01)


def test_depth_at_the_same_magnification_is_said_to_be_the_same(asked):
    found = asked("is depth of field worse with tubes than with a macro lens at the same ratio")
    assert "no difference" in flat(found).casefold()


def test_the_field_of_a_magnification_needs_no_lens(asked):
    assert one(asked("0.5x on full frame, how wide is what i see"), "field_width_mm") == close(72)


def test_of_tubes_at_hand_the_nearest_to_a_subject_is_named_first(asked):
    found = asked("want 0.2x with a 135mm lens, i have tubes 12 20 36")
    assert "20 + 12 mm comes nearest" in flat(found)


def test_a_lens_in_a_helicoid_is_focused_by_all_that_stands_behind_it(asked):
    found = asked(
        "how close does an 80mm enlarger lens focus on an E-mount body with a 36-90 helicoid, 74 mm flange to image"
    )
    plate = 1  # from the thread of the helicoid to the bayonet of the body
    assert one(found, "magnification", "helicoid fully out") == close((18 + plate + 90 - 74) / 80)
    assert one(found, "helicoid_setting_mm") == close(74 - 18 - plate)


def test_where_its_own_nearest_is_not_known_that_is_said_first_and_what_brings_it_nearer(asked):
    found = asked("50mm m42 on E, how close does it get")
    text = flat(found)
    assert text.startswith("By its own ring it comes as near as the nearest mark of its scale")
    assert text.index("Ways closer") < text.index("1. M42 to E ring")
    assert close(10 / 50) in [row[0] for row in numbers(found, "magnification")]
