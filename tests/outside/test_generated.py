"""Some generated questions; `python -m tests.outside.generated 100000` asks the long row."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from engine.facts.catalogue import load_catalogue
from engine.facts.lexicon_store import lexicon_of
from grammar.words.atoms import key_of
from tests.outside.generated import GEAR, faults

RIGHT_FIRST = 0.95  # of one-letter slips in names
LETTERS = "abcdefghijklmnopqrstuvwxyz"


@pytest.mark.parametrize("count", [50, pytest.param(150, marks=pytest.mark.long)])
def test_whatever_is_asked_is_answered_or_refused(count: int, tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text(GEAR, encoding="utf-8")
    assert list(faults(count, 11, gear)) == []


def test_the_right_name_is_the_first_that_is_offered() -> None:
    lexicon = lexicon_of(load_catalogue()[0])
    names = [row for row in lexicon.names.values() if row[1] in ("mount", "lens", "body", "adapter")]
    chance, right, tried = random.Random(3), 0, 0
    while tried < 600:
        phrase, _, id_ = chance.choice(names)
        typed = _slip(phrase.casefold(), chance)
        if len(key_of(phrase)) < 3 or key_of(typed) in lexicon.names or not key_of(typed):
            continue
        tried += 1
        near = lexicon.nearest(typed)[:1]
        hit = lexicon.names.get(key_of(near[0])) if near else None
        right += hit is not None and (hit[2] == id_ or id_ in lexicon.several.get(key_of(near[0]), ()))
    assert right / tried >= RIGHT_FIRST


def _slip(word: str, chance: random.Random) -> str:
    """One letter put in, left out, exchanged, or swapped with its neighbour."""
    at = chance.randrange(len(word))
    letter = chance.choice(LETTERS)
    kind = chance.randrange(4)
    if kind == 0:
        return word[:at] + word[at + 1 :]
    if kind == 1:
        return word[:at] + letter + word[at + 1 :]
    if kind == 2:
        return word[:at] + letter + word[at:]
    return word[:at] + word[at + 1 : at + 2] + word[at] + word[at + 2 :]
