"""What a question means by words that name little of it: likened stops, mounts and ways side by side, a plain pipe."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


@pytest.mark.parametrize(
    "text",
    [
        "everyone says my f1.4 is only f2.8 on micro four thirds, does that mean longer exposures",
        "does my f2 become f4 in light on mft",
        "is a 1.4 lens darker on micro four thirds, as it is said to be a 2.8",
    ],
)
def test_a_stop_that_a_crop_makes_exposes_as_it_is_engraved(club, text):
    assert flat(club.ask(text)).startswith("No: f/")


@pytest.mark.parametrize(
    "text", ["from f2 to f4 on mft is how many stops of light", "f1.4 to f2.8 on mft, how many stops"]
)
def test_stops_that_are_set_are_counted(club, text):
    assert flat(club.ask(text)).startswith("They are 2 stops apart")


@pytest.mark.parametrize(
    "text", ["microscope adapter says M25, mine are RMS. close enough?", "does RMS fit M25", "is M26 the same as RMS"]
)
def test_threads_of_objectives_apart_in_width_say_so(club, text):
    found = flat(club.ask(text))
    assert "20.32 mm" in found
    assert "drops through" in found


@pytest.mark.parametrize(
    "text",
    [
        "two 8mm lenses with the same 5/8 thread, one focuses wrong in my camera",
        "both have a 5/8 thread but one is out of focus",
    ],
)
def test_one_thread_with_two_registers_tells_both(club, text):
    assert {12.29, 7.8} <= {row.value.nominal for row in club.ask(text).quantities if row.name == "register_mm"}


@pytest.mark.parametrize("text", ["which of my grandfathers lenses is the sharpest", "which of my lenses is the best"])
def test_the_best_of_ones_lenses_is_declined(club, text):
    assert club.ask(text).intent == "out-of-scope"


@pytest.mark.parametrize(
    ("text", "seat"),
    [
        ("one ring OM to E or OM-M plus M-E, does it come out the same", "28 mm"),
        ("LTM to E directly or LTM-M + M-E: any difference in length?", "10.8 mm"),
        ("adaptall 2 lens on mft: one ring or adaptall to om plus om to mft, same thing?", "31.45 mm"),
    ],
)
def test_two_ways_of_one_length_say_so_first_where_that_is_asked(club, text, seat):
    found = club.ask(text)
    assert found.intent == "compare"
    assert flat(found).startswith(f"The same length either way, {seat} from seat to seat")


@pytest.mark.parametrize(
    "text", ["why does everyone say to buy the ring a bit thin", "why should the ring be a hair short"]
)
def test_why_a_ring_is_rather_thin(club, text):
    assert "One too thick loses infinity" in flat(club.ask(text))


@pytest.mark.parametrize(
    "text",
    [
        "why is a 1 inch sensor only 16 mm",
        "why are chips named in fractions of an inch",
        "how come an inch is 16 mm for sensors",
    ],
)
def test_why_sensors_are_told_in_inches(club, text):
    assert "old video tube" in flat(club.ask(text))


@pytest.mark.parametrize(
    "text",
    ["lens wont go past 20 meters away, how much do i file off the ring", "it stops at 12 m, how much to take off"],
)
def test_a_far_end_alone_asks_for_the_focal_length(club, text):
    found = club.ask(text)
    assert any(line.kind == "ask" and line.wants == "focal" for line in found.lines)


@pytest.mark.parametrize(
    ("text", "direct", "hub"),
    [
        ("5 lens mounts 3 bodies, rings via one hub - how many pieces instead of direct?", 15, 8),
        ("four lens mounts, three cameras: hub or direct", 12, 7),
        ("F, FD and C/Y glass, filming on an X and an RF body. how many rings straight, how many by M", 6, 5),
    ],
)
def test_rings_are_counted_for_bodies_told_by_number_and_mounts_by_letter(club, text, direct, hub):
    counts = {row.value.nominal for row in club.ask(text).quantities if row.name == "adapter_count"}
    assert {direct, hub} <= counts


@pytest.mark.parametrize("text", ["F, FD lenses on E", "F FD C/Y lenses on E", "my F/FD glass to E"])
def test_f_beside_fd_is_a_mount(club, text):
    assert [lens.ids[0] for lens in club.ask(text).question.lenses][:2] == ["f-mount", "fd-mount"]


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("adapter came 0.03 fat. 300mm. hawks a kilometre off ok?", "Yes: 1000 m is reached"),
        ("adapter 0.1 too thick, 200mm lens, birds at 50 m fine?", "Yes: 50 m is reached"),
        ("ring is 0.1 too thick, 50 mm, is 100 m still fine", "No: 100 m is out of reach"),
    ],
)
def test_whether_a_ring_that_is_off_still_reaches_so_far_is_said_first(club, text, begins):
    assert flat(club.ask(text)).startswith(begins)


@pytest.mark.parametrize(
    "text", ["is aps-c with a 0.71 reducer the same picture as full frame", "0.71 on apsc = full frame?"]
)
def test_a_reducer_is_set_against_full_frame(club, text):
    assert flat(club.ask(text)).startswith("APS-C behind 0.71x has nearly the same view as full frame")


@pytest.mark.parametrize(
    "text",
    [
        "35 f2 on apsc with a 0.71 reducer, what full frame lens gives the same view",
        "what lens on full frame matches a 35 on aps-c behind a 0.71 booster",
    ],
)
def test_the_glass_counts_in_the_lens_that_matches_a_view(club, text):
    found = club.ask(text)
    assert any(abs(row.value.nominal - 37.9) < 0.1 for row in found.quantities if row.name == "focal_length_mm")


@pytest.mark.parametrize(
    "text",
    [
        "how parallel must the faces of a ring be",
        "how flat must the two faces of an adapter be. i do 14mm f2.8 full frame",
    ],
)
def test_how_true_two_faces_must_be(club, text):
    assert flat(club.ask(text)).startswith("Keep the faces flat, and parallel within 0.02 mm")


@pytest.mark.parametrize(
    "said", ["can i put an aperture in it instead? its 50mm and i want f8", "home made aperture for f8, 50mm"]
)
def test_a_stop_made_by_hand_is_a_hole(club, said):
    last = talk(club, "projector lens f1.8, iso 100, 1/50, blazing sun. nd?", said)[-1]
    assert any(abs(row.value.nominal - 6.25) < 0.01 for row in last.quantities if row.name == "hole_mm")


@pytest.mark.parametrize(
    "text",
    [
        "smooth pipe, 42.5 mm, no thread no ring nothing. lens from a jumble sale",
        "a lens that is just a pipe of 52.5 mm, no thread",
    ],
)
def test_a_plain_pipe_is_the_barrel_of_a_projector_lens(club, text):
    assert "project" in flat(club.ask(text))


def test_mirrorless_or_not_is_no_condition(club):
    found = club.ask("what can hold my R slr lenses with infinity, mirrorless or not")
    assert "EF-mount: reaches infinity" in flat(found)


def test_a_rangefinder_screw_lens_on_an_slr_sits_too_far_out(club):
    found = club.ask("screwed a rangefinder 39mm-thread 50 straight into an old M39 SLR, it fits perfect. pictures?")
    assert "16.4 mm too far" in flat(found)


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("does the 0.64 thing make my f2.8 a f1.8", "Yes: f/2.8 x 0.64 = f/1.79"),
        ("does a 0.71 booster turn f2.8 into f2", "Yes: f/2.8 x 0.71 = f/1.99"),
        ("does a 0.71 booster turn f4 into f2", "No: f/4 x 0.71 = f/2.84"),
    ],
)
def test_whether_glass_makes_one_stop_of_another(club, text, begins):
    assert flat(club.ask(text)).startswith(begins)


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("will one ring take both FD and FL lenses", "Yes: FD-mount and FL-mount seat alike"),
        ("does one ring serve both K and M42 lenses on E", "No: a ring is made for one lens mount."),
        ("is one adapter enough for F and FD lenses", "No: a ring is made for one lens mount."),
    ],
)
def test_whether_one_ring_takes_lenses_of_several_mounts(club, text, begins):
    assert flat(club.ask(text)).startswith(begins)


@pytest.mark.parametrize(
    "text", ["lens-side foil shim or file down the camera ring, which would you rather", "shim or lap, which is better"]
)
def test_a_shim_and_lapping_cure_opposite_faults(club, text):
    assert "They cure opposite faults" in flat(club.ask(text))


def test_a_one_touch_zoom_is_no_touching(club):
    assert club.ask("70-210 one touch zoom with ibis, which number goes in").intent == "gear-setting"


@pytest.mark.parametrize("text", ["85 on a 1.6 crop body looks like a what?", "50 on aps-c looks like a what"])
def test_what_a_lens_looks_like_is_no_lens_wanted(club, text):
    assert "frames like" in flat(club.ask(text))[:45]


@pytest.mark.parametrize(
    "text",
    ["why does it jam after one turn its 42 and 42", "why does my 42mm lens bind after two turns in the M42 ring"],
)
def test_why_a_thread_jams_is_its_pitch(club, text):
    assert "a thread of another pitch" in flat(club.ask(text))[:160]


@pytest.mark.parametrize(
    "text",
    ["collapsible 50 in LTM, L-mount body. one ring direct or do I go ltm to m and then m to L",
     "OM on E direct or go OM to EF first and then EF to E"],
)  # fmt: skip
def test_one_ring_or_two_is_a_comparison(club, text):
    assert club.ask(text).intent == "compare"


@pytest.mark.parametrize(
    "text",
    ["film era wide is mush in the corners wide open on digital and it was lovely on film, why",
     "rangefinder wide smears the corners on digital, was sharp on film. why?"],
)  # fmt: skip
def test_why_corners_are_soft_comes_before_what_is_lit(club, text):
    assert not flat(club.ask(text)).startswith("Lens made for")


def test_a_camera_of_industry_with_a_c_thread_is_a_c_camera(club):
    found = club.ask("inspection rig: need an F mount 60mm on a C thread camera")
    assert found.question.body.ids[0] == "c"


@pytest.mark.parametrize(
    ("text", "off"),
    [
        ("rangefinder outer claw 34.85 lens in a ring cut for 31.75, bad?", -3.1),
        ("F lens in a ring made for 45.46, what happens", -1.04),
        ("OM 50 in an adapter meant for 46.5, ok?", 0.5),
    ],
)
def test_a_ring_made_for_another_register_sets_the_lens_off(club, text, off):
    found = club.ask(text)
    assert flat(found).startswith("A ring for a register of")
    assert any(abs(row.value.nominal - off) < 0.001 for row in found.quantities if row.name == "register_error_mm")


@pytest.mark.parametrize(
    "text",
    [
        "why wont tightening the adapter more give me infinity back",
        "why cant i just screw the lens in tighter to reach infinity",
    ],
)
def test_why_tightening_brings_no_infinity(club, text):
    assert "that seat sets the distance" in flat(club.ask(text))
