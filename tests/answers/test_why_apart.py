"""Why two that are asked about together come out apart: both figures, and the law in words."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat as text_of
from tests.answers.picture import numbers, one
from tests.answers.talks import flat, talk


@pytest.mark.parametrize(("question", "short", "long"), [
    ("why does my 12 care about 0.1 mm and the 85 doesnt", 1464, 72420),
    ("same 0.05mm, my 16 is unusable and the 100 doesnt care. why", 5152, 200200),
    ("same 0.1 shim error, 20mm useless and 135 perfect. how come", 4040, 182520),
])  # fmt: skip
def test_the_same_error_is_told_of_both_lenses_with_the_square_of_the_focal_length(asked, question, short, long):
    found = asked(question)
    assert "square of the focal length" in text_of(found)
    ends = numbers(found, "far_from_sensor_mm")
    assert all(any(least <= far <= greatest for least, greatest in ends) for far in (short, long))


@pytest.mark.parametrize(("question", "seats"), [
    ("why is the M to E ring thinner than the M to X ring", {"m-mount to e-mount": 9.8, "m-mount to x-mount": 10.1}),
    ("why is the T2 ring for mft thinner than the one for E", {"t2 to mft-mount": 35.75, "t2 to e-mount": 37}),
    ("why do they say fat C lenses go on E but not on MFT", {"c to e-mount": -0.474, "c to mft-mount": -1.724}),
    ("why is my MD ring thinner than my M42 one, both for E", {"sr-mount to e-mount": 25.5, "m42 to e-mount": 27.46}),
])  # fmt: skip
def test_rings_set_against_each_other_are_told_by_their_registers(asked, question, seats):
    found = asked(question)
    assert text_of(found).startswith("Lens register less body register is the seat of a ring")
    for case, seat in seats.items():
        assert numbers(found, "ring_thickness_mm", case)[0][0] == pytest.approx(seat, abs=0.005)


def test_the_dark_of_close_up_is_told_by_its_magnification(asked):
    found = asked("why does it get so dark at 1:1 when i never touched the aperture")
    assert one(found, "light_difference_stops") == pytest.approx(2)
    assert "spreads the same light" in text_of(found)


def test_lenses_of_a_talk_are_set_apart(club):
    *_, found = talk(
        club, "35mm f/2.8 exakta, NX body, ring i have measures 19.31. infinity?",
        "same ring with a 100mm, wide open, how far does that get", "why so much further",
    )  # fmt: skip
    assert "35 mm 11" in flat(found)
    assert "square" in flat(found)


def test_a_shim_that_is_there_lies_between(asked):
    for question in (
        "stuck a 0.3 shim under my OM-E ring. 28mm how far now",
        "I glued a 0.3 shim behind the M42-E ring, 28mm lens, infinity?",
    ):
        (chain, *_) = asked(question)["chains"]
        assert chain["verdict"] == "macro-only"
        assert chain["register_error_mm"]["least"] == pytest.approx(0.3, abs=0.06)


@pytest.mark.parametrize("question", [
    "reducer ring 0.71 MD to MFT, does a 50 still reach infinity", "booster 0.71 MD to MFT, 50mm, infinity?",
])  # fmt: skip
def test_a_factor_makes_a_reducing_ring_a_focal_reducer(asked, question):
    assert "0.71x" in text_of(asked(question))


def test_what_is_soft_at_one_stop_and_not_at_another_tells_what_the_ring_is_off_by(asked):
    found = asked("my 28 at f2.8 is mush at infinity but f11 looks okay. why, ring too thick?")
    assert "0.084 mm to 0.33 mm" in text_of(found)


def test_glass_behind_a_lens_is_told_by_its_thickness(asked):
    found = asked("put a 2mm thick ND behind the lens and infinity moved, how come")
    assert one(found, "glass_shift_mm") == pytest.approx(0.68, abs=0.02)


@pytest.mark.parametrize(("question", "error"), [
    ("D lens 13mm in a flush ring on a CS camera - quarter mm off, does that matter", 0.236),
    ("X lens on an E body, only 0.3 apart.. surely a paper thin ring does it", 0.3),
])  # fmt: skip
def test_what_two_registers_are_apart_by_is_no_ring(asked, question, error):
    assert asked(question)["chains"][0]["register_error_mm"]["least"] == pytest.approx(error, abs=0.005)


def test_a_ring_for_that_lens_names_the_body(club):
    *_, found = talk(club, "P6 80mm", "E ring for that?", "L ring for it?")
    assert found.question.body.id == "l-mount"


def test_what_is_added_is_told_by_how_far_lenses_still_see(asked):
    found = asked("how come adding 1 mm kills infinity")
    assert text_of(found).startswith("1 mm more between lens and body")
    assert numbers(found, "far_from_sensor_mm", "50 mm")


def test_two_lenses_on_one_ring_are_set_apart_by_an_everyday_error(asked):
    assert "square of the focal length" in text_of(asked("why is my ring fine on 50 and bad on 24"))


def test_of_two_lenses_the_one_is_not_what_the_other_is_like(asked):
    assert "crop factor" not in text_of(asked("why is my ring fine on 50 and bad on 24"))
    assert "times the crop factor" in text_of(asked("why is my 35 on mft like a 70"))


@pytest.mark.parametrize(
    ("question", "says"),
    [
        ("K and M42 have the same flange so why won't the lens just go on", ("bayonet", "screw", "flush")),
        ("why do T2 and M42 look the same but dont fit", ("0.75", "1 mm")),
        ("why wont EF-S lens fit on EF body", ("deeper rear",)),
        ("why does a D lens fall into a C camera", ("15.88", "25.4")),
        ("why can't an E lens go on an EF-M body when both are 18 mm", ("lugs",)),
    ],
)
def test_what_keeps_one_mount_off_another_is_told_before_the_distance(talked, question, says):
    head = text_of(talked(question)).split("Chain 1")[0]
    assert [word for word in says if word not in head[:400]] == []


def test_one_width_of_two_threads_is_no_one_pitch(talked):
    found = talked("can i screw a T2 lens into an M42 body", "but why, both are 42mm")
    assert text_of(found).startswith("M42x0.75 is not M42x1: the pitch of T2 is 0.75 mm, that of M42 1 mm")


def test_the_second_body_of_two_rings_is_no_lens(talked):
    found = text_of(talked("why is the M42 ring for Z fatter than the one for E"))
    assert "which takes no E-mount lens" not in found
    assert "E-mount 27.46 mm and Z-mount 29.46 mm" in found


def test_the_mount_of_the_lens_named_again_is_no_second_body(talked):
    found = text_of(talked("why cant an MFT lens go on my E body, MFT is deeper"))
    assert "Micro Four Thirds on Micro Four Thirds" not in found
    assert "1.25 mm longer" in found


@pytest.mark.parametrize(
    ("question", "rooms"),
    [("why is Z the easiest to adapt to", (68, 71)), ("why does everything fit on E mount", (63, 71))],
)
def test_why_a_body_takes_nearly_all_is_told_by_the_registers_of_the_others(talked, question, rooms):
    assert f"the lenses of {rooms[0]} of the {rooms[1]} other mounts" in text_of(talked(question))


def test_short_and_long_lenses_of_one_mount_are_told_by_their_circles(talked):
    found = text_of(talked("why do my wide c lenses go black in the corners on mft but the 75 is clean"))
    assert found.startswith("It goes by the lens and not by the mount")
    assert "12.7 to 14.5 mm at 10 to 16 mm" in found


def test_a_small_error_on_one_lens_has_its_reason(talked):
    found = text_of(talked("why does a 0.1mm error matter for 20mm lens"))
    assert "20 mm 4.04 m" in found


@pytest.mark.parametrize(
    ("question", "sizes"),
    [
        ("why does 1mm of tube do so much on a 12mm lens", "12 mm 0.083x, 50 mm 0.02x"),
        ("why is 25mm of tube nothing on a 200", "50 mm 0.5x, 200 mm 0.12x"),
    ],
)
def test_what_a_tube_does_on_one_lens_is_set_beside_a_normal_one(talked, question, sizes):
    assert sizes in text_of(talked(question))


@pytest.mark.parametrize(
    ("say", "short", "long"),
    [
        ("why does the same spacer error kill my 10mm but the 75 doesnt care", "10 mm", "75 mm"),
        ("why does the same ring error bother a 16mm and not a 100mm", "16 mm", "100 mm"),
        ("how come the same wrong ring hurts the 12 but not the 90", "12 mm", "90 mm"),
        ("why does a spacer of 0.2 hurt my 24mm but my 105mm is good", "24 mm", "105 mm"),
    ],
)
def test_two_lenses_of_which_one_is_hurt_are_no_spacers(asked, say, short, long):
    told = text_of(asked(say))
    assert told.startswith("It goes by the square of the focal length")
    assert f"{short} " in told
    assert f"{long} " in told


@pytest.mark.parametrize("say", ["but why is that?", "ok and why does it"])
def test_a_reason_of_nothing_asks_for_the_question_it_leans_on(asked, say):
    assert "There is no question before this one" in text_of(asked(say))


@pytest.mark.parametrize(
    "question",
    [
        "why is my 24 way off with a ring that is perfectly fine on the 90",
        "the 135 is fine on this ring but the 24 is way off, why",
        "adapter fine on a 100 but terrible on a 21, how come",
    ],
)
def test_a_short_lens_that_is_off_where_a_long_one_is_fine_is_told_by_the_square(asked, question):
    assert text_of(asked(question)).startswith("It goes by the square of the focal length")


@pytest.mark.parametrize(
    "question",
    [
        "why is my 90 way off with a ring that is perfectly fine on the 24",
        "why is my 200 off on a ring where the 35 is fine",
    ],
)
def test_a_long_lens_that_is_off_where_a_short_one_is_fine_is_off_by_itself(asked, question):
    assert text_of(asked(question)).startswith("one lens alone that misses infinity")
