"""What a text mentions: the phrases of the word list that answers listen for."""

from __future__ import annotations

import ast
from pathlib import Path

from engine.facts.catalogue import load_catalogue
from grammar.words.mentioned import mentioned
from grammar.words.wordlist import MENTION

ENGINE = Path(__file__).parents[2] / "engine"
PHRASES = {"vignet": ("vignet", "dark corner"), "up": ("up",), "cant": ("can't",)}


def keys(text: str) -> list[str]:
    return [key for key, _ in mentioned(text, PHRASES)]


def test_a_phrase_stands_for_the_words_that_begin_so() -> None:
    assert keys("Vignetting, or dark corners?") == ["vignet"]
    assert keys("unvignetted") == []


def test_a_short_phrase_stands_for_itself_alone() -> None:
    assert keys("the upper end") == []
    assert keys("what's UP?") == ["up"]
    assert keys("up16") == ["up"]


def test_curled_quotes_are_plain_ones() -> None:
    assert keys("it can\u2019t") == ["cant"]


def test_the_last_place_is_told() -> None:
    assert mentioned("up, then up", PHRASES) == (("up", 9),)


def test_every_phrase_that_an_answer_listens_for_is_in_the_list_and_none_is_idle() -> None:
    listed = {one.means.split()[1] for one in load_catalogue()[0].words.values() if one.means.startswith(f"{MENTION} ")}
    used: set[str] = set()
    for path in ENGINE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") in ("mentions", "last_said"):
                inside = (part for argument in node.args for part in ast.walk(argument))
                used |= {one.value for one in inside if isinstance(one, ast.Constant) and isinstance(one.value, str)}
    couplings = {f"coupled-{one}" for one in ("screw", "bayonet", "breech")}  # made of a mount's coupling
    sheets = {one for one in load_catalogue()[0].assumptions if one.startswith("sheet-")}  # each heard by its own id
    assert (used - {"", "coupled-"} | couplings) - sheets == listed - sheets
    assert sheets & listed
