"""Close-up lenses before a lens: alone, stacked, with tubes, and for a size that is wanted."""

from __future__ import annotations

from pathlib import Path

import pytest

from engine.answers.parts.answer import Answer
from engine.answers.parts.card_parts import spoken
from tests.desks import desk_of

DESK = desk_of()
OWN = desk_of(Path(__file__).parents[1] / "data" / "cards-gear.yaml")


def one(answer: Answer, name: str, case: str) -> float:
    (found,) = {row.value.nominal for row in answer.quantities if row.name == name and row.case == case}
    return found


def test_stacked_powers_add_and_the_f_number_stays() -> None:
    found = DESK.ask("+1 +2 +4 dioptres stacked on a 58mm f/2 lens on full frame, how big")
    case = "+7 dioptre at infinity"
    assert one(found, "magnification", case) == pytest.approx(58 * 7 / 1000)
    assert one(found, "working_distance_mm", case) == pytest.approx(1000 / 7)
    assert one(found, "field_width_mm", case) == pytest.approx(36 / 0.406)
    assert one(found, "effective_f_number", case) == pytest.approx(2)
    assert one(found, "extension_mm", "58 mm lens, as large by a tube") == pytest.approx(0.406 * 58)


@pytest.mark.parametrize(("question", "power"), [
    ("+3 dioptre close-up lens, lens at infinity: how near is it sharp", 3),
    ("close up filter +4, working distance?", 4), ("stacked +1 and +4 close up lenses, how close", 5),
])  # fmt: skip
def test_how_near_a_close_up_lens_is_sharp_hangs_on_no_focal_length(question: str, power: int) -> None:
    found = DESK.ask(question)
    assert one(found, "working_distance_mm", f"+{power} dioptre at infinity") == pytest.approx(1000 / power)


@pytest.mark.parametrize("question", ["close-up lens +1 +2 +4 on 50mm", "close up lenses +1, +2 and +4 on 50mm"])
def test_powers_told_behind_the_name_count_as_those_before_it(question: str) -> None:
    assert one(DESK.ask(question), "magnification", "+7 dioptre at infinity") == pytest.approx(0.35)


def test_with_a_tube_both_count_and_the_tube_alone_costs_light() -> None:
    found = DESK.ask("close-up lens +3 with a 12 mm tube on a 50mm f/2 lens on APS-C")
    case = "+3 dioptre and 12 mm of tube"
    assert one(found, "magnification", case) == pytest.approx(0.24 + 1.24 * 0.15)
    assert one(found, "effective_f_number", f"{case}, even pupils") == pytest.approx(2 * 1.24)
    assert found.lines[0].text.startswith(case)


def test_the_power_for_a_size_is_told_first() -> None:
    found = DESK.ask("which close-up lens for 1:2 with an 85mm")
    assert found.lines[0].text.startswith("For 0.5x on 85 mm at infinity: +5.9 dioptres")


def test_a_subject_that_all_but_touches_is_warned_of() -> None:
    text = " ".join(line.text for line in DESK.ask("+60 dioptre close-up lens on a 50mm f/2 lens on APS-C").lines)
    assert "knock against it" in text


def test_a_card_tells_what_the_close_up_lens_before_it_does() -> None:
    answer = OWN.ask("card for the knot on the skiff with a +2 close-up lens")
    assert answer.cards is not None
    (card,) = answer.cards.cards
    told = " ".join(spoken(alert.text) for alert in card.alerts)
    assert "without the close-up lens; with +2, ring at infinity: sharp 50 cm before it, 0.1x" in told
