"""Rims before a lens: what a step down takes from it, how many filters stand on it, and what stepping up gives."""

from __future__ import annotations

import pytest

from tests.desks import desk_of

DESK = desk_of()


def text(question: str) -> str:
    return " ".join(line.text for line in DESK.ask(question).lines)


@pytest.mark.parametrize(
    ("question", "head"),
    [
        ("a 55-49 step down on a 135mm f/2.8 on full frame, corners?", "It stops a 135 mm f/2.8 down to about f/2.9"),
        ("step down ring 52 to 40.5 on a 50mm f/1.8, does it vignette on full frame", "It leaves a 50 mm f/1.8"),
        ("does a 77-58 step-down ring on an 85mm f/1.2 vignette on full frame", "It stops an 85 mm f/1.2 down to"),
    ],
)
def test_a_step_down_is_told_by_what_passes_it(question: str, head: str) -> None:
    assert text(question).startswith(head)


def test_filters_that_fit_before_a_lens_are_counted() -> None:
    wide = DESK.ask("how many filters can i stack on a 28mm with 52mm thread on full frame")
    (count,) = [row.value for row in wide.quantities if row.name == "filter_count"]
    # 4 to 10 mm to spare; each 4 to 7 mm filter asks for twice its height times the tangent of half the diagonal angle
    assert (count.least, count.greatest) == (1, 2)
    assert "more than anybody stacks" in text("how many filters can I screw on a 200mm f/4 lens on APS-C")


def test_stepping_up_first_clears_the_corners() -> None:
    assert "they cut the corners" in text("three filters on a 24mm lens on full frame, dark corners?")
    stepped = text("52 to 77 step up ring and three filters on a 24mm on full frame, does it vignette")
    assert "the corners stay clear" in stepped
    assert "25 mm of stepping up counted" in stepped


def test_filters_of_two_sorts_are_two() -> None:
    assert text("polariser and nd on a 24mm lens on full frame, dark corners?").startswith("2 before a 24 mm")
