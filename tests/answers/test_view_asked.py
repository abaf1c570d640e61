"""What a lens sees: across at a distance, how far back for a thing, the normal lens of a frame, glass and crop."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


def _first(found, name):
    low, high = numbers(found, name)[0]
    return (low + high) / 2


@pytest.mark.parametrize(
    ("text", "focal", "away", "width"),
    [
        ("how wide at 5m with 75mm on apsc", 75, 5000, 23.5),
        ("what do i see across at 3m, 25mm c lens on mft", 25, 3000, 17.3),
        ("width of scene at 8m, 12.5mm, 1/2.3", 12.5, 8000, 6.17),
    ],
)
def test_the_field_at_a_distance(asked, text, focal, away, width):
    found = asked(text)
    assert _first(found, "field_width_mm") == pytest.approx(width * (away - 2 * focal) / focal, rel=0.02)


@pytest.mark.parametrize(
    ("text", "focal", "magnified"),
    [
        ("fill the frame with a person 1.8 m tall, 85mm apsc, distance", 85, 15.6 / 1800),
        ("how far back to get a 3m wide car in, 50mm on apsc", 50, 23.6 / 3000),
        ("how far away must i be with a 25mm on s16 to see 4 m across", 25, 12.52 / 4000),
    ],
)
def test_how_far_back_for_a_thing_told_so_wide_or_tall(asked, text, focal, magnified):
    found = asked(text)
    wanted = focal * (2 + 1 / magnified + magnified)
    assert _first(found, "focus_from_sensor_mm") == pytest.approx(wanted, rel=0.02)


def test_a_distance_beside_a_thing_is_no_size_of_it(asked):
    assert asked("dof for a person at 2 m, 50mm f2 on mft")["intent"] == "depth-of-field"


def test_the_normal_lens_of_a_frame_goes_by_its_diagonal(asked):
    found = asked("normal lens for s16?")
    assert _first(found, "focal_length_mm") == pytest.approx(1.16 * 14.54, rel=0.01)
    assert "A normal lens on Super 16" in flat(found)


def test_glass_and_crop_together_are_multiplied(asked):
    found = asked("0.71 and 1.5 crop together")
    assert pytest.approx(min(low for low, _ in numbers(found, "crop_factor")), rel=0.01) == 0.71 * 1.527


@pytest.mark.parametrize(
    "text",
    [
        "how wide a field does 25mm see at 3m on mft", "25mm f/2 on mft at 3m, how wide is the picture",
        "mft, 25mm: field width at 3 m", "how many metres wide at 3m with 25mm on mft",
    ],
)  # fmt: skip
def test_a_focal_length_beside_a_field_is_no_width_of_it(asked, text):
    assert _first(asked(text), "field_width_mm") == pytest.approx(17.3 * (3000 - 50) / 25, rel=0.02)


@pytest.mark.parametrize(
    "text",
    [
        "what focal length fills 2 m width at 5 m on s35", "scene 2 m wide from 5 m away, s35, which focal length",
        "s35: to see 2 m across at 5m what focal", "which focal length shows 2 m at 5 m on s35",
    ],
)  # fmt: skip
def test_the_focal_length_that_sees_so_much_so_far_away(asked, text):
    m = 24.89 / 2000
    assert _first(asked(text), "focal_length_mm") == pytest.approx(5000 / (2 + m + 1 / m), rel=0.01)


@pytest.mark.parametrize(
    "text",
    [
        "mft equivalent of a full frame 75mm", "which lens on mft looks like 75mm on ff",
        "what on mft frames like a 75 on full frame", "need something like 75mm ff on mft",
    ],
)  # fmt: skip
def test_the_lens_that_matches_a_view_is_asked_for_before_it(asked, text):
    found = [(low + high) / 2 for low, high in numbers(asked(text), "focal_length_mm")]
    assert found[0] == pytest.approx(37.5, rel=0.01)


@pytest.mark.parametrize("text", ['ff eq 25mm f/2 1"', "8.5/2 on a 1 inch sensor fov", "25mm f2 x mount = ?"])
def test_numbers_without_their_words_in_an_equivalent(asked, text):
    found = asked(text)
    assert found["intent"] == "crop-equivalent"
    assert numbers(found, "equivalent_focal_mm")


def test_lenses_for_portraits_and_wide_ones_go_by_the_diagonal(asked):
    assert _first(asked("portrait lens for super 16"), "focal_length_mm") == pytest.approx(29.1, abs=0.2)
    assert _first(asked("whats a wide angle for regular 8"), "focal_length_mm") == pytest.approx(3.9, abs=0.1)


@pytest.mark.parametrize(
    ("text", "focal"),
    [
        ("I bought an 80mm from a 645 kit. When i adapt it to my full frame body is it a 50 or an 80 there?", 80),
        ("does the 180 from my 6x7 turn into a 90 on full frame or stay a 180", 180),
        ("is my 50 on aps-c a 50 or a 75?", 50),
        ("is a 75mm medium format lens still a 75 on full frame or does it become a 50", 75),
    ],
)
def test_a_lens_stays_what_it_is_whatever_else_it_might_be(asked, text, focal):
    found = asked(text)
    assert found["intent"] == "crop-equivalent"
    assert f"{focal} mm lens: no adapter and no frame changes that" in flat(found)
    assert {(low, high) for low, high in numbers(found, "focal_length_mm")} == {(focal, focal)}


@pytest.mark.parametrize(
    ("text", "widest", "times"),
    [
        ("28mm or 35mm on full frame, which is wider", "28 mm on full frame", "1.25"),
        ("which is longer: 85mm on full frame or 50 on mft", "85 mm on full frame", "1.18"),
        ("is 50mm on Super 16 longer than 85mm on Super 35?", "85 mm on Super 35", "1.26"),
        ("is the 20mm on mft longer than a 35 on full frame?", "35 mm on full frame", "1.14"),
        ("24 vs 28 on aps-c, how much wider is the 24?", "24 mm on APS-C", "1.17"),
    ],
)
def test_of_two_lenses_on_frames_the_wider_is_told(asked, text, widest, times):
    assert f"{widest} is the wider: it takes in {times} times as much" in flat(asked(text))


@pytest.mark.parametrize(
    ("text", "like"),
    [
        ("9mm lens on a 2/3 inch cam, which full frame lens shows the same field", "full frame needs 35.4"),
        ("12.5mm on 1 inch sensor, what full frame lens gives the same view", "full frame needs 34.1 mm"),
        ("25mm on mft, which lens on full frame matches", "full frame needs 50 mm"),
        ("which focal on mft gives me the view of a 35 on full frame?", "Four Thirds needs 17.5 mm"),
    ],
)  # fmt: skip
def test_the_lens_that_shows_the_same_is_told_for_the_frame_it_is_asked_for(asked, text, like):
    assert like in flat(asked(text)).split(".  ")[0][:120]


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("28mm om lens on the aps-c E body, is it still wide?", "On APS-C 28 mm is a normal lens"),
        ("is a 24 still wide on mft", "On Four Thirds 24 mm is a normal lens"),
        ("is a 16 still wide on aps-c", "On APS-C 16 mm is a wide lens"),
        ("is a 50 a portrait lens on aps-c or longer", "On APS-C 50 mm is a lens for portraits"),
        ("is an 85 a portrait lens on aps-c or longer", "On APS-C 85 mm is a tele lens"),
    ],
)
def test_whether_a_lens_stays_wide_goes_by_its_share_of_the_diagonal(asked, text, kind):
    assert kind in flat(asked(text))


@pytest.mark.parametrize(
    "text",
    [
        "do I need to multiply a lens made for apsc too, or only full frame lenses",
        "does the crop factor apply to apsc lenses on apsc bodies as well",
        "my mft lens on mft, do I still multiply",
    ],
)
def test_the_crop_factor_goes_by_the_sensor_whatever_the_lens_is_made_for(asked, text):
    assert flat(asked(text)).lstrip("> ").startswith("It is the same for any lens")


@pytest.mark.parametrize(
    ("text", "own"),
    [
        ("38mm half frame lens, what did it equal on its own camera? and on aps-c", 55),
        ("a 24mm for auto 110, equivalent on its own film and on MFT", 49),
        ("i have an 80 from a 6x6 kit. on the full frame camera it becomes 44?", 44),
        ("my 75 for 6x4.5 becomes a 47 on full frame?", 47),
    ],
)
def test_what_a_lens_was_like_on_its_own_frame_is_told_beside_what_it_is_here(asked, text, own):
    assert f"it saw like {own} mm on full frame" in flat(asked(text))


def test_under_one_is_no_price(asked):
    found = asked("0.64 reducer on a 1.5 crop body, is the total under 1")
    assert "net crop factor 0.98" in flat(found)[:80]
    assert "$" not in found["reading"]


def test_of_two_lenses_the_one_that_the_view_is_to_be_like_is_matched(asked):
    found = flat(asked("aps-c body 1.5x. 35mm lens. i want same as 50 on ff, near enough?"))
    assert found.startswith("To frame like 50 mm on full frame, APS-C needs 32.8 mm")
    assert "To frame like 35 mm" not in found


def test_a_lens_on_a_mount_named_for_its_frame_stays_what_it_is(asked):
    assert "It stays a 25 mm lens" in flat(asked("is a 25 on mft a 25 or a 50"))


@pytest.mark.parametrize(
    ("text", "longest", "other"),
    [
        ("1.4x or 2x for my 300 f4, what do I lose", 600, 420),
        ("2x or 1.4x converter, 300mm f4 on aps-c, equivalent", 600, 420),
        ("a 0.64 or a 0.71 reducer for my 50 1.8 on mft, how wide", 35.5, 32),
    ],
)
def test_glass_to_choose_from_is_not_put_one_behind_the_other(asked, text, longest, other):
    found = [low for low, _ in numbers(asked(text), "focal_length_mm")]
    assert {round(one, 2) for one in found} == {other, longest}


def test_glass_told_together_still_multiplies(asked):
    assert "840 mm f/11.2" in flat(asked("300 f4 with a 1.4x and a 2x stacked"))


@pytest.mark.parametrize(
    "text",
    [
        "with my hand held light meter do I add the crop to the stop it says",
        "do i apply the crop factor to the stop my meter says", "does the crop change what my light meter tells",
        "light meter reads f/5.6, MFT body, do i convert by crop",
        "incident meter and an mft camera, do i correct for the crop",
    ],
)  # fmt: skip
def test_what_a_meter_says_is_set_on_any_crop(asked, text):
    found = asked(text)
    assert found["intent"] == "crop-equivalent"
    assert flat(found).startswith("No crop changes the exposure")
