"""Turns that put a second piece, film, unit or lens beside what was told, or ask what it costs."""

from __future__ import annotations

import pytest

from engine.answers.parts.answer import Answer
from engine.ask import Desk
from tests.answers.talks import flat, talk


def last(club: Desk, *turns: str) -> Answer:
    return talk(club, *turns)[-1]


@pytest.mark.parametrize(
    "turn",
    [
        "plus a 2x", "the 2x on top of it", "and the 2x as well", "both the 1.4 and the 2", "1.4 and 2 stacked",
        "with both 1.4 and 2x", "the 1.4 and the 2x both", "add my 2x behind it",
    ],
)  # fmt: skip
def test_one_extender_comes_on_top_of_the_other(club: Desk, turn: str) -> None:
    assert "200 mm f/4 with 2.8x is 560 mm f/11.2" in flat(last(club, "200/4 with a 1.4x, what is it then", turn))


@pytest.mark.parametrize("turn", ["2x instead", "the 2x", "swap for the 2x", "and the 2x instead"])
def test_one_extender_takes_the_place_of_the_other(club: Desk, turn: str) -> None:
    assert "200 mm f/4 with 2x is 400 mm f/8" in flat(last(club, "200/4 with a 1.4x, what is it then", turn))


@pytest.mark.parametrize(
    ("turn", "told"),
    [
        ("and for 6x6 negatives", "A 6x6 frame, 56 x 56 mm on full frame: all of it in the picture at 0.429x"),
        ("6x9?", "A 6x9 frame, 84 x 56 mm on full frame"), ("645 ones", "A 6x4.5 frame, 56 x 41.5 mm on full frame"),
    ],
)  # fmt: skip
def test_film_told_anew_is_what_is_copied(club: Desk, turn: str, told: str) -> None:
    opening = "80mm enlarger lens on bellows, copying 35mm slides to fill a full frame sensor, how much extension"
    assert told in flat(last(club, opening, turn))


def test_light_and_depth_go_by_the_size_that_fills_the_frame(club: Desk) -> None:
    opening = "80mm enlarger lens on bellows, copying 6x6 negatives on full frame, how much extension"
    assert "34.29 mm of extension: 1.0 stops" in flat(last(club, opening, "light lost with those?"))
    assert "0.43x at f/8" in flat(last(club, opening, "and depth at f8"))


@pytest.mark.parametrize(
    ("opening", "turn", "told"),
    [
        ("dof of a 50/1.8 at 2m on a full frame camera", "on an mft camera then", "Four Thirds: sharp from 1.96 m"),
        ("50/1.8 m42 on a full frame camera", "and on mft", "50 mm on Four Thirds frames like 100 mm"),
        ("does a 28mm cover an apsc camera", "and mft", "Four Thirds: covered by"),
        ("m42 50 on a full frame camera, infinity?", "its a mft", "on Four Thirds forgives 0.03 mm"),
    ],
)  # fmt: skip
def test_a_mount_told_after_a_frame_alone_is_another_camera(club: Desk, opening: str, turn: str, told: str) -> None:
    assert told in flat(last(club, opening, turn))


@pytest.mark.parametrize(
    "turn",
    ["feet, not metres", "thats feet", "feet i meant", "it's a feet scale", "the scale is in feet", "8 feet sorry",
     "its in ft"],
)  # fmt: skip
def test_a_unit_is_put_right_alone(club: Desk, turn: str) -> None:
    found = flat(last(club, "85mm k lens, far things sharp at 8 on the scale, shim?", turn))
    assert "Infinity at the 8 ft mark of an 85 mm lens: it sits 3.19 mm too close" in found


def test_feet_asked_for_change_no_number(club: Desk) -> None:
    assert "0.92 mm" in flat(last(club, "85mm k lens, far things sharp at 8 on the scale, shim?", "in feet"))


@pytest.mark.parametrize(
    "turn",
    ["what do i get at its 3m mark", "whats sharp at the 3m mark then", "and if i set 3 m on the ring?",
     "what distance is it at when the ring says 3m"],
)  # fmt: skip
def test_another_mark_is_asked_of_the_error_told(club: Desk, turn: str) -> None:
    opening = "my 50 hits infinity at the 10m mark, shim thickness"
    assert "At its 3 m mark: it is now sharp at 4.2 m" in flat(last(club, opening, turn))


@pytest.mark.parametrize("turn", ["no, at the 8 m mark", "8 m mark", "what if it was the 8 m mark"])
def test_another_mark_told_takes_its_place(club: Desk, turn: str) -> None:
    opening = "my 50 hits infinity at the 10m mark, shim thickness"
    assert "Infinity at the 8 m mark of a 50 mm lens" in flat(last(club, opening, turn))


@pytest.mark.parametrize(
    "turn", ["and if i get the one that extends 4mm", "the one that racks 4 mm, infinity still?",
             "what if the ring was a helicoid with 4 mm"]
)  # fmt: skip
def test_a_ring_that_racks_out_is_a_helicoid(club: Desk, turn: str) -> None:
    found = last(club, "m 35/2 to e, ring?", turn)
    assert found.question is not None
    assert found.question.lenses[0].focal_length_mm == 35
    assert "settable from just right to 4 mm too far out" in flat(found)


@pytest.mark.parametrize(
    "turn", ["the ring has a 1mm lip i see now", "oh it has a lip of 1mm", "its not flush, 1mm proud"]
)
def test_a_lip_on_a_flush_ring_is_its_seat(club: Desk, turn: str) -> None:
    found = flat(last(club, "13mm d mount in a flush d to c ring on a c body, where does it stop", turn))
    assert "6.24 mm too far out" in found


@pytest.mark.parametrize("turn", ["darker by how much there", "light lost like that"])
def test_a_ring_that_leaves_the_lens_too_far_out_costs_light(club: Desk, turn: str) -> None:
    found = flat(last(club, "ltm 50 on m42 body with the 1mm ring, infinity?", turn))
    assert "17.66 mm beyond infinity: 0.9 stops" in found
    assert "as far off as on its own camera" not in found


@pytest.mark.parametrize(
    "turn",
    ["1/125 was right without them, now?", "1/125 is fine bare, what with the tubes", "from 1/125 to what",
     "it metered 1/125 before i put them on, what now"],
)  # fmt: skip
def test_a_shutter_that_was_right_without_the_tubes(club: Desk, turn: str) -> None:
    opening = "135mm k lens and 50mm of tubes on full frame e, scale?"
    assert "1/125 s becomes 1/67 s" in flat(last(club, opening, turn))


@pytest.mark.parametrize(
    "turn",
    ["same scale off a 50, tube?", "what tube on a 50 for the same size", "and to get that size with my 50",
     "how much on a 50 to get the same"],
)  # fmt: skip
def test_the_size_of_before_is_wanted_of_another_lens(club: Desk, turn: str) -> None:
    opening = "135mm k lens and 50mm of tubes on full frame e, scale?"
    assert "50 mm at 0.37x: 18.52 mm of extension" in flat(last(club, opening, turn))


def test_rings_for_a_mount_after_two_lenses_are_asked_for_that_body(club: Desk) -> None:
    found = flat(last(club, "adaptall or t2, which sits further out and by how much", "each one's ring for an f mount"))
    assert "ring for infinity 4.2 mm" in found


@pytest.mark.parametrize("turn", ["whats 1:4", "what does 1:4 mean", "1:4 meaning?", "whats 0.25x"])
@pytest.mark.parametrize(
    "opening", ["20mm tube or a +3 lens for a 50mm, which gets bigger", "50mm with 20mm tube, how big"]
)
def test_what_a_ratio_means_is_told(club: Desk, opening: str, turn: str) -> None:
    found = last(club, opening, turn)
    assert found.intent == "definition"
    assert "1:4 is 0.25x, a quarter of life size" in flat(found)
    assert "on 50 mm it takes 12.5 mm of extension" in flat(found)


@pytest.mark.parametrize(
    "turn",
    ["does the iris still turn", "who sets the aperture", "can i still stop down", "is the aperture usable",
     "how do i stop it down", "and the aperture?"],
)  # fmt: skip
@pytest.mark.parametrize("asked", ["equivalent", "dof at 2m", "does it cover"])
def test_who_works_the_iris_is_told_after_a_picture(club: Desk, asked: str, turn: str) -> None:
    assert "Yes, the iris works: by the ring on the lens." in flat(last(club, f"om 28/2.8 on mft, {asked}", turn))


@pytest.mark.parametrize(
    "turn",
    ["on which of the two does it reach further", "where is it longer", "which gives more reach",
     "which of them crops tighter", "view on both"],
)  # fmt: skip
def test_the_view_on_two_bodies_told_one_after_the_other(club: Desk, turn: str) -> None:
    found = last(club, "c/y 85/1.4 to rf ring?", "i also own a mft camera, ring for that one", turn)
    assert "85 mm on full frame frames like 85 mm" in flat(found)
    assert "85 mm on Four Thirds frames like 170 mm" in flat(found)


@pytest.mark.parametrize(
    "turn",
    ["same ring, my 58 instead: worse or better", "would the 58 be better off", "is a 58 better on it"],
)
def test_another_lens_on_a_ring_that_is_off(club: Desk, turn: str) -> None:
    found = flat(last(club, "exakta 35 to nx ring length", "mine came at 19.35", turn))
    assert "A 58 mm Exakta lens on an NX-mount body: stops at 23 m" in found


def test_two_lenses_on_a_ring_that_is_off(club: Desk) -> None:
    turns = ("exakta 35 to nx ring length", "mine came at 19.35", "which suffers more, the 35 or a 24")
    found = flat(last(club, *turns))
    assert "35 mm Exakta: your 19.35 mm ring, stops at 8.24 m" in found
    assert "24 mm Exakta: your 19.35 mm ring, stops at 3.89 m" in found


@pytest.mark.parametrize("turn", ["could one ring serve both", "do i need two rings", "one ring enough?"])
def test_one_ring_for_two_lenses_told_one_after_the_other(club: Desk, turn: str) -> None:
    opening = "ring length for an m42 50/1.8 on a micro four thirds body?"
    assert "No, one ring is not enough" in flat(last(club, opening, "the 28 beside it is K, same one?", turn))


@pytest.mark.parametrize("turn", ["and what would that ring set me back", "that ring, what do people ask for it"])
def test_the_price_of_the_ring_of_before(club: Desk, turn: str) -> None:
    found = flat(last(club, "12.5/1.9 d mount on q mount, ring", "how wide a scene at 3m", turn))
    assert "D to Q ring [10 to 35 dollars]" in found


@pytest.mark.parametrize(
    ("turn", "body"),
    [("the other cam is apsc E", "e-mount"), ("other cam mft", "mft-mount"), ("the second body is a Z", "z-mount")],
)
def test_another_camera_told_by_its_mount_is_asked_of(club: Desk, turn: str, body: str) -> None:
    found = last(club, "got an sr 35/2.8. what spacer puts it on l mount", turn)
    assert found.question is not None
    assert found.intent == "chain"
    assert found.question.bodies[0].id == body


@pytest.mark.parametrize("turn", ["and on the first?", "view on the first", "back on the first body"])
def test_the_first_of_two_bodies_is_no_chain(club: Desk, turn: str) -> None:
    found = last(club, "got an sr 35/2.8. what spacer puts it on l mount", "the other cam is apsc E", turn)
    assert found.question is not None
    assert found.question.bodies[0].id == "l-mount"


def test_one_body_is_set_against_the_first(club: Desk) -> None:
    turns = ("got an sr 35/2.8. what spacer puts it on l mount", "the other cam is apsc E")
    found = flat(last(club, *turns, "angle on that one vs the first"))
    assert "35 mm on full frame frames like 35 mm" in found
    assert "35 mm on APS-C frames like 53 mm" in found


@pytest.mark.parametrize(
    "turn",
    ["where's infinity on the lens then", "at what mark is infinity", "infinity sits where on the barrel",
     "where should i set the ring for the horizon"],
)  # fmt: skip
@pytest.mark.parametrize(
    ("ring", "mark"), [("ring measures 25.96, infinity?", "20 m mark"), ("ring is 0.1 too thin", "7.9 m mark")]
)
def test_where_infinity_falls_is_told_first(club: Desk, ring: str, mark: str, turn: str) -> None:
    found = flat(last(club, f"om 28/2 on rf, {ring}", turn))
    assert found.startswith(f"Left so, a 28 mm lens has infinity at its {mark}")


@pytest.mark.parametrize(
    "turn", ["which of the three has the most in focus", "which is deepest", "which one gives the most depth"]
)
def test_depths_told_are_put_in_order(club: Desk, turn: str) -> None:
    turns = ("depth of an 85/1.8 at 3m on full frame", "closed to 4", "and on mft")
    assert flat(last(club, *turns, turn)).startswith("Deepest: 85 mm f/4 at 3 m, full frame: 27 cm.")


@pytest.mark.parametrize("turn", ["and wide open on mft from there", "mft, wide open?", "on mft at 1.8"])
def test_another_frame_and_wide_open_ask_the_same(club: Desk, turn: str) -> None:
    found = last(club, "depth of an 85/1.8 at 3m on full frame", "closed to 4", turn)
    assert "85 mm f/1.8 at 3 m, Four Thirds" in flat(found)


def test_a_distance_told_beside_a_body_holds(club: Desk) -> None:
    found = last(club, "depth of an 85/1.8 at 3m on full frame", "closed to 4", "on mft but from 6 m")
    assert "85 mm f/4 at 6 m, Four Thirds" in flat(found)


def test_each_of_two_ways_is_told(club: Desk) -> None:
    found = flat(last(club, "fd 28/2.8 to mft: reducer or plain?", "field at 5 m in each case"))
    assert "19.9 mm sees a field of 4.3 x 3.2 m" in found
    assert "28 mm sees a field of 3.1 x 2.3 m" in found


@pytest.mark.parametrize(
    "turn", ["shutter if the plain one needs 1/60", "bare it was 1/60", "plain ring takes 1/60, the reducer then?"]
)
def test_a_shutter_that_was_right_without_the_glass(club: Desk, turn: str) -> None:
    assert "1/60 s becomes 1/119 s" in flat(last(club, "fd 28/2.8 to mft: reducer or plain?", turn))


@pytest.mark.parametrize(
    ("turn", "told"),
    [
        ("depth there at f11", "0.86x at f/11 on full frame: 1.66 mm"),
        ("light lost like that", "At 0.86x 1.8 stops of light are lost"),
        ("how wide is the field then", "Field width: 42 mm"),
    ],
)
def test_a_lens_of_its_own_size_and_its_tube_go_together(club: Desk, turn: str, told: str) -> None:
    turns = ("100mm macro k mount plus 36mm tube full frame, ratio at infinity mark",)
    assert told in flat(last(club, *turns, "lens itself goes to 1:2. both together?", turn))


@pytest.mark.parametrize("turn", ["the 12.5 from the same set?", "and a 12.5 of that series"])
def test_a_lens_of_the_same_set_is_made_for_the_same(club: Desk, turn: str) -> None:
    assert "image circle 16 to 18 mm" in flat(last(club, "does a 25mm 1 inch tv c lens cover mft", turn))


@pytest.mark.parametrize("turn", ["the thread again?", "its thread?", "whats its thread"])
def test_the_thread_is_asked_by_its_name_alone(club: Desk, turn: str) -> None:
    found = last(club, "m42 50 on e, ring?", "does it cover", turn)
    assert found.intent == "definition"
    assert "M42x1" in flat(found)


@pytest.mark.parametrize(
    ("turns", "told"),
    [
        (("om 50/1.8 with a 7 mm tube, how close", "the 14 instead", "back to the 7"), "7 mm of tube: sharp at 46 cm"),
        (("om 50/1.8 with a 7 mm tube, how close", "the 14 instead", "those two together"), "Together 7 + 14 = 21 mm"),
        (("om 50/1.8 with a 7 mm tube, how close", "the 14 instead", "two of those"), "Together 14 + 14 = 28 mm"),
        (("om 50/1.8 with 7 and 14 mm tubes, how large", "only the 14", "back to both"), "Together 7 + 14 = 21 mm"),
        (("m 50/2 with 4 mm helicoid ring on e, nearest", "and the 10mm one?", "back to the 4mm: how wide then"),
         "4 mm of travel: sharp at 73 cm"),
    ],
)  # fmt: skip
def test_the_piece_of_before_comes_back(club: Desk, turns: tuple[str, ...], told: str) -> None:
    assert told in flat(last(club, *turns))


def test_light_is_told_of_each_of_two_tubes(club: Desk) -> None:
    turns = ("om 50/1.8 with 7 and 14 mm tubes on a om body, how large", "only the 14", "light for each of those two")
    found = flat(last(club, *turns))
    assert "50 mm, 14 mm of extension: f/1.8 counts as f/2.3" in found
    assert "50 mm, 21 mm of extension: f/1.8 counts as f/2.6" in found


def test_with_and_without_asks_of_both(club: Desk) -> None:
    found = flat(last(club, "50/1.8 om on mft with a 0.71 reducer, equiv", "depth at 2m with and without"))
    assert "35.5 mm f/1.3 at 2 m, Four Thirds" in found
    assert "50 mm f/1.8 at 2 m, Four Thirds" in found


@pytest.mark.parametrize("turn", ["and the view, against the e", "crop vs the e one", "angle here vs e"])
def test_the_view_is_weighed_against_an_earlier_body(club: Desk, turn: str) -> None:
    found = last(club, "pen f 38/1.8 on e apsc, ring", "on mft then?", turn)
    assert found.intent == "crop-equivalent"
    assert "38 mm on APS-C" in flat(found)
    assert "38 mm on Four Thirds" in flat(found)


@pytest.mark.parametrize("turn", ["my k ring is 27.4", "the K one measures 27.4", "the k adapter turned out 27.4"])
def test_the_ring_of_one_of_two_lenses_is_its_alone(club: Desk, turn: str) -> None:
    found = flat(last(club, "sr 45/2 and k 55/1.8 both for e full frame", turn))
    assert "27.4 mm" in found
    assert "SR" not in found.split("\n")[0]


@pytest.mark.parametrize("turn", ["ten are 10 actually, i miscounted", "sorry, ten make 10", "its 1.0 not .75"])
def test_a_pitch_counted_anew_takes_the_place_of_that_told(club: Desk, turn: str) -> None:
    found = last(club, "found a lens, 41.8 across the thread. mount?", "ten threads are 7.5", turn)
    assert "M42" in flat(found)


@pytest.mark.parametrize("turn", ["and a 27.9 one with 0.1 under it", "27.9 plus 0.1", "the 27.9 with a 0.1 shim"])
def test_another_ring_with_a_shim_is_as_long_as_both(club: Desk, turn: str) -> None:
    assert "seat 28 mm: just right" in flat(last(club, "om 50 on e, ring measures 27.8", turn))


@pytest.mark.parametrize(
    "turn", ["tube is actually 25", "no the tube is 25", "tubes 25 not 27.5", "tube is 25mm actually"]
)
def test_a_tube_is_put_right_by_the_bare_number(club: Desk, turn: str) -> None:
    found = last(club, "curlew 55/3.5 f mount on mft with 27.5 tube, how large", "light lost", turn)
    assert "25 mm of extension: f/3.5 counts as f/5.1" in flat(found)


def test_a_tube_put_right_keeps_the_depth_that_was_asked(club: Desk) -> None:
    found = last(club, "om 50/1.8 with a 7 mm tube, how close", "depth at f8", "sorry the tube is 12")
    assert found.intent == "depth-of-field"
    assert "50 mm with 12 mm of extension" in flat(found)


@pytest.mark.parametrize("turn", ["got a c-mount 25mm too, same body?", "same camera with a c-mount 25mm?"])
def test_the_body_is_taken_up_again_after_a_frame_was_asked_of(club: Desk, turn: str) -> None:
    answer = last(club, "how do i get a 40mm AR lens on mft", "does it cover full frame", turn)
    assert answer.question is not None
    assert [body.id for body in answer.question.bodies] == ["mft-mount"]
    assert [lens.ids[0] for lens in answer.question.lenses] == ["c"]


def test_a_stop_for_a_face_is_as_deep_as_a_face(club: Desk) -> None:
    told = flat(last(club, "what f stop for a face at 1 m with 50mm 1.4 on full frame"))
    assert "f/8 for a face, some 12 cm from nose to ear" in told


@pytest.mark.parametrize(
    ("marks", "counts"), [("4x 0.10", "f/20"), ("10x 0.25", "f/20"), ("4x 0.20", "f/10"), ("20x0.40", "f/25")]
)
def test_an_objective_counts_by_both_its_marks(club: Desk, marks: str, counts: str) -> None:
    told = flat(last(club, f"{marks} objective on e-mount, how much light"))
    assert f"it counts as {counts} at the sensor" in told


@pytest.mark.parametrize(
    "opening", ["objective with 26x0.706 thread on M42", "objective with a M25x0.75 thread on M42", "objective 25x0.75"]
)
def test_a_thread_of_an_objective_is_no_magnification(club: Desk, opening: str) -> None:
    question = last(club, opening).question
    assert question is not None
    assert not {"na", "magnification"} & {key for key, _ in question.values}
