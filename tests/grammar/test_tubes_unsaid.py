"""Tubes told by length and place alone, lenses called wide, and rings that are photographed."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon


def _read(text):
    question = read(text, lexicon())
    assert isinstance(question, Question), text
    return question


@pytest.mark.parametrize("focal", [28, 85])
@pytest.mark.parametrize(
    "say",
    [
        "what happens if i stick 7mm behind a {f} wide",
        "7mm behind a {f}, what happens",
        "my {f} has 7mm behind it. where does it focus",
        "how near does a {f} get with 7mm behind it",
        "{f}mm, 7mm too much tube behind it. anything past arms length?",
        "detail shots of the rings: {f}mm with a single 7mm tube. how big are they",
        "ring shot, {f} + 7mm tube, how big does it come",
        "wedding rings: {f}mm with a 7mm tube. how big",
    ],
)
def test_a_tube_behind_a_lens(say, focal):
    question = _read(say.format(f=focal))
    assert [lens.focal_length_mm for lens in question.lenses] == [focal]
    assert [piece.thickness_mm for piece in question.adapters] == [(7, 7)]


@pytest.mark.parametrize(
    ("say", "lengths"),
    [
        ("the tube set is 9 16 30. all three behind a 50 in m42, what do i get", [9, 16, 30]),
        ("tubes 9 16 30, only the 9 and 30 on my 58 m42, how close", [9, 30]),
        ("7 14 and 28 all stacked, 135mm m42. ratio", [7, 14, 28]),
    ],
)
def test_a_set_of_tubes_and_what_is_taken_of_it(say, lengths):
    question = _read(say)
    assert [piece.thickness_mm[0] for piece in question.adapters] == lengths
    assert len(question.lenses) == 1


@pytest.mark.parametrize(
    "say",
    ["image lands 38mm behind the shoulder of the 50/1.4", "my 50 projector lens, image 38mm behind it, E body"],
)
def test_what_lies_behind_as_an_image_is_no_tube(say):
    question = _read(say)
    assert not question.adapters
    assert question.said("flange_to_image") == "38 mm"


@pytest.mark.parametrize(
    "say", ["20mm wide lens on E", "my 20mm wide on E, ring?", "20mm wide on E", "a 20mm wide M42 on E"]
)
def test_a_wide_lens(say):
    question = _read(say)
    assert question.lenses[0].focal_length_mm == 20
    assert question.bodies[0].ids == ("e-mount",)


@pytest.mark.parametrize(
    "say", ["the thread is 20mm wide", "it's 20mm wide", "mount is 20mm wide on the back. what is it"]
)
def test_a_width_is_no_lens(say):
    question = _read(say)
    assert not any(lens.focal_length_mm for lens in question.lenses)
    assert "20 mm" in dict(question.values).values()


@pytest.mark.parametrize(
    ("say", "focal"),
    [("half a mm spacer behind an 8mm cine. how far is it sharp", 8), ("65mm projector lens on E", 65)],
)
def test_what_may_name_a_film_is_the_focal_length(say, focal):
    assert _read(say).lenses[0].focal_length_mm == focal


def test_a_gauge_that_is_projected_names_the_film():
    assert _read("my 16mm projector lens on E").lenses[0].format == "16mm"
