"""Names are found however they are typed, and a misspelt one is told the right one."""

from __future__ import annotations

import json
import random
import string
from typing import Any

import pytest

from grammar.words.lexicon import Lexicon
from grammar.words.plain_lexicon import from_plain, to_plain
from grammar.words.tokens import tokens_of
from tests.desks import desk_of
from tests.grammar.names import MOUNTS, lexicon, words


def mounts_in(text: str, within: Lexicon | None = None) -> list[str]:
    from grammar.things.letters import settled

    line = tokens_of(text, within or lexicon())
    return [token.ids[0] for token in settled(line.tokens) if token.kind == "MOUNT"]


@pytest.mark.parametrize(
    ("text", "mounts"),
    [
        ("E-mount", ["e-mount"]),
        ("e mount", ["e-mount"]),
        ("emount", ["e-mount"]),
        ("E mount lens", ["e-mount"]),
        ("m4/3", ["mft-mount"]),
        ("m43", ["mft-mount"]),
        ("micro four thirds", ["mft-mount"]),
        ("c/y", ["cy-mount"]),
        ("cy lens", ["cy-mount"]),
        ("M42s", ["m42"]),
        ("ef-m", ["ef-m-mount"]),
        ("C lens", ["c"]),
        ("D to C ring", ["d", "c"]),
        ("C + LTM + M42", ["c", "ltm", "m42"]),
        ("FD, OM, K and F lenses", ["fd-mount", "om-mount", "k-mount", "f-mount"]),
        ("on e", ["e-mount"]),
        ("c or cs", ["c", "cs"]),
        ("a lens with a ring", []),
        ("i have a camera", []),
        ("it's a 50", []),
        ("a large amount", []),
        ("an A-mount lens", ["a-mount"]),
        ("a r-something", []),
    ],
)
def test_names_are_found_as_they_are_typed(text: str, mounts: list[str]) -> None:
    assert mounts_in(text) == mounts


def test_a_name_cut_in_two_is_not_the_name() -> None:
    within = Lexicon.build([("AR-mount", "mount", "ar"), ("R-mount", "mount", "r")], words())
    assert mounts_in("a R-mount lens", within) == ["r"]


def test_the_users_own_name_wins_over_a_shipped_one() -> None:
    names = [("tern", "mount", "m1"), ("tern", "lens", "own-lens")]
    within = Lexicon.build(names, words(), own={"own-lens"})
    assert within.name("tern").id == "own-lens"
    within = Lexicon.build(reversed(names), words(), own={"own-lens"})
    assert within.name("tern").id == "own-lens"


def test_a_shared_designation_keeps_all_its_mounts_the_likeliest_first() -> None:
    assert lexicon().name("f").ids == ("f-mount", "ar-f-mount", "pen-f")


def slips(name: str, chance: random.Random) -> str:
    at = chance.randrange(len(name))
    sort = chance.randrange(4)
    letter = chance.choice(string.ascii_lowercase)
    if sort == 0:
        return name[:at] + name[at + 1 :]
    if sort == 1:
        return name[:at] + letter + name[at:]
    if sort == 2 or at + 1 == len(name):
        return name[:at] + letter + name[at + 1 :]
    return name[:at] + name[at + 1] + name[at] + name[at + 2 :]


def test_one_slip_still_finds_the_name_first() -> None:
    """In 95 of 100, over names told apart by more than a letter or two: 'C-mount' is one slip from 'D-mount'."""
    chance = random.Random(7)
    long_names = [
        (id_, phrase)
        for id_, phrases in MOUNTS.items()
        for phrase in phrases
        if len(_key(phrase).removesuffix("mount")) >= 4
    ]
    asked = found = 0
    for id_, phrase in long_names * 12:
        slip = slips(phrase.casefold(), chance)
        if slip.replace("-", "") == phrase.casefold().replace("-", ""):
            continue
        near = lexicon().nearest(slip, ("mount",))
        asked += 1
        found += bool(near) and id_ in lexicon().name(_key(near[0])).ids
    assert found / asked >= 0.95


def _key(phrase: str) -> str:
    from grammar.words.atoms import key_of

    return key_of(phrase)


def test_swapped_letters_count_as_one_slip() -> None:
    assert lexicon().nearest("M24", ("mount",))[0] == "M42"
    assert lexicon().nearest("exakat", ("mount",))[0] == "Exakta"


@pytest.mark.parametrize(
    ("slip", "word"), [("adpater", "adapter"), ("infinty", "infinity"), ("helicod", "helicoid"), ("moutn", "mount")]
)
def test_a_slip_in_a_word_of_the_language_is_mended(slip: str, word: str) -> None:
    assert lexicon().words.mended(slip) == word


def test_a_lexicon_kept_as_plain_values_is_the_same() -> None:
    kept = json.loads(json.dumps(to_plain(lexicon())))
    assert from_plain(kept) == lexicon()
    own = Lexicon.build([("tern", "lens", "t")], [], own={"t"})
    assert from_plain(json.loads(json.dumps(to_plain(own)))) == own
    nothing = Lexicon.build([], [])
    assert from_plain(json.loads(json.dumps(to_plain(nothing)))) == nothing


ODD: list[Any] = [None, 3, "x", [], {}, [[1]], {"a": 1}, [[[]]], {"a": [1]}, [["a", "b"], ["c"]]]


@pytest.mark.parametrize("part", sorted(to_plain(Lexicon.build([], []))))
def test_plain_values_out_of_shape_are_refused_or_harmless(part: str) -> None:
    good = json.loads(json.dumps(to_plain(lexicon())))
    for odd in ODD:
        try:
            spoilt = from_plain({**good, part: odd})
        except ValueError:
            continue
        tokens_of("put a C lens on my E-mount body with a helicoid", spoilt)
    with pytest.raises(ValueError, match="lexicon"):
        from_plain({key: held for key, held in good.items() if key != part})


def test_a_small_a_by_itself_opens_no_name() -> None:

    found = desk_of().lexicon
    assert mounts_in("the lens has a bayonet", found) == []
    assert mounts_in("the lens has an A bayonet", found) != []
    spoken = {one.id for one in tokens_of("what does a focal reducer do", found).spoken if one.kind == "term"}
    assert "focal-reducer" in spoken
    assert "afocal" not in spoken
