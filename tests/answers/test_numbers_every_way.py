"""Numbers of the model asked for in many words: allowances, reducers' seats, glass, targets, sheets, pupils, blur."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import flat, numbers
from tests.desks import desk_of


@pytest.fixture(scope="module")
def club() -> Desk:
    return desk_of()


def told(club, *turns):
    talk = Talk()
    return [record_of(club.ask(turn, talk), club.knowledge) for turn in turns][-1]


def head(found):
    lines = flat(found)
    return lines.split("> ")[-1] if lines.startswith(">") else lines


def values(found, name):
    return [least for least, _ in numbers(found, name)]


@pytest.mark.parametrize(
    ("turns", "name", "value"),
    [
        (["how exact must a ring be for a 25 1.4 wide open on mft"], "infinity_allowance_mm", 0.021),
        (
            ["how exact must a ring be for a 25 1.4 wide open on mft", "and for the 50 1.8"],
            "infinity_allowance_mm",
            0.027,
        ),
        (["how much error is forgiven at f2.8 on s16"], "infinity_allowance_mm", 0.0283),
        (["depth of focus at the film side f2 aps-c"], "infinity_allowance_mm", 0.0393),
        (["what does a 135 give me on mft for the feeder"], "equivalent_focal_mm", 270),
        (["what will my 28 amount to on aps-c"], "equivalent_focal_mm", 42.7),
        (["what lens on mft sees like a 35 on full frame"], "focal_length_mm", 17.5),
        (["on aps-c, what replaces a 50 from full frame"], "focal_length_mm", 32.8),
        (["which focal do i enter for a 40mm on a plain ring on aps-c, 40 or 60"], "ibis_focal_mm", 40),
        (["reducer om to e whose glass shifts 6 mm, what seat?"], "ring_thickness_mm", 22),
        (["i measured my ef to mft speed adapter seat 17.3. how much does its glass shorten"], "glass_shift_mm", 7.45),
        (["d of 0.5 behind a 0.71 reducer counts as how much extension"], "extension_mm", 0.992),
        (["sensor stack thinned by 2 mm of glass. m adapters now too long or too short?"], "register_error_mm", 0.682),
        (["a camera with 0.8 mm glass vs 2 mm: how different is the register in effect"], "glass_shift_mm", 0.409),
        (["pupil ratio 1.6 retrofocus at 1x, marked f5.6, effective"], "effective_f_number", 9.1),
        (["what field width do i see at 0.25x on mft"], "field_width_mm", 69.2),
        (["how blurry is the horizon if im 0.5 mm off at f4"], "far_blur_mm", 0.125),
        (["blur allowed on 1 inch?"], "allowed_blur_mm", 0.011),
        (["10 turns carry the lens 7.5, which pitch is that"], "thread_pitch_mm", 0.75),
        (["two and a half turns of M42 thread is how far"], "shim_mm", 2.5),
        (["36 degrees of twist on a C screw"], "shim_mm", 0.0794),
        (["quarter life with the 200, mm of rings?"], "extension_mm", 50),
        (["third life on a 90, which tube"], "extension_mm", 30),
        (["two close ups +1 and +3 together on a 50"], "magnification", 0.2),
        (["f/1.4 lens that swallows 20 percent, t stop?"], "t_stop", 1.565),
        (["what does a 50 give me on mft", "now on 1.6x"], "equivalent_focal_mm", 80),
        (["sheet 4x5 lens, 163 circle exactly. any movements left on 6x9"], "shift_mm", 34.5),
        (["f22 pinhole disc for the 150, diameter"], "hole_mm", 6.82),
        (["waterhouse disc for 210mm at 16"], "hole_mm", 13.125),
        (["exit pupil 24 mm, entrance pupil 16 mm, half life size f/4 effective?"], "effective_f_number", 5.33),
        (["50mm at 0.5x, exit pupil is 0.7 of the entrance pupil, light lost?"], "light_difference_stops", 1.555),
        (["by what factor does exposure go up at 2:1"], "light_difference_stops", 3.17),
        (["f8 at 1/50, with an nd8 which aperture keeps the shutter"], "f_number", 2.83),
        (["stop disk 6 mm in a 50 lens, which f"], "f_number", 8.33),
        (["M42 to E with helicoid 15 long: how thick is the rest"], "stack_mm", 12.46),
        (["which is more tele: 135 on aps-c or 200 on full frame"], "equivalent_focal_mm", 200),
        (["f number two thirds between 5.6 and 8"], "f_number", 7.1),
        (["how many stops between full sun and open shade"], "light_difference_stops", 3),
        (
            ["turned my lens round, a window comes sharp 30 mm before the front glass, 50mm lens 5mm tube: how close"],
            "working_distance_mm",
            530,
        ),
        (["2x converter plus nd8, how many stops in all"], "light_difference_stops", 5),
        (["2.8 on a crop 1.6 body looks like which f as far as blur goes"], "equivalent_f_number", 4.48),
        (["my video mode crops another 1.2 on the mft body. 25mm ends up as?"], "equivalent_focal_mm", 60),
        (["which aps-c lens has the same view as a 25 on mft"], "focal_length_mm", 32.75),
        (["mark says 0.5 m on a 50, how far out is the lens then"], "extension_mm", 6.35),
        (
            ["180 mm lens, bellows at 220 from the film, factor?", "now i rack it out to 250"],
            "light_difference_stops",
            0.948,
        ),
        (
            ["putting a 2 mm clear window behind the lens, by how much must i pack the mount out"],
            "glass_shift_mm",
            0.684,
        ),
        (["male screw for 8 mm movie camera lens: how long so it does not bottom out"], "thread_length_mm", 2.92),
    ],
)
def test_the_number_asked_for_is_told(club, turns, name, value):
    assert any(one == pytest.approx(value, rel=0.01) for one in values(told(club, *turns), name))


@pytest.mark.parametrize(
    "text",
    [
        "my ef to mft 0.71 reducer measures 17.3 thick, infinity?",
        "my 0.71 reducer from m42 to e is 21.2 thick. will it reach infinity",
        "seat of a 0.71 ring ef to mft is 17.4 - is that plausible",
        "a 0.71 ef to mft ring 17.4 thick, infinity?",
        "0.72 fd-mft booster measures 15.9, ok?",
    ],
)
def test_a_ring_with_a_reducer_is_not_judged_by_its_thickness(club, text):
    found = told(club, text)
    assert not found.get("chains")
    assert "thickness alone does not tell" in flat(found)


@pytest.mark.parametrize(
    ("text", "starts"),
    [
        ("i have a 40m field behind the house. ok as infinity for the 90?", "No, 40 m is too near for 90 mm"),
        ("mast 600m away, can i treat it as infinity with a 180", "Yes, 600 m is far enough for 180 mm"),
        ("setting a 135 by a tree at 80m, how wrong is that", "No, 80 m is too near for 135 mm"),
        ("took a 1.5mm filter glass out from behind the lens, does focus shift and which way",
         "With 1.5 mm of glass out, the image lies 0.51 mm nearer"),
        ("3 layers of 0.05, is that enough for 0.2", "3 x 0.05 mm is 0.15 mm: for 0.2 mm that is 0.05 mm short"),
        ("alu tape 0.03 thick, i need a tenth and a half", "0.15 mm is 5 x 0.03 mm"),
        ("my shim stock comes as 1 thou 2 thou 4 thou. need 0.18 mm", "0.18 mm is 1 x 0.025 mm, 1 x 0.051 mm and 1 x"),
        ("shim of fifteen hundredths out of 2 thou stock", "0.15 mm is 3 x 0.051 mm"),
    ],
)  # fmt: skip
def test_the_answer_begins_with_what_was_asked(club, text, starts):
    assert starts in flat(told(club, text))[: len(text) + len(starts) + 20]


@pytest.mark.parametrize(
    "text",
    [
        "bellows at 120 mm draw, 80mm enlarger lens on a m42 body, what do i get",
        "bellows drawn to 120 mm with an 80mm enlarger lens on m42, magnification?",
    ],
)
def test_a_drawn_bellows_holds_an_enlarger_lens_so_far_from_the_sensor(club, text):
    found = told(club, text)
    assert found["reading"].count("120 mm") == 1
    size = found["chains"][0]["focus"]["far_magnification"]
    assert size["least"] < 165.46 / 80 - 1 < size["greatest"]


@pytest.mark.parametrize(
    ("turns", "error"),
    [
        (["my m42 to e ring is 27.36, 50mm lens", "plus a 0.05 washer"], "27.41 mm"),
        (["the printed FD-X ring ended up 24.55, fd 28 on it. skyline yes or no", "and if i shim 0.05 more on top"],
         "24.6 mm"),
    ],
)  # fmt: skip
def test_what_comes_on_top_of_a_measured_ring_makes_it_thicker(club, turns, error):
    assert error in told(club, *turns)["reading"]


def test_a_shim_pulled_from_a_ring_that_was_right_leaves_it_too_thin(club):
    found = told(club, "if i pull the 0.15 shim from a ring that was right, where does a 50 then show infinity")
    assert values(found, "register_error_mm") == [pytest.approx(-0.15)]
    assert values(found, "scale_mark_mm")[0] == pytest.approx(16767, rel=0.02)


@pytest.mark.parametrize(
    ("text", "error"),
    [
        ("0.5 m42-e ring too thick", "0.5 mm too thick"),
        ("0.3 om-z adapter too thin, 28mm", "0.3 mm too thin"),
        ("0.15 m42 to e ring too long 50mm", "0.15 mm too long"),
    ],
)
def test_by_how_much_a_ring_is_off_may_stand_before_its_mounts(club, text, error):
    assert told(club, text)["reading"].endswith(error)
