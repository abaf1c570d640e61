"""Pairs told one after the other, rings that are owned, and whether glass is needed: which lens goes on which body."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, flat, one


def bodies_of(found):
    return found["reading"].partition(" on a")[2]


@pytest.mark.parametrize(("question", "rings"), [
    ("om to L and fd to L, thickness of each", {"om-mount": 26.0, "fd-mount": 22.0}),
    ("m42 to Z and K to Z, mm of each ring?", {"m42": 29.46, "k-mount": 29.46}),
    ("how do i get C on E and C on Z", {"e-mount": -0.474, "z-mount": 1.526}),
])  # fmt: skip
def test_what_stands_in_both_pairs_is_one_thing(asked, question, rings):
    found = asked(question)
    assert {case: one(found, "ring_thickness_mm", case) for case in rings} == {
        case: close(ring) for case, ring in rings.items()
    }
    assert len(found["chains"]) == 2


def test_each_lens_goes_on_its_own_body_alone(asked):
    found = asked("K on Z and OM on E, which rings")
    assert one(found, "ring_thickness_mm", "k-mount on z-mount") == close(29.46)
    assert one(found, "ring_thickness_mm", "om-mount on e-mount") == close(28.0)
    assert len(found["chains"]) == 2
    assert "each on its own" in found["reading"]


def test_rings_that_follow_one_another_are_no_pairs(asked):
    found = asked("m42 to EF and EF to E, total thickness?")
    assert found["entities"]["lens"]["mount"] == "m42"
    assert found["entities"]["body"]["mount"] == "e-mount"


def test_the_one_behind_a_body_is_one_more_body(asked):
    found = asked("adaptall 2 lens, 90 2.5, for my old F body AND also the E one. two rings?")
    assert one(found, "ring_thickness_mm", "f-mount") == close(4.2)
    assert one(found, "ring_thickness_mm", "e-mount") == close(32.7)


def test_a_ring_that_leads_elsewhere_is_told_why(asked):
    found = asked("md lens on an X body, I already have the MD to E ring")
    assert "is of no use here: it ends on E-mount" in found["text"].replace("\n", " ").replace("  ", " ")
    assert found["chains"][0]["verdict"] == "infinity"


@pytest.mark.parametrize("helicoid", ["an m42 helicoid", "an m42 helicoid 25-55", "a 12-17 mm m42 helicoid"])
def test_a_ring_leads_to_a_helicoid_of_another_mount(asked, helicoid):
    found = asked(f"how do I get a 75mm ltm lens on full frame e with {helicoid}")
    assert found["text"].startswith("A 75 mm LTM lens on an E-mount body with full frame: stops at")
    assert "LTM to M42 ring" in found["text"]
    assert "held against" not in found["text"]


def test_what_was_drawn_without_the_pieces_named_says_so(asked):
    found = asked("draw a 75mm f4.5 ltm lens on full frame e with tubes of 9, 16 and 30 mm and an m42 helicoid")
    assert found["text"].index("do not lead") < found["text"].index("LTM to E ring")


def test_rings_that_end_alike_are_each_for_its_lens(asked):
    found = asked("i have OM to E and FD to E, can i put a Z camera behind")
    assert one(found, "ring_thickness_mm", "om-mount") == close(30.0)
    assert one(found, "ring_thickness_mm", "fd-mount") == close(26.0)
    assert "serves OM-mount and FD-mount" in " ".join(found["text"].split())


def test_the_ring_that_is_owned_is_not_the_way_asked_for(asked):
    found = asked("m42 to RF, i have an M42-EF already")
    assert found["entities"]["body"]["mount"] == "rf-mount"
    assert [piece["front"] for piece in found["chains"][0]["pieces"]] == ["m42", "ef-mount"]


def test_glass_that_is_asked_about_is_no_condition(asked):
    found = asked("exakta 58mm onto Z, do i need anything with glass in")
    assert found["chains"][0]["verdict"] == "infinity"
    assert not found["chains"][0]["glass"]
    assert "No, no glass is needed" in found["text"]


def test_glass_is_said_to_be_needed_where_only_glass_reaches_infinity(asked):
    assert "Yes, for infinity: without glass" in asked("does FD on F need an optical element")["text"]


def test_a_cup_deeper_than_bodies_clear_is_no_way_to_infinity(asked):
    found = asked("35mm C lens on an NX body, infinity?")
    assert [chain["verdict"] for chain in found["chains"]] == ["macro-only"]
    assert found["chains"][0]["register_error_mm"]["least"] == close(7.974)
    assert "Count on no infinity" in " ".join(found["text"].split())
    assert "provided the barrel enters" not in found["text"]


def test_a_list_without_its_first_comma_is_of_lenses(asked):
    found = asked("first adapter for someone with M42 K and OM on RF")
    assert {case: one(found, "ring_thickness_mm", case) for case in ("m42", "k-mount", "om-mount")} == {
        "m42": close(25.46), "k-mount": close(25.46), "om-mount": close(26.0),
    }  # fmt: skip


def test_the_one_of_a_ring_told_before_is_a_ring(asked):
    found = asked("can i stack the 1mm ltm to m ring and an M to Z one for my 35/3.5 screw lens")
    assert len(found["chains"][0]["pieces"]) == 2
    assert found["chains"][0]["verdict"] == "infinity"


def test_a_ring_of_a_body_made_for_a_lens_mount_is_between_the_two(asked):
    found = asked("E adapter for m42 came out 27.30 on the micrometer, 35mm lens. is that trouble")
    assert found["chains"][0]["register_error_mm"]["least"] == close(-0.16)


def test_a_vague_part_of_a_unit_is_no_length(asked):
    found = asked("EXA bayonet 50 on a EF dslr. only 0.something of a mm left isnt it")
    assert found["chains"][0]["verdict"] == "infinity"
    assert one(found, "ring_thickness_mm") == close(0.7)


def test_a_ring_only_reckoned_cannot_be_where_there_is_no_room(asked):
    assert asked("E lens on X body, 18 vs 17.7 so a 0.3 mm ring?")["chains"][0]["verdict"] == "unusable"
    mine = asked("E lens on X body with my own 0.3 mm ring, measured")
    assert mine["chains"][0]["verdict"] == "infinity"


def test_without_the_ring_a_lens_of_its_own_mount_is_right(asked):
    found = asked("8mm CS lens, forgot the 5mm ring was still in the CS cam, everything mush")
    assert [chain["verdict"] for chain in found["chains"]] == ["macro-only", "infinity"]


def test_a_flush_bush_is_the_one_to_the_body(asked):
    found = asked("M42 onto K body, just the flush bush?")
    assert found["chains"][0]["verdict"] == "infinity"
    assert one(found, "ring_thickness_mm") == close(0.0)


@pytest.mark.parametrize("question", [
    "does an EF lens have room on an F body or the other way", "why does F on EF work but not the other way around",
])  # fmt: skip
def test_who_has_room_is_told_first(asked, question):
    found = asked(question)
    assert "An F-mount lens on an EF-mount body leaves 2.5 mm for a ring" in " ".join(found["text"].split())
    assert one(found, "register_difference_mm", "f-mount, ef-mount") == close(2.5)


def test_each_of_several_lenses_has_its_reason(asked):
    told = " ".join(asked("how come FL and FD on EF no but OM yes")["text"].split())
    assert told.index("FD-mount lenses sit 42 mm") < told.index("OM-mount lenses sit 46 mm")
    assert "there is room for a ring of 2 mm" in told


def test_a_distance_in_metres_is_not_about_meters(asked):
    told = asked("why does my m42 lens stop at 9 meters on F")["text"]
    assert "A body meters the light" not in told
    assert "1.04 mm too far out" in " ".join(told.split())


def test_another_body_after_a_ring_told_is_no_crop(asked):
    found = asked("m42 on E is 27.46, and for Z and L then?")
    assert one(found, "ring_thickness_mm", "z-mount") == close(29.46)
    assert one(found, "ring_thickness_mm", "l-mount") == close(25.46)


def test_a_thin_plate_is_so_thick_and_a_ring_so_thin_is_off(asked):
    plate = asked("24mm om on f bayonet 0.2 thin plate")
    assert plate["chains"][0]["register_error_mm"]["least"] == close(0.7)
    ring = asked("my M42 to E ring is 0.2 thin")
    assert ring["chains"][0]["register_error_mm"]["least"] == close(-0.2)


def test_what_is_far_sharp_at_a_near_mark_sits_too_close(asked):
    found = asked("why is the scale of my 35 wrong since the new adapter, far hills sharp at around 6m")
    assert one(found, "register_error_mm", "35 mm lens") == close(-0.2066)
    assert one(asked("why does my 50 stop at 9 m on the new ring"), "register_error_mm", "50 mm lens") > 0


def test_a_register_told_amiss_is_put_right(asked):
    found = asked("half the internet says MFT register is 20mm, why do you say something else")
    assert "19.25 mm and not 20: 20 is a rounded press figure" in " ".join(found["text"].split())


def test_what_a_lens_came_off_tells_its_mount(asked):
    found = asked("38mm from a half frame slr (the PEN F type bayonet) to X")
    assert found["entities"]["lens"]["mount"] == "pen-f"
    assert one(found, "ring_thickness_mm") == close(11.25)


def test_a_mount_in_brackets_behind_a_ring_is_its_body(asked):
    found = asked("why do they even sell LTM-to-dslr rings (EF) if there is no infinity")
    assert one(found, "register_difference_mm", "ltm to ef-mount") == close(-15.2)


def test_a_bush_leads_into_the_ring_that_is_owned(asked):
    found = asked("i own a K to L ring, can it take my M42 with a bush")
    assert found["chains"][0]["verdict"] == "infinity"
    assert [piece["rear"] for piece in found["chains"][0]["pieces"]] == ["k-mount", "l-mount"]


def test_what_is_just_the_room_among_tubes_is_the_ring(asked):
    found = asked("m42 on e with 27.46 and 10mm tube, 50mm lens, how far")
    assert found["chains"][0]["register_error_mm"]["least"] == close(10.0, rel=0.02)


def test_under_my_lens_is_no_price(asked):
    assert "35 mm lens" in asked("what does a 0.5mm spacer under my 35 do to infinity")["reading"]


def test_a_plain_ring_that_could_be_made_comes_before_glass(asked):
    found = asked("my SR 50 on an EF-M body, ring thickness?")
    assert not found["chains"][0]["glass"]
    assert one(found, "ring_thickness_mm") == close(25.5)


@pytest.mark.parametrize(
    ("text", "mount"),
    [
        ("inherited three SR/MD bayonet lenses from my aunt (28, 50, 135), which ring for an RF body?", "SR-mount"),
        ("got 3 M42 lenses from a friend: 35, 50 and 135, which ring for E", "M42"),
    ],
)
def test_where_lenses_come_from_parts_no_row_from_its_mount(asked, text, mount):
    found = flat(asked(text))
    assert found.startswith("One adapter serves all 3")
    assert f"50 mm {mount}" in found
    assert f"135 mm {mount}" in found


@pytest.mark.parametrize("word", ["screwmount", "screw mount", "bayonet", "mount"])
@pytest.mark.parametrize("lens", ["LTM", "FD", "M42"])
def test_a_mount_behind_a_word_for_mounts_is_that_of_the_lens_spoken_of(asked, word, lens):
    found = asked(f"my 35 is {word} {lens} and the body is an M. just one ring?")
    assert found["intent"] == "chain"
    assert bodies_of(found).startswith("n M-mount body")
