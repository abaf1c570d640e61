"""A lens identified by what was measured, on a body told beside it; a ring of another mount that fits all the same."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import flat, numbers
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def _asked(desk, text):
    return record_of(desk.ask(text, Talk()), desk.knowledge)


@pytest.mark.parametrize(
    ("asked", "mount", "ring"),
    [
        ("grandpas slr lens, screw is 37 across and 1mm pitch, hoping for EF", "M37", 1.46),
        ("thread 42 across, ten pitches 7.5, want it on my Z", "T2", 39.0),
    ],
)
def test_the_mount_found_is_put_on_the_body_told(desk, asked, mount, ring):
    found = _asked(desk, asked)
    assert f"it is {mount}" in flat(found)
    assert (ring, ring) in [(round(a, 2), round(b, 2)) for a, b in numbers(found, "ring_thickness_mm")]
    assert found["chains"][0]["verdict"] == "infinity"


def test_a_lens_without_a_known_thread_is_no_lens_of_the_body_it_shall_go_on(desk):
    found = _asked(desk, "scanner lens, m58 thread no markings. landscapes on a 44x33 G?")
    assert "must exceed 26.7 mm" in flat(found)
    assert "flange to the sharp image" in flat(found).replace(
        "its flange (or the shoulder that will rest on the ring)", "flange"
    )


def test_a_ring_of_another_mount_that_fits_all_the_same_is_judged_and_warned_of(desk):
    asked = "seller sent the oct-19 ring (43mm thick) but my 50 is oct-18. E body. what if it somehow fits"
    found = _asked(desk, asked)
    assert found["chains"][0]["verdict"] == "macro-only"
    assert "takes another mount, so nothing in it holds" in flat(found)
    assert _asked(desk, asked.replace(". what if it somehow fits", ", infinity?"))["chains"][0]["verdict"] == "unusable"


def test_what_sets_two_mounts_apart_is_no_focal_length(desk):
    found = _asked(desk, "8mm to spare between PL and EF. So why does everybody tell me no")
    assert [round(a + b) / 2 for a, b in numbers(found, "register_difference_mm")] == [8]


def test_a_lens_told_by_what_it_is_not(desk):
    found = _asked(desk, "old camcorder zoom, half inch bayonet (general kind not the 38 one), mft?")
    assert "General 1/2 in bayonet zoom lens on a Micro Four Thirds body" in found["reading"]


def test_an_enlarger_thread_is_told_with_the_helicoid_that_its_lenses_want(asked):
    assert "must have a helicoid" in " ".join(asked("rear is 39 and 26 tpi, no focus ring. LTM or not")["text"].split())


@pytest.mark.parametrize(
    ("asked", "register"),
    [
        (
            "I measured flange to paper for a bayonet SLR lens with no name on it, a far church was sharp at 45.5 mm. "
            "The bayonet has three lugs. Which mount can it be?",
            "45.5 mm",
        ),
        ("register check: from flange the sun comes sharp at 4.6 cm. which mount", "46 mm"),
    ],
)
def test_what_is_sharp_so_far_from_the_flange_is_the_register(desk, asked, register):
    found = _asked(desk, asked)
    assert found["intent"] == "identify-mount"
    assert f"{register} from flange to image" in flat(found)


@pytest.mark.parametrize(
    "first",
    [
        "8mm cctv lens, one inch 32 thread. is it c or cs?",
        "8 mm cctv lens with a 1-32 thread, is that C or CS?",
        "8mm cctv lens. is it c or cs?",
    ],
)
@pytest.mark.parametrize(
    "turns", [("its near 12.5. on my C to E ring?",), ("about 12.5 from flange to picture", "and on E with a C ring")]
)
def test_which_of_two_mounts_a_lens_has_stays_found_out(talked, first, turns):
    found = talked(first, *turns)
    assert "8 mm CS-mount cctv lens" in found["reading"]
    assert "8 mm CS-mount cctv lens on an E-mount body: stops at 34 mm" in flat(found)


def test_the_register_that_tells_one_of_two_mounts_settles_it(talked):
    assert "an AR-mount lens" in talked("bayonet slr lens. is it K or AR?", "40.5 register", "on E ring?")["reading"]


@pytest.mark.parametrize(
    ("first", "ring", "lens"),
    [
        ("CS 8mm lens", "with my C to E ring", "8 mm CS-mount lens on an E-mount body"),
        ("8mm CS lens on MFT", "on a C to E ring", "8 mm CS-mount lens on an E-mount body"),
        ("50mm T2 lens", "with an M42 to Z ring", "50 mm T2 lens on a Z-mount body"),
    ],
)
def test_a_ring_for_another_mount_leaves_the_lens_what_it_is(talked, first, ring, lens):
    assert lens in talked(first, ring)["reading"]


@pytest.mark.parametrize(
    ("say", "mount"),
    [
        ("heavy 35mm movie lens, ring-locked, i measured about 61 from flange to the picture of a far tree", "OCT-19"),
        ("heavy cine lens, breech locked, about 52 from flange to the image of a far house", "PL"),
        ("heavy movie prime with a locked ring at the rear, 57 from flange to the picture of a church", "OCT-18"),
    ],
)
def test_a_heavy_lens_locked_by_its_ring_is_told_by_its_register_and_is_not_stuck(asked, say, mount):
    found = asked(say)
    assert found["intent"] == "identify-mount"
    assert mount in flat(found)[:160]
    assert "No force" not in flat(found)


def test_a_lens_stuck_on_its_ring_is_stuck_whatever_its_register(asked):
    assert asked("heavy lens stuck on the adapter, 52 flange to image")["intent"] == "hazard"


@pytest.mark.parametrize(
    ("say", "barrel"),
    [
        ("projector barrel 52.5 smooth, 90mm f2.4. what mount is that", "52.5"),
        ("projection barrel 42.5, 85mm 2.8. which mount", "42.5"),
        ("smooth projector barrel of 62.5, 100mm lens, what is it", "62.5"),
    ],
)
def test_the_width_told_behind_a_projector_barrel_is_that_of_the_barrel(asked, say, barrel):
    found = asked(say)
    assert f"projector lens, {barrel} mm barrel" in found["reading"]
    assert f"{barrel} mm across" in flat(found)


def test_both_after_one_lens_on_two_bodies_are_the_bodies(talked):
    found = talked(
        "16mm lens, 25.4 thread, cctv. is it c or cs?", "flange to image about 17.5", "on E then", "and mft?",
        "which ring for both",
    )  # fmt: skip
    assert "on an E-mount body and a Micro Four Thirds body" in found["reading"]
    assert found["reading"].count("16 mm") == 1


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("what is my lens if it has 42mm thread and 1 mm pitch and image forms at 55", "M42 (45.46 mm)"),
        ("42 mm thread, 0.75 pitch, image at 45.5", "T2 (55 mm)"),
    ],
)
def test_a_pitch_that_its_register_has_not_is_said_to_contradict_it(asked, text, told):
    found = flat(asked(text))
    assert found.startswith("The two do not go together")
    assert told in found
    assert "not only by its thread" not in found
