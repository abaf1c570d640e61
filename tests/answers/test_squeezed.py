"""What an anamorphic lens or attachment makes of a picture, and that its factor is nothing else."""

from __future__ import annotations

import pytest

from tests.desks import desk_of

DESK = desk_of()


@pytest.mark.parametrize(
    ("question", "squeeze", "across"),
    [
        ("what's a 2x anamorphic with a 58mm on full frame equal to horizontally", "2x", 29.0),
        ("a 1.33x anamorphic in front of a 50mm f/2 M42 lens on an E-mount full frame body", "1.33x", 50 / 1.33),
        ("how close does a 50mm with a 1.5x anamorphic adapter focus", "1.5x", 50 / 1.5),
        ("view of a 40mm anamorphic 1.8x on APS-C", "1.8x", 40 / 1.8),
    ],
)
def test_the_factor_of_an_anamorphic_squeezes_the_width_alone(question: str, squeeze: str, across: float) -> None:
    answer = DESK.ask(question)
    assert answer.question is not None
    assert answer.question.said("squeeze") == squeeze
    assert answer.question.said("magnification") is None
    (seen,) = [row.value.nominal for row in answer.quantities if row.name == "squeezed_focal_mm"]
    assert seen == pytest.approx(across)


def test_a_factor_beside_no_anamorphic_stays_what_it_was() -> None:
    answer = DESK.ask("what tube for 1.5x with a 50mm lens")
    assert answer.question is not None
    assert answer.question.said("squeeze") is None


def test_a_full_frame_body_asks_for_no_drawing_of_the_frame_alone() -> None:
    answer = DESK.ask("draw a 50mm f/2 M42 lens on an E-mount full frame body")
    assert answer.question is not None
    assert answer.question.topic is None
