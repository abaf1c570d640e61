"""Rings and chains as they are told at the bench: by two mounts and a number, an error, what was read on paper."""

from __future__ import annotations

import pytest

from engine.render.record import record_of
from tests.answers.picture import close, flat, numbers
from tests.answers.talks import flat as told
from tests.answers.talks import talk


def first(record):
    return record["chains"][0]


def error_mm(record):
    told = first(record)["register_error_mm"]
    return (told["least"] + told["greatest"]) / 2


def pieces(record):
    return [(piece["front"], piece["rear"]) for piece in first(record)["pieces"]]


@pytest.mark.parametrize(
    ("text", "error"),
    [
        ("measured the ltm-m ring 1.05. with the M to E at 9.8. does my 35 get the horizon", 0.05),
        ("P6 to M42 (28.64), then M42 to EF (1.56). does a 180 P6 reach infinity", 0.1),
        ("ltm 50 screwed into the 1mm 39-42 ring and that onto my M42>EF (1.46). furthest it sees sharp?", 17.66),
        ("my t2-E ring calipers at 36.6 not 37.0, a 500 preset. does the moon come sharp", -0.4),
        ("AR 135 held to an F dslr with a 1mm disc. can it focus far", 7.0),
        ("seller says the C to E thing is dead flat, zero recess. i have a 75. does it reach infinity", 0.474),
        ("put a 5mm ring under a cs lens by mistake, on cs cam. does it reach infinity", 5.0),
        ("K ring on E (apsc) came out 0.03 long. at f2.8 on a 28, does it lose infinity", 0.03),
        ("t2 ring for my RF says 35 on the box but its 35.6, with a 200 preset", 0.6),
        ("k to e ring labelled 27.5 is actually 27.6, 24mm", 0.14),
        ("ltm-e 10.9 (not 10.8). 35mm lens. how far can it still see sharp", 0.1),
        ("cy→E machined by a friend, 27.2 flat. 85 1.4. too short? too long?", -0.3),
        ("the exa to mft one i got is 25.3ish. 50/2.8. ok for landscape?", -0.15),
        ("0.12 too much on my k to e ring, 35/2, which stop saves it", 0.12),
        ("auto 110 24mm on MFT, 7.75 ring but measured 7.9. infinity?", 0.15),
        ("D lens 13mm on q, 3.1 tube, does it reach infinity", 0.01),
        ("the 0.474 cup on C to E was filed flat. does a 16mm lens reach infinity", 0.474),
        ("a 3 mm gap between a cy 50 and an ef body, can it reach infinity", 1.5),
        ("does an 85 screwmount 42 on K dslr with flanged ring 1 mm reach infinity", 1.0),
        ("ltm 50, a 1.00 ltm-m ring and an M-E ring which i measure at 9.72. ok for far peaks?", -0.08),
        ("i put a 7.8 m-L ring behind a 1.1 ltm ring. 50mm ltm lens on L. too thick?", 0.1),
        ("ring marked 26 reads 26.12, with the 2.0 om-ef. 50 on E. where does it stop", 0.12),
        ("m39 zenit 58mm on E, m39-m42 ring with 1mm lip and m42-E ring 27.46", 1.26),
        ("somebody left a 0.5 shim under the 5mm ring, 12.5mm c lens, CS cam. does that matter", 0.5),
        ("c lens on cs camera without the ring but with three 1mm washers. 25mm", -2.0),
        ("adapter is 27.3 and i put two 0.08 shims in it, m42 on E. infinity?", 0.0),
        ("rings end to end 2.5 + 1 + 26 from F to E, is it right for a 50", 1.0),
        ("mount stack 3.2 + 0.4 for a d lens on Q, 13mm", 0.51),
        ("17-31 helicoid at 25 on a 1mm ring, m42 50 on E", -1.46),
        ("the c-mft ring i was sent is flat 1mm not a cup. 25mm c lens", 2.724),
        ("got two washers, 0.2 each, between my om 50 and the om-z ring. horizon?", 0.4),
        ("had a m42-L ring turned, says 25.46 but i get 25.60. 50mm far limit", 0.14),
    ],
)
def test_rings_told_by_two_mounts_and_a_number_are_added_up(asked, text, error):
    assert error_mm(asked(text)) == pytest.approx(error, abs=0.04)


def test_pieces_that_lead_nowhere_by_name_count_by_their_lengths(asked):
    found = asked("k 50 on E, k-ef ring 1.5 and a M42-E ring 26.2. ok?")
    assert error_mm(found) == pytest.approx(0.24, abs=0.001)
    assert flat(found).startswith("How these join is not known, so only their lengths count: 27.7 mm in all")


def test_lens_of_a_talk_stays_when_a_bush_leads_from_it_to_the_ring_told(club):
    got = talk(club, "m39 zenit 58 on E", "have a m42-e ring plus a lipped 39-42 ring of 1mm. good enough for 58mm?")
    assert error_mm(record_of(got[-1], club.knowledge)) == pytest.approx(1.26, abs=0.001)


def test_a_metre_sign_before_an_arrow_is_a_mount(asked):
    found = asked("how do i get an ltm 50 on an L body, i only have the 7.8 M-L ring")
    assert first(found)["verdict"] == "infinity"
    assert pieces(found) == [("ltm", "m-mount"), ("m-mount", "l-mount")]


def test_what_is_owned_leads_on_to_what_is_lacking(asked):
    found = asked("i already own FD to M, how do i get it on a Z camera")
    assert pieces(found) == [("fd-mount", "m-mount"), ("m-mount", "z-mount")]


def test_a_small_error_is_judged_before_it_is_mended(asked):
    found = asked("adapter 0.02 too thick, 135 at f4 on full frame, do i care")
    assert first(found)["verdict"] == "infinity"
    assert found["text"].replace("> ", "").find("Hardly") < found["text"].find("take 0.02 mm off")


@pytest.mark.parametrize(
    ("text", "mount"),
    [
        ("paper test from the lug face on a small slr bayonet: 44.7. which mount?", "exakta-mount"),
        ("held paper behind a nameless bayonet lens, 46 between lug and sharp window. which mount is it", "om-mount"),
    ],
)
def test_a_length_beside_an_image_on_paper_is_a_register(asked, text, mount):
    found = asked(text)
    assert mount in [row["case"] for row in found["quantities"]["register_mm"]]


@pytest.mark.parametrize(
    "text",
    ['listing says "F mount 1961, register 40.5". is that my F mount', "is it F mount if the register is 40.5"],
)
def test_a_register_that_the_mount_named_has_not_is_spoken_against(asked, text):
    told = " ".join(asked(text)["text"].split())
    assert "F-mount has a register of 46.5 mm, not 40.5 mm" in told


def test_a_bayonet_told_by_its_register_is_taken_for_that_mount(asked):
    found = asked("something with a 27.8 bayonet to mft, which ring")
    assert (8.55, 8.55) in [
        (close(least), close(most)) for least, most in numbers(found, "ring_thickness_mm", "m-mount")
    ] or (first(found)["pieces"][0]["front"] == "m-mount")


def test_air_from_a_rear_to_the_sensor_is_told_without_a_ring(asked):
    found = asked("rear of my ltm 35 is 12.5 behind the flange. is that safe on a mirrorless")
    assert close(16.3) in [least for least, _ in numbers(found, "clearance_mm", "rear to sensor")]


@pytest.mark.parametrize(
    ("text", "ring"),
    [
        ("tele with 42 thread, pitch .75, i assume 55 register; to EF?", 11.0),
        ("what mount is a cine lens, 52 register, four lobes, and how into MFT", 32.75),
        ("that medium format breech lens 74.1 onto full frame Z, which ring do i make", 58.1),
    ],
)
def test_what_a_lens_turns_out_to_be_leads_on_to_the_body_named(asked, text, ring):
    assert close(ring) in [least for least, _ in numbers(asked(text), "ring_thickness_mm")]


def test_a_lens_that_measures_as_another_is_told_so(asked):
    assert "that is CS, whatever it is sold as" in " ".join(
        asked("advertised as c mount, image at 12.5. how do i get it on")["text"].split()
    )


def test_a_register_that_was_only_claimed_is_not_the_lens_s_own(asked):
    found = asked('ring for my oct-18 28mm to E was cut 43.0 long "because register is 61". nothing far gets sharp')
    assert error_mm(found) == pytest.approx(4.0, abs=0.05)


def test_sheets_told_before_their_word_are_no_readings(asked):
    found = asked("i need a shim of .22, have .1 .05 .02 stock")
    assert "0.1" in found["text"]
    assert "tilted" not in found["text"]


def test_what_a_ring_is_wanted_for_is_the_lens(asked):
    found = asked("have M-X, need it for FD. which ring do i add")
    assert pieces(found)[0] == ("fd-mount", "m-mount")


def test_a_mark_and_the_distance_that_is_sharp_there_tell_the_error(asked):
    found = asked("50mm, mark 7, target 20 m sharp. shim?")
    assert [least for least, _ in numbers(found, "shim_mm")] == [pytest.approx(0.2374, abs=0.003)]


def test_turns_for_so_much_are_told_of_a_mount_s_thread(asked):
    found = asked("at how many turns does a m42 thread move 0.35")
    assert [least for least, _ in numbers(found, "thread_turns")] == [pytest.approx(0.35, abs=0.005)]


def test_the_gap_behind_a_rear_is_told_in_whatever_turn_it_is_asked(club):
    turns = talk(club, "ltm wide, its back end is 14 mm behind the flange, on a 10.8 ltm to E ring. safe?",
                 "how far off the sensor is that")  # fmt: skip
    found = record_of(turns[-1], club.knowledge)
    assert close(14.8) in [least for least, _ in numbers(found, "clearance_mm")]


def test_of_tubes_at_hand_those_that_make_the_seat_are_taken(talked):
    found = talked("c lens to cs security cam, i have tubes 0.5 1 2 5 10 - which one goes between")
    assert error_mm(found) == pytest.approx(0, abs=0.01)
    assert first(found)["verdict"] == "infinity"


def test_what_lies_between_two_mounts_is_their_ring(talked):
    found = talked("is 2.3mm really all there is between M and NX? does such a thin ring get made")
    assert error_mm(found) == pytest.approx(0, abs=0.01)


def test_a_spacer_that_was_forgotten_is_not_there(talked):
    found = talked("forgot the 5mm spacer. c 16mm on the cs body, can it focus")
    assert error_mm(found) == pytest.approx(-5, abs=0.01)


def test_a_thread_alone_tells_how_long_it_may_be(talked):
    found = talked("max length of the male 1-32 thread i should cut so it doesnt touch the filter")
    assert [row[:2] for row in numbers(found, "thread_length_mm")] == [(3.8, 4.0)]


@pytest.mark.parametrize(
    "text",
    [
        "LTM to E adapter came out 10.70 instead of 10.8, 50mm lens, is infinity gone",
        "my printed M42 to E ring came out 27.40, is infinity lost?",
        "my FD to E ring is 23.9, is infinity gone?",
    ],
)
def test_who_asks_whether_infinity_is_gone_has_not_missed_it(talked, text):
    found = flat(talked(text))
    assert "reaches infinity" in found[:80]
    assert "That yours does not" not in found


def test_who_says_that_infinity_is_gone_is_told_what_that_means(talked):
    assert "That yours does not" in flat(talked("the K to E ring is 27.4 but infinity is gone with my 28"))


@pytest.mark.parametrize(
    ("text", "apart"),
    [
        ("ring measures 27.38 at one side and 27.46 on the other, does that matter", "0.08 mm"),
        ("one side of the ring reads 27.40 and the other 27.45. do i need to shim one side", "0.05 mm"),
        ("my adapter is 17.95 on one side, 18.02 on the opposite side. tilted?", "0.07 mm"),
    ],
)
def test_a_ring_read_on_two_sides_is_tilted_by_the_difference(talked, text, apart):
    assert f"The readings lie {apart} apart" in flat(talked(text))


def test_thicker_on_one_side_is_a_tilt_and_not_too_thick(talked):
    found = flat(talked("ring is 0.06 thicker on one side, matter?")).split("Or, if you meant")[0]
    assert "tilted" in found
    assert "too far out" not in found


def test_a_nominal_and_a_reading_are_no_two_sides(talked):
    found = flat(talked("should be 27.46, measures 27.40 on my caliper"))
    assert "0.06 mm too close" in found


@pytest.mark.parametrize(
    ("text", "size", "off"),
    [
        ("C/Y 35 on EF with a 1.5 mm ring measured 1.46, fine?", 1.46, "0.04 mm too close"),
        ("my 11.8 mm ring measures 11.75, M 35 on Z, infinity?", 11.75, "0.05 mm too close"),
        ("1.5 mm ring, calipers say 1.46. C/Y 35 on EF infinity?", 1.46, "0.04 mm too close"),
        ("a 27.5 ring that mikes 27.43, M42 on E, ok for a 28?", 27.43, "0.03 mm too close"),
    ],
)
def test_what_a_ring_measures_counts_and_not_what_it_was_sold_as(asked, text, size, off):
    found = flat(asked(text))
    assert f"your {size} mm ring" in found
    assert off in found


@pytest.mark.parametrize(
    "asks", ["so is it too thick or too thin", "too thin or too thick?", "is that too long or short"]
)
def test_which_way_a_ring_is_off_is_told_first_where_that_is_asked(club, asks):
    found = talk(club, "AR 40 1.8 on E", "the one i bought is 22.3mm thick", asks)[-1]
    assert told(found).startswith("0.2 mm too thin: right is 22.5 mm.")


def test_so_much_too_thick_or_thin_is_no_question_which(club):
    assert "0.1 mm too thin" in told(talk(club, "m42 50 on E, ring 0.1 too thin or thick, does it matter")[-1])


def test_marks_that_read_wrong_may_be_put_right_although_infinity_is_reached(club):
    found = talk(club, "AR 40 1.8 on E", "the one i bought is 22.3mm thick", "can i fix it")[-1]
    assert "to better it: a shim of 0.2 mm puts infinity back on its mark" in told(found)


@pytest.mark.parametrize("turn", ["which one is off", "which are off", "by how much", "is one of them wrong"])
def test_which_of_several_rings_is_off_is_told_of_each(club, turn):
    found = talk(club, "my rings measured: m42 to e 27.3, om to e 28.0", turn)[-1]
    assert "Off: M42 to E-mount." in told(found)
    assert "M42 to E-mount, 27.3 mm: 0.16 mm too thin; right is 27.46 mm" in told(found)
    assert "OM-mount to E-mount, 28 mm: as it should be" in told(found)


def test_how_far_several_rings_are_off_is_told_of_each(club):
    found = talk(club, "my rings measured: m42 to e 27.3, om to e 28.0", "how far off are they")[-1]
    assert "0.16 mm too close (M42 to E-mount); 0 mm too close (OM-mount to E-mount)" in told(found)


def test_how_long_a_cup_is_does_not_tell_its_seat(club):
    (found,) = talk(club, "i measured my rings: m42 to e is 27.4 mm and c to e is 4.02 mm, which is off")
    assert told(found).startswith("Off: M42 to E-mount.")
    assert "C to E-mount: its seat lies in a cup, so its length does not tell" in told(found)


@pytest.mark.parametrize(
    ("said", "error"),
    [
        ("i printed a flat adapter 1.2 thick for a 50mm C lens on RF, should have been a cup i know. how far", 3.674),
        ("75mm c lens in a flat 3mm ring on an RF body instead of the proper cup, what's my furthest focus", 5.474),
        ("75mm c lens on RF with a flat 3mm ring instead of a cup, how far", 5.474),
    ],
)
def test_what_a_ring_stands_for_is_no_piece_of_the_stack(asked, said, error):
    assert error_mm(asked(said)) == pytest.approx(error, abs=0.01)


@pytest.mark.parametrize(("first_said", "turn", "mm"), [
    ("500/8 mirror lens with T2 on a Z body", "found one of 37 mm cheap, wont that do?", 37),
    ("M42 50/1.8 on an E body", "seller has one of 27 mm, fine?", 27),
    ("M42 50/1.8 on an E body", "found one thats 28 mm, will it do", 28),
    ("MD 45/2 on MFT", "mine is a 24 mm one", 24),
    ("PL 35 T1.5 on E body", "cheap one at 33 mm, wont that do", 33),
    ("OM 50/1.8 on EF", "saw one of 1 mm, would that reach infinity?", 1),
    ("T2 500/8 on a Z body", "mine came as a 37.2", 37.2),
])  # fmt: skip
def test_a_length_told_of_one_after_a_ring_is_that_of_the_ring(club, first_said, turn, mm):
    before, found = talk(club, first_said, turn)
    assert [piece.thickness_mm for piece in found.question.adapters] == [(mm, mm)]
    assert found.question.lens.focal_length_mm == before.question.lens.focal_length_mm


@pytest.mark.parametrize(("turn", "mm"), [
    ("found a 35 mm cheap, will it fit too", 35), ("i also have one of 135 mm", 135), ("and with a 28 mm", 28),
])  # fmt: skip
def test_a_length_that_no_ring_has_there_is_another_lens(club, turn, mm):
    found = talk(club, "M42 50/1.8 on an E body", turn)[-1]
    assert found.question.lens.focal_length_mm == mm


@pytest.mark.parametrize("told", ["25.60 not 25.46", "25.60, not 25.46"])
def test_what_a_ring_should_be_is_no_second_reading_of_it(asked, told):
    found = asked(f"calipered my K to RF ring, {told}. 35mm lens. trouble?")
    assert error_mm(found) == pytest.approx(0.14)


@pytest.mark.parametrize(("said", "size"), [("mine is flat, 1 mm", 1.0), ("mine has no recess, it is 2 mm flat", 2.0)])
def test_a_flat_ring_is_as_thick_as_it_is_told(club, said, size):
    _, answer = talk(club, "25mm C lens on E, recess how deep", said)
    assert answer.chains[0].listed.judged.measured_trace.value("register_error_mm").shortest.nominal == pytest.approx(
        size + 18 - 17.526
    )


@pytest.mark.parametrize(
    ("say", "off"),
    [
        ("21mm C/Y on E, the farthest it goes is 2 m by tape from the sensor. how much is the ring off", "0.23 mm"),
        ("50mm OM on E, farthest sharp is 8 m measured with a tape from the sensor. ring off by?", "0.32 mm"),
        ("28 FD on RF, the furthest it focuses is 5 m from the sensor. how thick too much is the ring?", "0.16 mm"),
        ("50mm M42 on E, max distance is 6 m by tape measure. ring error?", "0.42 mm"),
        ("24mm F on Z ends at 4 m (laser tape). error of the ring?", "0.15 mm"),
    ],
)
def test_how_far_the_tape_says_it_goes_tells_by_how_much_the_ring_is_off(club, say, off):
    (found,) = talk(club, say)
    assert off in told(found)
    assert "layer" not in told(found)[:120]


def test_what_was_filed_off_can_be_thought_on_again(club):
    first = "21mm C/Y on E, the farthest it goes is 2 m by tape from the sensor. how much is the ring off"
    _, left, as_it_was, other = talk(
        club, first, "took 0.1 off. left?", "before that, as it was: would f8 hide it?",
        "and an 85 on the untouched ring, where does it end",
    )  # fmt: skip
    assert "0.13 mm" in told(left)
    assert "f/7.5 on, so f/8 hides it" in told(as_it_was)
    assert "stops at 32 m" in told(other)


@pytest.mark.parametrize(
    ("say", "head"),
    [
        (
            "50mm M42 on E with a ring 0.3 too thick, is it hidden at f11?",
            "That hangs on the sensor: 0.3 mm too far",
        ),
        ("24 M42 on Z with ring 0.05 too thick, masked at f4?", "Yes: 0.05 mm too far out is forgiven"),
        ("85 C/Y on E, 0.25 too far out, does f/8 do?", "No: 0.25 mm too far out is forgiven"),
    ],
)
def test_whether_a_stop_hides_it_is_told_of_each_sensor(club, say, head):
    (found,) = talk(club, say)
    assert told(found).startswith(head)
    assert "on full frame from" in told(found)[:140]


@pytest.mark.parametrize(
    "turn", ["same ring on a 24, where's infinity on its scale", "where does infinity fall on the scale of a 24"]
)
def test_an_article_tells_a_lens_on_the_ring_and_no_mark(club, turn):
    *_, found = talk(club, "my 85 shows infinity at the 30m mark with this ring, shim thickness?", turn)
    assert found.question.lenses[0].focal_length_mm == 24
    assert "2.4" in told(found)


@pytest.mark.parametrize(
    "between", [("does it cover",), ("stabiliser number?",), ("does it cover", "and in full frame terms")]
)
def test_the_ring_that_was_right_is_remembered_past_other_questions(club, between):
    found = talk(club, "M42 50/1.8 on E", *between, "seller has one of 27 mm, ok?")[-1]
    assert "your 27 mm ring" in found.chains[0].title


@pytest.mark.parametrize("text", [
    "38mm D on Q with a flat D to C ring and a C to Q ring", "38mm D on Q with a flush D-C adapter and a C-Q adapter",
])  # fmt: skip
def test_a_flat_ring_adds_nothing_where_the_right_one_would_be_sunk(club, text):
    assert "5.24 mm too far out" in told(talk(club, text)[-1])


@pytest.mark.parametrize(
    "turn", ["and if i grind the ring down, how much off?", "could lap it. how much has to come off"]
)
def test_how_much_is_to_be_ground_off_a_measured_ring(club, turn):
    found = talk(club, "k mount 200/4 on an RF body, my ring measures 25.62", turn)[-1]
    assert found.intent == "shim-calibration"
    assert "take 0.16 mm off" in told(found)


@pytest.mark.parametrize("turn", ["well it shows at 60 m", "it reads 60 m"])
def test_where_infinity_falls_on_another_lens_is_a_mark_and_no_limit(club, turn):
    first = "28mm m42, on my X ring it is sharp on the horizon at the 4 m mark. shim?"
    found = talk(club, first, "where ought the 135 show infinity on the same ring", turn)[-1]
    assert "it sits 0.31 mm too close" in told(found)


@pytest.mark.parametrize(
    ("turns", "error"),
    [
        (("28 FD on E, sharp to 4 m only by tape. shim or lap?", "how much", "i lapped 0.1", "and 0.05 more"), 0.0488),
        (("50mm M42 on E with a 27.8 ring, infinity?", "filed 0.1", "another 0.1"), 0.14),
        (("85 OM on L, my ring is 0.3 mm too thin, shim?", "put a 0.1 shim in", "and 0.1 more?"), -0.1),
    ],
)
def test_so_much_more_is_of_what_was_done_to_the_ring_before(club, turns, error):
    *_, found = talk(club, *turns)
    rows = [row.value.nominal for row in found.quantities if row.name == "register_error_mm"]
    rows += [row.listed.judged.trace.value("register_error_mm").shortest.nominal for row in found.chains or ()]
    assert rows[0] == pytest.approx(error, abs=0.002)


@pytest.mark.parametrize(
    ("say", "off"),
    [
        ("my K to E ring is 27.6 by calipers not 27.46, does the 28mm still reach infinity", 0.14),
        ("om to E ring turned out 27.9 instead of 28, 24mm lens. do i lose the mountains?", -0.1),
        ("om to E ring turned out 27.9, 24mm, infinity?", -0.1),
        ("FD to E ring is 24.1 by calipers not 24, 35mm, infinity?", 0.1),
    ],
)
def test_what_a_ring_came_out_as_is_its_length(asked, say, off):
    assert error_mm(asked(say)) == pytest.approx(off)
