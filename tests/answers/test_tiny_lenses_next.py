"""What beginners with tiny lenses of film and security cameras ask on: zooming the picture, light, bugs."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk

_C = "25mm f1.4 c mount on mft"


@pytest.mark.parametrize(
    ("text", "intent"),
    [
        ("can i just zoom in the picture to get rid of the black", "coverage"),
        ("how zoomed in is that", "crop-equivalent"),
        ("how zoomed is it", "crop-equivalent"),
        ("can i zoom in to lose the black corners", "coverage"),
    ],
)
def test_what_is_zoomed_is_the_picture_and_no_other_lens(club: Desk, text: str, intent: str) -> None:
    _, answer = talk(club, _C, text)
    assert answer.intent == intent
    assert answer.question is not None
    assert [lens.focal_length_mm for lens in answer.question.lenses] == [25.0]
    assert answer.question.lenses[0].lens_kind is None


def test_a_zoom_stays_one(club: Desk) -> None:
    for text in ("a zoom in B4, on mft", "c mount zoom on mft", "10-100 zoom in pl on z"):
        (answer,) = talk(club, text)
        assert answer.question is not None
        assert answer.question.lenses[0].lens_kind == "zoom", text


def test_far_blur_after_the_corners_is_none_of_the_circle(club: Desk) -> None:
    *_, answer = talk(club, _C, "will i get black corners", "it is blurry far away, only focuses close")
    assert "too much spacing" in flat(answer)
    assert "image circle" not in flat(answer)[:200]


@pytest.mark.parametrize(
    "text", ["where does it get sharp if i pull it out 10 mm", "if i slide it out 10 mm where is it sharp",
             "and drawn out 10 mm", "what if i pull the lens 10 mm out"]
)  # fmt: skip
def test_how_far_a_lens_is_pulled_out_is_no_lens(club: Desk, text: str) -> None:
    _, answer = talk(club, _C, text)
    assert answer.question is not None
    assert answer.question.lenses[0].focal_length_mm == 25.0
    assert "sharp at 12 cm" in flat(answer)


@pytest.mark.parametrize(
    "text", ["do i lose light with that ring", "do i lose any light?", "does the adapter cost me light",
             "will it be darker with the ring", "is any light lost by the ring"]
)  # fmt: skip
def test_a_plain_ring_takes_no_light(club: Desk, text: str) -> None:
    _, answer = talk(club, _C, text)
    assert flat(answer).startswith("No: a plain ring has no glass")
    assert "f/1.4 stays f/1.4" in flat(answer)


def test_glass_and_tubes_do_change_the_light(club: Desk) -> None:
    _, reduced = talk(club, "50mm f1.8 m42 on e mount with a 0.71 reducer", "do i lose light")
    _, tubed = talk(club, "50mm f1.8 m42 on e mount with 20 mm of tube", "do i lose light")
    assert "gains 1.0 stops" in flat(reduced)
    assert "1.0 stop lost" in flat(tubed)


def test_slow_motion_without_a_rate_is_told_by_the_usual_ones(club: Desk) -> None:
    _, _, slow, told = talk(club, _C, "how do i film outside in sun at f2.8", "and for slow motion", "100 fps")
    assert flat(slow).startswith("The more frames a second")
    assert "100 a second: 1/200 s, 2 stops less" in flat(slow)
    assert flat(told).startswith("4.4 stops of ND")


def test_an_iso_that_no_body_has_is_said_to_be_none(club: Desk) -> None:
    first, iso = talk(club, "50mm f1.2 projector lens on z, outside in sun, nd at 100 fps?", "what iso")
    assert flat(first).startswith("6.8 stops")
    assert flat(iso).startswith("Lower than bodies go")
    assert "6.8 stops of ND" in flat(iso)


@pytest.mark.parametrize(
    "text", ["can i shoot bugs with it", "can i take pictures of coins with it", "what do i put in front for bugs"]
)
def test_small_creatures_ask_how_near_it_comes(club: Desk, text: str) -> None:
    _, answer = talk(club, _C, text)
    assert answer.intent == "macro-distance"


@pytest.mark.parametrize(
    "text", ["and how do i get everything blurry behind her", "how do i get the background blurry",
             "i want everything behind him out of focus", "what do i set for a blurred background"]
)  # fmt: skip
def test_what_is_to_be_blurred_behind_is_told_how(club: Desk, text: str) -> None:
    _, answer = talk(club, "35mm f1.7 c mount on e mount aps-c", text)
    assert flat(answer).startswith("A blurred background: Open the iris")


def test_two_ranges_after_a_helicoid_are_helicoids(club: Desk) -> None:
    lens = "50mm f1.2 16mm projector lens on z mount"
    *_, answer = talk(club, lens, "do i need a helicoid", "which one, 17-31 or 25-55")
    assert answer.question is not None
    assert [lens.focal_length_mm for lens in answer.question.lenses] == [50.0]
    assert [one.thickness_mm for one in answer.question.adapters] == [(17.0, 31.0), (25.0, 55.0)]


def test_the_number_of_a_lens_told_before_is_no_tube(club: Desk) -> None:
    first = "50mm f1.4 c mount on mft with 10 mm of tube"
    *_, answer = talk(club, first, "and a 35mm f1.7 one", "the other one again, the 50, is it good for faces")
    assert answer.question is not None
    assert [lens.focal_length_mm for lens in answer.question.lenses] == [50.0]
    assert [one.thickness_mm for one in answer.question.adapters] == [(10.0, 10.0)]


def test_a_body_of_one_small_frame_is_likened_to_full_frame(club: Desk) -> None:
    *_, answer = talk(club, "13mm d on q", "how zoomed in is that", "what would that be on full frame")
    assert "13 mm on 1/1.7-type frames like 60 mm" in flat(answer)


def test_a_lens_only_told_is_asked_for_its_mount_first(club: Desk) -> None:
    (answer,) = talk(club, "i have a 16mm projector lens 50mm f1.2, no thread just a smooth barrel")
    assert flat(answer).startswith("Holding and focusing a projection lens")


@pytest.mark.parametrize(
    "text", ["can i film my kid running in the garden, sunny", "i want to film my kids in the sun",
             "can i film outside when its sunny"]
)  # fmt: skip
def test_filming_in_sunlight_is_a_matter_of_light(club: Desk, text: str) -> None:
    _, answer = talk(club, _C, text)
    assert flat(answer).startswith("8.4 stops of ND to hold back")


@pytest.mark.parametrize("text", ["can i film into the sun with it", "can i leave it in the sun", "film the sunset?"])
def test_the_sun_itself_stays_a_danger(club: Desk, text: str) -> None:
    _, answer = talk(club, _C, text)
    assert answer.intent == "hazard"


@pytest.mark.parametrize(
    "text", ["night street scene with the 25 wide open what iso", "what iso at night with the 25 wide open"]
)
def test_a_lens_wide_open_is_no_stop_and_no_iso(club: Desk, text: str) -> None:
    *_, answer = talk(club, _C, "and a 75mm f2.5 one", text)
    assert flat(answer).startswith("ISO 38 to 150: f/1.4")


def test_slow_motion_at_a_number_is_a_rate_and_flicker_is_of_lamps(club: Desk) -> None:
    *_, slow, flicker = talk(
        club, _C, "what nd for outside at f2.8 25p", "we do slow motion too at 100", "is there flicker"
    )
    assert flat(slow).startswith("4.4 stops of ND")
    assert flat(flicker).startswith("Under lamps on 50 Hz mains 1/100 s")


def test_what_is_asked_after_a_camera_that_does_not_release_is_of_its_own(club: Desk) -> None:
    *_, dust, dark = talk(
        club, _C, "will my camera take a picture without a lens", "can dust get in", "its too dark to see"
    )
    assert "release without a lens" not in flat(dust)
    assert "release without a lens" not in flat(dark)


def test_a_spacer_left_off_leaves_the_ring_that_is_needed(club: Desk) -> None:
    *_, answer = talk(
        club, _C, "with the 5 mm ring it only focuses at 20 cm", "so leave it off?", "how far does it focus"
    )
    assert "reaches infinity" in flat(answer)
    assert "No way found" not in flat(answer)


def test_the_step_of_the_rail_goes_by_what_one_picture_holds(club: Desk) -> None:
    *_, answer = talk(club, _C, "at f4 and half life size", "how far do i move the rail between shots")
    assert "Step by 0.54 mm at 0.5x at f/4" in flat(answer)


def test_a_ring_told_before_is_not_by_how_much_it_is_off(club: Desk) -> None:
    *_, answer = talk(club, "10mm d on mft", "my ring is 3.1 mm", "it focuses past infinity")
    assert "too close" not in flat(answer)


@pytest.mark.parametrize("text", ["can i turn it around", "can i flip it around", "mount it backwards?"])
def test_a_lens_turned_round_in_everyday_words(club: Desk, text: str) -> None:
    _, answer = talk(club, "25mm 8mm projector lens f1.3 on rf", text)
    assert flat(answer).startswith("Turned round, a lens works close up only")


@pytest.mark.parametrize("before", ["will it cover", "what do i set", "what iso indoors evening, f8 1/50"])
def test_the_autofocus_is_that_of_the_lens_spoken_of(club: Desk, before: str) -> None:
    *_, answer = talk(club, _C, before, "and the autofocus")
    assert flat(answer).startswith("Autofocus: no.")


def test_a_lens_that_one_has_is_kept_without_its_mount(club: Desk) -> None:
    first, on_body = talk(club, "i have a 25mm f1.8 cine lens", "on my e mount camera")
    assert flat(first).startswith("Which mount is on your 25mm f1.8 cine lens")
    assert on_body.question is not None
    assert [lens.focal_length_mm for lens in on_body.question.lenses] == [25.0]


@pytest.mark.parametrize("text", ["no mount, 62.5 mm outside", "its 62.5 mm across outside", "62.5 outside"])
def test_how_wide_a_barrel_is_outside_is_no_lens_and_no_sun(club: Desk, text: str) -> None:
    _, answer = talk(club, "85mm f2 projector lens on rf", text)
    assert answer.question is not None
    assert [lens.focal_length_mm for lens in answer.question.lenses] == [85.0]
    assert dict(answer.question.values) == {"barrel": "62.5 mm"}


def test_how_blurry_the_back_is_asks_no_shim(club: Desk) -> None:
    _, answer = talk(club, _C, "how blurry is the back when she stands at 3 m")
    assert answer.intent == "depth-of-field"
    assert "25 mm f/1.4 at 3 m" in flat(answer)
