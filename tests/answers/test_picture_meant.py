"""What is meant by the numbers of a picture as they are dropped in passing, worked by hand."""

from __future__ import annotations

from math import log2

import pytest

from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import close, numbers, one


@pytest.mark.parametrize("text", ["marked 5.6 at 3:1, real number?", "at 3:1 my 5.6 becomes", "5.6 at 3x, actual f?"])
def test_a_bare_number_beside_a_magnification_is_a_stop(asked, text):
    assert one(asked(text), "effective_f_number") == close(5.6 * (1 + 3))


def test_a_measured_light_counts_more_than_the_name_of_the_light(asked):
    found = asked("1.4 open, 24p 180 degrees, iso 640, shade at about ev 12, how many stops of nd")
    assert one(found, "nd_stops") == close(12 + log2(6.4) - log2(1.4**2 * 48))


@pytest.mark.parametrize(
    ("text", "magnification"),
    [
        ("20x infinity objective, system is 200, i only have a 100 to put it on", 20 * 100 / 200),
        ("a 10x plan infinity objective made for 180mm tube, behind it a 135", 10 * 135 / 180),
        ("5x infinity corrected objective (200 system) with a 300mm tube lens, how big", 5 * 300 / 200),
    ],
)
def test_an_infinity_objective_goes_by_the_lens_behind_it(asked, text, magnification):
    assert one(asked(text), "magnification") == close(magnification)


def test_the_tube_lens_of_an_unknown_system_is_asked_for(asked):
    found = asked("10x infinity objective on a 135mm tele, what magnification")
    assert numbers(found, "magnification")[0] == close(10 * 135 / 200, 10 * 135 / 165)
    assert "Which tube lens" in found["text"]


@pytest.mark.parametrize(
    "text",
    ["flip the 2x in at 9mm on the broadcast zoom, what is it", "b4 zoom at 9 mm, flip the 2x in, what focal"],
)
def test_a_factor_known_by_its_article_is_an_extender(asked, text):
    found = asked(text)
    assert one(found, "focal_length_mm") == close(18)
    assert one(found, "light_difference_stops", "2x") == close(2)


@pytest.mark.parametrize(
    ("text", "rings"),
    [
        ("one set of NDs for 27, 35.5, 43 and 49 fronts. how", 4),
        ("lens fronts are 49, 52 and 55. one filter size?", 2),
        ("polariser for lenses with 40.5 / 49 / 58", 2),
        ("27mm and 43mm front threads, want one ND", 3),
    ],
)
def test_front_threads_told_together_are_brought_up_to_one_filter(asked, text, rings):
    assert one(asked(text), "adapter_count", "step-up rings") == rings


def test_focal_lengths_beside_a_filter_are_no_front_threads(asked):
    found = asked("which nd for a 28 and a 55 at f/2 in full sun, 1/50, iso 100")
    assert one(found, "nd_stops") == close(15 - log2(4 * 50))
    assert not numbers(found, "adapter_count")


def test_a_ring_set_against_a_reducer_tells_what_the_reducer_makes_of_a_lens_without_mount(asked):
    found = asked("ring vs .71 booster for my f2 fifty on micro4/3, what changes")
    assert one(found, "light_difference_stops") == close(-2 * log2(0.71))
    assert one(found, "focal_length_mm") == close(50 * 0.71)


def test_a_body_told_behind_an_enlarger_lens_is_no_mount_of_it(asked):
    found = asked("half life size with a 100 enlarger lens, mft. shopping list")
    assert "Micro Four Thirds body" in found["reading"]
    assert one(found, "extension_mm") == close(50)
    assert "sharp image" in found["text"]


@pytest.fixture
def talked(club):
    """The records of a talk, one for each turn."""

    def ask(*turns):
        talk = Talk()
        return [record_of(club.ask(turn, talk), club.knowledge) for turn in turns]

    return ask


def test_a_frame_told_anew_is_answered_though_a_word_may_point_at_a_chain(talked):
    _, found = talked("13mm d on a Q", "the first ones, 1/2.3 sensor. black corners?")
    assert one(found, "format_diagonal_mm") == close(7.6663)
    assert numbers(found, "image_circle_mm")


def test_tubes_add_up_over_the_turns_of_a_talk(talked):
    rows = talked("50mm F lens w a 12 tube", "add the 20", "plus the 36", "and at f8 thats really f?", "without the 12")
    assert [numbers(row, "magnification")[0][0] for row in rows] == [
        pytest.approx(length / 50, rel=1e-3) for length in (12, 32, 68, 68, 56)
    ]
    assert one(rows[3], "effective_f_number", "even pupils") == close(8 * (1 + 68 / 50))


def test_two_openings_are_set_apart_with_the_glass_that_one_wears(asked):
    found = asked("which is brighter: f2 with 1.4x or f2.8 bare")
    assert one(found, "light_difference_stops") == pytest.approx(0, abs=1e-6)
    found = asked("which is brighter: f2 with 2x or f2.8 bare")
    assert one(found, "light_difference_stops", "against") == close(2 * log2(4 / 2.8))


def test_a_tube_is_set_against_a_close_up_lens_at_one_size(asked):
    found = asked("tube or closeup lens for 85 at half life size")
    assert one(found, "extension_mm") == close(85 / 2)
    assert one(found, "dioptres") == close(1000 * 0.5 / 85)


def test_the_format_that_a_lens_is_for_stands_before_it_and_is_no_frame_it_lights(asked):
    found = asked("will a 16mm format 10mm lens light up a 1 inch sensor")
    assert numbers(found, "lit_share")[0][1] < 1
    assert "does not cover" in found["text"]


def test_a_shift_is_told_behind_its_word_and_the_focal_length_before_it(asked):
    found = asked("6x6 lens 80mm shifted 10mm on ff, covers?")
    assert "shifted 10 mm sideways needs 60.93 mm" in found["text"]


def test_an_extender_built_in_widens_the_circle(asked):
    found = asked("does a 2/3 tv zoom cover m43 if i use the built in 2x")
    assert numbers(found, "image_circle_mm", "2x")[0] == close(22, 23)  # such a zoom is B4


def test_a_variable_filter_is_told_by_its_stops(asked):
    found = asked("f/2.8 50fps 1/100 iso 400 bright sun, variable nd 2-5 stops enough?")
    assert numbers(found, "nd_stops", "variable")[0] == (2, 5)
    assert "2.4 stops lack" in found["text"]


def test_a_view_of_one_format_is_matched_on_another(asked):
    found = asked("35mm on s35 equals what on 16mm film for same view")
    assert one(found, "focal_length_mm", "like 35 mm") == close(35 * 12.703 / 31.11, rel=0.01)


def test_a_crop_told_before_a_lens_is_no_length(asked):
    assert one(asked("crop 2.7, 25mm 0.95?"), "equivalent_focal_mm") == close(25 * 2.7)


def test_a_subject_may_fill_the_height_of_the_frame(asked):
    assert numbers(asked("bug 8 mm, fill aps-c height?"), "light_difference_stops")[0][0] == close(
        2 * log2(1 + 15.6 / 8), rel=0.01
    )
    assert one(asked("bug 8 mm, fill aps-c"), "field_width_mm") == close(8)


def test_frame_rates_are_set_apart_in_stops(asked):
    assert one(asked("going from 25p to 120p, how much light gone"), "light_difference_stops") == close(log2(120 / 25))


def test_a_filter_is_told_as_the_stop_that_passes_as_much(asked):
    assert one(asked("3 stop nd on f2.8 like what f"), "f_number") == close(2.8 * 2**1.5)


def test_a_figure_in_inches_before_a_focal_length_is_the_format_of_the_lens(asked):
    assert "made for 2/3 in" in asked('2/3" 16mm f1.4 for a 1 inch chip, covered?')["reading"]


def test_a_decimal_between_a_focal_length_and_the_word_lens_is_its_stop(asked):
    found = asked("no iris 16mm 1.5 lens on 24fps 1/48 snow, iso 100, nd")
    assert one(found, "nd_stops") == close(16 - log2(1.5**2 * 48))


def test_the_ratio_of_a_zoom_is_no_magnification(asked):
    found = asked("12-120 10x on s16 in ff mm both ends")
    assert one(found, "equivalent_focal_mm", "12 mm on Super 16") == close(12 * 2.974)
    assert one(found, "equivalent_focal_mm", "120 mm on Super 16") == close(120 * 2.974)


def test_two_factors_before_a_lens_are_those_of_reducers(asked):
    found = asked("0.71 vs 0.64 on a 35 f1.4 mft")
    assert one(found, "focal_length_mm", "0.71x") == close(35 * 0.71)
    assert one(found, "focal_length_mm", "0.64x") == close(35 * 0.64)


def test_an_angle_wanted_on_a_body_asks_for_a_focal_length(asked):
    found = asked("what lens for 60 deg horizontal on mft")
    assert one(found, "focal_length_mm", "width") == close(17.3 / 2 / 0.57735)


@pytest.mark.parametrize("text", ["85mm 3m f2 to f4 total sharp mft", "85mm f2 and f4, 3m, mft dof"])
def test_each_of_two_stops_is_told_the_depth_of(asked, text):
    found = asked(text)
    assert numbers(found, "dof_mm", "f/2 at 3 m")
    assert numbers(found, "dof_mm", "f/4 at 3 m")


def test_a_filter_on_a_whole_setting_asks_for_the_new_shutter(asked):
    assert one(asked("nd1000 on 1/250 f8"), "shutter_s") == close(2**10 / 250)


def test_t2_beside_another_t_stop_is_no_mount(asked):
    found = asked("how many stops from t2 to t2.9")
    assert one(found, "light_difference_stops") == close(2 * log2(2.9 / 2))


def test_the_last_of_a_list_goes_with_it_and_is_no_front_of_a_ring(asked):
    found = asked("PK, MD and FD to X ring thicknesses")
    seats = {name: one(found, "ring_thickness_mm", name) for name in ("k-mount", "sr-mount", "fd-mount")}
    assert seats == {name: close(mm - 17.7) for name, mm in zip(seats, (45.46, 43.5, 42.0), strict=True)}


def test_a_figure_in_inches_behind_a_lens_is_the_format_of_the_lens(asked):
    found = asked('does 25 c 1.4 cctv 1/2" cover mft')
    assert numbers(found, "lit_share")[0][1] < 0.5


@pytest.mark.parametrize(
    ("text", "circle"),
    [
        ("13mm 1/2 inch c mount on mft, what is lit", (8, 9)),
        ("16mm 1 inch c mount on mft, dark corners?", (16, 18)),
        ('1.1" machine vision 16mm on mft, does it fill', (17.6, 18.5)),
    ],
)
def test_an_inch_figure_beside_a_focal_length_is_the_chip_a_lens_is_made_for(asked, text, circle):
    rows = {(row["least"], row["greatest"]) for row in asked(text)["quantities"]["image_circle_mm"]}
    assert circle in rows


def test_a_focal_length_told_twice_is_no_chip(asked):
    rows = asked("25mm 1 inch c mount on mft, is it lit")["quantities"]["image_circle_mm"]
    assert (16, 18) not in {(row["least"], row["greatest"]) for row in rows}


@pytest.mark.parametrize(
    ("text", "view"),
    [("17mm on a 1 inch, full frame would be", 46.4), ("35 2.8 SR on mft, what would it be in full frame", 70)],
)
def test_full_frame_is_what_is_compared_with_where_the_body_is_of_another_format(asked, text, view):
    assert round(view) in [round(low) for low, _ in numbers(asked(text), "equivalent_focal_mm")]


def test_full_frame_named_after_a_body_that_is_none_is_compared_with(talked):
    found = talked("35mm 2.8 SR on mft", "so on full frame that would look like")
    assert 70 in [round(row["least"]) for row in found[-1]["quantities"]["equivalent_focal_mm"]]
