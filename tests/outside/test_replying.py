"""A short question about the answer just given is answered with the number it asks for, not with the whole again."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.outside.running import piped


@pytest.mark.parametrize(
    ("first", "then", "told"),
    [
        ("how close does a 50mm f/2 m42 lens focus on e mount with a 20mm tube", "what magnifcation is that",
         "Magnification: 0.4x (20 mm)."),
        ("what is the full frame equivalent of a 13 mm D-mount lens on a Q-mount body", "crop factor?",
         "Crop factor: 4.65 (1/1.7-type)."),
    ],
)  # fmt: skip
def test_the_number_asked_for_is_told_alone(tmp_path: Path, first: str, then: str, told: str) -> None:
    whole, short = piped(tmp_path, [first, then])
    assert short["text"].strip().endswith(told)
    assert len(short["text"]) < len(whole["text"])
    assert short["quantities"] == whole["quantities"]


def test_what_names_no_number_of_the_answer_is_told_to_be_the_same(tmp_path: Path) -> None:
    first = "how close does a 50mm f/2 m42 lens focus on e mount with a 20mm tube"
    again = piped(tmp_path, [first, "and how near does that focus"])[-1]
    assert "Magnification" not in again["text"]
    assert "the rest stands as before" in " ".join(again["text"].split())
