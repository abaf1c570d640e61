"""What a text mentions beside what it asks: the keys of the phrases, by the word list, that stand in it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

_WHOLE: Final = 3  # a phrase of so few signs stands for itself, and for no longer word


def mentioned(text: str, phrases: Mapping[str, tuple[str, ...]]) -> tuple[tuple[str, int], ...]:
    """The keys of which a phrase stands in the text, each with where the last of its phrases begins, from 0."""
    flat = text.casefold().replace("’", "'")
    found = ((key, [at for one in of_key for at in _places(one, flat)]) for key, of_key in phrases.items())
    return tuple((key, max(places)) for key, places in found if places)


def _places(phrase: str, text: str) -> Iterator[int]:
    """Where a word of the text begins with the phrase, or is the phrase where that is short."""
    at = text.find(phrase)
    while at >= 0:
        end = at + len(phrase)
        opens = at == 0 or not text[at - 1].isalnum()
        if opens and (len(phrase) > _WHOLE or end == len(text) or not text[end].isalpha()):
            yield at
        at = text.find(phrase, at + 1)
