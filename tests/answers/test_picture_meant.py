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
