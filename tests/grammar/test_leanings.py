"""The leanings of wording: fitted to the practice questions here, and right on those that were left out of the fit."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.facts.catalogue import load_catalogue
from engine.facts.lexicon_store import lexicon_of
from grammar.leanings import lean, leanings, packed, runs_of, unpacked
from tests.grammar.asked import asked
from tests.grammar.fit import ASKED, TABLE, by_source, digest, made_ready

# of questions in ordinary words that nothing was fitted to; which of the others are taken moves it by 0.015
LEAST_UNSEEN = 0.92
UNSEEN = "plain-long"


def test_the_table_that_ships_was_fitted_to_these_questions() -> None:
    """`python -m tests.grammar.fit --write` makes it anew."""
    assert json.loads(TABLE.read_text(encoding="utf-8"))["of"] == digest()


@pytest.mark.long
def test_questions_it_was_not_fitted_to_are_read_right() -> None:
    """A sixth of the others tells it; `python -m tests.grammar.fit --folds` fits to all of them."""
    rows = [row for row in asked() if row.intent in ASKED]
    told = [row for n, row in enumerate(rows) if n % 6 == 0 or row.source == UNSEEN]
    ready = made_ready(told, lexicon_of(load_catalogue()[0]))
    ((right, count),) = by_source(ready, [UNSEEN]).values()
    assert count > 300
    assert right / count >= LEAST_UNSEEN


@given(st.lists(st.integers(-2048, 2047)))
def test_what_is_packed_comes_out_again(weights: list[int]) -> None:
    assert unpacked(packed(weights)) == weights


def test_chances_add_up_and_the_evidence_raises_its_intent() -> None:
    wording = frozenset({"w:helicoid", "f:helicoid"})
    without = lean(wording, {}, "helicoid")
    with_it = lean(wording, {"hazard": 5.0}, "helicoid")
    assert sum(without.values()) == pytest.approx(1.0)
    assert set(without) == set(leanings().intents) == set(ASKED)
    assert with_it["hazard"] > without["hazard"]


def test_a_fragment_goes_on_with_what_was_asked_before() -> None:
    nothing = frozenset({"talk"})
    for intent in ASKED:
        after = nothing | {f"p:{intent}", f"pb:{intent}"}
        assert lean(after, {}, "and that?")[intent] > lean(nothing, {}, "and that?")[intent]


def test_a_word_that_no_question_had_is_told_by_its_letters() -> None:
    said = "refocusability unvignettedness"
    assert not frozenset({"w:refocusability", "w:unvignettedness"}) & leanings().rows.keys()
    assert lean(frozenset(), {}, said)["coverage"] > lean(frozenset(), {}, "")["coverage"]


def test_runs_of_letters_stay_within_words_and_are_told_once() -> None:
    assert runs_of("ring ring") == runs_of("ring")
    assert set(runs_of("ring thin")) == set(runs_of("ring")) | set(runs_of("thin"))
    assert runs_of("") == []
