"""Talks of several turns: no part is lost on the way, and what is asked again is answered, not pointed at."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.talk import Talk
from tests.answers.picture import close, flat, numbers
from tests.answers.talks import flat as said
from tests.answers.talks import talk


def test_a_focal_length_behind_the_body_is_that_of_the_lens(talked):
    found = talked("M42 on E 50mm f2")
    assert found["reading"] == "how do I get a 50 mm f/2 M42 lens on an E-mount body"


def test_one_behind_a_body_is_one_more_body(talked):
    found = talked("OM 50 1.8 for the Z body and also the E one")
    assert "OM-mount lens on a Z-mount body and an E-mount body" in found["reading"]


def test_another_body_is_asked_the_same_of_what_is_lit(talked):
    found = talked("does a 16mm c mount cover apsc", "and the 25", "what about m43")
    assert found["intent"] == "coverage"
    assert "25 mm C-mount lens cover a Micro Four Thirds" in found["reading"]


@pytest.mark.parametrize("then", ["so on full frame that would look like", "full frame look?"])
def test_the_frame_that_a_view_is_likened_to_is_no_body(talked, then):
    found = talked("50mm f2.8 MD on mft", then)
    assert close(99.98) in [row[0] for row in numbers(found, "equivalent_focal_mm")] or "100 mm on full frame" in flat(
        found
    )


def test_the_other_body_may_have_been_a_frame_alone(talked):
    found = talked("50 1.4 m42 on apsc equiv?", "and on mft", "the other one, body i mean")
    assert "APS-C" in found["reading"]


@pytest.mark.parametrize("typed", ["whats a wedding lens", "what does blorbing-like mean", "what is a zorbex coupling"])
def test_a_word_that_is_no_term_is_told_as_none(talked, typed):
    found = talked(typed)
    assert "is not among the terms" in flat(found)
    assert "'that'" not in flat(found)


def test_which_lens_is_best_for_something_is_not_ranked_here(talked):
    assert talked("whats the best wedding lens")["intent"] == "out-of-scope"


def test_another_word_is_no_slip_of_a_term(talked):
    assert "runout" not in flat(talked("what does paralaxal mean"))


def test_the_first_lines_stand_again_where_a_question_comes_out_the_same(talked):
    found = talked("M42 50mm on E with a 27.9 ring", "how much too thick")
    assert "0.44 mm too far out" in flat(found)


def test_what_a_ring_should_be(talked):
    found = talked("EF 24mm on E, ring measured 25.9", "should be what")
    assert "Ring thickness: 26 mm" in flat(found)


def test_too_close_the_ring_of_the_lens_makes_up_for_a_distance(talked):
    found = talked("EF lens 24mm f2.8 on E mount, ring measured 25.9", "what if i only need it at 5 m")
    assert "near the 2.71 m mark" in flat(found)
    assert "is reached" not in flat(found)


def test_a_distance_asked_on_the_way_is_judged(talked):
    start = ("M42 50mm on E with a 27.9 ring", "what if i only need it at 5 m")
    assert "5 m is reached" in flat(talked(*start))
    assert "40 m is out of reach" in flat(talked(*start, "and at 40 m?"))


def test_a_pair_that_nothing_warns_of_is_not_called_safe(talked):
    found = talked("M42 50mm on E", "is that safe")
    assert "does not make it safe" in flat(found)
    assert "too little" not in flat(found)


def test_the_other_body_reaches_back_over_several_turns(talked):
    found = talked("fd 50 on E", "and on Z", "how close", "the other body again")
    assert "FD-mount lens focus on an E-mount body" in found["reading"]


def test_a_lens_behind_its_thread_is_one_lens_and_its_pitch_is_asked(talked):
    found = talked("42mm thread on a tele, no clue what it is")
    assert found["reading"] == "identify the mount for an M42 tele lens"
    assert "What is the pitch?" in flat(found)


@pytest.mark.parametrize(("then", "mount"), [("ten are 7.5", "T2"), ("10 threads is 10", "M42")])
def test_crests_counted_after_the_thread_are_its_pitch(talked, then, mount):
    found = talked("mystery lens with a 42mm screw", then)
    assert f"{mount}: thread" in flat(found)
    assert "flange to image" not in found["reading"]


def test_of_mounts_alike_the_likeliest_is_told_by_its_register(talked):
    found = talked("mystery lens with a 42mm screw", "ten pitches is 10", "flange to image 45.5")
    assert "it is M42, not only" in flat(found)


def test_the_mirrorless_body_with_that_letter(talked):
    assert "RF-mount body" in talked("k mount lens on EF", "and on the mirrorless R")["reading"]


def test_who_made_a_lens_is_told_why_it_is_not_told(talked):
    assert "Age and makers" in flat(talked("who made this lens"))


def test_a_lens_that_was_forgotten_is_spoken_of_no_more(tmp_path):
    gear = tmp_path / "gear.yaml"
    desk, talk = Desk(gear=gear, gear_needed=False, writes=gear), Talk()
    for line in ("my avocet is a 35mm f/2.8 M42 lens", "yes", "how close on E", "forget the avocet", "yes"):
        desk.ask(line, talk)
    found = desk.ask("can the avocet reach infinity on E", talk)
    assert "avocet" not in found.reading
    assert any("Which lens" in line.text for line in found.lines)


def test_a_bayonet_told_before_is_no_thread(talked):
    found = talked("whats this: bayonet, 4 lugs, 54 bore", "flange 52")
    assert "PL: breech lock" in flat(found)
    assert "thread of 54" not in flat(found)


def test_what_the_stabiliser_wants_without_the_converter(talked):
    found = talked("fd 300 f4 + 2x on E, ibis value", "and without the 2x")
    assert [row[0] for row in numbers(found, "ibis_focal_mm")][:1] == [300]


def test_a_bare_number_is_no_width_where_the_pitch_was_asked_for(talked):
    found = talked("39mm screw lens in a box lot, no name, has a focus ring", "did that, 45 ish")
    assert "thread 45 mm" not in found["reading"]


def test_of_two_views_set_apart_the_wider_and_the_brighter_is_told_first(talked):
    found = talked(
        "35 f/2 with a 0.71 reducer on MFT?", "without reducer?", "which is better for indoor parties, with or without"
    )
    head = flat(found).lstrip("> ")
    assert head.startswith("The first is wider, like 50 mm against 70 mm on full frame; brighter by 0.99 stops.")


def test_a_drawing_after_an_error_of_the_seat_says_that_it_is_not_in_it(club):
    found = talk(club, "50 1.7 sr on E, infinity at the 8 m mark", "draw it")[-1]
    assert "Drawn with the ring as it should be" in said(found)
    assert "Drawn with" not in said(talk(club, "50 1.7 sr on E", "draw it")[-1])


def test_what_is_no_matter_of_lenses_is_no_cup_in_a_talk(club):
    found = talk(club, "50 1.7 sr on E", "who won the world cup")[-1]
    assert found.intent == "out-of-scope"


def test_whether_it_is_safe_for_the_sensor_is_no_other_sensor(club):
    found = talk(club, "50 1.7 sr on full frame E", "and with a 20mm tube how close", "is that safe for the sensor")[-1]
    assert found.intent == "hazard"


def test_a_picture_too_dark_in_too_little_light_wants_no_filter(club):
    first, found = talk(club, "how much nd for f/4 at 1/50, iso 100, ev 10", "it is 6 stops too dark")
    assert first.intent == found.intent == "exposure-nd"
    assert "no ND is right" in said(found)
    assert "behind -" not in said(found)
