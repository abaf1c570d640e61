"""Which known word a misspelt one was meant for. For error paths: each call looks at every word."""

from __future__ import annotations

from collections.abc import Iterable

_BEST = 3
_SHORT = 3  # letters: one left out or put in makes another word
_PLAIN = 5  # letters: two slips in so short a word make another word


def distance(one: str, other: str, most: int = 2) -> int:
    """Letters put in, left out, exchanged or swapped with a neighbour to make one of the other; `most` + 1 if more."""
    if abs(len(one) - len(other)) > most:
        return most + 1
    width, far = len(other), most + 1
    before, last = [far] * (width + 1), list(range(width + 1))
    for i, a in enumerate(one, start=1):
        # what stands further apart than `most` letters cannot be one within it
        low, high = max(i - most, 1), min(i + most, width)
        row = [far] * (width + 1)
        row[low - 1] = i if low == 1 else far
        for j in range(low, high + 1):
            b = other[j - 1]
            least = last[j - 1] + (a != b)
            if last[j] < least:
                least = last[j] + 1
            if row[j - 1] < least:
                least = row[j - 1] + 1
            if i > 1 and j > 1 and a == other[j - 2] and one[i - 2] == b and before[j - 2] < least:
                least = before[j - 2] + 1
            row[j] = least
        if min(row) > most:
            return far
        before, last = last, row
    return min(last[-1], far)


def nearest_keys(word: str, keys: Iterable[str]) -> list[str]:
    """The keys nearest to `word`, at most three: fewest slips first, then swapped letters, then the most alike ends."""
    if not word:
        return []
    most = 1 if len(word) <= 4 else 2
    letters = set(word)
    ranked = []
    for order, key in enumerate(keys):
        if abs(len(key) - len(word)) > most or len(letters ^ set(key)) > 2 * most:
            continue
        apart = distance(word, key, most)
        if apart <= most:
            swapped = sorted(word) != sorted(key)
            ranked.append((apart, swapped, -_shared_ends(word, key), len(key) != len(word), order, key))
    ranked.sort()
    return [entry[-1] for entry in ranked[:_BEST]]


def surely_slip(word: str, key: str) -> bool:
    """Whether a word is rather a slip of the key than another word: it begins alike, and is the shorter the nearer."""
    if not word.isalpha():
        return True
    if len(word) <= _SHORT and len(word) != len(key):
        return False
    return word[0] == key[0] and distance(word, key, 2) <= (1 if len(word) <= _PLAIN else 2)


def _shared_ends(one: str, other: str) -> int:
    """Letters that the two begin and end with alike."""
    least = min(len(one), len(other))
    first = next((at for at in range(least) if one[at] != other[at]), least)
    last = next((at for at in range(least - first) if one[-1 - at] != other[-1 - at]), least - first)
    return first + last


def slip_of(word: str, words: Iterable[str]) -> str | None:
    """The one word that `word` is a single slip away from, or None where it is short or none is near."""
    if len(word) < 5 or not word.isalpha():
        return None
    best: tuple[float, str] | None = None
    for other in words:
        if other[0] != word[0] or abs(len(other) - len(word)) > 1 or len(other) < 5:
            continue
        if len(word) == 5 and len(other) == 5 and sorted(other) != sorted(word):
            continue  # in a short word one exchanged letter makes another word too easily
        if distance(word, other, 1) <= 1:
            from difflib import SequenceMatcher

            closeness = (-SequenceMatcher(None, word, other).ratio(), other)
            best = min(best, closeness) if best else closeness
    return best[1] if best else None
