"""The same things in other people's words: rows of mounts, circles measured, a change of camera, what a lens is for."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk


@pytest.mark.parametrize(
    ("said", "lenses", "bodies"),
    [
        (
            "what rings do I buy for OM, K and the SLR R mount lenses on one L body",
            ["om-mount", "k-mount", "r-mount-slr"],
            ["l-mount"],
        ),
        (
            "One Z body, lenses: C/Y, OM and the SLR R bayonet. which adapters do I buy",
            ["cy-mount", "om-mount", "r-mount-slr"],
            ["z-mount"],
        ),
        (
            "three lens mounts (K, OM and M42) for E and Z bodies. how many rings direct",
            ["k-mount", "om-mount", "m42"],
            ["e-mount", "z-mount"],
        ),
        ("lens mounts: K, OM. camera mounts: E, Z. how many rings", ["k-mount", "om-mount"], ["e-mount", "z-mount"]),
    ],
)
def test_a_row_of_mounts_is_of_lenses(club: Desk, said: str, lenses: list[str], bodies: list[str]) -> None:
    question = club.ask(said).question
    assert question is not None
    assert [one.id for one in question.lenses] == lenses
    assert [one.id for one in question.bodies] == bodies


@pytest.mark.parametrize(
    ("said", "circle"),
    [
        ("a found lens throws a sharp disc on paper, diameter 18 mm by ruler, what 4:3 frame fits", "18 mm"),
        ("lens throws a round image, 1.5 inch across, does that do full frame", "38.1 mm"),
        ("the lens projects a bright circle. It is, measured, 26 mm in diameter. Largest 16:9 in it?", "26 mm"),
    ],
)
def test_what_is_measured_of_a_lit_disc_is_the_circle(club: Desk, said: str, circle: str) -> None:
    question = club.ask(said).question
    assert question is not None
    assert question.said("circle") == circle


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("moving from full frame to MFT, I want my 85 f/2 look back. what focal length", "Four Thirds needs 42.5 mm"),
        ("I shoot a 35 f/2 on full frame and switch over to MFT, same view and blur?", "Four Thirds needs 17.5 mm"),
        ("coming from APS-C with a 35mm f/2 to full frame now. which lens gives the same look", "needs 53.4 mm"),
    ],
)
def test_the_frame_one_goes_to_needs_the_lens(club: Desk, said: str, told: str) -> None:
    assert told in flat(club.ask(said))


@pytest.mark.parametrize("word", ["specified for", "rated for", "corrected for"])
def test_what_a_lens_is_rated_for_is_not_photographed(club: Desk, word: str) -> None:
    answer = club.ask(f"how far short does a 50 mm enlarger lens, {word} 35mm negatives, fall on 44x33")
    assert answer.intent == "coverage"
    assert "88 to 92 %" in flat(answer)


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("which is darker, ND8 or ND 0.9", "The same: ND8 and ND 0.9 are 3 stops each."),
        ("is an ND 1.2 stronger than an ND32?", "ND32 is the stronger: 5 stops, 1 more than ND 1.2."),
        ("I stack an ND8 with an ND64, how many stops darker", "Together 9 stops"),
    ],
)
def test_filters_set_against_each_other_are_not_summed(club: Desk, said: str, told: str) -> None:
    assert flat(club.ask(said)).startswith(told)


@pytest.mark.parametrize(
    "said", ["clouds came, meter shows 2 stops less", "overcast now, two stops darker", "it got 2 stops dimmer"]
)
def test_so_many_stops_darker_are_from_the_light_before(club: Desk, said: str) -> None:
    first = "which nd for f/2, 1/50, iso 400 in full sun"
    assert flat(talk(club, first, said)[-1]).startswith("7.4 stops of ND")


def test_the_stop_behind_the_filter_at_hand_is_told(club: Desk) -> None:
    last = talk(club, "which ND for T2.1, ISO 800, 24 fps, 180 degrees in sun", "only an ND 1.8 left. Which T-stop?")[
        -1
    ]
    assert "or at T9.2" in flat(last)


@pytest.mark.parametrize(
    ("said", "hole"),
    [
        ("my 90mm f/2.5 projection lens has no iris, a cardboard diaphragm for f/8 wants what hole", "11.2 mm for f/8"),
        ("making a card aperture for f/11 on a 135 f/2.8 slide lens: opening in the card?", "12.3 mm for f/11"),
    ],
)
def test_the_opening_of_a_stop_of_card_is_told(club: Desk, said: str, hole: str) -> None:
    assert flat(club.ask(said)).startswith(f"The hole: {hole}")


def test_a_ring_to_make_by_the_name_of_one_that_is_sold(club: Desk) -> None:
    assert "seat 27.5 mm" in flat(club.ask("Machining an SR (MD) to Z ring: what distance between both flanges?"))


def test_a_tolerance_of_the_register_is_no_depth_of_field(club: Desk) -> None:
    answer = club.ask("25mm f/2, MFT sensor: what tolerance on the register keeps infinity sharp enough wide open?")
    assert "forgives 0.03 mm" in flat(answer)


@pytest.mark.parametrize(
    "said",
    [
        "will a no-name C lens give a big enough image for APS-C",
        "does an unmarked C lens throw enough image for Micro Four Thirds",
    ],
)
def test_a_frame_to_be_lit_is_none_a_lens_is_made_for(club: Desk, said: str) -> None:
    answer = club.ask(said)
    assert answer.question is not None
    assert answer.question.lenses[0].format is None
    assert flat(answer).startswith("C lens: may or may not cover")


def test_a_seat_proud_of_the_flange_is_no_gap_under_a_cup(club: Desk) -> None:
    said = "my C to MFT cup: the seat sits 0.2 mm above the flange, lens 12.5mm. how bad"
    assert "1.92 mm too far out" in flat(club.ask(said))


@pytest.mark.parametrize("said", ["magnification fixed at 0.4", "the magnification locked at 0.4", "mag set to 0.4"])
def test_a_size_that_is_set_is_a_size(club: Desk, said: str) -> None:
    assert "Four Thirds takes in 43 x 32 mm" in flat(club.ask(f"bellows on MFT, {said}, what width does it cover"))


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("tube engraved 160/0.17 40/0.65, small screw of 20 mm. What is it?", "RMS"),
        ("projection lens, plain barrel 62.5 mm across, neither screw nor lugs. which mount", "Projection barrel 62.5"),
    ],
)
def test_what_is_measured_of_an_end_without_a_name(club: Desk, said: str, told: str) -> None:
    assert told in flat(club.ask(said))


def test_a_sheet_that_counts_the_glass_before_the_sensor_is_no_error(club: Desk) -> None:
    said = "why is flange to sensor 17.87 mm on my C camera with its 1 mm glass when C is 17.526"
    assert flat(club.ask(said)).startswith("The glass accounts for it: 1 mm before the sensor")
    assert "accounts" not in flat(club.ask("my C camera measures 18.2 mm flange to sensor, with 1 mm of glass. why"))


@pytest.mark.parametrize(
    "said",
    [
        "my 0.71x reducer gives a stop. glass cannot make light, so how on earth",
        "a 0.71 booster makes f/2.8 into f/2, where does the extra light come from",
    ],
)
def test_where_the_light_of_a_reducer_comes_from(club: Desk, said: str) -> None:
    answer = club.ask(said)
    assert answer.intent == "why"
    assert "same light" in flat(answer)
