"""What is worked out of the picture: circles that no row tells, or close up, depths, strengths, tube lenses."""

from __future__ import annotations

import pytest

from engine.answers.parts.answer import Answer
from tests.desks import desk_of

DESK = desk_of()


def values(answer: Answer, name: str) -> list[float]:
    return [row.value.nominal for row in answer.quantities or () if row.name == name]


def text_of(answer: Answer) -> str:
    return " ".join(line.text for line in answer.lines)


@pytest.mark.parametrize("question", [
    "50mm academy lens on full frame, corners?", "an old lens for the academy gate, 75mm, enough for full frame?",
    "will a 40mm enlarger lens light up full frame", "lens made for 35mm academy, on aps-c",
])  # fmt: skip
def test_where_no_row_tells_of_such_a_lens_the_circle_is_asked_for(question: str) -> None:
    told = DESK.ask(question)
    assert "does not cover" not in text_of(told)
    assert "yes, it covers" not in text_of(told)
    assert any(line.kind == "ask" and "circle" in line.text for line in told.lines)


def test_at_life_size_the_circle_has_grown_and_1_to_1_is_no_shape() -> None:
    told = DESK.ask("at 1:1 will a c mount 25 cover aps-c")
    assert "1:1 crop" not in text_of(told)
    (circle,) = {row.value for row in told.quantities or () if row.name == "image_circle_mm"}
    assert (circle.least, circle.greatest) == pytest.approx((13 * 1.45, 22 * 2.1), abs=0.1)


@pytest.mark.parametrize(("question", "away"), [
    ("how far can subject be with 135/2.8 ff to have 10cm dof", 3502),
    ("50mm f2 aps-c, from what distance do i get 1 m depth of field", 5690),
])  # fmt: skip
def test_from_how_far_so_much_is_sharp(question: str, away: float) -> None:
    # 2Nc(1 + m)/(m*m - (Nc/f)^2) = T, thin
    assert values(DESK.ask(question), "focus_from_sensor_mm") == pytest.approx([away], rel=0.02)


def test_the_strength_for_a_distance_hangs_on_no_lens() -> None:
    assert values(DESK.ask("what power close up lens for half a meter"), "dioptres") == pytest.approx([2])


@pytest.mark.parametrize(("question", "size"), [
    ("4x objective infinity 200mm on a 100mm tube lens", 2), ("5x objective for 200mm tube lens, i use a 85", 2.125),
])  # fmt: skip
def test_of_two_tube_lenses_the_usual_one_is_what_the_mark_means(question: str, size: float) -> None:
    assert values(DESK.ask(question), "magnification") == pytest.approx([size])


def test_a_square_out_of_a_frame_needs_the_diagonal_of_the_square() -> None:
    assert "18.38 mm" in text_of(DESK.ask("how big a circle for a square crop out of mft"))


@pytest.mark.parametrize(("question", "focal", "stop"), [
    ("0.7x wide converter on the front of a 28mm f2.8, what is it then", 19.6, 2.8),
    ("does 0.7x wide converter in front change the f stop? 28mm f2.8", 19.6, 2.8),
    ("1.4x converter behind a 300mm f4, f?", 420, 5.6),
])  # fmt: skip
def test_a_converter_before_the_lens_keeps_the_f_number(question: str, focal: float, stop: float) -> None:
    told = DESK.ask(question)
    assert values(told, "focal_length_mm")[0] == pytest.approx(focal)
    assert values(told, "f_number")[0] == pytest.approx(stop)


def test_the_tube_from_one_distance_to_another_is_told() -> None:
    told = DESK.ask("extension to get from 0.45m to 0.3 m with a 50")
    assert any(one == pytest.approx(6.10, abs=0.01) for one in values(told, "extension_mm"))
