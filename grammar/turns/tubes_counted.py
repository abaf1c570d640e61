"""How many of what was told are meant: 'both', 'two of them', 'and with three'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.hearing import Heard
from grammar.questions import Question, Thing
from grammar.things.casting import SPACER
from grammar.turns.number_roles import length_of, tubes_off
from grammar.words.groups import LIKE_BEFORE

_COUNTS: Final = (2, 3, 4)
_IDLE_WORDS: Final = frozenset(["FILLER", "VERB", "DET", "MARK", "STOP", "CUE", "JOIN", "PREP"])
_ALL: Final = "pick:all"
_BOTH, _TOGETHER = "pick:both", "add-up"


def says_both(heard: Heard) -> bool:
    """'both', 'those two together'."""
    together = _are_those(heard) and heard.tells(_TOGETHER)
    return together or heard.tells(_BOTH) or any(token.text.casefold() == "both" for token in heard.line.tokens)


def counted(heard: Heard) -> int:
    """How many of what was told are meant: 'two of them', 'and with three'; 0 where that is not said."""
    counts = [token.numbers[0] for token in heard.line.tokens if token.kind == "NUMBER"]
    told = any(token.kind == "LENGTH" for token in heard.line.tokens)  # 'all three tubes, 47 mm together'
    several = len(counts) == 1 and not told and counts[0] in _COUNTS
    several = several and (heard.tells(_ALL) or _is_count_alone(heard)) and not _are_those(heard)
    return int(counts[0]) if several and not says_both(heard) else 0


def _are_those(heard: Heard) -> bool:
    """'light for each of those two': the two that were told of, where 'two of those' are so many."""
    pairs = pairwise(heard.line.tokens)
    return any(LIKE_BEFORE in one.groups and two.kind == "NUMBER" and two.text.isalpha() for one, two in pairs)


def several_of_one(heard: Heard, before: Question) -> tuple[Thing, ...]:
    """'what if I use two of them' after one tube: so many of its length; 'three' after two of them: so many more."""
    count = counted(heard)
    every = {one.thickness_mm: one for one in (*before.adapters, *before.stood) if one.piece == SPACER}
    whole = heard.tells(_ALL) and "all" in heard.text.casefold().split()
    if count and count == len(every) and whole and all(map(_is_one_length, every.values())):
        return (*(one for one in before.adapters if one.piece != SPACER), *every.values())  # 'all three'
    tubes = [one for one in before.adapters if length_of(one) is not None and (one.piece == SPACER or _is_named(one))]
    named = any(one.piece == SPACER for one in heard.cast.pieces)
    tubes = tubes or (list(tubes_off(before)) if named else [])  # 'two tubes?' after the one that is off now
    if not count or len({length_of(one) for one in tubes}) != 1 or not all(map(_is_one_length, tubes)):
        return ()
    return (*(one for one in before.adapters if one not in tubes), *([tubes[0]] * count))


def _is_named(piece: Thing) -> bool:
    """'the 5 mm C tube': one that is known by name."""
    return bool(piece.ids) and piece.words.casefold().split()[-1:] in (["tube"], ["tubes"])


def _is_one_length(piece: Thing) -> bool:
    length = length_of(piece)
    return length is not None and length[0] == length[1]


def _is_count_alone(heard: Heard) -> bool:
    """'and with two', 'make that three', 'if i stack two': a number in words, and nothing that it could be told of."""
    rest = [token for token in heard.line.tokens if token.kind not in _IDLE_WORDS]
    if len(rest) > 1 and (rest[1].kind, rest[1].value) == ("PIECE", SPACER):
        del rest[1]  # 'two tubes?'
    return len(rest) == 1 and rest[0].kind == "NUMBER" and rest[0].text.isalpha()
