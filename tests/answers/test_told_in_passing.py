"""Lenses, rings and filters told in passing: by a screw alone, by their kind, by what a ring says, by a colon."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk


@pytest.mark.parametrize(
    ("text", "focal_mm"),
    [
        ("screw mount 50mm on E", 50.0),
        ("a screw mount 58/2 on Z", 58.0),
        ("my 135 screw-mount on L", 135.0),
        ("my 400 screw mount sits on EF with the normal 1.46 ring", 400.0),
    ],
)
def test_a_lens_with_no_more_than_a_screw_is_taken_for_the_usual_one(club: Desk, text: str, focal_mm: float) -> None:
    (answer,) = talk(club, text)
    assert answer.question is not None
    (lens,) = answer.question.lenses
    assert (lens.id, lens.focal_length_mm) == ("m42", focal_mm)
    assert "Taken for M42" in flat(answer)


@pytest.mark.parametrize("text", ["the screw on the 50 is loose", "a lens with a 44 mm screw, on E"])
def test_a_screw_that_is_a_part_or_told_by_its_width_is_no_such_lens(club: Desk, text: str) -> None:
    (answer,) = talk(club, text)
    assert answer.question is not None
    assert all("m42" not in lens.ids for lens in answer.question.lenses)


@pytest.mark.parametrize("kind", ["cctv fisheye", "cctv wide", "cctv lens"])
def test_a_mount_right_behind_the_kind_of_a_lens_is_its_own(club: Desk, kind: str) -> None:
    (answer,) = talk(club, f"2.8mm {kind}, CS. want it on my MFT, is there an adaptor")
    assert answer.question is not None
    assert [lens.id for lens in answer.question.lenses] == ["cs"]
    assert [body.id for body in answer.question.bodies] == ["mft-mount"]


def test_what_a_ring_says_is_its_length_unless_it_is_in_metres(club: Desk) -> None:
    (ring,) = talk(club, "Is the moon reachable with a 100mm macro in P6 on K, ring says 29.0?")
    assert "0.36 mm too far out" in flat(ring)
    (scale,) = talk(club, "how close does a 50mm macro get with a 10 mm tube, ring says 0.45")
    assert scale.question is not None
    assert scale.question.said("close_focus") == "450 mm"


def test_two_words_for_the_nearest_mark_are_one(club: Desk) -> None:
    (answer,) = talk(club, "400mm native close focus 5 m. adding 25mm of tube, now how near")
    assert "3.39 m from the sensor" in flat(answer)


def test_what_stands_behind_a_colon_is_not_where_something_is(club: Desk) -> None:
    (answer,) = talk(club, "ring shots at a wedding: 85mm with a 36 tube, how big and how far from the rings")
    assert "0.42x" in flat(answer)


@pytest.mark.parametrize(("said", "stops"), [("10 stopper", 10), ("6 stopper", 6), ("three stopper", 3)])
def test_a_stopper_is_so_many_stops_of_filter(club: Desk, said: str, stops: int) -> None:
    (answer,) = talk(club, f"1/30 bare. with the {said} on?")
    assert f"{stops} stops longer" in flat(answer)


@pytest.mark.parametrize("without", ["w/out the glass thing", "without the glass thing", "w/out any glass"])
def test_without_the_glass_thing_is_without_glass(club: Desk, without: str) -> None:
    (answer,) = talk(club, f"can FD lenses focus far on an A mount body {without}")
    assert "2.5 mm too far out" in flat(answer)
    assert "close-up only" in flat(answer)


@pytest.mark.parametrize(
    ("text", "focal_mm", "extension"),
    [
        ("50mm pulled out another 25mm on the bellows, how many stops", 50.0, "25 mm"),
        ("100mm lens pulled out another 100mm on the bellows, stops lost", 100.0, "100 mm"),
        ("75mm drawn out an extra 30mm on bellows, how much light", 75.0, "30 mm"),
    ],
)
def test_what_a_lens_is_drawn_out_further_is_no_lens(club: Desk, text: str, focal_mm: float, extension: str) -> None:
    (answer,) = talk(club, text)
    assert answer.question is not None
    assert [lens.focal_length_mm for lens in answer.question.lenses] == [focal_mm]
    assert answer.question.said("extension") == extension


@pytest.mark.parametrize(
    ("text", "length"),
    [
        ("need 4 full turns of M42 engagement in plastic. how long is the thread then", "4 mm of thread"),
        ("6 turns of 1-32 thread are how long", "4.76 mm of thread"),
        ("3 turns of C thread, how deep", "2.38 mm of thread"),
    ],
)
def test_turns_of_a_thread_are_as_long_as_its_pitch_tells(club: Desk, text: str, length: str) -> None:
    (answer,) = talk(club, text)
    assert length in flat(answer)


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("building a shift block 10mm thick for P645 lenses on E. what's left for the rest of the adapter", "42.87 mm"),
        ("p645 to E, one part is 10 mm thick, how long is the other part", "42.87 mm"),
        ("om to e, i have a 12 mm tube already, how long must the ring be", "16 mm"),
        ("om lens on e, tilt piece is 12 mm, whats left for the tube", "16 mm"),
    ],
)
def test_what_is_left_beside_a_part_is_the_rest_of_the_seat(club: Desk, text: str, left: str) -> None:
    (answer,) = talk(club, text)
    assert flat(answer).startswith(f"{left} is left for the rest")
    assert "add a shim" not in flat(answer)


def test_a_part_that_is_longer_than_the_seat_leaves_nothing(club: Desk) -> None:
    (answer,) = talk(club, "k to z, one part is 32 mm thick, how long is the other part")
    assert flat(answer).startswith("Nothing is left")


@pytest.mark.parametrize(
    "text",
    [
        "copying at 1:1, meter on the bench says 1/60. what should i set for bellows loss",
        "meter in my hand says 1/60, bellows at 1:1, exposure?",
    ],
)
def test_what_a_meter_beside_the_camera_says_is_longer_behind_a_bellows(club: Desk, text: str) -> None:
    (answer,) = talk(club, text)
    assert "1/60 s becomes 1/15 s" in flat(answer)


def test_what_was_paced_is_set_against_the_scale(club: Desk) -> None:
    (answer,) = talk(club, "scale says 2m but i paced it at 3 and its sharp. why")
    assert "the lens sits too close" in flat(answer)


def test_to_focus_nearer_a_helicoid_is_among_what_to_buy(club: Desk) -> None:
    (answer,) = talk(club, "M lenses on E and later Z and I want to focus nearer. what should I buy")
    assert "M to E helicoid" in flat(answer)


@pytest.mark.parametrize("text", ["which app stacks moon pics best", "what app do you use for stacking"])
def test_programs_for_pictures_are_out_of_scope(club: Desk, text: str) -> None:
    (answer,) = talk(club, text)
    assert answer.intent == "out-of-scope"


def test_a_rear_that_sticks_out_is_a_danger_to_ask_of(club: Desk) -> None:
    (answer,) = talk(club, "cs fisheye sticks out a lot at the back, worried about my cam's filter glass")
    assert answer.intent == "hazard"
    assert "Measure how far the rear reaches" in flat(answer)


def test_the_frame_of_an_astro_camera_is_no_lens_s(club: Desk) -> None:
    (answer,) = talk(club, "T2 or M48 for a full frame astro cam?")
    assert "M48 astro has the wider opening" in flat(answer)


@pytest.mark.parametrize(
    ("text", "body"),
    [
        ("i have a 50 1.7 with a bayonet, says MD on it. camera: full frame, RF", "rf-mount"),
        ("50mm m42, my camera is full frame, Z", "z-mount"),
        ("om 50, full frame camera (E mount)", "e-mount"),
    ],
)
def test_a_camera_told_by_its_frame_and_its_mount_is_one(club: Desk, text: str, body: str) -> None:
    (answer,) = talk(club, text)
    assert answer.question is not None
    assert [(one.id, one.format) for one in answer.question.bodies] == [(body, "35mm-full-frame")]


@pytest.mark.parametrize("bye", ["thats it thanks", "ok that's all, thank you", "thanks thats all for now", "fine, ta"])
def test_pleasantries_in_a_row_are_no_question(club: Desk, bye: str) -> None:
    *_, answer = talk(club, "50mm m42 on z", bye)
    assert flat(answer) == "You are welcome."


@pytest.mark.parametrize("more", ["thanks, and the 135?", "ok and f8?"])
def test_what_follows_a_pleasantry_is_still_asked(club: Desk, more: str) -> None:
    *_, answer = talk(club, "50mm m42 on z", more)
    assert answer.intent == "chain"


def test_a_screw_lens_on_a_rangefinder_body_is_of_its_own_system(club: Desk) -> None:
    (answer,) = talk(club, "thread mount 90 for my M body, wich ring do i get so the right frame comes up")
    assert "LTM to M ring, frame lines 28/90" in flat(answer)


@pytest.mark.parametrize("text", ["an A 300 and an FD 400 on E", "i have an A 300 and a FD 400, E body"])
def test_no_word_follows_an_as_an_article(club: Desk, text: str) -> None:
    (answer,) = talk(club, text)
    assert answer.question is not None
    assert [lens.id for lens in answer.question.lenses] == ["a-mount", "fd-mount"]


def test_one_behind_a_body_is_a_body(club: Desk) -> None:
    (answer,) = talk(club, "bag of old slr lenses: full frame E body or an X one")
    assert answer.question is not None
    assert [body.id for body in answer.question.bodies] == ["e-mount", "x-mount"]


@pytest.mark.parametrize("only", ["with just metal", "metal only", "nothing but metal"])
def test_just_metal_is_without_glass(club: Desk, only: str) -> None:
    (answer,) = talk(club, f"B4 to PL {only}?")
    assert "4 mm too far out" in flat(answer)
    assert "expander" not in flat(answer)


def test_a_plate_that_adds_nothing_is_no_ring(club: Desk) -> None:
    (answer,) = talk(club, "OM 28mm on an F slr by a swapped plate that adds nothing. landscapes?")
    assert "stops at 1.62 m" in flat(answer)


def test_the_bore_before_a_thread_in_inches_is_cut(club: Desk) -> None:
    (answer,) = talk(club, "what bore before i single-point a female 1-32")
    assert flat(answer).startswith("Bore 24.54 to 24.73 mm")


def test_a_crop_on_top_stays_so_in_the_next_turn(club: Desk) -> None:
    _, lit, wide = talk(club, "25mm c on mft, does it cover", "what if i use the ETC mode, 2.4x", "how wide is it then")
    assert "Four Thirds cropped 2.4x" in flat(lit)
    assert "like 120 mm on full frame" in flat(wide)


def test_a_hood_and_the_ring_are_asked_for_behind_anything(club: Desk) -> None:
    _, hood = talk(club, "50mm m42 f2 on z", "hood?")
    assert "at most 31 mm long" in flat(hood)
    *_, ring = talk(club, "50 1.4 m42 on e, concert, 25p, iso?", "theres also a 135 2.8, same mount", "same ring?")
    assert "M42 to E ring" in flat(ring)


def test_a_circle_told_with_of_is_the_image_circle(club: Desk) -> None:
    (answer,) = talk(club, "13mm of clean circle, whats the largest 16:9 rectangle")
    assert "11.3 x 6.4 mm" in flat(answer)


def test_a_heavy_lens_asked_for_a_way_is_no_danger_first(club: Desk) -> None:
    (answer,) = talk(club, "OCT19 prime, heavy old thing, on RF. possible w/out machining the lens?")
    assert answer.intent == "chain"


def test_the_second_screw_of_a_ring_has_the_letter_of_the_first(club: Desk) -> None:
    (answer,) = talk(
        club,
        "enlarger 50, window test says 45.0 shoulder to image. "
        "M39-42 ring 1mm + 17-31 helicoid + flat 1mm ring on E. range?",
    )
    assert flat(answer).startswith("Infinity at 25 mm on the 17 to 31 mm helicoid with 2 mm of rings beside it")


def test_a_focal_length_behind_a_screw_is_no_second_one(club: Desk) -> None:
    (answer,) = talk(club, "M42-50 1.8 on E")
    assert answer.question is not None
    assert [(lens.id, lens.focal_length_mm) for lens in answer.question.lenses] == [("m42", 50.0)]


def test_the_mount_behind_a_barrel_is_the_body_s(club: Desk) -> None:
    (answer,) = talk(club, "100mm projection lens smooth 62.5 barrel, E mount, infinity y/n")
    assert answer.question is not None
    assert [body.id for body in answer.question.bodies] == ["e-mount"]
    assert "must exceed 18 mm" in flat(answer)


@pytest.mark.parametrize(
    ("text", "registers"),
    [
        (
            "two 5/8-32 lenses, one for an odd 8mm camera with short flange. same?",
            ["12.29 mm", "7.8 mm", "4.49 mm apart"],
        ),
        ("are all 39x1 threads the same depth", ["45.2 mm", "28.8 mm"]),
    ],
)
def test_lenses_of_one_thread_are_told_apart_by_their_registers(club: Desk, text: str, registers: list[str]) -> None:
    (answer,) = talk(club, text)
    assert all(one in flat(answer) for one in registers)


def test_an_objective_with_the_infinity_sign_wants_a_tube_lens(club: Desk) -> None:
    (size,) = talk(club, "infinity 10x objective (200 system) screwed to the front of my 180 tele")
    assert "behind 180 mm: 9x" in flat(size)
    (fog,) = talk(club, "objective marked with the lying eight gives nothing but fog on the bare camera, why")
    assert "tube lens" in flat(fog)


def test_why_a_helicoid_ring_is_called_macro(club: Desk) -> None:
    (answer,) = talk(club, "Why do they call the helicoid M ring 'macro', it does infinity as well")
    assert "adds some 4 to 6 mm of extension" in flat(answer)


def test_an_inch_of_thread_tells_the_mount(club: Desk) -> None:
    _, told = talk(club, "25mm 1.4 lens, made for film, screw end", "the screw is one inch wide")
    assert told.question is not None
    assert told.question.said("thread") == "25.4 mm"
    assert told.question.lens is not None
    *_, ring = talk(
        club, "25mm 1.4 lens, made for film, screw end", "my cam is mft, can it go on", "the screw is one inch wide"
    )
    assert "C-mount lens on a Micro Four Thirds body" in flat(ring)


def test_a_ring_asked_for_under_the_stars_is_no_exposure(club: Desk) -> None:
    (ring,) = talk(club, "20mm f2.8 m42 on my E full frame for the milky way, adapter?")
    assert ring.intent == "chain"
    (time,) = talk(club, "20mm m42 on E for the milky way, how long")
    assert time.intent == "exposure-nd"


@pytest.mark.parametrize("text", ["best app to stack milky way frames", "which hiking tripod is lightest"])
def test_programs_and_tripods_are_out_of_scope(club: Desk, text: str) -> None:
    (answer,) = talk(club, text)
    assert answer.intent == "out-of-scope"


def test_dark_corners_are_got_rid_of_by_a_crop(club: Desk) -> None:
    _, answer = talk(club, "25mm c mount on mft, does it cover", "how do i get rid of them")
    assert answer.intent == "coverage"


def test_brownish_glass_is_asked_of_thorium(club: Desk) -> None:
    (answer,) = talk(club, "brownish fast fifty from the attic, kids play with it. do i need to be scared of the glass")
    assert answer.intent == "hazard"
    assert "thorium" in flat(answer)


def test_a_body_behind_a_mount_told_with_in_is_no_lens(club: Desk) -> None:
    (answer,) = talk(club, "58 1.4 in SR/MD mount, E full frame, whats the ring")
    assert answer.question is not None
    assert [(one.id, one.format) for one in answer.question.bodies] == [("e-mount", "35mm-full-frame")]
    assert len(answer.question.lenses) == 1
