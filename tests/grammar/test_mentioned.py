"""What a text mentions: the phrases of the word list that answers listen for."""

from __future__ import annotations

import ast
from pathlib import Path

from engine.facts.catalogue import load_catalogue
from engine.facts.kinds import MOUNT_KINDS
from grammar.questions import OFF_KEY
from grammar.words.mentioned import Mention, mentioned, outside
from grammar.words.wordlist import MENTION

ENGINE = Path(__file__).parents[2] / "engine"
GRAMMAR = ENGINE.parent / "grammar"
LISTENING = ("mentions", "last_said", "number_beside", "places", "holds", "_is_off_by")
PHRASES = {"vignet": ("vignet", "dark corner"), "up": ("up",), "cant": ("can't",)}


def keys(text: str) -> list[str]:
    return list(dict.fromkeys(one.key for one in mentioned(text, PHRASES)))


def test_a_phrase_stands_for_the_words_that_begin_so() -> None:
    assert keys("Vignetting, or dark corners?") == ["vignet"]
    assert keys("unvignetted") == []


def test_a_short_phrase_stands_for_itself_alone() -> None:
    assert keys("the upper end") == []
    assert keys("what's UP?") == ["up"]
    assert keys("up16") == ["up"]


def test_curled_quotes_are_plain_ones() -> None:
    assert keys("it can\u2019t") == ["cant"]


def test_every_place_is_told() -> None:
    assert mentioned("up, then up", PHRASES) == (Mention("up", 0, 2), Mention("up", 9, 11))


def test_a_last_word_of_two_signs_stands_for_itself() -> None:
    assert not mentioned("the bare one", {"flush": ("bare on",)})
    assert mentioned("bare on my body", {"flush": ("bare on",)})


def test_signs_stand_for_numbers_words_and_either_word() -> None:
    ground = {"ground": ("ground|filed .. # off",)}
    assert mentioned("I filed a good 0.2mm off", ground) == (Mention("ground", 2, 24, 0.2),)
    assert not mentioned("I filed it with all the care i have, 0.2 off", ground)
    assert not mentioned("I filed 0.2 offset", ground)
    assert not mentioned("I ground it off", ground)


def test_a_word_that_is_closed_stands_for_no_longer_one() -> None:
    other = {"other": ("other|",)}
    assert mentioned("on the other", other) == (Mention("other", 7, 12),)
    assert not mentioned("otherwise", other)


def test_places_within_wider_ones_are_left_out() -> None:
    text = "the thick one is 0.1 too thick"
    found = mentioned(text, {"thick": ("thick|",), "pointed": ("thick one",)})
    thick, pointed = found[:2], found[2:]
    assert outside(thick, pointed) == (Mention("thick", 25, 30),)


def test_every_phrase_that_an_answer_listens_for_is_in_the_list_and_none_is_idle() -> None:
    listed = {one.means.split()[1] for one in load_catalogue()[0].words.values() if one.means.startswith(f"{MENTION} ")}
    called: set[str] = set()  # told where it is listened for
    named: set[str] = set()  # or kept under a name of its own
    for path in (*ENGINE.rglob("*.py"), *GRAMMAR.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and _name(node) in LISTENING:
                called |= {text for argument in node.args for text in _texts(argument)}
            if isinstance(node, ast.AnnAssign | ast.Assign) and node.value is not None:
                named |= _texts(node.value)
    couplings = {f"coupled-{one}" for one in ("screw", "bayonet", "breech")}  # made of a mount's coupling
    sheets = {one for one in load_catalogue()[0].assumptions if one.startswith("sheet-")}  # each heard by its own id
    kinds = {f"seen-{one}" for one in MOUNT_KINDS}  # made of the kind of a mount
    off = {one for one in listed if one.startswith(OFF_KEY)}  # heard by how they begin
    assert called - {"", "coupled-"} <= listed
    assert listed - sheets - off - couplings - kinds <= called | named
    assert sheets & listed


def _name(node: ast.Call) -> str:
    return str(getattr(node.func, "id", getattr(node.func, "attr", "")))


def _texts(node: ast.AST) -> set[str]:
    return {one.value for one in ast.walk(node) if isinstance(one, ast.Constant) and isinstance(one.value, str)}
