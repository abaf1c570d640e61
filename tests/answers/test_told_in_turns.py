"""A bare number told after an answer, in the sense that the answer asks for: a speed of the camera, a circle."""

from __future__ import annotations

from math import log2

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from tests.answers.picture import numbers
from tests.answers.talks import flat, talk


@pytest.mark.parametrize("said", ["camera only goes down to 800 in log", "the cam base is 800 actually"])
def test_a_round_number_of_the_camera_is_its_speed(club: Desk, said: str) -> None:
    last = talk(club, "nd for full sun f2 1/50 s", said)[-1]
    low, high = numbers(record_of(last, club.knowledge), "nd_stops")[0]
    assert (low + high) / 2 == pytest.approx(15 - log2(2**2 * 50) + log2(8), abs=0.01)


def test_a_size_measured_clean_is_the_circle(club: Desk) -> None:
    last = talk(club, "16mm c lens on X cover?", "i measured 13 mm clean. largest 16:9?")[-1]
    wide = 13 * 16 / (16**2 + 9**2) ** 0.5
    assert numbers(record_of(last, club.knowledge), "crop_width_mm")[0] == (pytest.approx(wide, abs=0.02),) * 2


@pytest.mark.parametrize(
    ("first", "said", "view"),
    [
        ("50mm f1.8 OM lens on my e mount camera", "and will it be a 75 then", 50 * 1.527),
        ("35mm md on mft", "so a 70 then?", 70),
        ("28 om on x", "is that a 42", 28 * 1.527),
    ],
)
def test_a_length_that_the_lens_only_frames_like_is_no_other_lens(
    club: Desk, first: str, said: str, view: float
) -> None:
    last = talk(club, first, said)[-1]
    assert last.intent == "crop-equivalent"
    low, high = numbers(record_of(last, club.knowledge), "equivalent_focal_mm")[0]
    assert (low + high) / 2 == pytest.approx(view, rel=0.02)


def test_another_lens_is_still_another_lens(club: Desk) -> None:
    last = talk(club, "35mm md on mft", "and a 70?")[-1]
    assert last.question is not None
    assert last.question.lens is not None
    assert (last.intent, last.question.lens.focal_length_mm) == ("chain", 70)


def test_autofocus_asked_in_a_talk_goes_by_the_ring(club: Desk) -> None:
    last = talk(club, "50mm f1.8 OM lens on my e mount camera", "is autofocus going to work")[-1]
    assert flat(last).startswith("Autofocus: no.")


def test_a_slip_in_the_word_mount_leaves_the_letter_a_mount(club: Desk) -> None:
    last = talk(club, "25mm c lens on mft", "e-mont instead")[-1]
    assert last.question is not None
    assert last.question.body is not None
    assert last.question.body.ids[0] == "e-mount"


def test_why_it_does_not_cover_is_of_the_circle_and_not_of_infinity(club: Desk) -> None:
    last = talk(club, "25mm f1.4 c lens on mft", "and the corners?", "why does it not cover")[-1]
    assert "image circle 13 to 22 mm" in flat(last)
    assert "flat ring" not in flat(last)


def test_which_filter_asks_for_density_and_for_no_stop(club: Desk) -> None:
    last = talk(club, "25mm f1.4 c lens on mft", "sun at noon 25fps iso 200, filter?")[-1]
    assert flat(last).startswith("9.4 stops of ND to hold back")


def test_a_filter_of_no_told_thickness_is_no_piece_between_lens_and_body(club: Desk) -> None:
    with_it = talk(club, "m42 on E with a filter")[-1]
    assert "as you named them" not in flat(with_it)
    assert "reaches infinity" in flat(with_it)


def test_a_filter_told_before_leaves_the_body_told_after_it(club: Desk) -> None:
    last = talk(
        club, "25mm f1.4 c lens on mft", "sun at noon 25fps iso 200, filter?", "e-mont instead", "how sure are you"
    )[-1]
    assert "C to E cup" in flat(last)
    assert "MFT" not in flat(last)


@pytest.mark.parametrize(
    ("first", "said"),
    [
        ("exakta 58 on E", "i measured 44.5 on mine"),
        ("qbm 50 1.8 on rf body infinity?", "mine measured 44.6 actually"),
        ("M42 50 on X", "i got 45.5 on mine"),
    ],
)
def test_a_length_like_the_lens_s_register_is_that_and_no_ring(club: Desk, first: str, said: str) -> None:
    last = talk(club, first, said)[-1]
    assert last.question is not None
    assert last.question.said("flange_to_image") is not None
    assert not last.question.adapters
    assert abs(record_of(last, club.knowledge)["chains"][0]["register_error_mm"]["greatest"]) < 7


def test_a_register_that_is_doubted_is_no_ring_either(club: Desk) -> None:
    last = talk(club, "qbm 50 1.8 on rf body infinity?", "how sure are you of that 44.46")[-1]
    assert last.intent == "why"
    assert "register of QBM, 44.46 mm (two sources)" in flat(last)


def test_a_ring_named_as_long_as_the_register_stays_a_ring(club: Desk) -> None:
    last = talk(club, "M42 50 on X", "with a ring of 45.4")[-1]
    assert "stops at 26 cm" in flat(last)


@pytest.mark.parametrize("said", ["make it the 36-90", "or a 36-90?", "the 36-90 instead"])
def test_another_range_takes_the_place_of_the_helicoid(club: Desk, said: str) -> None:
    last = talk(club, "75mm enlarger lens on Z with a 25-55 helicoid, its flange to image is 68", said)[-1]
    assert last.question is not None
    assert [piece.thickness_mm for piece in last.question.adapters] == [(36, 90)]
    assert last.question.lens is not None
    assert last.question.lens.focal_length_mm == 75


@pytest.mark.parametrize("said", ["does the 24 suffer more?", "is the 24 hurt more by that"])
def test_a_lens_that_suffers_more_is_no_tube_put_between(club: Desk, said: str) -> None:
    last = talk(club, "SR 50mm on X with a 25.65 ring", said)[-1]
    assert last.question is not None
    assert [piece.thickness_mm for piece in last.question.adapters] == [(25.65, 25.65)]
    assert last.question.lens is not None
    assert last.question.lens.focal_length_mm == 24


@pytest.mark.parametrize(
    ("said", "error"),
    [("my ring is +0.1 mm", 0.1), ("my ring is -0.1 mm", -0.1), ("my ring measures +0.15", 0.15)],
)
def test_a_ring_told_with_its_sign_is_off_by_so_much(club: Desk, said: str, error: float) -> None:
    last = talk(club, "OM 50 on E", said)[-1]
    told = record_of(last, club.knowledge)["chains"][0]["register_error_mm"]
    assert told["least"] == told["greatest"] == pytest.approx(error, abs=0.001)


def test_a_seat_with_a_plus_sign_is_no_close_up_lens(club: Desk) -> None:
    last = club.ask("C to mft ring sits at +0.3 mm instead of inside. 25mm")
    assert "2.02 mm too far out" in flat(last)


@pytest.mark.parametrize(
    ("said", "low", "high"),
    [
        ("i packed 5 layers of kitchen foil under the mount, now its right. what did i add", 0.055, 0.09),
        ("put 4 sheets of paper behind the flange, how thick is that", 0.36, 0.44),
        ("two sheets of 0.05 brass under it, how much did that add", 0.1, 0.1),
        ("five layers of foil lie under my ring, thickness?", 0.055, 0.09),
    ],
)
def test_layers_that_lie_there_are_told_as_thick_as_they_are(club: Desk, said: str, low: float, high: float) -> None:
    told = numbers(record_of(club.ask(said), club.knowledge), "shim_mm")
    assert told[0] == (pytest.approx(low), pytest.approx(high))


def test_after_turns_of_a_thread_its_scale_and_layers_go_by_what_it_moved(club: Desk) -> None:
    _, mark, layers, foil = talk(
        club, "c mount 16mm lens has to be unscrewed half a turn to be sharp far away",
        "what would its scale say for infinity without that", "how many layers of 0.05 is that", "how many of foil",
    )  # fmt: skip
    moved = 0.5 * 25.4 / 32
    told = numbers(record_of(mark, club.knowledge), "scale_mark_mm")
    assert told[0][0] - 6 <= 2 * 16 + 16 * 16 / moved + moved <= told[0][1] + 6
    assert "0.4 mm is 8 x 0.05 mm" in flat(layers)
    assert "22 to 36 of household foil" in flat(foil)


def test_a_length_beside_turns_of_another_thread_is_the_lens(club: Desk) -> None:
    _, mark = talk(club, "LTM 50mm turned out a quarter turn to hit infinity", "where was infinity on the scale before")
    assert "10 m mark of a 50 mm lens" in flat(mark)


def test_a_distance_at_hand_after_a_target_is_what_it_is_set_on(club: Desk) -> None:
    _, near, other, ends = talk(
        club, "how far away should the tower be to set infinity on a 90", "nearest thing i got is 60 m",
        "ok and for a 28 is that far enough", "it stops at 30 m on that ring though",
    )  # fmt: skip
    assert "No, 60 m is too near for 90 mm" in flat(near)
    assert "set at 60 m it would be 0.14 mm wrong" in flat(near)
    assert "No, 60 m is too near for 28 mm" in flat(other)
    assert "sits 0.026 mm too far out" in flat(ends)


@pytest.mark.parametrize(
    "said",
    [
        "two M42 to MFT rings, one 26.1 one 26.3. which one for infinity with a 35",
        "i have two M42-MFT rings, one measures 26.10 and the other 26.30, which do i use for a 35",
        "got a ring of 26.1 and one of 26.3 for m42 35mm on MFT, which would you take",
    ],
)
def test_two_rings_told_one_by_one_are_a_choice(club: Desk, said: str) -> None:
    assert "Take the 26.1 mm one: right is 26.21 mm" in flat(club.ask(said))


def test_a_stop_after_a_choice_of_rings_asks_of_them_still(club: Desk) -> None:
    last = talk(club, "2 fd-e adapters here, 23.9 and 24.1. which is the better one for a 20", "at f8?")[-1]
    assert last.intent == "focus-verdict"
    assert "24.1 mm: it is 0.1 mm too thick: reaches infinity" in flat(last)


@pytest.mark.parametrize(
    "first", ["35mm M lens on E with the 6mm close focus adapter", "M 35 on E with a 6 mm helicoid"]
)
def test_a_helicoid_told_by_its_travel_adds_nothing_when_shut(club: Desk, first: str) -> None:
    last = talk(club, first, "does it still do infinity then")[-1]
    assert "reaches infinity" in flat(last)
    ways = record_of(last, club.knowledge)["chains"]
    assert ways[0]["verdict"] == "infinity"
    assert ways[0]["register_error_mm"]["greatest"] == pytest.approx(6, abs=0.1)


def test_a_helicoid_that_is_drawn_out_so_far_stands_so(club: Desk) -> None:
    assert "stops at 28 cm" in flat(club.ask("35mm M lens on E with the helicoid adapter drawn out 6 mm, infinity?"))


@pytest.mark.parametrize("said", ["that one's measured 28.7", "the one measured 28.7", "mine's measured 28.7"])
def test_the_one_that_is_measured_is_no_millimetre(club: Desk, said: str) -> None:
    last = talk(club, "50mm F lens on E with F to E ring", said)[-1]
    assert "0.2 mm too far out" in " ".join(line.text for line in last.lines) or "stops at 13 m" in flat(last)
    assert last.question is not None
    assert [piece.thickness_mm for piece in last.question.adapters] == [(28.7, 28.7)]


def test_a_pitch_or_turns_told_anew_ask_the_same(club: Desk) -> None:
    _, pitch, turns, thread = talk(
        club, "LTM lens screwed out 1/8 turn hits infinity, spacer?", "its 1mm pitch", "1/4 turn more like",
        "and if it was m42",
    )  # fmt: skip
    assert "0.125 turn of 1 mm pitch is 0.12 mm" in flat(pitch)
    assert "0.25 turn of 1 mm pitch is 0.25 mm" in flat(turns)
    assert "0.25 turn of 1 mm pitch is 0.25 mm" in flat(thread)


def test_turns_told_anew_are_not_left_away_by_without_that(club: Desk) -> None:
    last = talk(
        club, "c mount 16mm lens has to be unscrewed a third of a turn to be sharp far away",
        "no half a turn, i just checked", "what would its scale say for infinity without that",
    )[-1]  # fmt: skip
    assert "Without the 0.4 mm infinity falls at the 68 cm mark" in flat(last)


@pytest.mark.parametrize(
    ("first", "said", "left"),
    [
        (
            "50mm wont go past 12 m on the F to E ring i got, how much too thick is it",
            "i sanded off a tenth",
            "0.11 mm",
        ),
        ("my OM to E ring measures 28.12, is infinity gone on a 24 f2.8", "took a tenth off it", "0.02 mm"),
        ("50mm infinity at 10 m", "put two tenths in", "0.052 mm"),
    ],
)
def test_tenths_in_words_are_taken_off_or_put_in(club: Desk, first: str, said: str, left: str) -> None:
    assert f"The lens sits {left} too" in flat(talk(club, first, said)[-1])


def test_what_is_to_be_taken_off_a_stack_named_by_its_mounts(club: Desk) -> None:
    last = talk(club, "58mm m39 on EF with m39-m42 + m42-ef.. infinity?", "so turn off how much")[-1]
    assert "take 0.26 mm off one seat" in flat(last)


def test_which_stop_saves_it_is_no_order_to_save(club: Desk) -> None:
    last = talk(club, "M42 50mm on E with a 27.6 ring", "what stop saves it")[-1]
    assert last.intent == "focus-verdict"


def test_turns_are_asked_of_what_rings_at_hand_are_to_make(club: Desk) -> None:
    last = talk(
        club, "need 0.9 mm between a c lens and its adapter, i have 0.3 and 0.5 washers", "how many turns is that 0.9"
    )[-1]
    assert "0.9 mm is 1.134 turns of its thread" in flat(last)


def test_of_rings_to_choose_from_the_thin_one_tells_its_mark_and_its_shim(club: Desk) -> None:
    record = record_of(
        talk(club, "two M42 to MFT rings, one 26.1 one 26.3. which one for infinity with a 35", "and for a 200?")[-1],
        club.knowledge,
    )
    mark, shim = numbers(record, "scale_mark_mm")[0], numbers(record, "shim_mm")[0]
    assert mark[0] <= 2 * 200 + 200 * 200 / 0.11 + 0.11 <= mark[1] + 4000
    assert shim == (pytest.approx(0.11, abs=0.001),) * 2


def test_a_ring_named_by_both_mounts_seats_the_lens_however_long_it_is(club: Desk) -> None:
    last = club.ask("C to mft ring sits at +0.3 mm instead of inside, 25mm, how close does it focus")
    assert "36 cm" in flat(last)
    assert "2.13 m" not in flat(last)


@pytest.mark.parametrize("said", ["58mm M39 lens on EF", "M39 58 on EF body infinity?"])
def test_a_name_of_several_is_taken_for_the_one_that_nearly_sits_where_the_first_cannot(club: Desk, said: str) -> None:
    found = flat(club.ask(said))
    assert "Taken for M39x1 SLR" in found
    assert "if it is LTM: " in found


def test_where_the_first_meaning_holds_infinity_it_stays(club: Desk) -> None:
    assert "Taken for LTM" in flat(club.ask("M39 50 on E"))


def _seat(club: Desk, *turns: str) -> float:
    """How far off the seat of the first way of the last answer is, mm."""
    error = record_of(talk(club, *turns)[-1], club.knowledge)["chains"][0]["register_error_mm"]
    return (error["least"] + error["greatest"]) / 2


@pytest.mark.parametrize(
    ("turns", "error"),
    [
        (("how deep must a cup be for cs lens on mft", "i made it 6.6"), 6.724 - 6.6),
        (("how deep must a cup be for cs lens on mft", "i made it 6.6", "and 6.8 deep?"), 6.724 - 6.8),
        (("cup depth for a d lens on E?", "mine came out 5.6"), 5.71 - 5.6),
        (("cup depth for a d lens on E?", "mine came out 5.6", "what if i end up .1 too deep"), -0.1),
        (("D lens on E cup, what depth", "what if its 0.1 too shallow"), 0.1),
    ],
)
def test_a_depth_told_after_a_cup_is_that_of_the_cup(club: Desk, turns: tuple[str, ...], error: float) -> None:
    assert _seat(club, *turns) == pytest.approx(error, abs=0.002)


@pytest.mark.parametrize("said", ["my body measures 18.05 to the sensor", "flange to sensor is 18.05 on this body"])
def test_a_register_measured_on_the_body_is_not_the_lens_s(club: Desk, said: str) -> None:
    first = "EF-M body with an FD lens, ring?"
    assert "23.95 mm" in flat(talk(club, first, said)[-1])
    assert _seat(club, first, said, "bought ring is 24.0") == pytest.approx(0.05, abs=0.001)


def test_what_was_measured_on_one_body_is_not_so_on_another(club: Desk) -> None:
    last = talk(club, "EF-M body with an FD lens, ring?", "my body measures 18.05 to the sensor", "and on X")[-1]
    assert "24.3 mm" in flat(last)


def test_a_caliper_in_inches_tells_a_ring_that_is_none_in_millimetres(club: Desk) -> None:
    turns = ("what ring for LTM on X in inches", "caliper reads 0.441")
    assert _seat(club, *turns) == pytest.approx(0.441 * 25.4 - 11.1, abs=0.001)
    assert _seat(club, "LTM on X", "ring of 0.44 mm") == pytest.approx(0.44 - 11.1, abs=0.01)


def test_a_way_to_be_moved_is_told_anew_and_asked_of_another_thread(club: Desk) -> None:
    _, again, other, shim = talk(
        club, "need to move my c lens out by 0.15 mm, how much of a turn", "0.2 rather", "and on an m42 one",
        "what shim does the same",
    )  # fmt: skip
    assert "0.2 mm is 0.252 turn" in flat(again)
    assert "0.2 mm is 0.2 turn" in flat(other)
    assert "A shim of 0.2 mm moves it as far" in flat(shim)


def test_a_lens_beside_a_helicoid_drawn_fully_is_no_setting_of_it(club: Desk) -> None:
    last = talk(
        club, "17-31 helicoid on E with a 1mm plate and m42 lenses, where do i set infinity",
        "fully out with a 50, how close",
    )[-1]  # fmt: skip
    assert "drawn out, the lens at infinity: sharp at 66 cm" in flat(last)  # 100 + 2500 / 4.54 + 4.54 mm


@pytest.mark.parametrize(
    ("turns", "stop"),
    [
        (("58mm m39 on EF with m39-m42 + m42-ef.. infinity?", "so turn off how much", "or stop down to?"), "f/14"),
        (
            ("50mm wont go past 12 m on the F to E ring i got, how much too thick is it", "or just stop down to what"),
            "f/11",
        ),
        (("16mm c lens, infinity at 1.5 m", "i put 0.1 in, now?", "which stop hides the rest"), "f/5"),
    ],
)
def test_the_stop_that_hides_what_a_seat_is_off_by(club: Desk, turns: tuple[str, ...], stop: str) -> None:
    last = talk(club, *turns)[-1]
    assert last.intent != "exposure-nd"
    assert f"{stop} " in flat(last)


@pytest.mark.parametrize("said", ["and 0.1", "0.1 rather", "make that 0.1"])
def test_a_length_for_turns_is_told_anew(club: Desk, said: str) -> None:
    assert "0.1 mm is 0.1 turn" in flat(talk(club, "turn my m42 lens by how much for 0.3 mm", said)[-1])


@pytest.mark.parametrize(
    ("first", "said", "both"),
    [
        ("my E body is 0.06 long, by a gauge. what does a 21 2.8 do on it", "with an adapter thats 0.05 thin?",
         "0.01 mm too far out"),
        ("my camera body is 0.04 too short, 35mm lens", "and my adapter is 0.1 too thick", "0.06 mm too far out"),
        ("my ring is 0.05 too thick, 50mm", "and one that is 0.1 too thin", "0.1 mm too close"),
    ],
)  # fmt: skip
def test_an_error_of_the_body_and_one_of_the_ring_add_up(club: Desk, first: str, said: str, both: str) -> None:
    assert f"The lens sits {both}" in flat(talk(club, first, said)[-1])


@pytest.mark.parametrize(
    ("first", "turn", "error"),
    [
        ("want to print a ring exakta to L. thickness?", "it shrank by 0.2. infinity with a 50?", -0.2),
        ("printing miranda to E ring", "print shrank 0.3, 50mm, infinity?", -0.3),
        ("M42 to E ring printed", "swelled by 0.2 in the sun, 50mm lens, infinity?", 0.2),
        ("AR to Z ring, making one", "it is 0.1 shy, does a 40 reach infinity", -0.1),
    ],
)
def test_a_ring_that_shrank_or_swelled_is_off_by_so_much(club: Desk, first: str, turn: str, error: float) -> None:
    *_, found = talk(club, first, turn)
    told = found.chains[0].listed.judged.trace.value("register_error_mm").shortest.nominal
    assert told == pytest.approx(error)


def test_a_lens_told_with_an_article_is_no_mark_of_the_scale(club: Desk) -> None:
    first, shrunk = "want to print a ring exakta to L. thickness?", "it shrank by 0.2. infinity with a 50?"
    *_, found, shim = talk(club, first, shrunk, "where on the scale with a 135", "can i shim that with brass")
    assert found.question.lenses[0].focal_length_mm == 135
    assert "91 m" in flat(found)
    assert "0.2 mm" in flat(shim)


@pytest.mark.parametrize(
    ("turns", "hole"),
    [
        (("25p 180 degrees, f2.8, overcast EV 12, iso 800. nd?", "hole for f5.6 in a 50 that has no iris"), "8.9 mm"),
        (("50 1.4 on E", "hole size for f4"), "12.5 mm"),
        (("90/1.9 projector lens on E", "stop hole for f4?"), "22.5 mm"),
    ],
)
def test_a_hole_for_a_stop_is_told_whatever_was_asked_before(club: Desk, turns: tuple[str, ...], hole: str) -> None:
    *_, found = talk(club, *turns)
    assert flat(found).startswith(f"The hole: {hole}")


@pytest.mark.parametrize(
    ("turns", "size"),
    [
        (("OM 100 + 50mm tubes on E, field?", "how much light does that eat", "and the scale?"), 0.5),
        (("85 + 36 tube, stops lost", "how big is it then"), 36 / 85),
        (("+3 close-up lens on my 85, how far is the subject", "+2 on top of it?", "does that cost light",
          "scale with the pair"), 0.425),
        (("OM 50 with 25mm tube on MFT at f8, depth?", "reproduction ratio"), 0.5),
    ],
)  # fmt: skip
def test_how_large_is_asked_after_the_light_or_the_depth(club: Desk, turns: tuple[str, ...], size: float) -> None:
    *_, found = talk(club, *turns)
    assert found.intent == "macro-distance"
    told = [one.value.nominal for one in found.quantities if one.name == "magnification"]
    told += [row.listed.judged.trace.value("far_magnification").nominal for row in found.chains or ()]
    assert any(one == pytest.approx(size, rel=0.01) for one in told)


@pytest.mark.parametrize("between", ["i have a 17-31 helicoid", "helicoid gives 14 more, nearest?"])
def test_what_could_be_drawn_out_costs_no_light_far_off(club: Desk, between: str) -> None:
    *_, found = talk(
        club, "75mm projector lens on Z, 68 mm flange to image", between, "f2.8, 1/60, iso 100 in the sun, which nd"
    )
    assert flat(found).startswith("6.1 stops of ND")


@pytest.mark.parametrize(
    "say",
    [
        "which of mine go on EF plain: K, FD, F, AR",
        "which of my lenses fit E: OM, C/Y, M42",
        "which fit a Z: K, M, LTM",
    ],
)
def test_mounts_listed_behind_a_colon_after_the_body_are_of_lenses(club: Desk, say: str) -> None:
    (found,) = talk(club, say)
    assert len(found.question.bodies) == 1
    assert len(found.question.lenses) == say.count(",") + 1


def test_one_of_the_lenses_listed_stays_on_their_body(club: Desk) -> None:
    *_, found, other = talk(
        club, "which of mine go on EF plain: K, FD, F, AR", "the FD, 50mm, held flush. how far does it focus",
        "with an 85 instead",
    )  # fmt: skip
    assert "stops at 1.35 m" in flat(found)
    assert "stops at 3.78 m" in flat(other)


@pytest.mark.parametrize(
    ("first", "turn", "turns"),
    [
        ("we glue a 3 mm filter (n 1.52) over the sensor, C lens. spacer?", "turns of the thread?", 1.293),
        ("C lens 16mm, added a 1.5mm plate n=1.52 over the chip. spacer?", "and turns?", 0.646),
        ("CS 6mm on a CS camera, i took out the 1 mm filter, n 1.52. refocus by?", "in turns of the thread", 0.431),
    ],
)
def test_how_far_glass_moves_the_image_is_told_in_turns(club: Desk, first: str, turn: str, turns: float) -> None:
    *_, found = talk(club, first, turn)
    told = [one.value.nominal for one in found.quantities if one.name == "thread_turns"]
    assert told == [pytest.approx(turns, abs=0.03)]


@pytest.mark.parametrize(
    ("first", "turn", "told"),
    [
        ("turning a tube for a 4x finite 160 RMS objective on an E body, how long",
         "the objective drops straight thru my M25 ring", "20.3"),
        ("M39 enlarger lens on Z", "it drops right through my M42 ring", "39 mm"),
        ("T2 tele on E", "slips straight through the M48 ring i have", "42"),
    ],
)  # fmt: skip
def test_what_drops_through_a_ring_is_set_against_its_thread(club: Desk, first: str, turn: str, told: str) -> None:
    *_, found = talk(club, first, turn)
    assert found.intent == "look-alike"
    assert told in flat(found)


def test_why_a_tube_brings_it_nearer_is_answered_before_the_chain(club: Desk) -> None:
    *_, found = talk(club, "50mm with 25 mm tube", "why does it focus closer with tubes")
    assert "A tube holds the lens farther from the sensor" in flat(found)[:120]
