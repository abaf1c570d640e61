"""Long talks of a beginner with one lens and one body: what a turn asks by itself it asks in the talk too."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk

OPENINGS = [
    ("how do i get a 50 1.8 M42 on my E body",),
    ("35 2.8 K lens on a Z body", "does it reach infinity"),
    ("55 f1.8 M42 on E", "my ring measures 28.6"),
    ("does a 28 2.8 FD cover a full frame E body", "how wide is the picture"),
    ("how close does an 85 f2 K lens get on E with a 20 mm tube",),
    ("f/2 50mm M42 on E in full sun, 1/50 iso 100, which nd",),
    ("58 f2 M42 on E", "is the yellow glass radioactive"),
]


@pytest.mark.parametrize("opening", OPENINGS)
@pytest.mark.parametrize(
    ("said", "intent"),
    [
        ("should i switch off lens corrections", "gear-setting"),
        ("how do i find the register of an unknown lens", "identify-mount"),
        ("less depth if i go nearer or longer", "depth-of-field"),
        ("is my old lens going to go up in value do you reckon", "out-of-scope"),
        ("old theatre projector lens pulled today, there is grey fluff everywhere", "hazard"),
        ("everything fits mechanically but far stuff is blurry", "why"),
    ],
)
def test_what_is_plainly_asked_alone_is_asked_in_the_talk(
    club: Desk, opening: tuple[str, ...], said: str, intent: str
) -> None:
    assert talk(club, *opening, said)[-1].intent == intent


@pytest.mark.parametrize("before", ["how close does it get", "nd for full sun, 1/50", "can i file the ring"])
@pytest.mark.parametrize("said", ["how do i tell my camera its 58mm", "where do i enter 58 in the camera"])
def test_the_focal_length_is_told_to_the_camera_whatever_stood_before(club: Desk, before: str, said: str) -> None:
    last = talk(club, "58mm f/2 M42 on E", before, said)[-1]
    assert last.intent == "gear-setting"
    assert flat(last).startswith("enter 58 mm")


@pytest.mark.parametrize(
    ("said", "frame", "angle"),
    [
        ("how wide is the picture, its the apsc one", "E-mount APS-C", "58 mm on APS-C frames like 89 mm"),
        ("how wide is it, i have the full frame one", "E-mount full frame", "58 mm on full frame frames like 58 mm"),
    ],
)
def test_the_one_of_two_frames_is_that_of_the_body(club: Desk, said: str, frame: str, angle: str) -> None:
    last = talk(club, "58mm f/2 M42 on E", "measured the ring, 28.4", "so what do i do about it", said)[-1]
    assert frame in last.reading
    assert "made for" not in last.reading
    assert angle in flat(last)


@pytest.mark.parametrize(
    "said",
    ["the lens says 0.45 m", "0.45 says the lens", "lens says 0.45", "scale stops at 0.45m", "its 0.45",
     "0.45 m on the ring"],
)  # fmt: skip
def test_what_the_lens_says_after_how_close_is_its_nearest_mark(club: Desk, said: str) -> None:
    last = talk(club, "50 1.4 OM on E", "how close does it get", said)[-1]
    assert "450 mm native" in last.reading
    assert flat(last).startswith("50 mm lens, 45 cm: sharp at 45 cm from the sensor")


def test_on_a_ring_that_is_off_the_nearest_mark_leads(club: Desk) -> None:
    asked, told = talk(
        club, "58 2 M42 on E", "measured ring 28.4", "how close does it get", "the lens says 0.45 m as the nearest"
    )[-2:]
    assert "how near that is, is not known" in flat(asked)[:180]
    assert flat(told).startswith("At its nearest mark it is sharp 42 cm (40 to 48 cm) from the sensor")


@pytest.mark.parametrize("said", ["with a 28 mm lens instead", "and with a 12 mm tube", "what if i set it to 1 m"])
def test_another_lens_or_tube_or_distance_is_no_nearest_mark(club: Desk, said: str) -> None:
    assert "native" not in talk(club, "50 1.4 OM on E", "how close does it get", said)[-1].reading


def test_a_ring_whose_seat_was_asked_long_ago_is_no_tube(club: Desk) -> None:
    turns = ("ring measures 24.1", "do i need a shim", "what is a helicoid", "how close", "how close again in feet")
    for told in talk(club, "58 2 M42 on RF full frame", *turns)[-2:]:
        assert "mm of tube: sharp" not in flat(told).partition("a tube of 25 mm, say")[0]


@pytest.mark.parametrize("said", ["iso is 200 minimum though", "the iso is 200 at the closest, nd?"])
def test_how_fast_the_sensor_is_is_no_lens(club: Desk, said: str) -> None:
    last = talk(club, "58 2 M42 on E", "nd for full sun 1/100", said)[-1]
    assert "58 mm f/2" in last.reading
    assert "ISO 200" in last.reading


def test_a_stop_before_the_name_of_a_mount_is_no_count_of_pixels(club: Desk) -> None:
    told = talk(club, "35 2.8 K lens for Z", "will the corners go dark, i have a full frame one")[-1]
    assert "2.8K takes" not in flat(told)


@pytest.mark.parametrize(
    "said",
    ["anything else i should watch out for", "what else should i know about it", "list all the warnings please",
     "what are the dangers", "what could go wrong", "is there anything i must not do"],
)  # fmt: skip
def test_what_else_to_watch_is_told_of_that_lens_ring_and_body(club: Desk, said: str) -> None:
    last = talk(club, "28 2.8 FD on Z", said)[-1]
    assert last.intent == "hazard"
    assert flat(last).startswith("To watch with this lens on that body, by FD to Z ring with iris lever:")
    assert "the blades stay open until a lever is moved" in flat(last)


def test_what_to_watch_on_a_measured_ring_tells_how_it_sits(club: Desk) -> None:
    last = talk(club, "58mm f/2 M42 on E", "ring is 28.4", "anything else i should watch out for")[-1]
    assert "by your 28.4 mm ring: stops at 3.7 m" in flat(last)


@pytest.mark.parametrize("said", ["should i watch out for the shutter", "do i have to be careful with the pin"])
def test_what_to_watch_of_one_thing_is_asked_of_that(club: Desk, said: str) -> None:
    assert "To watch with this lens" not in flat(talk(club, "58mm f/2 M42 on E", said)[-1])


@pytest.mark.parametrize("said", ["is this yellow glass radioactive", "is the yellow glass in it radioactive"])
def test_whether_glass_is_radioactive_is_told_before_how_it_is_bleached(club: Desk, said: str) -> None:
    told = flat(talk(club, "58mm f/2 M42 on E", said)[-1])
    assert told.startswith("Yes, safe in ordinary use.")


@pytest.mark.parametrize("said", [
    "and theres a 135 too same screw. anything to watch out", "ok and a 135 with the same thread, any danger",
    "also a 135, its the same screw. anything to mind",
])  # fmt: skip
def test_one_more_lens_of_the_same_screw_is_on_the_body_of_before(club, said):
    found = talk(club, "slr lens 50mm f1.8, screw thread 42mm. i have a e body, full frame", said)[-1]
    assert [(lens.ids[0], lens.focal_length_mm) for lens in found.question.lenses] == [("m42", 135)]
    assert [body.ids[0] for body in found.question.bodies] == ["e-mount"]


def test_a_lens_and_a_body_are_kept_past_what_asks_which_thread_it_is(club):
    *_, found = talk(
        club, "slr lens 50mm f1.8, screw thread 42mm. i have a e body, full frame",
        "how do i tell if its the normal one or the other 42 thread", "ok which ring and what does it cost",
    )  # fmt: skip
    assert [lens.focal_length_mm for lens in found.question.lenses] == [50]
    assert "8 to 25 dollars" in flat(found)
    assert "M42 to E ring" in flat(found)


def test_a_set_of_rings_is_of_tubes(club):
    *_, found = talk(club, "50mm f1.8 M42 lens on full frame E", "with a set of 7 14 28 rings what do i get")
    assert [piece.thickness_mm for piece in found.question.adapters] == [(7, 7), (14, 14), (28, 28)]
    *_, found = talk(
        club, "50mm f1.8 M42 lens on full frame E", "with a set of 7 14 28 rings what do i get", "only the 14"
    )
    assert "14 mm of tube" in flat(found)


@pytest.mark.parametrize(
    "said", ["now video outside 4k 25 bright sun, f4 what filter", "uhd 25, full sun, f/4, which nd"]
)
def test_a_number_behind_what_is_recorded_is_the_frame_rate(club, said):
    found = talk(club, "50mm M42 on E", said)[-1]
    assert dict(found.question.values)["frame_rate"] == "25"
    assert "5.4 stops of ND to hold back: f/4, 1/50 s" in flat(found)


def test_a_filter_that_is_asked_for_is_told_without_a_shutter(club):
    (found,) = talk(club, "50mm M42 on E, f/4 bright sun what nd filter")
    assert "5.4 stops of ND to hold back" in flat(found)
    assert "assumed: ISO 100 and 25 frames a second" in flat(found)


@pytest.mark.parametrize("said", [
    "far mountains are soft but at 10 m everythings crisp with the lens on infinity",
    "ok got the ring. mountains are fuzzy, 10 m is crisp, lens at infinity",
    "the horizon stays soft. sharp at 10 m when it is set to infinity",
])  # fmt: skip
def test_what_is_far_is_soft_while_something_nearer_is_sharp_is_no_infinity(club, said):
    """35 mm squared over 10 m is 0.12 mm."""
    found = flat(talk(club, "35mm M42 lens on Z", said)[-1])
    assert "0.12 mm too far out" in found
    assert "A 35 mm M42 lens on a Z-mount body: stops at 10 m" in found


def test_a_body_told_by_what_it_comes_with_is_another_body(club):
    *_, found = talk(club, "M42 lens on an F-mount dslr", "and if i get a mirrorless with z")
    assert [body.ids for body in found.question.bodies] == [("z-mount",)]


def test_that_a_ring_had_glass_is_no_condition_for_other_bodies(club):
    *_, found = talk(
        club, "M42 lens on an F-mount dslr", "what if i buy the one with the glass in it", "so whats a better body"
    )
    assert found.intent == "list-fits"
    assert "M42 to E ring; ring for infinity 27.46 mm" in flat(found)


def test_whether_tape_is_safe_for_the_camera_asks_of_dangers(club):
    *_, found = talk(
        club, "35mm M42 lens on E, it stops at 12 m", "how many layers of tape", "and is that safe for the camera"
    )
    assert found.intent == "hazard"


def test_lens_and_body_are_put_right_together_and_the_rest_stays(club):
    *_, found = talk(club, "16mm cctv lens on a C camera", "oh wait the cam is cs and the lens is c")
    assert [(lens.ids, lens.focal_length_mm) for lens in found.question.lenses] == [(("c",), 16)]
    assert [body.ids[0] for body in found.question.bodies] == ["cs"]
    assert "C to CS ring, 5 mm" in flat(found)


@pytest.mark.parametrize(
    "said", ["does rangefinder focus still work", "will the rangefinder still couple", "rangefinder coupling?"]
)
def test_a_coupled_rangefinder_is_no_lens(club, said):
    *_, found, then = talk(club, "35mm LTM lens on an M body", said, "and if its 0.05 too thick")
    assert "the coupled rangefinder through a ring" in flat(found)
    assert [(lens.ids[0], lens.focal_length_mm) for lens in then.question.lenses] == [("ltm", 35)]


@pytest.mark.parametrize("said", [
    "machine vision cam with a c mount and a cheap 16mm lens", "machine vision camera with c mount",
])  # fmt: skip
def test_an_inspection_camera_that_is_said_to_have_a_c_mount_has_it(club, said):
    (found,) = talk(club, said)
    assert [body.ids for body in found.question.bodies] == [("c",)]


def test_ends_of_a_zone_that_lie_close_are_told_apart(club):
    (found,) = talk(club, "depth of field of a 16mm f/4 C lens at 20 cm, 1/2 inch sensor")
    assert "sharp from 197 to 203 mm" in flat(found)


def test_a_lens_is_told_that_fills_the_frame_from_no_farther_than_there_is_room(club):
    """100 mm on 6.4 mm is 0.064x; D = f (2 + m + 1/m), so 150 mm takes 150 / 17.7 = 8.5 mm."""
    *_, short, lens, better = talk(
        club, "16mm C lens on a CS camera", "i need the board to fill the picture, its 10 cm wide",
        "too far, i only have 15 cm", "what lens then", "is an 8 better",
    )  # fmt: skip
    assert all("wants 8.5 mm" in flat(one) for one in (short, lens))
    assert better.intent == "macro-distance"
    assert [one.focal_length_mm for one in better.question.lenses] == [8]


def test_a_word_asked_about_in_a_talk_leaves_lens_and_body(club):
    *_, found = talk(club, "16mm C lens on E", "what is CS", "and on MFT")
    assert [(lens.ids[0], lens.focal_length_mm) for lens in found.question.lenses] == [("c", 16)]
    assert [body.ids[0] for body in found.question.bodies] == ["mft-mount"]
