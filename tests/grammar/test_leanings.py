"""The leanings of wording: fitted to the practice questions here, and right on those that were left out of the fit."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.facts.catalogue import load_catalogue
from engine.facts.lexicon_store import lexicon_of
from grammar.leanings import lean, leanings, packed, unpacked
from tests.grammar.asked import asked
from tests.grammar.fit import ASKED, TABLE, by_source, digest, made_ready

# of questions in ordinary words that nothing was fitted to; which quarter of the others is taken moves it by 0.015
LEAST_UNSEEN = 0.92
UNSEEN = "plain-long"


def test_the_table_that_ships_was_fitted_to_these_questions() -> None:
    """`python -m tests.grammar.fit --write` makes it anew."""
    assert json.loads(TABLE.read_text(encoding="utf-8"))["of"] == digest()


def test_questions_it_was_not_fitted_to_are_read_right() -> None:
    """Half of the others and few rounds tell it; `python -m tests.grammar.fit --folds` fits to all of them."""
    rows = [row for row in asked() if row.intent in ASKED]
    told = [row for n, row in enumerate(rows) if n % 2 == 0 or row.source == UNSEEN]
    ready = made_ready(told, lexicon_of(load_catalogue()[0]))
    ((right, count),) = by_source(ready, [UNSEEN], rounds=4).values()
    assert count > 300
    assert right / count >= LEAST_UNSEEN


@given(st.lists(st.integers(-2048, 2047)))
def test_what_is_packed_comes_out_again(weights: list[int]) -> None:
    assert unpacked(packed(weights)) == weights


def test_chances_add_up_and_the_evidence_raises_its_intent() -> None:
    wording = frozenset({"w:helicoid", "f:helicoid"})
    without = lean(wording, {}, "", False)
    with_it = lean(wording, {"hazard": 5.0}, "", False)
    assert sum(without.values()) == pytest.approx(1.0)
    assert set(without) == set(leanings().intents) == set(ASKED)
    assert with_it["hazard"] > without["hazard"]


def test_a_fragment_goes_on_with_what_was_asked_before() -> None:
    nothing = frozenset({"talk"})
    for intent in ASKED:
        assert lean(nothing, {}, intent, True)[intent] > lean(nothing, {}, "", True)[intent]
