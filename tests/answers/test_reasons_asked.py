"""Reasons by bare registers, by the mark at which the moon is sharp, and which text is told of several."""

from __future__ import annotations

import pytest

from engine.answers.parts.nearby import nearest
from engine.facts.subjects import subjects_of
from engine.talk import Talk
from tests.answers.picture import flat, numbers
from tests.desks import desk_of

DESK = desk_of()


def mid(found, name):
    return [(low + high) / 2 for low, high in numbers(found, name)]


@pytest.mark.parametrize(
    ("text", "ring"),
    [
        ("lens register 40.5, body register 42, possible?", -1.5),
        ("whats the reason a 40.5 register lens isnt adaptable to 42 body", -1.5),
        ("45 register lens on 42 body, ring thickness", 3.0),
        ("body is 18 flange, lens is 45.46, how thick the ring", 27.46),
        ("50mm lens with a 37.8 register on a 17.7 register camera", 20.1),
    ],
)
def test_two_registers_without_mounts_tell_the_ring(asked, text, ring):
    assert mid(asked(text), "ring_thickness_mm")[0] == pytest.approx(ring, abs=0.001)


def test_a_body_deeper_than_the_lens_needs_is_no_plain_ring(asked):
    found = asked("flange of lens is 38, body 44, 50mm lens, works?")
    assert "no plain ring gives infinity" in flat(found)
    assert found["ring_to_make"]["possible"] == "no"
    # 2f + HH' + f*f/6 + 6 with a thin lens is 522.7
    low, high = numbers(found, "far_from_sensor_mm")[0]
    assert low <= 522.7 <= high


def test_registers_beside_a_mount_are_left_to_it(asked):
    assert "The lens needs" not in flat(asked("m42 lens register 45.46 on E body 18, ring?"))


def test_the_moon_at_a_near_mark_is_too_close_and_not_too_far_out(asked):
    found = asked("scale says 5m and im clearly focused on the moon, 50mm")
    assert mid(found, "register_error_mm")[0] == pytest.approx(-0.51, abs=0.01)
    assert "too far out" not in flat(found)


def test_far_hills_sharp_at_a_near_mark_are_too_close(asked):
    found = asked("why is the scale wrong since the new adapter, far hills sharp at around 6m on the 35mm")
    assert mid(found, "register_error_mm")[0] == pytest.approx(-0.2066, abs=0.001)


def test_the_number_of_a_register_is_said_to_be_it(asked):
    assert flat(asked("why 17.526 for C")).startswith("17.526 mm is the register of C")


def test_a_seat_that_can_be_sunk_is_told_as_a_cup(asked):
    assert "the ring is a cup" in flat(asked("why is it that c mount lenses are fine on mft"))


def test_one_shared_word_of_several_is_another_subject():
    facts = DESK.catalogue
    assert nearest("why does my dog hate the tripod", facts, intent="why") == ()
    assert nearest("why is the red channel clipped", facts, intent="why") == ()
    assert nearest("why does light leak in at the ring", facts, intent="why")[0].id == "light-leak"


def test_what_is_far_nearer_to_the_words_comes_before_what_is_named(asked):
    assert flat(asked("can i take my thorium lens in carry-on")).startswith("Safe to carry")
    assert "safe in ordinary use" in flat(asked("is a thoriated lens dangerous to have at home"))


def test_a_word_that_the_phrases_come_back_to_counts_for_more():
    found = {match.id: match.score for match in subjects_of(DESK.catalogue).matches("parfocal")}
    assert max(found, key=lambda one: found[one]) == "zoom-not-parfocal"


def test_a_piece_that_only_its_number_names_is_found_by_it(asked):
    assert "smaller image circle" in flat(asked("how come a 0.71 makes it a stop brighter"))


def test_what_a_ring_is_said_and_measured_to_be_is_no_scale_against_a_tape(asked):
    text = flat(asked("how come the ring says 27.5 and i measure 27.42"))
    assert text.startswith("rings that measure thin")


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("everything past f/16 on the macro rig is mush. lens broken?", "soft at small stops"),
        ("soft at f/22 on bellows, why", "soft at small stops"),
        ("three chip zoom on one sensor, why purple and green at the sides", "colour fringes of B4 lenses"),
    ],
)
def test_a_small_stop_and_a_lens_for_three_chips_have_reasons_of_their_own(asked, text, topic):
    assert flat(asked(text)).startswith(topic)


def test_the_width_of_the_film_is_no_focal_length_that_a_lens_is_like(asked):
    found = flat(asked("why do i only get a round picture from a 10mm lens off an old 16mm film camera"))
    assert "times the crop factor" not in found
    assert "image circle 12.7 to 14.5 mm" in found


@pytest.mark.parametrize(
    "text",
    [
        "my 28mm lens everything after f/11 is soft", "everything after f/11 is soft", "past f16 it all goes mushy",
        "pics soft when i stop down past f/11", "it is soft below f/16", "everything past f/22 is soft on my 50",
    ],
)  # fmt: skip
def test_what_is_soft_at_small_stops_alone_is_diffraction(text):
    found = DESK.ask(text)
    assert found.intent == "why"
    assert found.lines[0].text.startswith("soft at small stops")


def test_a_frame_after_softness_at_small_stops_is_that_on_which_it_is_asked():
    memory = Talk()
    DESK.ask("everything after f/11 is soft on my 28mm", memory)
    for turn, frame, stop in (("on apsc", "APS-C", "f/15"), ("and on micro four thirds", "Four Thirds", "f/11")):
        found = DESK.ask(turn, memory)
        assert found.intent == "depth-of-field"
        assert found.lines[0].text.startswith(f"On {frame} diffraction alone blurs more than")
        assert f"from {stop} on" in found.lines[0].text


@pytest.mark.parametrize(
    "text",
    [
        "Is my f2 lens more bright when I put it on bigger sensor?",
        "does f/1.4 get brighter on full frame than on MFT",
        "my f1.8 is f1.8 on aps-c too or does it lose light",
    ],
)
def test_a_stop_is_as_bright_on_any_sensor(asked, text):
    assert "exposure is the same on any sensor" in flat(asked(text))


@pytest.mark.parametrize(("say", "said"), [
    ("my animation flickers frame to frame with the electronic lens, is a manual one better", "and closes again"),
    ("how to stop time lapse flicker with af lens", "opens and closes again"),
    ("ring with its own iris behind the EF lens: closed down i get a tunnel. why", "far from its real stop"),
    ("the aperture in the adapter ring gives a black circle from f11, why", "far from its real stop"),
    ("why are the feet numbers on my old lens wrong now, it focuses nice though", "The scale counts from a lens at"),
    ("why does my 25mm cine lens focus at 5 feet when it says 7", "Set to 7 ft it is sharp at 5 ft"),
])  # fmt: skip
def test_the_reason_comes_first(asked, say, said):
    assert said in " ".join(asked(say)["text"].split())[:400]


@pytest.mark.parametrize(("say", "said"), [
    ("a bright band across my pics from the enlarger lens, its got a little window, why", "Cover it with black tape"),
    ("why is my picture not centred, black corner only on the left", "does not lie in the middle of the frame"),
    ("one dark corner only, upper right, c lens on mft", "does not lie in the middle of the frame"),
    ("why does the 2x on my 50 make the closest distance stay the same", "leaves the lens's own focusing as it is"),
    ("why does my old tele push the focus forward when i close the iris", "best plane farther back"),
    ("F-mount G type lens on a plain F to E ring is very dark, why", "lever"),
])  # fmt: skip
def test_what_is_seen_in_the_picture_has_its_reason(asked, say, said):
    assert said in " ".join(asked(say)["text"].split())[:700]


@pytest.mark.parametrize(("say", "said"), [
    ("why do teles need support and not wides", "weight times arm"),
    ("why do my bellows shots vibrate at 1/15", "grows with the magnification"),
    ("there's a red infinity mark beside the white one, why", "infrared"),
    ("how come a ring with a screw release is worse than a spring one", "presses the bayonet home"),
])  # fmt: skip
def test_how_kit_is_built_has_its_reason(asked, say, said):
    assert said in " ".join(asked(say)["text"].split())[:500]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("does a 60 mm macro cover more at 1:1 than far away", "the circle grows, by half to all of the"),
        ("does the circle get larger when i focus close with a C 25", "the circle grows, by half to all of the"),
        ("is dof the same on both sides of the focus plane", "twice as much at a third of H"),
        ("does a bigger print need a smaller stop", "two stops down"),
        ("my FD 50 reaches infinity at f/8 but not at f/1.4 on E", "the lens sits a little too far out"),
        ("85 K on L gets infinity only stopped down", "the lens sits a little too far out"),
        ("which is worse for a 20mm, 0.05 too thick or 0.05 too thin", "can only be lapped"),
        ("i see the round edge only when the stabiliser moves the sensor, normal?", "within the picture of the lens"),
        (
            "hood of the 50 on my 28 and the corners are black. does the lens not cover?",
            "hood only as deep as for the angle of that lens",
        ),
    ],
)
def test_what_is_asked_of_is_told_first(asked, text, said):
    assert said in flat(asked(text))[:500]


def test_a_target_too_near_is_no_far_end(asked):
    assert flat(asked("collimate the lens with a point light at 40 m, 85mm, how wrong is that")).startswith(
        "No, 40 m is"
    )


@pytest.mark.parametrize(
    "say",
    [
        "Why is infinity somewhere near 20m on the scale and the rest of the turn is mush",
        "why does my 50 have infinity at 15 m and everything after is blurred",
        "how come the horizon is sharp at 8m and blurry at the infinity mark",
        "35mm on an M ring: horizon comes at 6m mark, past it all mush. why",
    ],
)
def test_what_is_soft_beyond_an_early_infinity_is_no_lost_infinity(asked, say):
    found = flat(asked(say))
    assert "infinity before the end of the focus ring" in found
    assert "infinity is lost" not in found


@pytest.mark.parametrize(
    ("say", "topic"),
    [
        ("why do the corners only go black when i shift the lens up", "corners go dark when the lens is shifted"),
        ("why do corners go dark with 10mm of shift", "corners go dark when the lens is shifted"),
        ("why do the bright blobs at the edge look cut off (85/1.4, long tube stack)", "cut discs of blur"),
        ("why does my 6x6 lens not look any more special on full frame than a normal 80", "a medium-format lens on a"),
    ],
)
def test_what_is_seen_of_shift_blur_and_larger_formats_has_its_reason(asked, say, topic):
    assert flat(asked(say)).startswith(topic)
