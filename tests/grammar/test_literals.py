"""Numbers as people type them."""

from __future__ import annotations

import pytest

from grammar.words.literals import literal_at


@pytest.mark.parametrize(
    ("text", "kind", "numbers"),
    [
        ("25mm", "LENGTH", (25,)),
        ("5cm", "LENGTH", (50,)),
        ('0.5"', "LENGTH", (12.7,)),
        ("1 inch", "LENGTH", (25.4,)),
        ('1/2"', "LENGTH", (12.7,)),
        ("3 m", "LENGTH", (3000,)),
        ("31cm", "LENGTH", (310,)),
        ("5.3in", "LENGTH", (134.62,)),
        ("6 ft", "LENGTH", (1828.8,)),
        ("17-31 mm", "RANGE", (17, 31)),
        ("17..31", "RANGE", (17, 31)),
        ("40.5-42", "RANGE", (40.5, 42)),
        ("f/1.4", "FNUM", (1.4,)),
        ("f1.4", "FNUM", (1.4,)),
        ("1:1.4", "FNUM", (1.4,)),
        ("f 2.8", "FNUM", (2.8,)),
        ("f/0", "FNUM", (0,)),
        ("25/1.4", "COMBO", (25, 1.4)),
        ("35 1.8", "COMBO", (35, 1.8)),
        ("85/2.8", "COMBO", (85, 2.8)),
        ("25mm/1.4", "COMBO", (25, 1.4)),
        ("135 mm / 2.8", "COMBO", (135, 2.8)),
        ("58mm/2", "COMBO", (58, 2)),
        ("T2.2", "TSTOP", (2.2,)),
        ("1/50", "SHUTTER", (0.02,)),
        ("ISO 800", "ISO", (800,)),
        ("25p", "FPS", (25,)),
        ("24 fps", "FPS", (24,)),
        ("EV 12", "EV", (12,)),
        ("$40", "PRICE", (40,)),
        ("20 bucks", "PRICE", (20,)),
        ("1:1", "RATIO", (1,)),
        ("5:1", "RATIO", (5,)),
        ("16:9", "ASPECT", (16, 9)),
        ("2x", "TIMES", (2,)),
        ("0.14x", "TIMES", (0.14,)),
        ("ND8", "ND", (8,)),
        ("ND 0.9", "ND", (0.9,)),
        ("26 tpi", "PITCH", (0.9769230769,)),
        ("0.8 pitch", "PITCH", (0.8,)),
        ("M42x1", "THREAD", (42, 1)),
        ("5/8-32", "THREAD", (15.875, 0.79375)),
        ("1 inch 32", "THREAD", (25.4, 0.79375)),
        ("39 x 26 tpi", "THREAD", (39, 0.9769230769)),
        ("1/4 turn", "TURNS", (0.25,)),
        ("1.5 turns", "TURNS", (1.5,)),
        ("#2", "ORDINAL", (2,)),
        ("1.8 kg", "WEIGHT", (1800,)),
        ("300 g", "WEIGHT", (300,)),
        ("180 degrees", "DEGREES", (180,)),
        ("1.5 stops", "STOPS", (1.5,)),
        ("44x33", "AREA", (44, 33)),
        ("12.9", "NUMBER", (12.9,)),
        (".71", "NUMBER", (0.71,)),
    ],
)
def test_a_written_number_is_what_it_says(text: str, kind: str, numbers: tuple[float, ...]) -> None:
    literal = literal_at(text, 0)
    assert literal is not None
    assert (literal.kind, literal.end) == (kind, len(text))
    assert literal.numbers == pytest.approx(numbers)


@pytest.mark.parametrize("text", ["T2", "M42", "f00", "fd", "infinity", "C", "ef-m"])
def test_a_name_is_no_number(text: str) -> None:
    assert literal_at(text, 0) is None


def test_in_before_a_place_is_no_inch() -> None:
    literal = literal_at("2 in the bag", 0)
    assert literal is not None
    assert literal.kind == "NUMBER"
