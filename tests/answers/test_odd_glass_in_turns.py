"""What beginners ask on of enlarger, projector and cine lenses and of objectives: what was told stays told."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk

_C = "a 25mm f1.4 c mount lens on a micro four thirds camera"
_ENLARGER = "a 50mm f2.8 enlarger lens on my e-mount full frame camera"


@pytest.mark.parametrize(
    ("text", "mount"),
    [
        ("i have another one, 6mm f1.2, says cs on it", "cs"),
        ("another one, 6mm f1.2, says cs", "cs"),
        ("the next says d on it, 13mm f1.9", "d"),
        ("and one that says d on the side, 13mm", "d"),
    ],
)
def test_what_is_read_on_a_lens_is_its_mount_and_no_body(club: Desk, text: str, mount: str) -> None:
    _, answer = talk(club, _C, text)
    assert answer.question is not None
    assert [lens.ids[0] for lens in answer.question.lenses] == [mount]
    assert [body.ids for body in answer.question.bodies] == [("mft-mount",)]


def test_a_film_camera_is_where_lenses_come_from(club: Desk) -> None:
    *_, last = talk(
        club,
        "bought a small board camera with a cs mount, 1/2.3 inch sensor",
        "and i have an old 8mm movie camera with three lenses, d mount",
        "they are 13mm f1.9, 6.5mm and 36mm f2.8",
        "is it wide or tele there",
    )
    assert last.question is not None
    assert last.question.said("flange_to_image") is None
    assert [lens.focal_length_mm for lens in last.question.lenses] == [13.0]
    assert "1/2.3-type" in flat(last)


@pytest.mark.parametrize(
    ("text", "mount"),
    [
        ("how do i put it on the board camera", "cs"),
        ("and on the small camera?", "cs"),
        ("does it cover on the plover", "x-mount"),
        ("what about the rf one then", "rf-mount"),
    ],
)
def test_a_body_is_meant_by_the_word_that_it_was_told_with(club: Desk, text: str, mount: str) -> None:
    turns = ["a 13mm d mount lens on my small board camera with a cs mount, 1/2.3 inch sensor"]
    turns += ["and on my plover x camera?", "what about a heron rf body"]
    *_, last = talk(club, *turns, text)
    assert last.question is not None
    assert [body.ids[0] for body in last.question.bodies] == [mount]
    assert last.question.bodies[0].format == ("1-2.3-type" if mount == "cs" else None)


def test_the_size_marked_on_an_objective_stays(club: Desk) -> None:
    *_, last = talk(
        club,
        "a microscope objective 4x 0.10 160 on an x mount camera",
        "how far from the sensor must it sit",
        "how big would an ant come then",
    )
    assert last.question is not None
    assert (last.question.said("magnification"), last.question.said("na")) == ("4", "0.1")


@pytest.mark.parametrize(
    ("first", "text", "begins"),
    [
        (_ENLARGER, "it has no focusing ring, so how do i focus it", "lenses without focusing"),
        ("a 4x microscope objective on mft", "does it have a stop i can close", "objectives without an iris"),
        (_C, "there is a third lens with a cable and no ring for the opening", "iris on a cable"),
    ],
)
def test_glass_that_lacks_a_part_is_told_of(club: Desk, first: str, text: str, begins: str) -> None:
    _, answer = talk(club, first, text)
    assert flat(answer).startswith(begins)


def test_a_tube_whose_length_is_asked_for_does_not_stand_there_yet(club: Desk) -> None:
    *_, last = talk(
        club, _ENLARGER, "how long does the tube have to be so it sees far", "does it focus far or only close"
    )
    assert last.question is not None
    assert last.question.adapters == ()
    *_, same = talk(club, _ENLARGER, "there is also an 80mm f5.6, same screw", "will the same tubes do for that one")
    assert same.intent == "diy-dimension"
    assert "50 to 66 mm" in flat(same)


def test_a_bellows_is_set_by_its_two_ends_and_another_lens_is_no_setting(club: Desk) -> None:
    *_, last = talk(
        club,
        "an 80mm enlarger lens on e mount full frame",
        "how big do i get a bug with a bellows, it goes from 40 to 120",
        "and with a 50mm one?",
    )
    assert last.question is not None
    assert last.question.lens is not None
    assert last.question.lens.focal_length_mm == 50.0
    assert [piece.thickness_mm for piece in last.question.adapters] == [(40.0, 120.0)]


def test_the_best_stop_close_up_keeps_the_tubes(club: Desk) -> None:
    *_, stop, light = talk(
        club, _ENLARGER, "with 50 mm of tubes how big is a coin", "which stop is best for that", "do i lose light there"
    )
    assert flat(stop).startswith("1x on full frame: up to f/11 on the ring. There it counts as f/22")
    assert "the best stop close up" in flat(stop)
    assert "2.0 stops" in flat(light)


def test_an_objective_is_told_by_what_fills_the_frame_its_light_and_its_room(club: Desk) -> None:
    first = "a microscope objective 4x 0.10 160 on an x mount camera"
    *_, big = talk(club, first, "how big would an ant come then")
    assert flat(big).startswith("The frame shows 5.9 x 3.9 mm of the subject on APS-C: 1 mm of it comes 4 mm long.")
    *_, light = talk(club, first, "what light do i need for that")
    assert "counts as f/20 at the sensor" in flat(light)
    *_, near = talk(club, first, "how close to the bug does it sit")
    assert flat(near).startswith("Near it: From the shoulder of an RMS objective")


@pytest.mark.parametrize(
    ("text", "intent", "begins"),
    [
        ("so what tube length do i need", "diy-dimension", "Tube and clamp together"),
        ("how would i hold it", "chain", "holding and focusing a projection lens"),
        ("is it made for slides, does it cover full frame", "coverage", "85 mm projector lens: covers full frame"),
        ("can i do portraits with it", "macro-distance", "Head and shoulders, 600 x 500 mm"),
        ("what do i have to set in the camera", "gear-setting", "menus in short"),
    ],
)
def test_a_plain_barrel_is_asked_on_of(club: Desk, text: str, intent: str, begins: str) -> None:
    turns = [
        "my uncle left me a projector lens 85mm f2.8",
        "just a smooth tube, 42.5 mm thick",
        "my camera is an rf one",
    ]
    *_, last = talk(club, *turns, text)
    assert last.intent == intent
    assert flat(last).startswith(begins)


def test_a_helicoid_for_a_plain_barrel_tells_where_its_image_must_lie(club: Desk) -> None:
    turns = ["an 85mm f2.8 projector lens with a 42.5 mm barrel", "on an rf camera", "so what tube length do i need"]
    *_, last = talk(club, *turns, "could i put it in a helicoid, 17 to 31 mm")
    assert "37 to 51 mm" in flat(last)
    *_, bright = talk(
        club, *turns, "could i put it in a helicoid, 17 to 31 mm", "its too bright outside, what can i do"
    )
    assert "stops of ND to hold back" in flat(bright)


def test_a_screw_that_stops_turns_before_its_end_focuses_nothing(club: Desk) -> None:
    *_, stops, why = talk(club, _C, "the ring came and it stops two turns before the end", "what could that be")
    assert flat(stops).startswith("Tight after 2 turns it is not home")
    assert "Infinity before the end" not in flat(stops) + flat(why)
    *_, near = talk(club, _C, "far things are not sharp, near ones are")
    assert "too much spacing" in flat(near)


def test_one_more_lens_with_its_stop_is_no_tube(club: Desk) -> None:
    *_, last = talk(
        club, _ENLARGER, "with 50 mm of tubes how big is a coin", "there is also an 80mm f5.6 in the box, same screw"
    )
    assert last.question is not None
    assert [lens.focal_length_mm for lens in last.question.lenses] == [80.0]
    assert [piece.thickness_mm for piece in last.question.adapters] == [(50.0, 50.0)]


@pytest.mark.parametrize(
    "text",
    ["can that go on my kestrel full frame, e mount", "and on my kestrel k30, e mount, how long is the tube there"],
)
def test_a_mount_behind_what_a_lens_is_put_on_is_that_of_the_body(club: Desk, text: str) -> None:
    _, answer = talk(club, "a 100mm f2 projector lens", text)
    assert answer.question is not None
    assert [body.ids for body in answer.question.bodies] == [("e-mount",)]
    assert [(lens.ids, lens.focal_length_mm) for lens in answer.question.lenses] == [((), 100.0)]


def test_a_bellows_keeps_its_ends_its_mounts_and_the_lens_before_it(club: Desk) -> None:
    first = "a 75mm f4 enlarger lens on my micro four thirds"
    turns = ["is that an enlarger lens then", "i have a bellows, 50 to 150 mm, m42 on both ends"]
    *_, put = talk(club, first, *turns, "how does the lens go on the bellows")
    assert put.question is not None
    assert [(lens.ids[0], lens.focal_length_mm, lens.f_number) for lens in put.question.lenses] == [
        ("enl39", 75.0, 4.0)
    ]
    *_, far = talk(club, first, *turns, "pushed all the way in?", "does that see far on the bellows")
    assert far.question is not None
    assert [piece.thickness_mm for piece in far.question.adapters] == [(50.0, 150.0)]
    *_, stop = talk(club, first, *turns, "how big is a coin then", "which number do i set on the lens")
    assert "on the ring. There it counts as f/11" in flat(stop)
    assert "the best stop close up" in flat(stop)


@pytest.mark.parametrize("text", ["is a helicoid m65 17-31 enough", "would an m65 helicoid of 17 to 31 mm do"])
def test_a_helicoid_with_its_thread_is_no_zoom_and_no_mount_of_a_barrel(club: Desk, text: str) -> None:
    _, answer = talk(club, "a 100mm f2 projector lens on e-mount full frame", text)
    assert answer.question is not None
    assert [lens.ids for lens in answer.question.lenses] == [()]
    assert [piece.thickness_mm for piece in answer.question.adapters] == [(17.0, 31.0)]
    assert "35 to 49 mm" in flat(answer)


def test_a_zoom_is_one_of_those_spoken_of_and_goes_when_another_is(club: Desk) -> None:
    first = "a 16mm f1.4 c mount lens on a z-mount body"
    *_, zoom, back = talk(club, first, "whats with the zoom one, what is 2.8-12", "and the 16?")
    assert zoom.question is not None
    assert zoom.question.adapters == ()
    assert [(lens.ids, lens.lens_kind) for lens in zoom.question.lenses] == [(("c",), "zoom")]
    assert back.question is not None
    assert back.question.said("zoom") is None


def test_another_objective_has_its_own_aperture(club: Desk) -> None:
    first = "a 10x microscope objective, 0.25, 160/0.17 on an e-mount body"
    *_, last = talk(club, first, "how big would an ant come", "and the 4x one i have too?")
    assert last.question is not None
    assert (last.question.said("magnification"), last.question.said("na")) == ("4", None)


def test_what_only_names_gear_is_no_danger(club: Desk) -> None:
    for text in (
        "found a brass lens from a film projector, 35mm cinema, 100mm f2",
        "i have a raspberry style board camera, c mount, 1/2.3 sensor",
    ):
        (answer,) = talk(club, text)
        assert answer.intent != "hazard", text


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("does the camera even shoot with that on", "release without a lens"),
        ("there is no ring to turn for sharpness", "lenses without focusing"),
    ],
)
def test_what_is_asked_of_such_glass_in_everyday_words(club: Desk, text: str, begins: str) -> None:
    _, answer = talk(club, _ENLARGER, text)
    assert flat(answer).startswith(begins)


def test_what_is_only_a_tube_is_the_lens_itself(club: Desk) -> None:
    _, answer = talk(club, "a 100mm f2 projector lens on e-mount", "its just a tube, 62.5 mm across, really heavy")
    assert answer.question is not None
    assert answer.question.said("barrel") == "62.5 mm"
    assert answer.question.adapters == ()


def test_an_objective_is_asked_on_of_its_depth_and_its_cover_glass(club: Desk) -> None:
    first = "a 10x microscope objective 0.25 160/0.17 on a c-mount body"
    _, deep = talk(club, first, "how deep is it sharp")
    assert flat(deep).startswith("how deep an objective is sharp")
    _, glass = talk(club, first, "does the 0.17 matter")
    assert flat(glass).startswith("the 0.17 on an objective")
    _, other = talk(club, first, "second one, a 13mm d mount lens")
    assert other.question is not None
    assert (other.question.said("magnification"), other.question.said("na")) == (None, None)
    assert [lens.ids for lens in other.question.lenses] == [("d",)]


def test_a_helicoid_comes_back_after_a_tube_and_the_sun_is_held_back(club: Desk) -> None:
    turns = ["a 100mm f2 projector lens on e-mount full frame", "is a helicoid m65 17-31 enough"]
    turns += ["so how long must the tubes be"]
    *_, near = talk(club, *turns, "and does it come near too with the helicoid")
    assert near.question is not None
    assert [piece.thickness_mm for piece in near.question.adapters] == [(17.0, 31.0)]
    *_, sun = talk(club, *turns, "is the whole sensor lit", "sun outside, video, what do i do")
    assert "stops of ND to hold back" in flat(sun)


def test_a_film_camera_told_after_a_body_only_gives_a_lens(club: Desk) -> None:
    turns = ["i have a board camera, c mount, 1/2.3 sensor", "my old super 8 camera gave me a d mount 13mm"]
    *_, last = talk(club, *turns, "can i use the 13")
    assert last.question is not None
    assert [body.ids for body in last.question.bodies] == [("c",)]
    assert [(lens.ids, lens.focal_length_mm) for lens in last.question.lenses] == [(("d",), 13.0)]


def test_a_fast_lens_shows_no_stop_of_nought(club: Desk) -> None:
    (answer,) = talk(club, "25mm f0.95 cctv lens, says c on it, on my mft")
    assert answer.intent in ("chain", "focus-verdict")
    assert "shown as 0" not in flat(answer)


@pytest.mark.parametrize(
    "text",
    [
        "far wall is sharp at 60 mm behind the lens on paper",
        "the window comes sharp on paper behind it at 60 mm",
        "a far house is sharp 60 mm behind it on paper",
    ],
)
def test_where_a_far_thing_is_sharp_on_paper_is_the_image_and_no_tube(club: Desk, text: str) -> None:
    _, answer = talk(club, "a slide projector lens, 90mm f2.4 on a z-mount body", text)
    assert answer.question is not None
    assert answer.question.said("flange_to_image") == "60 mm"
    assert "leaves 44 mm" in flat(answer)


def test_a_letter_of_an_unknown_name_is_no_mount_of_the_lens(club: Desk) -> None:
    (answer,) = talk(club, "got a 10x objective 0.25 160 and a soandso r with rf mount")
    assert answer.question is not None
    assert [lens.ids for lens in answer.question.lenses] == [("rms160",)]
    assert [body.ids for body in answer.question.bodies] == [("rf-mount",)]


def test_another_power_of_an_objective_is_no_extender(club: Desk) -> None:
    first = "a 10x microscope objective 0.25 160 on an rf-mount body"
    _, answer = talk(club, first, "and a 4x 0.10 too, is that better for ants")
    assert answer.question is not None
    assert answer.question.adapters == ()
    assert (answer.question.said("magnification"), answer.question.said("na")) == ("4", "0.1")


def test_a_danger_asked_after_light_is_none_of_the_sun(club: Desk) -> None:
    first = "a 4x microscope objective on an x-mount body"
    *_, last = talk(club, first, "what light do i need for that", "can the old screw hurt the camera")
    assert last.intent == "hazard"
    assert "solar filter" not in flat(last)
