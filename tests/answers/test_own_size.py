"""Tubes behind a lens whose own largest magnification is told."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, flat, numbers


@pytest.mark.parametrize(
    ("text", "focal", "own", "tubes"),
    [
        ("lens is a 35mm with 0.21x max. with 10 or 21mm tubes?", 35, 0.21, (10, 21)),
        ("28mm f2.8 spec sheet .14x, 8 mm of tube behind", 28, 0.14, (8,)),
        ("85/1.8 max mag 0.13x + 36 mm tube", 85, 0.13, (36,)),
    ],
)
def test_the_tube_adds_to_what_the_lens_has(talked, text, focal, own, tubes):
    found = [row[0] for row in numbers(talked(text), "magnification")]
    for tube in tubes:
        assert close(own + tube / focal) in found


def test_what_is_short_of_the_size_wanted(talked):
    text = flat(talked("does a 16 mm ring take my 80 (half life size already) up to 1:1?"))
    assert "24 mm short: 0.7x" in text
    text = flat(talked("my 80 does 0.5x natively. will a 40 mm tube get it to life size"))
    assert "is enough: 1x" in text


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("my 60 macro stops at 0.5x. what does another 25mm of tube give me", 0.5 + 25 / 60),
        ("50mm macro gets to 0.5x, stick 14mm tube on", 0.5 + 14 / 50),
        ("60mm maxes at .5x add 20 mm tubes", 0.5 + 20 / 60),
        ("the 60 macro maxes out at 1:2, add 30mm of tubes, how large", 1.0),
    ],
)
def test_where_a_lens_ends_by_itself_is_its_own_size_and_no_glass(talked, text, size):
    found = talked(text)
    assert close(size) in [row[0] for row in numbers(found, "magnification")]
    assert "glass makes" not in flat(found)


@pytest.mark.parametrize(
    ("text", "extension"),
    [
        ("what tube gets my 50 to 0.5x", 25),
        ("50 plus 20mm tube to get 0.5x?", 25),
        ("how much tube does an 80 want to reach 0.6x", 48),
    ],
)
def test_the_size_that_a_tube_is_for_is_no_reducer(talked, text, extension):
    found = talked(text)
    assert close(extension) in [row[0] for row in numbers(found, "extension_mm")]


def test_each_of_two_lenses_has_its_own_nearest_mark(talked):
    found = flat(talked("M helicoid, 6mm travel. closest for a 50 that ends at 0.45m and a 35 that ends at 0.7m?"))
    assert "at its 45 cm mark (7.29 mm out" in found
    assert "at its 70 cm mark (1.95 mm out" in found


_OWN = ("adaptall 90/2.5 macro, E body full frame, ring?", "it goes to 0.5x alone. with a 25 mm tube?")


@pytest.mark.parametrize("turns", [
    (*_OWN, "f11 set there is really what"), (*_OWN, "real aperture at f11?"),
])  # fmt: skip
def test_the_stop_counts_by_both_together(talked, turns):
    assert flat(talked(*turns)).startswith("f/11 counts as f/20")


@pytest.mark.parametrize("turns", [
    (*_OWN, "f11 set there is really what", "so how thick is the sharp bit"), (*_OWN, "how deep is it at f11"),
    ("90mm macro does 0.5x alone, with 25 mm of tube on a full frame E body, how deep is it sharp at f11",),
])  # fmt: skip
def test_the_depth_goes_by_both_together(talked, turns):
    own, grown = 0.5, 0.5 + 25 / 90
    told = [row[0] for row in numbers(talked(*turns), "dof_mm")]
    assert close(2 * 11 * 0.030 * (1 + grown) / grown**2) in told
    assert close(2 * 11 * 0.030 * (1 + own) / own**2) not in told
