"""Lenses told by the kind of camera they are from, or by the figure of the sensor they are made for."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon


def _lens(text):
    question = read(text, lexicon())
    assert isinstance(question, Question), text
    assert len(question.lenses) == 1
    return question.lenses[0]


@pytest.mark.parametrize(
    ("say", "focal"),
    [
        ("will normal SLR 50s cover micro four thirds", 50),
        ("slr 28 on mft cover?", 28),
        ("my old slr 35/2.8 on Z", 35),
        ("a 135 off an old slr, fills full frame?", 135),
    ],
)
def test_the_lens_of_an_slr(say, focal):
    assert _lens(say).focal_length_mm == focal
    assert "slr" in _lens(say).traits


@pytest.mark.parametrize(
    ("say", "made_for"),
    [
        ("security cam lens for 2/3 inch used on a one inch type sensor, vignette?", "2-3-type"),
        ("c mount lens for 1/2 inch on a 2/3 sensor, corners?", "1-2-type"),
    ],
)
def test_the_figure_a_lens_is_for(say, made_for):
    assert _lens(say).format == made_for
    assert _lens(say).focal_length_mm is None
