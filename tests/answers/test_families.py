"""Which function answers a kind of question."""

from __future__ import annotations

import pytest

from engine.answers.families import _ANSWERED_BY, handler_for
from engine.answers.plain_talk import not_yet
from grammar.kinds import INTENTS


def test_only_kinds_of_question_that_there_are_have_an_answer() -> None:
    assert set(_ANSWERED_BY) <= set(INTENTS)


@pytest.mark.parametrize("intent", sorted(_ANSWERED_BY))
def test_what_answers_a_kind_of_question_is_there(intent: str) -> None:
    handler = handler_for(intent)
    assert callable(handler)
    assert handler is not not_yet
