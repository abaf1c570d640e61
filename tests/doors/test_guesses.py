"""A number alone asks the guess that it stands before."""

from __future__ import annotations

import pytest

from engine.talk import Talk
from tests.desks import desk_of

DESK = desk_of()


@pytest.mark.parametrize("said", ["1", " 1. ", "#1", "1)"])
def test_a_number_after_an_unread_question_asks_the_guess(said: str) -> None:
    talk = Talk()
    unread = DESK.ask("how do I get an M24 lens on an F-mount body", talk).unread
    assert unread is not None
    assert unread.guesses[0] == "how do I get an M42 lens on an F-mount body"
    answer = DESK.ask(said, talk)
    assert answer.reading == unread.guesses[0]
    assert answer.chains


def test_guesses_are_gone_once_something_else_is_answered() -> None:
    talk = Talk()
    DESK.ask("how do I get an M24 lens on an F-mount body", talk)
    DESK.ask("how do I get a C lens on an E-mount body", talk)
    assert "C-mount" in DESK.ask("1", talk).reading


@pytest.mark.parametrize("said", ["0", "9", "1.5", "-1", "9" * 5000, "²"])
def test_other_numbers_are_what_they_are(said: str) -> None:
    talk = Talk(guesses=("what is a shim",))
    assert talk.meant(said) == said
