"""A small letter that opens a question before the numbers of a lens is its mount; a plate of some length is a piece."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon


@pytest.mark.parametrize(
    ("text", "mount"),
    [("k 135/2.5, my E adapter measures 27.60", "k-mount"), ("f 35/2 on e, ring came 28.6", "f-mount")],
)
def test_the_first_letter_before_a_lens_is_its_mount(text: str, mount: str) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert got.lens is not None
    assert got.lens.ids[0] == mount


def test_an_article_is_none() -> None:
    got = read("a 50/1.8 on E", lexicon())
    assert isinstance(got, Question)
    assert got.lens is not None
    assert not got.lens.ids


def test_what_a_lens_goes_through_is_a_piece_where_its_length_is_told() -> None:
    got = read("OM 50 on an F body thru a home made 0.5 mm plate. infinity?", lexicon())
    assert isinstance(got, Question)
    assert [piece.thickness_mm for piece in got.adapters] == [(0.5, 0.5)]


@pytest.mark.parametrize(
    ("text", "focal", "stop"),
    [
        ("heron 61 50mm 2.8 ltm on mft", 50.0, 2.8),
        ("heron-9 85mm f2 m42 on E", 85.0, 2.0),
        ("my heron 44-2 58mm f2 m42 on E", 58.0, 2.0),
        ("heron 50 1.8 m42 on E", 50.0, 1.8),
    ],
)
def test_a_number_of_a_lens_s_own_name_is_no_second_lens(text: str, focal: float, stop: float) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert len(got.lenses) == 1
    assert got.lens is not None
    assert (got.lens.focal_length_mm, got.lens.f_number) == (focal, stop)


@pytest.mark.parametrize(
    ("text", "lens", "body"),
    [
        ("does m42 fit z", "m42", "z-mount"),
        ("does om fit e", "om-mount", "e-mount"),
        ("would an fd fit x", "fd-mount", "x-mount"),
        ("can ltm fit m", "ltm", "m-mount"),
        ("will m42 go on k", "m42", "k-mount"),
        ("does heron f fit rf", "f-mount", "rf-mount"),
    ],
)
def test_a_small_letter_beside_a_word_of_fitting_is_a_mount(text: str, lens: str, body: str) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert got.lens is not None
    assert got.body is not None
    assert (got.lens.ids[0], got.body.ids[0]) == (lens, body)


def test_letters_of_a_switch_and_of_a_battery_are_no_mounts() -> None:
    switch = read("A/M slider on the m42 lens, which way", lexicon())
    assert isinstance(switch, Question)
    assert [one.ids[0] for one in (*switch.lenses, *switch.bodies) if one.ids] == ["m42"]
    battery = read("can i power my b4 servo from a v-mount battery", lexicon())
    assert isinstance(battery, Question)
    assert {one.ids[0] for one in (*battery.lenses, *battery.bodies) if one.ids} == {"b4"}


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("body E and seven OM lenses, what rings", "7"),
        ("camera z and three om lenses", "3"),
        ("body e plus two OM lenses", "2"),
    ],
)
def test_a_body_before_lenses_that_are_counted_keeps_its_mount(text: str, count: str) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert [one.ids[0] for one in got.lenses] == ["om-mount"]
    assert str(got.lenses[0].count) == count
    assert got.body is not None
    assert got.body.ids[0] in ("e-mount", "z-mount")
