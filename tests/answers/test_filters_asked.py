"""Filters as they are asked for: one's own, split over, behind the lens; T-stops; where diffraction begins."""

from __future__ import annotations

from pathlib import Path

import pytest

from engine.answers.parts.answer import Answer
from engine.ask import Desk
from tests.desks import desk_of

DESK = desk_of()


@pytest.fixture(scope="module")
def owner(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    gear = tmp_path_factory.mktemp("gear") / "gear.yaml"
    lens = "lenses:\n  avocet: {name: avocet, mount: c, focal_length: 25 mm, f_number: f/1.4}\n"
    filters = "filters:\n  a: {name: small grey, mark: ND8}\n  b: {name: dark grey, mark: ND64}\n"
    gear.write_text(lens + filters, "utf-8")
    return Desk((), Path(gear))


def one(answer: Answer, name: str, case: str | None = None) -> float:
    return next(row.value.nominal for row in answer.quantities if row.name == name and case in (None, row.case))


def text(answer: Answer) -> str:
    return " ".join(line.text for line in answer.lines)


@pytest.mark.parametrize(
    "question", ["which of my filters for the avocet in full sun 1/50 iso 100", "share 9 stops between my filters"]
)
def test_ones_own_filters_are_stacked(owner: Desk, question: str) -> None:
    assert "stack ND64 and ND8: 9 stops" in text(owner.ask(question))


def test_stops_split_over_filters_are_wanted_and_not_too_many() -> None:
    found = text(DESK.ask("split 9 stops over ND8 ND64 ND4"))
    assert "stack ND64 and ND8: 9 stops" in found
    assert "20 stops" not in found


@pytest.mark.parametrize(
    ("question", "shift"),
    [
        ("3mm glass behind my 25mm, index 1.52, shim?", 3 * (1 - 1 / 1.52)),
        ("2 mm filter of index 1.6 behind the lens, how far does focus move", 2 * (1 - 1 / 1.6)),
        ("a gel of 0.1 mm in the rear slot, does it change focus on an 8 mm f/1.4", 0.1 * (1 - 1 / 1.52)),
    ],
)
def test_a_plate_behind_the_lens_moves_the_focus(question: str, shift: float) -> None:
    assert one(DESK.ask(question), "glass_shift_mm") == pytest.approx(shift)


def test_f_and_t_of_one_lens_tell_its_transmission() -> None:
    found = DESK.ask("what's the transmission of an f/1.4 lens marked T1.5")
    assert one(found, "transmission_share") == pytest.approx((1.4 / 1.5) ** 2)
    assert "80 %" not in text(found)


def test_a_t_stop_is_exposed_by_before_it_is_explained() -> None:
    found = DESK.ask("T2.1 lens with ND 1.2 full sun 180 degree shutter 24 fps iso 400")
    assert found.lines[0].text.startswith("9.3 stops of ND to hold back: T2.1")
    assert "For which f-number?" not in text(found)


def test_the_pixels_of_a_sensor_are_no_blur() -> None:
    found = text(DESK.ask("where does diffraction start on APS-C with 6000 x 4000 pixels"))
    assert "blurs more than 0.008 mm from f/5.9 on" in found
