"""A ring that is off, told once and asked about over several turns: the verdict, the other lens, and what mends it."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import close, flat, numbers, one
from tests.desks import desk_of


@pytest.fixture(scope="module")
def club() -> Desk:
    return desk_of()


def talk(club, *turns):
    memory = Talk()
    return [record_of(club.ask(turn, memory), club.knowledge) for turn in turns]


def test_a_measured_ring_is_judged_for_each_lens_and_mended(club):
    first, measured, other, mend = talk(
        club, "om lens to e ring, which", "mine measures 28.12", "and the 28 then", "how do i fix that"
    )
    assert first["chains"][0]["verdict"] == "infinity"
    assert measured["chains"][0]["register_error_mm"]["least"] == pytest.approx(0.12)
    assert other["chains"][0]["focus"]["far_from_sensor_mm"]["least"] == pytest.approx(28**2 / 0.12, rel=0.02)
    assert one(mend, "shim_mm", "to take off") == close(0.12)
    assert "A shim only makes it longer" in flat(mend)


def test_by_how_much_a_ring_is_off_is_kept_while_it_decides(club):
    _, other, mend = talk(
        club, "my om-e ring is 0.08 too thick, where does the 50 stop", "and for my 24?", "how do i fix it"
    )
    assert other["reading"].endswith("0.08 mm too thick")
    assert other["chains"][0]["register_error_mm"]["least"] == pytest.approx(0.08)
    assert one(mend, "shim_mm", "to take off") == close(0.08)


def test_a_ring_that_is_too_thin_is_shimmed(club):
    (found,) = talk(club, "my m42 to e ring is 27.3 mm, how thick a shim")
    assert one(found, "shim_mm", "to add") == close(45.46 - 18 - 27.3)


@pytest.mark.parametrize("asked", ["is C the same as CS", "is OCT-18 the same as OCT-19", "is K the same as M42"])
def test_whether_two_mounts_are_the_same_is_said_first(club, asked):
    (found,) = talk(club, asked)
    answer = found["text"].split("\n", 1)[1] if found["text"].startswith(">") else found["text"]
    assert answer.startswith("No, ")


def test_a_length_in_words_and_an_iso_a_few_words_away_are_read(club):
    sharp, light = (
        talk(club, "85 1.4 on full frame, kid at three metres, how much is sharp")[0],
        talk(club, "noon sun, 1/100, iso can't go below 400, f2, which nd")[0],
    )
    assert sharp["reading"].endswith("at 3 m")
    assert one(light, "nd_stops") == pytest.approx(8.36, abs=0.1)


def test_the_same_ring_on_another_lens_has_the_same_error_though_the_mark_was_told_as_a_distance(club):
    _, other, foil = talk(
        club,
        "24mm is at infinity when the scale says 2.5m. e body",
        "where would my 50 have it with this ring",
        "household foil, how many",
    )
    assert numbers(other, "scale_mark_mm", "50 mm lens")[0] == close(10742, 10742, rel=0.02)
    assert "of household foil" in flat(foil)
    assert "drinks can" not in flat(foil)


@pytest.mark.parametrize("told", ["i sanded 0.05 too much off my ring", "took 0.05 mm too much off the ring, what now"])
def test_too_much_taken_off_is_put_back_and_no_more_taken(club, told):
    (found,) = talk(club, told)
    assert one(found, "shim_mm", "to add") == close(0.05)
    assert "take 0.05 mm off" not in flat(found)


def test_too_much_taken_off_of_unknown_measure_is_asked_for(club):
    *_, found = talk(club, "28mm on my ring stops at 4m, want infinity", "if i sand too much, how do i fix")
    assert found["intent"] == "shim-calibration"
    assert "Put a shim back" in flat(found)
    assert "At which mark" in flat(found)
    *_, told = talk(club, "28mm on my ring stops at 4m, want infinity", "0.05 too much off")
    assert one(told, "shim_mm", "to add") == close(0.05)


def test_past_infinity_without_a_number_asks_for_the_mark_before_any_tape(club):
    (found,) = talk(club, "my 24 goes beyond infinity on the new adapter, how much tape do i put under it")
    assert flat(found).startswith("Past infinity the lens sits too close")
    assert "At which mark of the focus scale" in flat(found)


@pytest.mark.parametrize(
    ("told", "then", "focal", "far"),
    [
        ("my OM 50 on E stops at 6 m", "and the 28 on it?", 28, 1906),
        ("K 50mm on a Z only goes to 10 m", "how about a 35", 35, 4920),
        ("md lens on x ring, stops at 4m. 50mm", "where does my 135 stop then?", 135, 28700),
    ],
)
def test_the_ring_on_which_one_lens_ends_is_as_much_too_long_for_another(club, told, then, focal, far):
    *_, other = talk(club, told, then)
    assert other["chains"][0]["verdict"] == "macro-only"
    assert other["chains"][0]["focus"]["far_from_sensor_mm"]["least"] == pytest.approx(far, rel=0.03), focal


def test_the_ring_on_which_a_lens_ends_stays_at_another_stop_and_is_mended_by_as_much(club):
    first, closed, mend = talk(club, "K 50mm on a Z only goes to 10 m", "is it ok at f/8", "what should i file off")
    assert first["chains"][0]["verdict"] == closed["chains"][0]["verdict"] == "macro-only"
    assert one(mend, "shim_mm", "to take off") == close(0.2525, rel=0.02)


def test_a_lens_of_another_mount_or_on_another_body_has_a_ring_of_its_own(club):
    for then in ("and my OM 28?", "and the 28 on an E body"):
        *_, other = talk(club, "K 50mm on a Z only goes to 10 m", then)
        assert other["chains"][0]["verdict"] == "infinity", then


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("is 0.08 too thick fatal with a 24mm f2.8 at f/8, full frame?", "Hardly: at f/8 on full frame"),
        ("is 0.3 too thick tolerable at f/8 on full frame, 50 mm", "No: at f/8 on full frame"),
        ("0.03 too thick at f/8 on APS-C, good enough?", "Yes: at f/8 on APS-C"),
        ("is 0.1 too thick a problem on a 35 at f/2, full frame", "Yes: at f/2 on full frame"),
        ("does 0.05 too thin hurt a 50 f/1.8", "Hardly: 0.05 mm too close leaves infinity sharp"),
    ],
)
def test_an_error_at_a_stop_is_first_said_to_matter_or_to_be_fine(club, text, begins):
    (found,) = talk(club, text)
    assert found["intent"] == "focus-verdict"
    assert flat(found).startswith(begins)


@pytest.mark.parametrize("then", ["does leaving it hurt", "is it bad if i dont bother"])
def test_an_error_may_be_left_so_and_where_one_starts_is_no_camera(club, then):
    first, _, left = talk(club, "my 50 goes beyond infinity, where to start", "at the 7m line", then)
    assert "start" not in first["reading"].casefold()
    assert flat(left).startswith("Nothing is harmed, and infinity is there")


@pytest.mark.parametrize(
    "then", ["how much do i take off", "what do i have to sand off", "so how much is the ring off"]
)
def test_how_much_comes_off_a_ring_on_which_a_lens_ends_is_no_question_of_which_way(club, then):
    *_, found = talk(club, "K 50mm on a Z only goes to 10 m", then)
    assert one(found, "shim_mm", "to take off") == close(0.2525, rel=0.02)


def test_a_ring_on_which_a_lens_ends_is_too_thick_and_not_just_right(club):
    *_, found = talk(club, "K 50mm on a Z only goes to 10 m", "is it too thick?")
    assert flat(found).startswith("Yes: too far out, by 0.25 mm")


@pytest.mark.parametrize("told", ["FD 28 on E wont get past 3 m", "FD 28 on E doesn't go beyond 3 m"])
def test_what_a_lens_will_not_get_past_is_where_it_ends(club, told):
    first, closed = talk(club, told, "does f/11 rescue that")
    assert first["chains"][0]["verdict"] == "macro-only"
    assert closed["chains"][0]["register_error_mm"]["least"] == pytest.approx(0.266, abs=0.005)


@pytest.mark.parametrize("turn", ["whats the fix", "and the fix?", "what do i do about it", "can that be cured",
                                  "how to correct it", "how can i sort that out"])  # fmt: skip
def test_what_mends_a_measured_ring_is_how_much_is_taken_off_it(club, turn):
    mend = talk(club, "om 50 on rf pls", "i measured mine, its 26.2", turn)[-1]
    assert mend["intent"] == "shim-calibration"
    assert one(mend, "shim_mm", "to take off") == close(0.2)


def test_what_would_be_better_instead_is_no_filing(club):
    mend = talk(club, "om 50 on rf, ring measured 26.2, infinity?", "what would work instead")[-1]
    assert mend["intent"] == "chain"


@pytest.mark.parametrize("ring", ["sr 50 on ef, 1 mm ring without glass, infinity?",
                                  "om 50 on k, ring 1.2 mm thick, infinity?"])  # fmt: skip
def test_nothing_is_filed_off_a_ring_where_the_registers_leave_no_room_for_one(club, ring):
    mend = talk(club, ring, "how do i fix that")[-1]
    assert "nothing taken off the ring puts that right" in flat(mend)
    assert "lap it" not in flat(mend)


def test_millimetres_too_much_are_no_filing(club):
    mend = talk(club, "m42 50 on e with 35mm ring, infinity?", "how do i fix it")[-1]
    assert "one of the right length is the easier way" in flat(mend)


@pytest.mark.parametrize("said", [
    "with no 5mm ring", "without the 5mm ring", "and no 5 mm ring between", "no spacer", "w/o the spacer",
    "i lost the 5mm ring",
])  # fmt: skip
def test_the_one_ring_between_two_that_screw_together_is_left_out_and_not_replaced(club, said):
    (found,) = talk(club, f"16mm c lens on a cs cam, {said}, infinity?")
    assert found["chains"][0]["register_error_mm"]["greatest"] == pytest.approx(-5.0)
    assert found["chains"][0]["verdict"] != "infinity"


def test_a_tube_that_is_not_there_is_left_out(club):
    (found,) = talk(club, "m42 50 on e with no 16 mm tube and a ring, infinity?")
    assert found["chains"][0]["verdict"] == "infinity"


@pytest.mark.parametrize("turn", ["why would they make it too short", "is that by design", "why make it thin",
                                  "do makers do that deliberately", "why so short"])  # fmt: skip
def test_why_a_measured_ring_is_thin_is_that_makers_cut_it_so(club, turn):
    found = talk(club, "fd to e ring measured 23.9, 50mm, infinity?", turn)[-1]
    assert "0.02 to 0.1 mm thin on purpose" in flat(found)


def test_what_is_said_to_be_besides_is_not_what_a_list_is_of(club):
    (found,) = talk(club, "anything with infinity for a cs lens besides cctv cams")
    assert "CS to Q ring" in flat(found)
    assert "CS to E cup" in flat(found)


@pytest.mark.parametrize(("ring", "harm"), [("25.45", "only before its mark"), ("25.7", "until you stop down")])
def test_whether_a_ring_that_is_off_is_bad_is_what_comes_of_it(club, ring, harm):
    found = talk(club, f"sr 28 on e ring, measured {ring}", "is that bad")[-1]
    assert "Nothing is harmed" in flat(found)
    assert harm in flat(found)


@pytest.mark.parametrize(
    "text",
    [
        "took off a 5mm ring off my c mount industrial cam, 16mm lens now everything mush. it's a CS cam",
        "C lens 25mm on CS cam, removed the 5mm ring, nothing sharp any more",
        "I unscrewed the 5 mm ring from the CS cam, now my 8mm C is all mush",
        "12mm C lens on CS body, took the 5 mm ring out and now its blurred",
    ],
)
def test_a_ring_that_was_taken_off_is_no_longer_there(asked, text):
    assert "no use: the lens sits 5 mm too close" in flat(asked(text))[:120]


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("took 0.3 off the 10.8 ring, LTM 50 on E, infinity?", "your 10.5 mm ring"),
        ("lapped 0.2 mm off my 11.1 LTM to E ring, 50mm, infinity now?", "your 10.9 mm ring"),
        ("sanded 0.1 from the 11 mm ring, LTM 35 on E, where is infinity", "your 10.9 mm ring"),
        ("ground 0.2 off my M42-E ring, 50mm, infinity?", "your ring, 0.2 mm too thin"),
    ],
)
def test_what_is_taken_off_a_ring_leaves_the_rest_of_it(asked, text, left):
    assert left in flat(asked(text))


def test_a_metal_thing_is_a_ring(asked):
    found = asked("md 135 on ef with the 2mm metal thing no lens in it. how far till it goes blurry")
    assert "stops at 7.56 m" in flat(found)[:80]


@pytest.mark.parametrize(
    "said", ["stops around 30 m", "ends near 30 m", "quits somewhere around 30 m", "gives up at 30 m"]
)
def test_where_a_lens_is_said_to_end_is_never_answered_with_infinity(asked, said):
    found = asked(f"75 C on MFT {said}")
    assert found["chains"][0]["verdict"] == "macro-only"
    assert found["chains"][0]["register_error_mm"]["least"] == pytest.approx(75**2 / 30000, rel=0.02)
    assert "your cup, 0.19 mm too shallow" in flat(found)
