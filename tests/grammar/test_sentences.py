"""Each kind of question, in words of our own, is read as that kind with its lens and its body."""

from __future__ import annotations

import pytest

from grammar.kinds import INTENTS
from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon
from tests.grammar.sentences import SENTENCES


@pytest.mark.parametrize(("text", "intent", "lens", "body"), SENTENCES, ids=[row[0] for row in SENTENCES])
def test_the_sentence_is_read(text: str, intent: str, lens: str | None, body: str | None) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question), got
    assert got.intent == intent
    if lens is not None:
        assert lens in {id_ for thing in got.lenses for id_ in thing.ids}
    if body is not None:
        assert body in {id_ for thing in got.bodies for id_ in thing.ids}


def test_every_intent_has_a_sentence() -> None:
    assert {row[1] for row in SENTENCES} == set(INTENTS)
