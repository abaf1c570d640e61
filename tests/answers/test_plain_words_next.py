"""Short turns whose own words plainly ask another kind of question, and numbers that can only be those of a ring."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk

SEATED = "sr 55 1.7 on RF with a 23.9 ring, infinity?"
THIN = "28mm f2.8 qbm lens, ring to X measures 26.5. does it reach far"
MARKED = "fd 85 f1.8 on Z, infinity lands on the 20 m mark"
REAR = "can the tail of a 21mm f4 m mount lens hit something inside a Z"
FOUND = "no name 28mm, male thread 42 mm across, 45.5 from flange to image. what is it"
REASON = "why wont my 50 f1.4 fd focus far on an EF body"
DARK = "why are the corners black with a 16mm f1.6 c lens on X"
LISTED = "which bodies take a pen f 38mm f1.8 with infinity"


def last(club, *turns):
    return talk(club, *turns)[-1]


@pytest.mark.parametrize("turn", ["mine is 11.1 thick", "ring came out 11.1", "with a 11.1 ring?"])
def test_a_ring_that_is_off_is_told_so_though_infinity_was_wanted_before(club, turn):
    found = flat(last(club, LISTED, "on E", turn))
    assert "stops at 9.7 m" in found


@pytest.mark.parametrize(
    ("opening", "turn", "error"),
    [
        (SEATED, "does that happen with a bought 23.5 as well", "just right"),
        (SEATED, "the shop has a 23.4, better?", "0.1 mm too close"),
        (SEATED, "plus 0.1", "0.5 mm too far out"),
        (REAR, "infinity with a 11.7", "0.1 mm too close"),
        ("om 28 f3.5 on L, ibis number", "reaches with 26.3?", "0.3 mm too far out"),
    ],
)
def test_a_decimal_that_no_lens_has_is_the_length_of_the_ring(club, opening, turn, error):
    found = last(club, opening, turn)
    assert error in flat(found)
    assert found.question.lenses[0].focal_length_mm in (55, 21, 28)


@pytest.mark.parametrize(("turn", "focal"), [("a 28?", 28), ("and a 24", 24), ("and 135", 135)])
def test_a_whole_number_after_a_ring_is_another_lens(club, turn, focal):
    found = last(club, SEATED, turn)
    assert found.question.lenses[0].focal_length_mm == focal
    assert "0.4 mm too far out" in flat(found)


@pytest.mark.parametrize(
    ("opening", "turn"),
    [(REAR, "at 5.6"), (THIN, "can anything touch inside"), (THIN, "could its rear hit the shutter")],
)
def test_what_to_do_after_a_crunch_is_not_told_where_none_was_heard(club, opening, turn):
    assert "do not switch on" not in flat(last(club, opening, turn))


@pytest.mark.parametrize("turn", ["heard a crunch screwing it in", "it touched something inside, safe to switch on?"])
def test_and_is_where_one_was(club, turn):
    assert "do not switch on" in flat(last(club, "25 c mount on mft", turn))


@pytest.mark.parametrize("turn", ["covers full frame i guess", "will it fill full frame"])
def test_a_lens_found_is_taken_for_the_mount_that_is_met_most(club, turn):
    assert "covers full frame" in flat(last(club, FOUND, turn))


@pytest.mark.parametrize("turn", ["not T2?", "why not T2", "and why is it not t2"])
def test_a_mount_denied_after_what_a_lens_is_is_set_apart_from_it(club, turn):
    found = last(club, FOUND, turn)
    assert found.intent == "look-alike"
    assert "differ by 9.54 mm" in flat(found)


@pytest.mark.parametrize("turn", ["money for an E ring", "E ring price", "cost of an E ring"])
def test_a_ring_named_by_a_body_goes_on_that_body(club, turn):
    assert "8 to 25 dollars" in flat(last(club, FOUND, turn))


@pytest.mark.parametrize(
    ("opening", "turn"),
    [
        ("AR mount 40 f1.8 onto an L body, how", "how would i tell its really AR"),
        ("AR mount 40 f1.8 onto an L body, how", "what says its AR and not something else"),
        (MARKED, "how can i be sure its FD"),
        ("qbm 50 on E", "how do i check its a qbm"),
    ],
)
def test_what_proves_the_mount_of_a_lens_is_asked_of_its_mount(club, opening, turn):
    found = last(club, opening, turn)
    assert found.intent == "identify-mount"
    assert "register" in flat(found)
    assert "C-RX" not in flat(found)


@pytest.mark.parametrize("turn", ["cost", "what shall i pay", "expensive?", "what is the price"])
def test_the_price_is_told_first_whatever_was_told_before(club, turn):
    assert "Price: 12 to 30 dollars" in flat(last(club, REASON, "put on a Z?", turn))


def test_another_ring_to_buy_is_one_for_the_same_body(club):
    found = last(club, SEATED, "another ring to buy, cost")
    assert found.question.bodies[0].id == "rf-mount"
    assert "12 to 30 dollars" in flat(found)


@pytest.mark.parametrize(
    ("opening", "turn", "seat"),
    [
        (SEATED, "what length would be right", "23.5 mm"),
        (SEATED, "how long should it be", "23.5 mm"),
        (MARKED, "how thick is it meant to be", "26 mm"),
        (REASON, "ring length in theory", "-2 mm"),
        (
            "my 50mm f1.4 c lens stops at 18 m on mft. how much too thick is the adapter",
            "whats the proper depth of that cup",
            "-1.72 mm",
        ),
    ],
)
def test_how_long_a_ring_should_be_is_told_first(club, opening, turn, seat):
    found = last(club, opening, turn)
    assert f"seat {seat}" in flat(found)


@pytest.mark.parametrize(
    ("opening", "turn", "intent"),
    [
        (REASON, "ok for close ups?", "macro-distance"),
        (REASON, "mirror in the way?", "hazard"),
        (REASON, "with a glass one?", "chain"),
        (DARK, "what fixes it", "coverage"),
        (DARK, "does stopping down help", "coverage"),
        (DARK, "would mft be whole", "coverage"),
        (DARK, "ring for it", "chain"),
        (THIN, "cause?", "why"),
        (THIN, "zone if i set 1.5m f5.6", "depth-of-field"),
        (MARKED, "ignore it?", "why"),
        (SEATED, "lap it down by?", "shim-calibration"),
        (REAR, "same danger with ltm?", "hazard"),
        ("is cs the same thing as c? got an 8mm f1.3", "screwing it in a c cam hurts?", "hazard"),
        ("three lug bayonet, 46.5 mm register, a 105 f2.5. which mount", "how thick for EF", "diy-dimension"),
    ],
)
def test_a_turn_is_of_the_kind_that_its_words_ask(club, opening, turn, intent):
    assert last(club, opening, turn).intent == intent


def test_another_iso_after_the_moon_asks_of_the_moon_still(club):
    found = flat(last(club, "t2 500mm f8 mirror lens on E", "moon, which exposure?", "iso 400"))
    assert "1/2000" in found


@pytest.mark.parametrize("turn", ["20.5 where from", "where does the 20.5 come from", "why 20.5"])
def test_where_the_length_of_a_ring_comes_from_is_told_by_the_registers(club, turn):
    found = last(club, "AR mount 40 f1.8 onto an L body, how", turn)
    assert found.intent == "why"
    assert "40.5 less L-mount 20 is 20.5 mm" in flat(found)


@pytest.mark.parametrize("turn", ["light lost?", "does it eat light", "what does the corrector cost in light"])
def test_light_lost_after_a_way_through_glass_is_what_that_glass_takes(club, turn):
    assert "1.25x costs 0.6 stops" in flat(last(club, "fd 50 1.4 on EF", turn))


def test_and_after_a_plain_way_no_glass_takes_any(club):
    assert "1.25x" not in flat(last(club, "om 50 1.4 on E", "light lost?"))


@pytest.mark.parametrize(
    ("turn", "said"), [("why not c", "C lenses sit 17.53 mm"), ("why not C", "C lenses sit 17.53 mm")]
)
def test_a_small_letter_denied_is_a_mount(club, turn, said):
    assert said in flat(last(club, "what old screw lenses can go on RF and keep infinity", turn))


def test_a_body_alone_after_a_bayonet_found_is_what_its_ring_is_for(club):
    found = flat(last(club, "three lug bayonet, 46.5 mm register, a 105 f2.5. which mount", "how thick for EF"))
    assert "seat 2.5 mm" in found


def test_39x1_off_a_reflex_is_no_rangefinder_screw(club):
    assert "differ by 16.4 mm" in flat(last(club, "39x1 slr lens vs ltm, do they swap"))
    assert "27.2 mm" in flat(last(club, "39x1 slr 58 f2 on E, which ring"))


@pytest.mark.parametrize(("mount", "pitch"), [("ltm", "0.977"), ("c", "0.794"), ("m42", "1 mm")])
def test_a_pitch_in_mm_is_that_of_a_thread(club, mount, pitch):
    assert pitch in flat(last(club, f"pitch of {mount} in mm"))


def test_hitting_anything_is_a_danger(club):
    assert last(club, LISTED, "hit anything on nx?").intent == "hazard"


PLAN = "adapters for a K 35, OM 50 and C/Y 28 on E, cheapest way"
SCREW = "25 mm f1.9 lens, 1 inch thread, 17.5 from seat to image. what mount"
STOPPED = "k 50 f1.7 ends at 9 m on X"


@pytest.mark.parametrize("turn", ["om one measures 28.1", "the om one is 28.1"])
def test_a_ring_of_a_plan_that_was_measured_is_off_by_so_much(club, turn):
    assert "0.1 mm too far out" in flat(last(club, PLAN, turn))


@pytest.mark.parametrize("opening", ["what cameras can use a d mount 13 1.9", "25 1.9 c on mft safe?", "d 13 1.9 on q"])
def test_a_filter_for_a_shutter_in_the_sun_looks_into_none(club, opening):
    found = last(club, opening, "sun 1/50 filter")
    assert found.intent == "exposure-nd"
    assert "7.5 stops of ND" in flat(found)


def test_the_sun_without_a_shutter_is_a_danger_still(club):
    assert last(club, "t2 500 f8 on E", "sun filter ok?").intent == "hazard"


@pytest.mark.parametrize(
    ("opening", "turn", "said"),
    [
        ("c/y 85 f1.4 on L, the ring measures 25.3, far ok?", "thickness of washer to fix", "add a shim of 0.2 mm"),
        ("c/y 85 f1.4 on L, the ring measures 25.3, far ok?", "how thin is focus at 1.2m", "85 mm f/1.4 at 1.2 m"),
        (STOPPED, "stop that hides it", "from f/14 on"),
        (STOPPED, "fix how", "take 0.28 mm off"),
        (STOPPED, "where does a 28 end", "stops at 2.85 m"),
        ("m42 35 on nx with infinity at the 4 m mark", "quarter turn of the m42 thread enough?", "0.25 mm"),
        ("k 50 on X, dof at 2m f4", "it ends at 9 m", "0.28 mm too far out"),
        (SCREW, "MFT adapter depth", "seat -1.72 mm"),
        (SCREW, "adapter for E, how deep", "seat -0.47 mm"),
        ("why does a T2 400 f6.3 on an M42 ring miss infinity on K", "moon at f6.3 iso 100", "EV 13 to 15"),
        ("breech ring lens, 42 mm to the image, 135 f3.5. which mount", "aps-c view", "frames like 206 mm"),
        ("miranda 50 f1.9, want it on my Z", "drill how wide for a f11 disc", "The hole: 4.5 mm"),
        ("one C 16 1.8 and one C 12.5 1.4 for a mft, what do i buy", "nd for both, sun 1/50", "12.5 mm: 8.4 stops"),
        ("om 24 2.8 with a 28.2 adapter on E, infinity?", "a proper one is how much", "10 to 25 dollars"),
        ("fd 85 f1.8 on Z, infinity lands on the 20 m mark", "better one for how much", "12 to 30 dollars"),
    ],
)
def test_what_is_asked_in_few_words_is_answered(club, opening, turn, said):
    assert said in flat(last(club, opening, turn))


def test_one_stop_for_all_lenses_is_told_once(club):
    opening = "one C 16 1.8 and one C 12.5 1.4 for a mft, what do i buy"
    assert "12.5 mm:" not in flat(last(club, opening, "nd for both, sun 1/50", "at f4"))


@pytest.mark.parametrize(
    ("opening", "turn", "intent"),
    [
        ("om 24 2.8 with a 28.2 adapter on E, infinity?", "close up any good?", "macro-distance"),
        ("need a way to use an exakta 75mm f2.5 with an nx camera", "can it be repaired if fungus", "hazard"),
        ("c/y 85 f1.4 on L, the ring measures 25.3, far ok?", "what made it short", "why"),
        ("miranda 50 f1.9, want it on my Z", "how many euros", "buy-plan"),
    ],
)
def test_few_words_are_of_the_kind_that_they_ask(club, opening, turn, intent):
    assert last(club, opening, turn).intent == intent


def test_whether_a_rear_catches_the_mirror_is_a_danger(club):
    assert last(club, "exakta 20 f2.8 on an ef full frame dslr, does it catch the mirror").intent == "hazard"
