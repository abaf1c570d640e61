"""Lenses joined by 'and a', a piece with its ends told behind a comma, and how many rings there are."""

from __future__ import annotations

import pytest

from tests.answers.talks import talk


@pytest.mark.parametrize(
    ("say", "lenses"),
    [
        ("full frame equivalents of a 24 mm and a 60 mm on APS-C", [24, 60]),
        ("full frame equivalents of 25 mm and 35 mm lenses on MFT", [25, 35]),
        ("M42 with a 50 mm and an 85 mm on E, depth at 3 m f/4", [50, 85]),
    ],
)
def test_what_is_joined_to_a_lens_is_another(club, say, lenses):
    (answer,) = talk(club, say)
    assert [one.focal_length_mm for one in answer.question.lenses] == lenses


@pytest.mark.parametrize(
    ("say", "rings"),
    [
        ("an M42-E adapter plus a stepping ring, M39 to M42, under my 50 mm LTM lens: infinity?", 2),
        ("I have one adapter, K to E, for the K 50. ok?", 1),
        ("my kit is a helicoid, M42 to E, and a 50 mm M42 lens, infinity?", 1),
    ],
)
def test_the_ends_told_behind_a_piece_are_its_own(club, say, rings):
    (answer,) = talk(club, say)
    assert len(answer.question.adapters) == rings
    assert all(piece.front and piece.rear for piece in answer.question.adapters)


def test_a_rangefinder_lens_is_none_of_a_rarer_mount_that_sits_less_wrong(club):
    (answer,) = talk(club, "50 mm rangefinder lens (M39) with an M39-M42 ring and an M42-E ring")
    assert answer.question.lens.id == "ltm"
    assert answer.chains[0].listed.judged.verdict == "macro-only"


def test_as_many_rings_as_are_told_are_counted(club):
    (answer,) = talk(
        club,
        "enlarger 80 mm, flange to image 76, E-mount, helicoid 36 to 90 plus two rings of 1 mm each. infinity where?",
    )
    assert any(row.name == "helicoid_setting_mm" and row.value.nominal == 56 for row in answer.quantities or ())


def test_a_set_is_one_of_tubes(club):
    (answer,) = talk(club, "50mm at f/4 with the whole automatic extension set (12, 20 and 36 together), what ratio?")
    assert [one.thickness_mm[0] for one in answer.question.adapters] == [12, 20, 36]
