"""Dangers told in passing, and a remedy told as if it made them safe."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import flat
from tests.answers.talks import flat as said
from tests.answers.talks import talk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def _talk(desk, *turns):
    memory = Talk()
    return [record_of(desk.ask(turn, memory), desk.knowledge) for turn in turns]


def test_the_sun_through_a_long_lens_and_a_dark_filter_told_as_the_remedy(desk):
    first, then = _talk(
        desk,
        "time lapse of sunrise, m42 200/4 on mirrorless, 2 hours on the tripod. ok for the camera?",
        "ok dark ND on it then, 10 stops",
    )
    assert first["intent"] == then["intent"] == "hazard"
    assert "burns them in seconds" in flat(first)
    assert "lets infrared through" in flat(then)


def test_what_is_seen_in_an_old_projector_is_warned_of(desk):
    (found,) = _talk(
        desk, "taking the lens out of a 1950s 16mm projector, there's white rope stuff packed round the lamp house"
    )
    assert found["intent"] == "hazard"
    assert "asbestos" in flat(found)
    assert "1950 s" not in found["reading"]


@pytest.mark.parametrize(("say", "said"), [
    ("i am screwing an M12 board lens into a bare camera by hand, told to be careful. What can go wrong?", "M12 and"),
    ("what do i have to watch out for when mounting a heavy 500mm on an E body", "Over about 500 g on a thin ring"),
    ("LTM collapsible 50 on my Z body, what must i look out for?", "do not push it in"),
])  # fmt: skip
def test_what_to_be_careful_of_is_asked_of_dangers(asked, say, said):
    found = asked(say)
    assert found["intent"] == "hazard"
    assert said in flat(found)


def test_bending_a_tab_is_not_said_to_be_harmless(asked):
    assert flat(asked("the lens has a rear tab that sticks out, ok to bend it?")).startswith("Better not.")


def test_filing_to_fit_makes_dust(asked):
    found = asked("file it so it fits?")
    assert found["intent"] == "hazard"
    assert "metal dust" in flat(found)


@pytest.mark.parametrize(("question", "said"), [
    ("is it dangerous to use an EF lens on an adapter without lock", "Not to be trusted."),
    ("rear lens group moves back when focusing, mirrorless E, safe?", "Not known before it is measured."),
    ("c lens rear goes 11mm past its thread, mirrorless body. safe to just screw it in?", "Not known before"),
])  # fmt: skip
def test_the_danger_that_is_asked_about_is_ruled_first(asked, question, said):
    assert flat(asked(question)).startswith(said)


@pytest.mark.parametrize(("say", "topic"), [
    ("my C lens is stuck in the C to MFT cup and i cant get it out", "threaded lens stuck in its ring"),
    ("M42 lens jammed in the M42 to E ring, help", "threaded lens stuck in its ring"),
    ("LTM lens cant be unscrewed from the M ring", "threaded lens stuck in its ring"),
    ("lens stuck in the cup ring, wont come out", "ring stuck on a lens"),
    ("the adapter is stuck on my Z body with the FD lens in it", "ring stuck on the body"),
    ("my T2 ring wont come off the camera body", "ring stuck on the body"),
    ("filter jammed on a 55", "stuck filter or step ring"),
])  # fmt: skip
def test_what_is_stuck_is_told_by_what_is_named(asked, say, topic):
    found = asked(say)
    assert found["intent"] == "hazard"
    first = next(line for line in found["text"].splitlines() if ": " in line)
    assert topic in first


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("board lens M12, camera open on the bench, how far do i dare to screw it in", "do not stop by themselves"),
        ("grandson says not to leave the lenses on the windowsill, is he exaggerating", "start a fire"),
        ("39mm rangefinder lens with metric thread wont go all the way in my LTM ring. damaged?", "39x26 and M39x1"),
        ("M39 lens with 1 mm pitch stops half way in the LTM adapter, did i damage it", "39x26 and M39x1"),
    ],
)
def test_what_one_hardly_dares_is_answered_by_the_danger(desk, text, says):
    (found,) = _talk(desk, text)
    assert found["intent"] == "hazard"
    assert says in flat(found)


@pytest.mark.parametrize("say", [
    "m42 tele 300, 900 grams, ok on thin ring?", "1.2 kg lens on a plain E ring fine?",
])  # fmt: skip
def test_a_weight_told_asks_whether_it_is_carried(asked, say):
    found = asked(say)
    assert found["intent"] == "hazard"
    assert "Over about 500 g on a thin ring" in flat(found)


def test_what_is_harmless_without_a_mirror_is_no_plain_no(asked):
    found = flat(asked("is that ok? i put the ef-s wide on a ff mirrorless with the plain ring, picture is round"))
    assert not found.startswith("Not safe")
    assert "On a mirrorless body with an EF ring it does no harm" in found


@pytest.mark.parametrize(
    "turns",
    [
        ("stabiliser setting for 135 on E", "its 1.5kg together, hold by the camera?"),
        ("FD 300 on MFT, stabiliser number?", "and it weighs 2 kg, hold it by the body?"),
        ("stabiliser number for a 400", "and with 1.4x", "2.5 kg all in, ok to hang off the body"),
    ],
)
def test_a_weight_to_be_held_is_a_danger_whatever_was_asked_before(talked, turns):
    found = talked(*turns)
    assert found["intent"] == "hazard"
    assert flat(found).startswith("Not by the camera alone.")


@pytest.mark.parametrize(
    "text",
    ["is a 28mm LTM safe on E-mount", "will a 28 LTM lens hurt my E camera", "28 LTM on E dangerous?",
     "is it risky to put a 28mm LTM lens on E"],
)  # fmt: skip
def test_whether_a_lens_does_harm_on_a_body_is_a_question_of_danger(club, text):
    (found,) = talk(club, text)
    assert found.intent == "hazard"
    assert said(found).startswith("By LTM to E ring: ")
    assert "reach past the shutter" in said(found)


def test_whether_it_is_safe_after_a_close_up_tells_of_harm_alone(club):
    _, found = talk(club, "28 LTM on E with 10 mm tube", "any danger")
    assert said(found).startswith("By your 10 mm tube + LTM to E ring: ")
    assert "stops at" not in said(found)


@pytest.mark.parametrize(
    ("say", "head"),
    [
        ("C lens went into CS without any spacer and it grinds on something, bad?", "No, not without the ring."),
        ("screwed a C lens into CS without its ring, is that harmful", "No, not without the ring."),
        ("grinds against something behind the mount, m39 lens on E", "Stop, and do not switch on."),
        ("focus ring grinds, bad?", "Do not turn it."),
    ],
)
def test_what_grinds_is_ruled_on_before_all_else(desk, say, head):
    (found,) = _talk(desk, say)
    assert found["intent"] == "hazard"
    assert flat(found).startswith(head)


@pytest.mark.parametrize("say", ["EF-S on a full frame EF body?", "EF-S 24mm on EF"])
def test_a_lens_that_does_no_good_straight_on_is_told_so_before_its_tubes(desk, say):
    (found,) = _talk(desk, say)
    assert flat(found).startswith("Not straight on: no use:")


def test_glue_is_no_danger_where_a_height_is_asked(desk):
    (found,) = _talk(desk, "M42 front glued in an E body cap. what height from the body flange to the M42 face")
    assert found["intent"] == "diy-dimension"
    assert "27.46 mm" in flat(found)


@pytest.mark.parametrize(
    "text",
    ["39mm thread lens without focusing on a Z body", "no focus ring lens M39 thread on MFT, infinity?",
     "screw lens 39mm without focusing, goes on E how?"],
)  # fmt: skip
def test_a_screw_lens_without_focusing_is_taken_for_an_enlarger_lens(desk, text):
    assert said(desk.ask(text)).startswith("An Enlarger 39 lens on")


@pytest.mark.parametrize("text", ["went in a turn and a half and stuck", "went in one and a half turns and stuck"])
def test_a_lens_stuck_after_a_turn_is_to_be_turned_back(desk, text):
    last = desk.ask(f"T2 lens {text} in an M42 ring. hurt anything?")
    assert "Tight after 1.5 turns" in said(last)
    assert "turn it back" in said(last)


@pytest.mark.parametrize("say", [
    "old long lens from grandma's box, 42mm screw, won't go right in my m42 ring",
    "m42 ring jams after a turn on this old 300mm",
    "the lens starts in m42 and then binds",
])  # fmt: skip
def test_what_binds_in_the_hole_of_a_screw_is_named(asked, say):
    text = " ".join(asked(say)["text"].split())
    assert "T2" in text[:500]
    assert "ten crests" in text


def test_a_focus_ring_that_does_not_turn_is_no_screw(asked):
    assert "does not go home" not in " ".join(asked("focus ring won't turn on my m42 lens")["text"].split())


@pytest.mark.parametrize(
    "turns",
    [
        ("M12 lens on a CS camera?", "it did touch something, now what"),
        ("50 M on E", "it hit something. what now"),
        ("C 12.5mm on MFT cup", "the rear touched the glass when i screwed it in, what do i do"),
    ],
)
def test_what_has_touched_is_backed_out_and_looked_at(club, turns):
    *_, found = talk(club, *turns)
    assert found.intent == "hazard"
    assert "Back it out the way it went in" in said(found)


@pytest.mark.parametrize("turn", ["how do i not ram it into the sensor", "how do i avoid hitting the chip"])
def test_how_not_to_touch_is_asked_of_a_danger(club, turn):
    *_, found = talk(club, "M12 lens on a CS camera?", turn)
    assert found.intent == "hazard"


@pytest.mark.parametrize(
    ("first", "turn", "focal"),
    [
        ("28mm M lens, its back end sticks out 15mm behind the flange. will it hit something in my E camera",
         "ok i measured, it clears. i also have a collapsible 50, push it in on that camera?", 50),
        ("M 90 on E rear reach 10 mm, safe?", "i also have a 21 with a deep rear, ok too?", 21),
        ("M 90 on E rear reach 10 mm, safe?", "i've got a 135 as well, can that touch?", 135),
    ],
)  # fmt: skip
def test_how_far_a_rear_reaches_was_measured_of_that_lens_alone(club, first, turn, focal):
    *_, found = talk(club, first, turn)
    assert found.question.lenses[0].focal_length_mm == focal
    assert found.question.said("rear_reach") is None


@pytest.mark.parametrize(
    "turn", ["can i polish the tint off", "could i grind the yellow away", "front has a scratch, buff it out?"]
)
def test_thoriated_glass_is_never_to_be_worked_on(talked, turn):
    found = talked("my sixties 50/1.4 has gone yellow, someone said its radioactive. keep it?", turn)
    assert flat(found).startswith("No: never grind, sand, polish or break it.")


def test_a_lens_laid_on_the_sill_is_a_matter_of_fire(talked):
    found = talked("my 50/1.4 is thoriated, safe?", "leave it on the sunny windowsill then?")
    assert "start a fire" in flat(found)
    assert not flat(found).startswith("No: not without a certified solar filter")


@pytest.mark.parametrize(
    "text",
    [
        "can i screw this lens into a CS camera", "can I screw my 25mm lens onto a CS camera",
        "can i screw a 6mm lens off my old cam onto a CS camera",
    ],
)  # fmt: skip
def test_the_ruling_on_a_c_lens_holds_of_another_only_if_it_is_one(talked, text):
    assert flat(talked(text)).startswith("It depends on the mount of that lens. If it is C: no, not without the ring.")


def test_the_ruling_on_a_c_lens_is_plain_where_it_is_named(talked):
    assert flat(talked("can i screw a C lens into a CS camera")).startswith("No, not without the ring.")


@pytest.mark.parametrize(
    "text",
    [
        "brown tinted lens, kid wants it as a loupe for stamps. safe?", "yellowed lens used as a loupe, safe?",
        "brown tinted old lens, can my kid use it as a loupe",
        "is a yellowed lens ok as a magnifying glass for a child",
    ],
)  # fmt: skip
def test_a_browned_lens_is_to_be_kept_off_the_eye(talked, text):
    found = flat(talked(text))
    assert found.startswith("Not there: keep it away from where you sleep, and off your eye.")
    assert "avoid it as an eyepiece" in found


def test_a_wide_lens_behind_its_register_is_no_width(asked):
    found = asked("44.7 register 35mm wide on a full frame EF dslr. mirror ok?")
    assert found["intent"] == "hazard"


@pytest.mark.parametrize(("say", "head"), [("m42 135 stuck on its ring", "threaded lens stuck in its ring"),
                                           ("K 50 stuck on its ring", "ring stuck on a lens")])  # fmt: skip
def test_a_lens_stuck_on_its_ring_is_told_how_it_comes_off_first(asked, say, head):
    found = flat(asked(say))
    assert head in found[:140]
    assert "mirror" not in found[:300]


@pytest.mark.parametrize(
    "turn", ["does nd help", "would an nd protect it", "is an nd1000 enough", "cap between shots?"]
)
def test_what_keeps_the_sun_off_is_asked_of_its_danger_and_no_exposure(talked, turn):
    found = talked("sun in frame with 300/4 m42 on mirrorless", "how long before it hurts", turn)
    assert found["intent"] == "hazard"
    assert "an ND lets infrared through" in flat(found)


def test_an_exposure_in_the_sun_is_asked_on_about_as_one(talked):
    assert talked("50 1.8 m42 on E, nd for sun 1/50 iso 100", "does nd help")["intent"] == "exposure-nd"


@pytest.mark.parametrize("turn", ["sit in the sun to clear it", "put it in the sun?"])
def test_the_sun_that_clears_a_browned_glass_is_not_looked_into(talked, turn):
    found = flat(talked("yellow 55/1.8, thorium glass safe?", turn))
    assert found.startswith("By ultraviolet light, but not unattended.")
