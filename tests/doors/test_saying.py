"""Questions over a pipe: what is a comment, and what a fault of the program's own leaves behind."""

from __future__ import annotations

import io
import json
from typing import Any

import pytest

from engine.answers.parts.answer import NOT_UNDERSTOOD
from engine.ask import Desk
from engine.doors.saying import answer_lines, say
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def records(shown: str) -> list[dict[str, Any]]:
    return [json.loads(line) for line in shown.splitlines()]


def test_a_comment_is_passed_over_and_the_second_one_is_not(desk: Desk, capsys: pytest.CaptureFixture[str]) -> None:
    lines = io.StringIO("# chains first\nhow do I get a QBM lens on a Z-mount body\n#and a comment\n#2\n")
    answer_lines(desk, lines, as_record=True, colour=False)
    first, second = records(capsys.readouterr().out)
    assert second["question"] == "#2"
    assert second["chains"][0]["pieces"] == first["chains"][1]["pieces"]


@pytest.mark.parametrize("on_a_pipe", [True, False])
def test_a_fault_of_its_own_is_told_as_a_problem(
    desk: Desk, on_a_pipe: bool, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def fails(*_: object) -> None:
        raise RuntimeError("stuck")

    monkeypatch.setattr(desk, "ask", fails)
    if on_a_pipe:
        status = answer_lines(desk, io.StringIO("anything\n"), as_record=True, colour=False)
    else:
        status = say(desk, "anything", as_record=True, colour=False)
    (record,) = records(capsys.readouterr().out)
    assert status == NOT_UNDERSTOOD
    assert record["intent"] is None
    assert "RuntimeError: stuck" in record["problem"]["found"]
