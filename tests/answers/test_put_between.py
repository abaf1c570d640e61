"""What is put between lens and ring, or asked whether it is right, by whatever words: its number is its thickness."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


@pytest.mark.parametrize(
    ("said", "from_sensor_mm"),
    [
        ("a 0.5 shim between lens and ring, 50mm: what happens", 5100),
        ("a 0.5 washer between lens and ring, 50mm: what happens", 5100),
        ("what happens if i put a 1mm M42 washer between my 50 and the E ring", 2601),
    ],
)
def test_a_sheet_between_brings_the_far_end_near(desk: Desk, said: str, from_sensor_mm: float) -> None:
    rows = desk.ask(said).quantities or ()
    found = [row.value for row in rows if row.name in ("far_from_sensor_mm", "focus_from_sensor_mm")]
    found += [
        one.listed.judged.trace.value("far_from_sensor_mm")
        for one in desk.ask(said).chains or ()
        if not found
    ]  # fmt: skip
    assert any(value.least == pytest.approx(from_sensor_mm, rel=0.08) for value in found)


@pytest.mark.parametrize(
    "said", ["is 27.46 right for m42 e", "is 27.4 right for fd e?", "does 28.5 sound right for exakta e"]
)
def test_a_small_letter_behind_a_mount_is_the_body(desk: Desk, said: str) -> None:
    answer = desk.ask(said)
    assert answer.question is not None
    assert answer.question.body is not None
    assert answer.question.body.ids[:1] == ("e-mount",)


def test_what_hangs_off_a_mount_is_on_that_body(desk: Desk) -> None:
    question = desk.ask("is a 2.2 kg 500mm ok hanging off my E mount with a T2 adapter").question
    assert question is not None
    assert (question.lens and question.lens.ids[:1], question.body and question.body.ids[:1]) == (("t2",), ("e-mount",))
