"""Numbers and mounts that stand beside a thing and are another's: in brackets, behind 'no ring', behind 'on'."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon


def asked(text: str) -> Question:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    return got


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("how close is a 28 (0.3 m) once a 6mm ring is under it", "300 mm"),
        ("35 (0.45) with a 12 mm tube, how near", "450 mm"),
        ("50/1.8 (60 cm) on a 10mm tube, how close", "600 mm"),
    ],
)
def test_a_distance_in_brackets_behind_a_lens_is_its_nearest_mark(text: str, mm: str) -> None:
    assert asked(text).said("close_focus") == mm


def test_glass_on_a_mount_is_a_lens_on_a_body() -> None:
    got = asked("k glass on e, which ring")
    assert [one.ids[0] for one in (*got.lenses, *got.bodies)] == ["k-mount", "e-mount"]


def test_what_is_not_there_has_no_length() -> None:
    got = asked("om lens on F with no ring 35mm")
    assert [lens.focal_length_mm for lens in got.lenses] == [35.0]
    assert all(piece.thickness_mm is None for piece in got.adapters)


def test_a_mount_that_is_denied_in_brackets_is_none() -> None:
    got = asked("M39 slr (not RF) 50/3.5 on x-mount, ring?")
    assert "rf-mount" not in [id_ for one in (*got.lenses, *got.bodies) for id_ in one.ids]


def test_a_row_of_tubes_ends_where_a_lens_of_ones_own_begins() -> None:
    got = asked("which tube (7 14 28) puts my 85 at what distance")
    assert [piece.thickness_mm for piece in got.adapters] == [(7.0, 7.0), (14.0, 14.0), (28.0, 28.0)]
    assert [lens.focal_length_mm for lens in got.lenses] == [85.0]


@pytest.mark.parametrize(("text", "mm"), [("a 0.5 c tube under my 75 cine lens, how far", 0.5)])
def test_less_than_a_millimetre_before_a_tube_is_its_length(text: str, mm: float) -> None:
    assert [piece.thickness_mm for piece in asked(text).adapters] == [(mm, mm)]


@pytest.mark.parametrize(
    "text",
    [
        "I have a dead K body to take the mount off and design a K to Z tube. how long must it be",
        "making a K to Z ring with the mount from a dead K body, how thick",
    ],
)
def test_a_body_that_gave_its_mount_is_not_what_the_ring_goes_on(text: str) -> None:
    got = asked(text)
    assert [(lens.ids[0], body.ids[0]) for lens, body in zip(got.lenses, got.bodies, strict=True)] == [
        ("k-mount", "z-mount")
    ]
