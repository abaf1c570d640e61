"""A crop body that no factor is told of has the usual smaller frame; where the seat is asked it is a body like any."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon


def formats_of(text: str) -> set[str | None]:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    return {one.format or one.ids[0] for one in (*got.bodies, *got.things) if one.format or one.kind == "format"}


@pytest.mark.parametrize(
    "text",
    [
        "28mm + .71 booster, E mount crop camera, how wide",
        "35 on a crop body in full frame terms",
        "50mm on a cropped K body, equivalent",
    ],
)
def test_a_crop_body_has_the_usual_smaller_frame(text: str) -> None:
    assert formats_of(text) == {"aps-c-1.5"}


@pytest.mark.parametrize("text", ["50mm crop body 1.6x, equivalent", "2x crop camera with a 50", "M42 on a crop body"])
def test_not_where_a_factor_is_told_or_the_seat_is_asked(text: str) -> None:
    assert "aps-c-1.5" not in formats_of(text)


@pytest.mark.parametrize(
    ("text", "crop"),
    [
        ("4k window on this m43 cam is 2.2x, so my 20 is", "2.2"),
        ("this body is 1.6x, whats my 28 then", "1.6"),
        ("the picture on the sensor is 2x", None),
        ("magnification on the sensor is 1.4x, 60mm lens, how close", None),
    ],
)
def test_a_factor_that_a_body_or_its_mode_is_said_to_be_is_its_crop(text: str, crop: str | None) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert got.said("crop") == crop
