"""Rows of marks: which numbers are those of a focus scale, and in which unit."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.desks import desk_of

DESK = desk_of(Path(__file__).parents[1] / "data" / "cards-gear.yaml")
FOOT = 304.8


def marks(question: str) -> list[float]:
    answer = DESK.ask(question)
    assert answer.question is not None
    said = dict(answer.question.values).get("mark", "")
    return [float(one.removesuffix(" mm")) for one in said.split(", ") if one]


@pytest.mark.parametrize(
    ("question", "unit", "wanted"),
    [
        ("my lens is marked in feet: 3 4 5 7 10 15 30 inf, it's the knot on the skiff with a 5 mm tube", FOOT,
         (3, 4, 5, 7, 10, 15, 30)),
        ("what do the marks 0.5 0.7 1 1.5 3 mean on the knot on the skiff with a 5 mm tube", 1000,
         (0.5, 0.7, 1, 1.5, 3)),
        ("the scale of my knot reads 3, 5, 10 and 30 ft, what are they on the skiff with a 2 mm spacer", FOOT,
         (3, 5, 10, 30)),
        ("what do the 5/7/10 feet marks mean on an 85 with a 2 mm spacer", FOOT, (5, 7, 10)),
        ("85mm on a 3 mm spacer: engraved 10 5 3 2 1.5 metres", 1000, (10, 5, 3, 2, 1.5)),
    ],
)  # fmt: skip
def test_a_row_beside_a_word_for_a_scale_is_its_marks(question: str, unit: float, wanted: tuple[float, ...]) -> None:
    assert marks(question) == pytest.approx([one * unit for one in wanted])


@pytest.mark.parametrize(
    "question",
    [
        "how close does a 50mm lens focus with tubes of 10, 16 and 21 mm",
        "compare a 28, a 35 and a 50 on APS-C",
        "which of ND 2, 4 and 8 for f/2.8 in full sun",
    ],
)
def test_a_row_of_something_else_is_none(question: str) -> None:
    assert not marks(question)


def test_the_whole_scale_is_told_anew_and_nothing_else() -> None:
    answer = DESK.ask("marks 3 5 10 30 ft on a 50mm lens that sits 0.2 mm too far out")
    found = {row.case: row.value.nominal for row in answer.quantities if row.name == "remarked_mm"}
    assert list(found) == ["3 ft mark", "5 ft mark", "10 ft mark", "30 ft mark", "infinity mark"]
    spread = 10 * FOOT - 100
    x = (spread - (spread**2 - 4 * 2500) ** 0.5) / 2 + 0.2
    assert found["10 ft mark"] == pytest.approx(100 + 2500 / x + x, rel=0.01)


def test_what_is_said_of_a_lens_names_it() -> None:
    answer = DESK.ask("my lens is hazy, it's the knot: how close does it focus on the skiff")
    assert answer.question is not None
    assert [thing.ids for thing in answer.question.lenses] == [("knot",)]


def test_a_card_bears_the_marks_that_were_told() -> None:
    answer = DESK.ask("card for the knot on the skiff, marked in feet 3 5 7 15 30")
    rows = [row.case for row in answer.quantities if row.name == "focus_from_sensor_mm" and "may be" not in row.case]
    assert [case.removeprefix("card 1, ring at ") for case in rows if "ft" in case] == [
        "30 ft", "15 ft", "7 ft", "5 ft", "3 ft",
    ]  # fmt: skip
