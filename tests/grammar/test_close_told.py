"""Close up: what a lens draws by itself, how far its image stands, and the tube it gets, in many spellings."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon


def asked(text: str) -> Question:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert got.intent == "macro-distance"
    return got


@pytest.mark.parametrize(
    "text",
    [
        "105 mm does 0.5x by itself, with 10mm tube?",
        "the 105mm goes to 0.5x, adding a 10mm tube what magnification",
        "10mm tube on a 105mm which already reaches 0.5x",
        "105mm reaches 0.5x natively, 10 mm tube behind it?",
        "105 macro gives 0.5 by itself, 10mm tube on top makes it?",
        "105mm macro does 0.5 alone and I add a 10 mm tube, how big",
    ],
)
def test_what_a_lens_draws_by_itself_is_no_glass(text: str) -> None:
    got = asked(text)
    assert got.said("magnification") == "0.5"
    assert [(piece.piece, piece.thickness_mm) for piece in got.adapters] == [("extension-tube", (10.0, 10.0))]
    assert [lens.focal_length_mm for lens in got.lenses] == [105.0]


@pytest.mark.parametrize(
    ("text", "focal", "power"),
    [
        ("screwed a +2 on my 50, where does it focus", 50.0, 2.0),
        ("my 35 plus +4 closeup lens how big", 35.0, 4.0),
        ("close-up lens +10 with 50mm, working distance", 50.0, 10.0),
    ],
)
def test_a_strength_is_that_of_the_close_up_lens(text: str, focal: float, power: float) -> None:
    got = asked(text)
    assert [lens.focal_length_mm for lens in got.lenses] == [focal]
    assert [piece.factor for piece in got.adapters] == [power]


@pytest.mark.parametrize(
    "text", ["my 55 native 0.7m plus 5mm tube, min distance?", "55 mm native .7 m, 5 mm tube, nearest?"]
)
def test_a_length_in_metres_is_how_near_it_comes(text: str) -> None:
    got = asked(text)
    assert [lens.focal_length_mm for lens in got.lenses] == [55.0]
    assert got.said("close_focus") == "700 mm"


@pytest.mark.parametrize(
    ("text", "setting"),
    [
        ("infinity at 20.5 of 18-33 on the helicoid, what's left for macro with the 75", "20.5 mm"),
        ("m42 helicoid 25-55, my 105 has infinity at 31, closest?", "31 mm"),
        ("m42 helicoid 25-55 with my 105 at f/4, closest?", None),
    ],
)
def test_the_setting_that_has_infinity_is_none_of_the_ends(text: str, setting: str | None) -> None:
    got = asked(text)
    assert got.said("infinity_setting") == setting
    assert [piece.thickness_mm for piece in got.adapters if piece.piece == "helicoid"] != [None]


@pytest.mark.parametrize(
    "text", ["bellows out to 160, lens is an 80mm, how big is it", "80mm, bellows drawn out to 160 mm, how big"]
)
def test_a_bellows_is_drawn_so_far(text: str) -> None:
    got = asked(text)
    assert got.said("extension") == "160 mm"
    assert [lens.focal_length_mm for lens in got.lenses] == [80.0]


@pytest.mark.parametrize("lens", ["100mm lens", "100 lens", "100 mm lens", "my 100mm lens"])
def test_what_stands_before_lens_to_sensor_is_the_lens(lens: str) -> None:
    got = asked(f"{lens} to sensor 120mm, what magnification")
    assert [one.focal_length_mm for one in got.lenses] == [100.0]
    assert got.said("image_distance") == "120 mm"
