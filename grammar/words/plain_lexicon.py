"""A lexicon as plain values for JSON, and back in a fraction of the time that building it takes."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping
from typing import Any, TypeVar

from grammar.words.grouping import Groups
from grammar.words.lexicon import Lexicon
from grammar.words.numerals import CLASSES, Numerals
from grammar.words.wordlist import Evidence, Word, WordList

H = TypeVar("H", bound=Hashable)


def to_plain(lexicon: Lexicon) -> dict[str, Any]:
    """The lexicon in columns: what stands under many keys is written once."""
    words = lexicon.words
    sorts: dict[Word, int] = {}
    told: dict[tuple[str, ...], int] = {}
    return {
        "names": [list(lexicon.names), *_columns(lexicon.names.values())],
        "several": lexicon.several,
        "spoken_of": lexicon.spoken_of,
        "first_phrases": _columns((kind, id_, phrase) for (kind, id_), phrase in lexicon.first_phrase.items()),
        "own": sorted(lexicon.own),
        "inch_types": lexicon.inch_types,
        "cine_mm": list(lexicon.cine_mm.items()),
        "hosts": sorted(lexicon.hosts),
        "never_full": sorted(lexicon.never_full),
        "threaded": sorted(lexicon.threaded),
        "by_trait": {trait: sorted(ids) for trait, ids in lexicon.by_trait.items()},
        "words": _numbered(words.words, sorts),
        "phrases": _numbered(words.phrases, sorts),
        "sorts": [(word.sort, word.value, word.implies) for word in sorts],
        "cues": _numbered(words.cues, told),
        "told": list(told),
        "orders": words.orders,
        "teaching": words.teaching,
        "sifting": words.sifting,
        "mentions": {key: list(phrases) for key, phrases in words.mentions.items()},
        "sift_words": sorted(words.sift_words),
        "numerals": words.numerals.of_class,
        "groups": words.groups.words,
        "group_begins": words.groups.begins,
        "known": sorted(words.known),
        "alone": sorted(words.alone),
        "breaks": sorted(words.breaks),
        "parted": sorted(words.parted),
        "evidence": [(one.intent, sorted(one.needs), sorted(one.lacks), one.weight) for one in words.evidence],
    }


def from_plain(plain: Any) -> Lexicon:
    """The lexicon that `to_plain` made `plain` of. ValueError where it is anything else."""
    try:
        keys, phrases, kinds, ids = map(_texts, plain["names"])
        return Lexicon(
            dict(zip(keys, zip(phrases, kinds, ids, strict=True), strict=True)),
            {key: tuple(_texts(several)) for key, several in plain["several"].items()},
            {key: [(kind, id_) for kind, id_ in map(_texts, rows)] for key, rows in plain["spoken_of"].items()},
            _words(plain),
            frozenset(_texts(plain["own"])),
            _first_phrases(*map(_texts, plain["first_phrases"])),
            _texts_by_key(plain["inch_types"]),
            {float(width): str(id_) for width, id_ in plain["cine_mm"]},
            frozenset(_texts(plain["hosts"])),
            frozenset(_texts(plain["never_full"])),
            frozenset(_texts(plain["threaded"])),
            {trait: frozenset(ids) for trait, ids in _rows_by_key(plain["by_trait"]).items()},
        )
    except (KeyError, TypeError, AttributeError, IndexError) as error:
        raise ValueError("no lexicon") from error


def _words(plain: Any) -> WordList:
    sorts = [Word(str(sort), str(value), tuple(_texts(implies))) for sort, value, implies in plain["sorts"]]
    told = [tuple(_texts(row)) for row in plain["told"]]
    return WordList(
        {key: sorts[at] for key, at in plain["words"].items()},
        {key: sorts[at] for key, at in plain["phrases"].items()},
        {key: told[at] for key, at in plain["cues"].items()},
        _texts_by_key(plain["orders"]),
        set(_texts(plain["known"])),
        set(_texts(plain["alone"])),
        set(_texts(plain["breaks"])),
        [
            Evidence(str(intent), frozenset(_texts(needs)), frozenset(_texts(lacks)), float(weight))
            for intent, needs, lacks, weight in plain["evidence"]
        ],
        _texts_by_key(plain["teaching"]),
        _rows_by_key(plain["sifting"]),
        _rows_by_key(plain["mentions"]),
        set(_texts(plain["sift_words"])),
        Groups(_rows_by_key(plain["groups"]), _rows_by_key(plain["group_begins"])),
        Numerals({name: {str(word): int(n) for word, n in plain["numerals"][name].items()} for name in CLASSES}),
        set(_texts(plain["parted"])),
    )


def _first_phrases(kinds: list[str], ids: list[str], phrases: list[str]) -> dict[tuple[str, str], str]:
    return dict(zip(zip(kinds, ids, strict=True), phrases, strict=True))


def _columns(rows: Iterable[tuple[str, str, str]]) -> list[list[str]]:
    """The rows' first texts, their second ones, and their third ones."""
    rows = list(rows)
    return [[row[at] for row in rows] for at in range(3)]


def _numbered(table: Mapping[str, H], seen: dict[H, int]) -> dict[str, int]:
    """The table with a number for each value; `seen` takes the values up."""
    return {key: seen.setdefault(value, len(seen)) for key, value in table.items()}


def _texts(column: Any) -> list[str]:
    if type(column) is not list or not {str}.issuperset(map(type, column)):
        raise ValueError("texts expected")
    return column


def _rows_by_key(table: Any) -> dict[str, tuple[str, ...]]:
    return {key: tuple(_texts(list(row))) for key, row in table.items()}


def _texts_by_key(table: Any) -> dict[str, str]:
    _texts(list(table.values()))
    found: dict[str, str] = table
    return found
