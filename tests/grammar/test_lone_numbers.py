"""A number alone takes the place of the one of before that it is nearest to and may be."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon


def after(before: str, *turns: str) -> Question:
    question: Question | None = None
    for text in (before, *turns):
        got = read(text, lexicon(), question)
        assert isinstance(got, Question), got
        question = got
    assert question is not None
    return question


@pytest.mark.parametrize("text", ["21 then", "and 21", "what if it was 21"])
def test_near_the_tube_it_is_another_tube(text: str) -> None:
    got = after("how close does a 58mm f/2 M42 lens focus on E with a 10mm tube", text)
    assert got.lens is not None
    assert (got.lens.focal_length_mm, got.adapters[0].thickness_mm) == (58, (21, 21))


@pytest.mark.parametrize("text", ["and the 135", "85?", "what about the 28 lens"])
def test_near_the_lens_or_with_an_article_it_is_another_lens(text: str) -> None:
    got = after("how close does a 58mm f/2 M42 lens focus on E with a 10mm tube", text)
    assert got.lens is not None
    assert got.lens.focal_length_mm in (135, 85, 28)
    assert got.adapters[0].thickness_mm == (10, 10)


@pytest.mark.parametrize(
    ("text", "stop", "distance"), [("at 4", 4, 3000), ("5.6?", 5.6, 3000), ("at 7", 2, 7000), ("at 12", 2, 12000)]
)
def test_after_at_it_is_a_stop_or_a_distance(text: str, stop: float, distance: float) -> None:
    got = after("dof for 50mm f/2 at 3 m on full frame", text)
    assert (got.f_number or (got.lens and got.lens.f_number), got.distance_mm) == (stop, distance)


@pytest.mark.parametrize(("text", "key", "told"), [("400", "iso", "400"), ("50?", "frame_rate", "50")])
def test_light_has_numbers_of_its_own(text: str, key: str, told: str) -> None:
    assert after("which nd for f/2 25p in bright sun iso 100", text).said(key) == told


def test_the_widest_stop_may_name_the_lens() -> None:
    got = after("which nd for f/2 25p in bright sun iso 100", "and for the 2.8 lens")
    assert (got.f_number or (got.lens and got.lens.f_number), got.said("frame_rate")) == (2.8, "25")


def test_a_shape_is_told_where_a_frame_is_covered() -> None:
    assert after("does a 25mm C lens cover mft", "in 2.39?").said("crop") == "2.39:1"


def test_what_is_lacking_of_a_lens_without_a_mount_is_told_first() -> None:
    got = after("50mm enlarger lens on E, want 1:1, how long a stack", "45")
    assert (got.said("flange_to_image"), got.lens and got.lens.focal_length_mm) == ("45 mm", 50)


def test_a_number_with_words_of_its_own_is_left_alone() -> None:
    got = after("how close does a 58mm f/2 M42 lens focus on E with a 10mm tube", "at f/8")
    assert (got.f_number, got.adapters[0].thickness_mm) == (8, (10, 10))


def test_a_ratio_is_a_size_where_a_word_parts_it_from_the_lens() -> None:
    apart, beside = after("enlarger lens 75mm want 1:2 what extension"), after("50mm 1:2 M42 on E")
    assert dict(apart.values)["magnification"] == "0.5"
    assert beside.lens is not None
    assert beside.lens.f_number == 2


@pytest.mark.parametrize("text", ["all 49", "with all 49", "all 49 of it"])
def test_all_of_them_is_how_long_the_tubes_are_together(text: str) -> None:
    got = after("how close does a 58mm f/2 M42 lens focus on E with a 14 mm tube", text)
    assert got.lens is not None
    assert got.lens.focal_length_mm == 58
    assert [one.thickness_mm for one in got.adapters] == [(49, 49)]


def test_in_a_row_of_tubes_the_next_is_a_tube() -> None:
    got = after("how close does an 85 mm C/Y lens focus on E with the 12 mm tube", "the 20", "the 36")
    assert got.lens is not None
    assert (got.lens.focal_length_mm, got.adapters[0].thickness_mm) == (85, (36, 36))
