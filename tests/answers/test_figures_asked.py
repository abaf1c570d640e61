"""One figure of a mount or a thread, a screw put into a thread that is not its own, a pitch read from a gauge."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("FZ camera - what flange depth", "FZ: register 19 mm"),
        ("what flange distance has the vl camcorder mount", "VL camcorder: register 20 mm"),
        ("flange to film of a BNCR please", "BNCR: register 61.468 mm"),
        ("bore of a PL", "PL: 54 mm across inside"),
        ("inner diameter of LPL", "LPL: 62 mm across inside"),
        ("pitch of an M8 lens", "M8 board: thread M8x0.35"),
        ("what pitch has a 46mm filter", "Filter thread 46 mm: thread M46x0.75"),
        ("D mount thread pitch", "D: thread 5/8-32 UN, 15.875 mm wide, pitch 0.794 mm (32 to the inch)"),
        ("rms thread angle", "RMS 0.800 in x 36 (W 0.8 x 1/36): flanks of 55 degrees"),
        ("male diameter of rms thread", "RMS 0.800 in x 36 (W 0.8 x 1/36): male thread 20.2 to 20.27 mm"),
        ("turning a c mount male thread, what OD do i aim for", "C: male thread 25.22 to 25.37 mm"),
    ],
)
def test_the_figure_that_is_asked_heads_the_answer(asked, text, head):
    assert flat(asked(text)).startswith(head)


@pytest.mark.parametrize("text", ["kinor 16 flange focal distance", "tfl 2 register", "maxi pl flange depth pls"])
def test_a_register_that_is_not_established_is_said_to_be(asked, text):
    found = asked(text)
    assert "its register is not established" in flat(found)
    assert not numbers(found, "register_mm")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("m8 lens in an m12 holder", "M8x0.35 (8 mm) drops through M12x0.5"),
        ("rms objective in a m25 hole", "drops through M25x0.75"),
        ("D lens into a c socket, does it screw in", "drops through 1-32 UN"),
        ("72mm enlarger lens into a M72 line scan camera", "M72x1 starts in M72x0.75, then binds"),
        ("c lens in a sm1 tube", "1-32 UN drops through without catching in 1.035 in-40"),
        ("M42 lens into an M42x0.75 thread?", "M42x1 starts, then binds in M42x0.75"),
        ("does an M42 lens screw into M42x0.75 ring", "M42x1 starts, then binds in M42x0.75"),
    ],
)
def test_what_a_screw_does_in_another_thread_is_told_first(asked, text, said):
    assert said in flat(asked(text))[:420]


def test_a_screw_wider_than_the_hole_does_not_start(asked):
    said = flat(asked("is an M25.5x0.75 tap as good as the c mount thread"))
    assert "M25.5x0.75 does not start in 1-32 UN" in said


def test_a_board_lens_in_a_cs_camera_is_not_ruled_by_the_ring_of_a_c_lens(asked):
    said = flat(asked("m12 board lens screws straight into the cs camera?"))
    assert "not without the ring" not in said
    assert "do not stop by themselves" in said


@pytest.mark.parametrize(
    ("text", "pitch"),
    [
        ("the lens says M42, pitch on the gauge 0.75", "0.75 mm"),
        ("lens says M42, pitch gauge says 0.75", "0.75 mm"),
        ("caliper 25.3, pitch gauge says 32", "32 tpi"),
        ("25.3 across and the thread pitch gauge shows 0.8", "0.8 mm"),
        ("39mm screw, thread gauge fits 26", "26 tpi"),
        ("thread 20.2, my pitch gauge says 36", "36 tpi"),
    ],
)
def test_what_a_gauge_says_is_a_pitch(asked, text, pitch):
    found = asked(text)
    assert found["intent"] == "identify-mount"
    assert pitch in found["reading"]


@pytest.mark.parametrize(
    ("say", "told"),
    [
        ("glass in front of mft sensor how thick", "Micro Four Thirds: about 4 mm of glass"),
        ("how thick is the sensor stack on E bodies", "E-mount: about 2 to 2.5 mm of glass"),
        ("cover glass thickness of a Z body?", "Z-mount: about 1.1 mm of glass"),
        ("how many mm of glass over an RF sensor", "is not established"),
        ("does the glass over the sensor differ between Z and E", "E-mount: about 2 to 2.5 mm of glass"),
        ("which full frame body has the thinnest sensor glass", "M-mount, 0.8 mm"),
        ("whose sensor glass is thickest", "Micro Four Thirds, 4 mm"),
        ("how far can rear elements go in on the 44x33 G mount", "may reach 10 mm behind the flange"),
        ("room behind the flange of RF bodies?", "not published"),
    ],
)
def test_what_lies_behind_the_flange_is_told(asked, say, told):
    assert told in flat(asked(say))[:220]


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("thread pitch on 86mm filters", "M86x1: thread M86x1, 86 mm wide, pitch 1 mm"),
        ("28.5mm filters which pitch", "M28.5x0.5: thread M28.5x0.5, 28.5 mm wide, pitch 0.5 mm. M28.5x0.6"),
        ("pitch of a 43mm filter", "M43x0.75: thread M43x0.75, 43 mm wide, pitch 0.75 mm. M43x0.5"),
        ("series 6 filter diameter", "Series VI drop-in filter: 41.3 mm across"),
        ("retaining ring of series 8", "Series VIII drop-in: 63.5 mm across; Retaining ring 66.7 mm"),
    ],
)
def test_filters_have_their_pitches_and_series_their_widths(asked, text, head):
    assert flat(asked(text)).startswith(head)


@pytest.mark.parametrize(
    "text", ["43mm filter stuck after half a turn, why", "37mm video filter goes half a turn then jams"]
)
def test_a_width_that_is_cut_with_two_pitches_is_told_where_a_filter_binds(asked, text):
    assert "are cut with pitches of 0.5 and 0.75 mm" in flat(asked(text))[:120]


@pytest.mark.parametrize(
    ("text", "lens"),
    [
        ("what will a D to C flush ring let a 13mm do", "13 mm D-mount lens"),
        ("what does the C to MFT ring let a 25mm do", "25 mm C-mount lens"),
        ("would a LTM to E ring give my 35mm infinity", "35 mm LTM lens"),
        ("does the flat M42 E ring make my 50mm sharp far", "50 mm M42 lens"),
        ("can the C to EF plate ring let a 25mm focus far", "25 mm C-mount lens"),
    ],
)
def test_a_length_with_an_article_behind_a_ring_is_that_of_the_lens(asked, text, lens):
    assert lens in asked(text)["reading"]


@pytest.mark.parametrize(
    "text", ["flange of 8mm cameras?", "flange of my 8mm turret camera", "flange to film, an 8mm spring wind camera"]
)
def test_the_width_of_film_before_a_camera_is_no_register(asked, text):
    found = asked(text)
    assert flat(found).startswith("D, which most cameras and lenses of Regular 8 have")
    assert "8 mm from flange" not in flat(found)


@pytest.mark.parametrize(
    "text", ["flange to image 20.8 what mount", "20.76 from the flange to the film gate, which mount"]
)
def test_metal_to_metal_through_a_prism_is_told_in_air(asked, text):
    said = flat(asked(text))
    assert "C-RX (reflex prism)" in said
    assert "metal to metal" in said
    assert "In air that is 17.53 mm" in said


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("how do i measure the size of a female thread with calipers", "Add one pitch"),
        ("objective thread 25mm 0.75 pitch marked infinity. what tube lens", "tube lens 200"),
        ("older plain 41mm push in lens into a 41 bayonet body, goes?", "go into bodies with the 41 mm bayonet"),
        ("why is a 2/3 inch chip only 11mm", "about 16 mm of diagonal"),
        ("darkfield objective on the camera, light streaming in from the side of the barrel", "ports"),
        ("integrator refuses to use F mount in his inspection rig, says it wobbles. is he right", "springs"),
        ("some say ltm glass goes in m39x1 and others say it jams. who's right", "0.977 and 1.000"),
        ("where could one buy PV lenses second hand", "rented"),
        ("two half inch camera lenses both bayonet, one wont reach focus on my cam. are there two types?", "35.74"),
    ],
)
def test_what_small_kinds_need_to_be_known_for_is_found(asked, text, said):
    assert said in flat(asked(text))


@pytest.mark.parametrize(
    "text",
    [
        "M42 slr lens on a line scan M42 body, what ring",
        "line scan camera with m42x1 hole, my slr M42 50mm. what ring",
        "M42 lens on a machine vision camera with M42 mount",
    ],
)
def test_a_screw_of_industry_has_not_the_register_of_stills(asked, text):
    said = flat(asked(text))[:400]
    assert "straight on, no adapter" not in said
    assert "M42x1 industrial, 16" in said


def test_m42_of_industry_and_of_stills_are_not_one(asked):
    assert flat(asked("is M42 of a line scan camera the same M42 as my old slr")).startswith("No, M42x1 at C register")


def test_one_thread_by_two_names_does_not_differ(asked):
    said = flat(asked("58mm filter thread and M58 industrial, do they screw together"))
    assert "the threads differ" not in said
    assert "only one of them has a register of its own" in said


@pytest.mark.parametrize(
    ("text", "mount"),
    [("little pinhole board lens, 7mm thread", "M7x0.35"), ("board lens with an 8 mm thread, what is it", "M8x0.35")],
)
def test_the_thread_of_a_board_lens_is_told_by_its_width(asked, text, mount):
    assert mount in flat(asked(text))[:90]


@pytest.mark.parametrize(
    "text",
    [
        "10x infinity objective on bellows how close",
        "RMS infinity on bellows, how close",
        "objective says 10x/0.30 ∞ and its 25mm wide at the screw",
        "plan 20x ∞/0 objective on tubes, sharp where",
    ],
)
def test_an_infinity_objective_is_held_at_no_distance_of_a_tube(asked, text):
    said = flat(asked(text))
    assert said.startswith("By itself it forms no picture")
    assert "150 mm from the sensor" not in said


def test_still_lenses_are_not_certainly_close_up_on_the_16_mm_reflex(asked):
    found = asked("M42 50mm on the K-3 m42 camera")
    assert found["chains"][0]["certainty"] == "borderline"
    assert flat(asked("M42 vs K-3 M42 same?")).startswith("Yes, M42 and M42 on a 16 mm reflex")


def test_no_lugs_are_none(asked):
    found = asked("plain sleeve 41mm with a tab, no lugs, 35mm newsreel lens")
    assert "41 mm from flange to image" not in flat(found)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("t2 telescope adapter wont take my M42 lens past one turn", "runs 0.25 mm apart over 1 turn: it binds"),
        ("tapping size for RMS female", "19.42 to 19.49 mm"),
        ("turning an M39x1 male: blank diameter?", "male thread 38.79 to 38.97 mm"),
        ("how wide do i turn the bar before cutting an M42 thread", "male thread 41.79 to 41.97 mm"),
        ("does my in camera metering know about the bellows or must i add it", "is counted already"),
        ("print a clamp for a 52.5 projector tube, bore?", "Sleeve bore 52.53 to 52.7 mm"),
        ("projector lens or enlarger lens for macro, which", "no iris"),
        ("peeking into a running film projector's lens", "look into while it is lit"),
        ("screw 35mm x .75 on a factory camera", "a metric M35: by these it is TFL"),
    ],
)
def test_the_head_is_what_was_asked(asked, text, said):
    assert said in flat(asked(text))[:400]


@pytest.mark.parametrize(
    ("text", "spacer"),
    [
        ("sensor sits 17.5 mm behind the M48 thread, corrector wants 55 mm. what spacer", 37.5),
        ("my astro cam says 55mm from the m48 thread. how long a spacer if camera itself is 17.5 deep", 37.5),
        ("coma corrector 55mm, camera 6.5 mm deep and a 20 mm filter wheel, what spacer", 28.5),
        ("corrector back focus 55, camera 6.5, oag 16.5, wheel 20. spacer?", 12),
        ("reducer asks for 85mm, dslr with T ring is 55. what tube", 30),
        ("flattener is 55, my M48 ring plus E body is 37+18, anything missing?", 0),
    ],
)
def test_what_a_corrector_wants_less_what_is_there_is_the_spacer(asked, text, spacer):
    found = asked(text)
    assert numbers(found, "stack_mm") == [(spacer, spacer)]
    assert flat(found).startswith(f"{spacer:g} mm of spacer" if spacer else "Nothing: 55 mm are wanted")


@pytest.mark.parametrize(
    ("lines", "head"),
    [
        (("what is a PV mount", "and the throat?"), "PV type: 49.5 mm across inside"),
        (("what is OCT-19", "bore?"), "OCT-19: 68 mm across inside"),
        (("what is C mount", "pitch?"), "C: thread 1-32 UN, 25.4 mm wide, pitch 0.794 mm"),
        (("what is S mount board lens", "tpi?"), "S (M12): thread M12x0.5"),
        (("PL lens on Z", "what about the throat"), "PL: 54 mm across inside"),
    ],
)
def test_a_figure_asked_in_a_talk_is_that_of_the_mount_spoken_of(talked, lines, head):
    assert flat(talked(*lines)).startswith(head)


@pytest.mark.parametrize("text", ["does the D lens go through the C hole", "does a D lens drop through the C hole"])
def test_whether_a_lens_falls_through_is_told_before_the_ways(asked, text):
    assert flat(asked(text)).startswith("5/8-32 UN (15.88 mm) drops through 1-32 UN")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("ltm lens into 39x24 thread", "starts, then binds in 39 mm x 24 tpi"),
        ("M39x1 lens in 39x24", "M39x1 starts, then binds"),
        ("will a M39x1 lens go in 39x26", "M39x1 mostly goes home, a tight pair binds"),
        ("25.5 filter ring into a c mount", "No, M25.5x0.5 and 1-32 UN are not the same"),
    ],
)
def test_a_thread_written_as_a_size_is_one(asked, text, said):
    assert said in flat(asked(text))[:330]


@pytest.mark.parametrize(
    "text", ["c mount 2x doubler: how much darker", "how much darker does a 2x extender make a c lens"]
)
def test_how_much_darker_is_asked_of_the_light(asked, text):
    assert flat(asked(text)).startswith("2x costs 2.0 stops of light")


@pytest.mark.parametrize(
    "text",
    [
        "50mm enlarger lens: how far from its flange does it form the image at infinity",
        "where does a 50 enlarger lens focus infinity",
        "register of a 50mm enlarger lens?",
    ],
)
def test_an_enlarger_lens_has_a_usual_place_of_its_image(asked, text):
    found = asked(text)
    assert "usually forms the far picture 42 to 52 mm behind its flange" in flat(found)
    assert (42.5, 52.5) in numbers(found, "register_mm")
