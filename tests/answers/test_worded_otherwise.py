"""The same things in other people's words: rows of mounts, circles measured, a change of camera, what a lens is for."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat


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
