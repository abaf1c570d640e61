"""What is told without its usual word: a sheet by 'one is', a part of a stop, a wide lens, a lens turned round."""

from __future__ import annotations

import pytest

from engine.talk import Talk
from tests.answers.picture import flat, numbers


@pytest.mark.parametrize(
    ("text", "name", "wanted"),
    [
        ("paper for the printer is 0.09 i think. need 0.36 more, how many", "layer_count", 4),
        ("how many layers of foil for 0.12 if one is 0.015", "layer_count", 8),
        ("close one third from f/4, this is what number?", "f_number", 4.49),
        ("2/3 open from f/8", "f_number", 6.35),
        ("1/2 stop up from f/4", "f_number", 3.364),
        ("filter stamped density 1.2, stops and factor", "nd_stops", 4),
        ("f/5.6 plus one third", "f_number", 6.29),
        ("is a 24mm wide still wide on mft", "equivalent_focal_mm", 48),
        ("turn the 35 mm f/2.8 around in front of a 105, magnification", "magnification", 3),
        ("hold a 50 the wrong way round before my 200, how big", "magnification", 4),
        ('a "+4" close up filter on a 50mm, where is it sharp', "working_distance_mm", 250),
        ("+2 close-up lens, 135mm, how close", "magnification", 0.27),
        ("cut 1.00 instead of 26tpi, how far off after 5 turns", "pitch_drift_mm", 0.1154),
        ("32tpi cut as 0.8, how much off after 4 turns", "pitch_drift_mm", 0.025),
        ("collimated the 50 at a house 25 m away. error?", "extension_mm", 0.1),
    ],
)
def test_a_number_without_its_usual_word_is_told_of_what_it_is(asked, text, name, wanted):
    told = numbers(asked(text), name)
    assert any(
        low == pytest.approx(wanted, rel=0.01) and high == pytest.approx(wanted, rel=0.01) for low, high in told
    ), told


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("super 8 film lens, sensor 2/3 inch. how many percent has picture", "does not cover 2/3 in"),
        ("16mm lens stamped 2/3, sensor is the 1.1in kind. dark?", "Lens made for 2/3 in: does not cover 1.1 in"),
        ("can the lens of an OM camera fill a 1 inch sensor", "OM-mount lens: covers 1-type"),
    ],
)
def test_a_lens_and_the_sensor_it_is_to_light_are_told_apart(asked, text, says):
    assert says in flat(asked(text))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("28mm wide thread, what mount", "28 mm"),
        ("sensor 1 inch behind the flange", "1-type"),
        ("how many layers of paper for 0.3", "3 of office paper"),
    ],
)
def test_what_only_looks_so_stays_what_it_was(asked, text, says):
    assert says in flat(asked(text))


@pytest.mark.parametrize(
    ("text", "name", "wanted"),
    [
        ("75 enlarger lens, i measured flange to picture of the far house = 71mm. helicoid 25-55 on E, infinity?",
         "helicoid_setting_mm", 53),
        ("50mm enlarging lens, 39 thread, I get 44.3 from shoulder to image of the roof. how long a stack on NX",
         "stack_mm", 18.8),
        ("35mm projector lens, shoulder to image 38.0 mm, dslr EF. can it do infinity", "register_error_mm", 6),
    ],
)  # fmt: skip
def test_what_was_measured_to_the_image_of_something_far_is_no_size_of_that(asked, text, name, wanted):
    assert (pytest.approx(wanted), pytest.approx(wanted)) in numbers(asked(text), name)


def test_a_smooth_tube_of_a_projector_lens_is_its_barrel_and_a_hole_for_it_is_told(asked):
    held = flat(asked("100mm lens from a slide projector, tube is smooth 52.5 mm, nothing to screw. how attach on Z"))
    assert "It must exceed 16 mm" in held
    bored = asked("I make a wooden board for the barrel of a 42.5 mm projector lens, drill what size so it slides in")
    assert numbers(bored, "bore_mm") == [(pytest.approx(42.53), pytest.approx(42.7))]
    assert "20 mm of tube" in flat(asked("plain 20 mm tube behind my 50mm lens, how close"))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("45mm lens without a ring to focus, from an autofocus rangefinder camera with G bayonet. on E?",
         "G-mount (35 mm AF rangefinder) rangefinder lens on an E-mount body: reaches infinity"),
        ("50mm from an AF rangefinder camera, G bayonet. on Z?", "G-mount (35 mm AF rangefinder) rangefinder lens"),
        ("projector lens plain 52.5 barrel, E body, what do i have to get to hold it", "It must exceed 18 mm"),
        ("M42 to E ring, one costs 10 and one 60 dollars, what do i get for more", "the dearer buys truer thickness"),
        ("what is 32 tpi in mm", "32 tpi is 0.7937 mm a turn"),
        ("M39x1 into LTM, how much does it run off in 6 turns", "runs 0.14 mm apart over 6 turns"),
        ("on this cheap ring the 28mm goes over infinity", "the ring is too thin"),
        ("image got a stop brighter when I put in the 0.7 reducer. how come", "1.03 stops brighter"),
        ("FD, OM and K on E and L, M in the middle: how many rings", "Together 5 adapters"),
        ("unscrewed the C lens 1/8 of turn, perfect then. spacer what size?", "0.794 mm pitch is 0.1 mm"),
        ("T2 wide open, 25p, iso 800, full sun", "10.4 stops of ND to hold back"),
        ("500 mirror on T2-E and i left a 10mm tube in between, is the moon gone?", "stops at 26 m"),
        ("why does a 1.4x converter turn my f/2.8 into f/4?", "f/2.8 x 1.4 = f/3.92"),
        ("does mft turn my f2 into f4, so do i need brighter lights", "No: f/2 exposes as f/2 on any sensor"),
        ("thread is an inch across and ten threads make 7.9 mm. what lens have i got", "may be: - 1-32 UN"),
        ("which thread do i draw for the C side: diameter + pitch", "25.4 mm wide, pitch 0.794 mm"),
        ("K lenses, no adapter yet, for Z body. cost?", "reaches infinity (likely). 1. K to Z ring"),
        ("50mm enlarger lens images at 43mm from its shoulder. 25-55 m42 helicoid + 1mm flat ring on MFT. infinity",
         "Even shut the helicoid is 2.25 mm too long"),
        ("m39 slr 50 on E with a 39-42 bush and m42-E ring", "stops at 9.72 m"),
        ("39mm lens goes 1 turn in the ring then needs force.. keep turning?", "Tight after 1 turn it is not home"),
        ("C lens on a CS cam without the spacer, i felt it touch something inside", "Stop, and do not switch on."),
        ("body setting for 16mm with no contacts?", "menus in short"),
        ("135 M42 on an OM slr with a 1 mm flanged ring, any use for landscape?", "stops at 12 m from the sensor"),
        ("m42 50 on K with the lipped ring, infinity?", "stops at 2.88 m"),
        ("cant find a K to L. K-M plus M-L the same thing?", "K to M ring + M to L ring"),
        ("rally stage, full sun, iso100, want 1/100 at f/4. filter?", "4.4 stops of ND to hold back"),
        ("own a 35 M rangefinder lens and just got an L body. whats the ring", "1. M to L ring"),
        ("OCT-19 75mm, heavy thing, onto my E camera", "the lens is said to be heavy; carry it by a foot or rods"),
        ("1.2 kg PL zoom on E", "the lens weighs 1.2 kg; carry it by a foot or rods"),
        ("my printed m42->Z ring came off the bed at 29.20. 35mm lens. infinity?", "0.26 mm too close"),
        ("PL to E ring, seller says 34, mine is 34.10. 18mm wide", "stops at 3.29 m"),
        ("why is it just a round blob of picture, 2/3 inch zoom on my MFT cam", "only 42 to 50 % is lit"),
        ("m42 50 on E, what do i need besides the ring", "reaches infinity (likely). 1. M42 to E ring"),
        ("135 OM tele on an F dslr, plain ring without glass, ring sticks out 1mm. sharp to where?", "stops at 12 m"),
        ("FD 200 on the A-mount slr, glass ring with the glass knocked out, about 1 mm of metal left", "stops at 12 m"),
        ("the 100 macro goes to half life size alone, now add the 20 and the 36 tube", "56 mm of tube adds 0.56x"),
        ("thoriated 50 1.4 M42 on E", "Caution: the glass holds thorium."),
        ("why does a glass FD to EF adapter make my 50 look longer, it says 1.25x", "50 x 1.25 = 62.5 mm"),
        ("85 wide open 1.8 on apsc 1.5, face at 2 m - nose and ears?", "sharp from 1.98 m to 2.02 m"),
        ("body cap + jam nut for a 39 thread enlarger lens, hole size?", "A plain hole of 39 to 39.5 mm"),
        ("how far off must a light be so i can set infinity with a 200mm", "200 mm lens: beyond 600 m"),
        ("16mm C lens on X, the ring i printed sits 1mm in front of the flange instead of in a cup. how far can it see",
         "stops at 25 cm"),
    ],
)  # fmt: skip
def test_what_such_a_question_asks_for_is_told(asked, text, says):
    assert says in flat(asked(text))


@pytest.mark.parametrize(
    ("turns", "says"),
    [
        (("how thick is a K to Z ring", "and the L one"), "K-mount lens on an L-mount body: a plain ring, seat 25.46"),
        (("thickness of an om to e ring?", "and for the X one"), "An OM-mount lens on an X-mount body"),
        (("cut an M42 to E ring, it came out 27.30. use it?", "so what shim", "where is infinity on a 50 without it?"),
         "a 50 mm lens has infinity at its 16 m mark"),
        (("24 mm hits infinity at 4 m on this adapter", "why is the 100 ok on it then"),
         "0.15 mm too close, infinity is sharp at this mark of the scale: 100 mm 69 m"),
        (("28mm, infinity comes at the 4 m mark", "how many foils if one is 0.02"), "0.2 mm is 10 x 0.02 mm"),
        (("om 24 on L with a ring that is 26.1", "why does a 50mm lens on the same ring look ok"),
         "24 mm 5.81 m, 50 mm 25 m"),
        (("om 24 on L, it stops at 6 m", "why is my 50 ok on it"), "of the 50 mm lies 4.3 times as far off"),
        (("m39 slr 58 on E", "he says he has LTM to E already"), "16.4 mm too close"),
        (("60mm with 36mm tube, how far and how big", "now reversed in front of a 180 instead"), "at infinity: 3x"),
        (("25mm f1.4 on mft, whats it like", "and as ff"), "frames like 50 mm on full frame"),
        (("define crop factor", "for a 1 inch type chip then"), "Crop factor: 1-type 2.73."),
        (("SR 50 on E ring is 25.78", "why is one side of the frame blurrier"), "The seat is not square"),
        (("is it C or CS, 12mm, 1-32 thread", "17.5. camera is CS, screwed straight on", "and to fix that"),
         "1. C to CS ring, 5 mm"),
        (("25mm f1.9 c lens on E", "will the lens hit anything", "how do i measure that"),
         "Lay a straight edge on the flange"),
        (("25mm f1.9 c lens on E", "what filter do i buy then", "will the lens hit anything"),
         "Not known before it is measured"),
        (("25mm f1.9 c lens on E", "i also have one that says 58 2 and M42"),
         "A 58 mm f/2 M42 lens on an E-mount body"),
        (("25mm f1.9 c lens on E apsc, cover?", "hm so how much do i zoom in the edit"), "punch in to 219 %"),
        (("m42 50 on X", "now bees. i have a 21 mm stack of tubes"), "21 mm of tube: sharp at 24 cm"),
        (("m39x1 slr 50 on E", "what if i use the lipped 39 to 42 ring and my m42-e?"), "stops at 2.09 m"),
        (("75 enlarger lens M39 on Z", "helicoid 17-31 m42 enough?"),
         "Beside the M42 helicoid 17..31 mm still to get: M39"),
        (("PL zoom on MFT, ring?", "will it cover? its a super 35 one"), "PL lens: covers Four Thirds"),
        (("K and F lenses on E", "the F one has no ring to turn for the aperture"),
         "An F-mount lens on an E-mount body"),
        (("58mm M42 on Z with my ring 29.6", "can i use tape"), "No, adding makes it worse, not better."),
        (("printed an OM to Z ring, infinity is at 4m on the 40mm lens", "so whats the right thickness",
          "i have 0.1 brass, how many"), "0.41 mm is 4 x 0.1 mm"),
        (("my 35 stops at 4m with this K-E ring, what is wrong", "and what should it measure",
          "what does a 100 do on the same ring"), "stops at 32 m"),
        (("25mm c lens on mft, how close", "why does it get darker closer up"), "close up it gets darker: Moved out"),
        (("50mm on my ring, infinity at the 11 m mark", "got shims of .05 and .1 only"), "it sits 0.23 mm too close"),
        (("85mm f2 projection lens, 52.5 barrel, for my E camera", "its always too bright, can i stop it to f8"),
         "The hole: 10.6 mm for f/8"),
    ],
)  # fmt: skip
def test_what_a_turn_leaves_out_is_taken_from_before(talked, turns, says):
    assert says in flat(talked(*turns))


def test_a_fact_asked_for_is_told_by_its_number_though_how_to_measure_it_was_asked_between(club):
    talk = Talk()
    for line in ("25mm f1.9 c lens on E", "will the lens hit anything", "how do i measure that", "4 mm"):
        found = club.ask(line, talk)
    assert found.question.said("rear_reach") == "4 mm"
    assert found.question.lens.focal_length_mm == 25
