"""What a text mentions beside what it asks: the keys of the phrases, by the word list, that stand in it.

In a phrase '#' stands for a number, '..' for up to three words, 'a|b' for either word; the words of such a phrase stand
for themselves, not for longer ones that begin so.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Final, NamedTuple

_WHOLE: Final = 3  # a phrase of so few signs stands for itself, and for no longer word
_SMALL: Final = 2  # and so does the last word of a longer one, when it has so few: 'bare on' is not in 'bare one'
NUMBER_SIGN: Final = "#"
GAP_SIGN: Final = ".."
EITHER_SIGN: Final = "|"
_SIGNS: Final = (NUMBER_SIGN, GAP_SIGN, EITHER_SIGN)
_NUMBER: Final = r"(?<![\w.])(\d*\.?\d+)(?: ?(?:mm|cm|metres?|meters?|m|ft|feet)\b)?"
_GAP: Final = r"(?: [\w'./-]+){0,3}?"


class Mention(NamedTuple):
    """A phrase of the key in the text: where it begins and ends, from 0, and the last number within it."""

    key: str
    at: int
    end: int
    number: float | None = None


def mentioned(text: str, phrases: Mapping[str, tuple[str, ...]]) -> tuple[Mention, ...]:
    """Every place of the text where a phrase stands, key by key, each key's places in their order."""
    flat = text.casefold().replace("’", "'")
    found = ((key, [place for one in of_key for place in _places(one, flat)]) for key, of_key in phrases.items())
    return tuple(Mention(key, *place) for key, places in found for place in sorted(places, key=lambda row: row[:2]))


def _places(phrase: str, text: str) -> Iterator[tuple[int, int, float | None]]:
    """Where a word of the text begins with the phrase, or is the phrase where that, or its last word, is short."""
    if any(sign in phrase for sign in _SIGNS):
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
    plain = (word for word in phrase.split() if word not in (NUMBER_SIGN, GAP_SIGN))
    if not all(any(one in text for one in word.split(EITHER_SIGN)) for word in plain):
        return
    for found in _pattern(phrase).finditer(text):
        numbers = [float(one) for one in found.groups() if one is not None]
        yield found.start(), found.end(), numbers[-1] if numbers else None


@cache
def _pattern(phrase: str) -> re.Pattern[str]:
    parts = [_GAP if one == GAP_SIGN else f" {_any_of(one)}" for one in phrase.split()]
    return re.compile(r"(?<![a-z0-9])" + "".join(parts).removeprefix(" ") + r"(?![a-z])")


def _any_of(word: str) -> str:
    return _NUMBER if word == NUMBER_SIGN else f"(?:{'|'.join(map(re.escape, word.split(EITHER_SIGN)))})"
