"""What a text mentions beside what it asks: the keys of the phrases, by the word list, that stand in it.

In a phrase '#' stands for a number, '=#' for one right behind a word or its '=', '..' for up to three words, 'a|b' for
either word; the words of such a phrase stand for themselves, not for longer ones that begin so, as does 'a|' by itself.
"""

from __future__ import annotations

import re
from collections.abc import Container, Iterable, Iterator, Mapping
from functools import cache
from typing import Final, NamedTuple, TypeAlias

_WHOLE: Final = 3  # a phrase of so few signs stands for itself, and for no longer word
_SMALL: Final = 2  # and so does the last word of a longer one, when it has so few: 'bare on' is not in 'bare one'
NUMBER_SIGN: Final = "#"
BESIDE_SIGN: Final = "=#"  # a number written right behind the word, or behind its '='
GAP_SIGN: Final = ".."
EITHER_SIGN: Final = "|"
_SIGNS: Final = (NUMBER_SIGN, GAP_SIGN, EITHER_SIGN)
_NUMBER: Final = r"(?<![\w.])(\d*\.?\d+)(?: ?(?:mm|cm|km|metres?|meters?|m|ft|feet)\b|x\b)?(?:,(?= ))?"
_BESIDE: Final = r"(?:\s?[=:]\s?| )?(\d*\.?\d+)"
_GAP: Final = r"(?: [\w'./-]+){0,3}?"


_QUOTED: Final = re.compile(r"[\"“”]([a-z][\w./]*)[\"“”]")  # a word set in quotes, which say nothing here
_BEGUN: Final = (2, 3, 4)  # by so many signs of their beginning phrases of one word are looked for
_STARTS: Final = re.compile(r"(?<![a-z0-9])[^ ]")  # where a phrase may begin
_FEW: Final = 16  # keys whose phrases are looked for one by one
_Needed: TypeAlias = tuple[tuple[str, ...], ...]  # of each word of a phrase with signs, those of which one must stand
_Row: TypeAlias = tuple[int, str, str]  # its place among all, its key, the phrase
# the word lists that were looked through last, by how their phrases begin, and what was found in the last few texts
_MOST_LISTS: Final = 4
_MOST_TEXTS: Final = 8
_last: list[_Listed] = []


class Mention(NamedTuple):
    """A phrase of the key in the text: where it begins and ends, from 0, and the last number within it."""

    key: str
    at: int
    end: int
    number: float | None = None


class _Listed(NamedTuple):
    """A long list of phrases made ready."""

    phrases: Mapping[str, tuple[str, ...]]
    begun: dict[str, list[_Row]]
    ranks: dict[str, int]  # the place of each key
    found: dict[str, tuple[Mention, ...]]


def mentioned(
    text: str, phrases: Mapping[str, tuple[str, ...]], only: Container[str] | None = None
) -> tuple[Mention, ...]:
    """Every place of the text where a phrase stands, key by key, each key's places in their order.

    `only`: the keys of a long list that are looked for, where not all are.
    """
    flat = _flat(text)
    if len(phrases) <= _FEW:
        rows = ((0, key, one) for key, of_key in phrases.items() for one in of_key)
        return _found([row for row in rows if _may_stand(row[2], flat)], flat, phrases)
    found = _found_in(flat, _listed(phrases))
    return found if only is None else tuple([one for one in found if one.key in only])


def mentioned_in(texts: Iterable[str], phrases: Mapping[str, tuple[str, ...]]) -> tuple[Mention, ...]:
    """The same in texts that stand one below the other: no phrase begins in one and ends in the next."""
    listed = _listed(phrases)
    found: list[Mention] = []
    begins = 0
    for text in texts:
        flat = _flat(text)
        found += [Mention(key, at + begins, end + begins, number) for key, at, end, number in _found_in(flat, listed)]
        begins += len(flat) + 1
    return tuple(sorted(found, key=lambda one: listed.ranks[one.key]))


def _flat(text: str) -> str:
    return _QUOTED.sub(r"\1  ", text.casefold().replace("’", "'"))


def _found_in(flat: str, listed: _Listed) -> tuple[Mention, ...]:
    found = listed.found.get(flat)
    if found is None:
        if len(listed.found) >= _MOST_TEXTS:
            del listed.found[next(iter(listed.found))]
        found = listed.found[flat] = _found(_rows_of(flat, listed.begun), flat, listed.phrases)
    return found


def _found(rows: Iterable[_Row], flat: str, phrases: Mapping[str, tuple[str, ...]]) -> tuple[Mention, ...]:
    """The places of the rows' phrases."""
    found: dict[str, list[tuple[int, int, float | None]]] = {}
    for _, key, one in rows:
        found.setdefault(key, []).extend(_places(one, flat))
    return tuple(
        Mention(key, *place) for key in phrases if key in found for place in sorted(found[key], key=lambda row: row[:2])
    )


def outside(places: Iterable[Mention], others: Iterable[Mention]) -> tuple[Mention, ...]:
    """Those places that lie within none of the others: 'thick' that is not that of 'the thick one'."""
    wider = tuple(others)
    return tuple(one for one in places if not any(other.at <= one.at and one.end <= other.end for other in wider))


def _listed(phrases: Mapping[str, tuple[str, ...]]) -> _Listed:
    listed = next((one for one in _last if one.phrases is phrases), None)
    if listed is None:
        listed = _Listed(phrases, _by_beginning(phrases), {key: at for at, key in enumerate(phrases)}, {})
        _last[:] = [listed, *_last[: _MOST_LISTS - 1]]
    return listed


def _rows_of(flat: str, begun: Mapping[str, list[_Row]]) -> list[_Row]:
    """The phrases of which one may begin somewhere in the text, and all that must stand does, in their order."""
    begins = {""}
    for place in _STARTS.finditer(flat):
        at = place.start()
        begins.update([flat[at : at + signs] for signs in _BEGUN])
        begins.add(flat[at : flat.find(" ", at) + 1])
    stand = {row for one in begins if one in begun for row in begun[one] if _may_stand(row[2], flat)}
    return sorted(stand)


def _by_beginning(phrases: Mapping[str, tuple[str, ...]]) -> dict[str, list[_Row]]:
    """The phrases by their first word with the blank behind it; by the signs that it begins with where no more stand.

    By nothing those that may begin with others.
    """
    begun: dict[str, list[_Row]] = {}
    at = -1
    for key, of_key in phrases.items():
        for one in of_key:
            at += 1
            first, blank, rest = one.partition(" ")
            if EITHER_SIGN not in first and NUMBER_SIGN not in first and first != GAP_SIGN:
                words = [first]
            else:
                words = _begun_by(first)
            if not blank or rest.startswith(BESIDE_SIGN):
                words = [word[: _BEGUN[-1]] if len(word) >= _BEGUN[0] else "" for word in words]
            else:
                words = [word and f"{word} " for word in words]
            for word in words if len(words) == 1 else {""} if "" in words else set(words):
                begun.setdefault(word, []).append((at, key, one))
    return begun


def _begun_by(first: str) -> list[str]:
    """The words that the first of a phrase stands for; none where it may be any."""
    return [""] if first == GAP_SIGN or NUMBER_SIGN in first else list(_either(first))


def _may_stand(phrase: str, text: str) -> bool:
    """Whether all that must stand in the text for the phrase does: that which is cheap to know."""
    needed = _needed(phrase)
    if needed is None:
        return phrase in text
    for alternatives in needed:
        for one in alternatives:
            if one in text:
                break
        else:
            return False
    return True


@cache
def _needed(phrase: str) -> _Needed | None:
    """Of each word of a phrase with signs, those of which one must stand; None for a phrase that stands for itself."""
    if not any(sign in phrase for sign in _SIGNS):
        return None
    plain = (word for word in phrase.split() if word not in (NUMBER_SIGN, GAP_SIGN, BESIDE_SIGN))
    return tuple(map(_either, plain))


def _either(word: str) -> tuple[str, ...]:
    return tuple(word.removesuffix(EITHER_SIGN).split(EITHER_SIGN))


def _places(phrase: str, text: str) -> Iterator[tuple[int, int, float | None]]:
    """Where a word of the text begins with the phrase, or is the phrase where that, or its last word, is short."""
    if _needed(phrase) is not None:
        yield from _patterned(phrase, text)
        return
    at = text.find(phrase)
    while at >= 0:
        end = at + len(phrase)
        opens = at == 0 or not text[at - 1].isalnum()
        if opens and (not _ends_short(phrase) or end == len(text) or not text[end].isalpha()):
            yield at, end, None
        at = text.find(phrase, at + 1)


def _ends_short(phrase: str) -> bool:
    return len(phrase) <= _WHOLE or 0 < len(phrase.rpartition(" ")[2]) <= _SMALL


def _patterned(phrase: str, text: str) -> Iterator[tuple[int, int, float | None]]:
    for found in _pattern(phrase).finditer(text):
        numbers = [float(one) for one in found.groups() if one is not None]
        yield found.start(), found.end(), numbers[-1] if numbers else None


@cache
def _pattern(phrase: str) -> re.Pattern[str]:
    parts = [
        _GAP if one == GAP_SIGN else _BESIDE if one == BESIDE_SIGN else f" {_any_of(one)}" for one in phrase.split()
    ]
    return re.compile(r"(?<![a-z0-9])" + "".join(parts).removeprefix(" ") + r"(?![a-z])")


def _any_of(word: str) -> str:
    return _NUMBER if word == NUMBER_SIGN else f"(?:{'|'.join(map(re.escape, _either(word)))})"
