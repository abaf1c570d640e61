"""What can be offered while a question is typed: every name and word by its joined form, the likeliest first."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Collection, Iterator, Sequence
from typing import Final, NamedTuple

from engine.base.compact import compact, field
from engine.facts.catalogue import Catalogue
from grammar.words.atoms import key_of
from grammar.words.lexicon import Lexicon
from grammar.words.nearest import nearest_keys

# the tiers of what is offered; what is not listed comes between the words and the formats
_TIERS: Final = {
    "my lens": 0, "my body": 0, "my adapter": 0, "mount": 1, "term": 3, "format": 4, "named lens": 5, "named body": 6,
    "named adapter": 7, "thread": 8, "motif": 9,
}  # fmt: skip
# what questions about all of one's own gear are made of: what it does in the word list -> sort
OWN: Final = {"of": "own", "test": "condition", "first": "sorting"}
_WORD_TIER: Final = 2
_BY_KIND: Final = ("mount", "format", "thread", "motif")  # of which there are none of one's own
_NOT_OFFERED: Final = frozenset(["", "det", "join", "verb", "number", "intent", "motif", "share"])
_MOST_BEST: Final = 12  # of one sort where nothing is typed yet
_MOST_NEAR: Final = 32  # whose beginning is a slip away; most of them do not fit at that place
_ALPHABET: Final = "abcdefghijklmnopqrstuvwxyz0123456789"
_MOST_LOOKED_AT: Final = 300  # keys of one beginning that are compared letter by letter
END: Final = "\U0010ffff"  # sorts behind every key


class Offer(NamedTuple):
    """A phrase that may be put in. `sort`: 'my lens', 'mount' ... for names, the class of the word for words."""

    phrase: str
    sort: str
    id: str  # of the record, so that one is offered once
    label: str = ""  # what a word stands for, where that is not the phrase itself


@compact
class Offers:
    """All offers. `keys` is sorted, `orders` beside it points into `ranked`, where the likeliest stands first."""

    lexicon: Lexicon
    keys: Sequence[str]
    orders: Sequence[int]
    ranked: Sequence[Offer]
    best: dict[str, list[Offer]]  # sort -> what to offer where nothing is typed yet
    # text -> what may come after it; of the last few, for the next key asks about nearly the same ones
    after: dict[str, tuple[Collection[str], tuple[str, ...]]] = field(default_factory=dict)

    def beginning(self, key: str, most: int) -> list[Offer]:
        """Those whose key begins with `key`, the likeliest first."""
        low = bisect_left(self.keys, key)
        high = bisect_left(self.keys, key + END, low)
        return [self.ranked[order] for order in sorted(self.orders[low:high])[:most]]

    def near(self, key: str) -> list[Offer]:
        """Those that `key`, or what it is the beginning of, is one slip away from; else two slips from a whole one."""
        found: dict[int, tuple[int, int]] = {}
        for rank, variant in _slips(key, self._known_part(key)):
            low = bisect_left(self.keys, variant)
            for at in range(low, min(low + _MOST_NEAR, len(self.keys))):
                if not self.keys[at].startswith(variant):
                    break
                order = self.orders[at]
                closeness = (rank if self.keys[at] == variant else rank + 3, order)
                found[order] = min(found.get(order, closeness), closeness)
        if found:
            return [self.ranked[order] for order in sorted(found, key=found.__getitem__)[:_MOST_NEAR]]
        return [self.ranked[self.orders[bisect_left(self.keys, one)]] for one in self._twice_slipped(key)]

    def _known_part(self, key: str) -> int:
        """How many letters of `key` some key begins with: a slip lies at or before the next one."""
        for size in range(len(key)):
            at = bisect_left(self.keys, key[: size + 1])
            if at == len(self.keys) or not self.keys[at].startswith(key[: size + 1]):
                return size
        return len(key)

    def _twice_slipped(self, key: str) -> list[str]:
        if len(key) < 5:
            return []
        low, high = bisect_left(self.keys, key[:1]), bisect_left(self.keys, key[:1] + END)
        if high - low > _MOST_LOOKED_AT:
            low, high = bisect_left(self.keys, key[:2]), bisect_left(self.keys, key[:2] + END)
        return nearest_keys(key, self.keys[low : min(high, low + _MOST_LOOKED_AT)])


def _slips(key: str, known: int) -> Iterator[tuple[int, str]]:
    """What `key` may have been meant for: (0, letters swapped), (1, one too many or too few), (2, another one)."""
    for at in range(min(known + 1, len(key))):
        before, after = key[:at], key[at:]
        if len(after) > 1:
            yield 0, before + after[1] + after[0] + after[2:]
        if len(key) < 4:
            continue  # of so short a word every other one is a slip away
        if at:
            yield 1, before + after[1:]
        for letter in _ALPHABET:
            yield 1, before + letter + after
            if at:
                yield 2, before + letter + after[1:]


def offers_of(catalogue: Catalogue, lexicon: Lexicon) -> Offers:
    """Own gear first, then mounts by how many everyday adapters they have, then words, formats and the rest."""
    rows = [*_names(lexicon, _everyday(catalogue)), *_words(catalogue), *_spoken(catalogue)]
    rows.sort()
    ranked = [offer for _, _, offer in rows]
    pairs = sorted((key, order) for order, (_, key, _) in enumerate(rows))
    best: dict[str, list[Offer]] = {}
    seen: set[tuple[str, str]] = set()
    for offer in ranked:
        group = best.setdefault(offer.sort, [])
        if len(group) < _MOST_BEST and (offer.sort, offer.id) not in seen:
            seen.add((offer.sort, offer.id))
            group.append(offer)
    return Offers(lexicon, [key for key, _ in pairs], [order for _, order in pairs], ranked, best)


Place = tuple[int, int, int, int]  # tier, order within it, which phrase of its record, its length
Row = tuple[Place, str, Offer]


def _everyday(catalogue: Catalogue) -> Counter[tuple[str, str]]:
    """(kind, id) -> how many adapters of every shop's shelf a mount has, or the mounts of a body or format have."""
    counts: Counter[tuple[str, str]] = Counter()
    for adapter in catalogue.adapters.values():
        if adapter.common == "everyday":
            counts.update((("adapter", adapter.id), ("mount", adapter.front), ("mount", adapter.rear)))
    for body in catalogue.bodies.values():
        of_mount = counts["mount", body.mount]
        counts["body", body.id] = of_mount
        counts["format", body.format] += of_mount
    return counts


def _names(lexicon: Lexicon, everyday: Counter[tuple[str, str]]) -> Iterator[Row]:
    own, first = lexicon.own, lexicon.first_phrase
    for key, (phrase, kind, id_) in lexicon.names.items():
        name = first.get((kind, id_), id_)
        if phrase == id_ != name:
            if key_of(name) != key:
                continue  # an id is for files
            phrase = name
        # a lone letter is read as a mount only in its place; 'C-mount' says it everywhere
        within = 0 if kind == "mount" and len(name) < 3 and phrase == f"{name}-mount" else 1 if phrase == name else 2
        sort = kind if kind in _BY_KIND else f"my {kind}" if id_ in own else f"named {kind}"
        yield (_TIERS[sort], -everyday[kind, id_], within, len(phrase)), key, Offer(phrase, sort, id_)


def _words(catalogue: Catalogue) -> Iterator[Row]:
    for order, word in enumerate(catalogue.words.values()):
        parts = word.means.split() or [""]
        sort = OWN.get(parts[1], "") if parts[0] == "sift" else parts[0]
        if sort in _NOT_OFFERED:
            continue
        for at, phrase in enumerate(word.says):
            label = word.says[0] if at else ""
            place = (_WORD_TIER, 0 if at == 0 else 1, order if at == 0 else len(phrase), order)
            yield place, key_of(phrase), Offer(phrase, sort, word.id, label)


def _spoken(catalogue: Catalogue) -> Iterator[Row]:
    spoken = [(term.id, term.names) for term in catalogue.terms.values()]
    for id_, names in (*spoken, *((advice.id, advice.names) for advice in catalogue.advice.values())):
        for at, phrase in enumerate(names):
            label = names[0] if at else ""
            yield (_TIERS["term"], at > 0, 0, len(phrase)), key_of(phrase), Offer(phrase, "term", id_, label)
