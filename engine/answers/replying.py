"""A short question about the answer just given: the number it asks for is told from that answer, first of all."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from difflib import get_close_matches
from typing import Final

from engine.answers.parts.answer import Line, Quantity
from engine.answers.parts.wording import about, money, show_of
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.guidance import Word

REPLY: Final = "reply"
SHUTTER: Final = "shutter_s"
ERROR: Final = "register_error_mm"
LONG: Final = 6  # letters of a word that is mended
ALIKE: Final = 0.85
MOST: Final = 4  # cases told of one quantity


def reply(text: str, rows: Sequence[Quantity], catalogue: Catalogue, feet: bool = False) -> tuple[Line, ...]:
    """The quantities named in the text, each with its cases as the answer has them; none where none is named."""
    return tuple(line for line, _ in named(text, rows, catalogue, feet))


def named(
    text: str, rows: Sequence[Quantity], catalogue: Catalogue, feet: bool = False
) -> tuple[tuple[Line, tuple[Quantity, ...]], ...]:
    """Each quantity named in the text as a line, with the rows that it tells."""
    words = [word for word in catalogue.words.values() if word.means.startswith(f"{REPLY} ")]
    known = {part for word in words for phrase in word.says for part in phrase.split()}
    flat = " ".join(_mended(one, known) for one in re.findall(r"[\w/'-]+", text.casefold()))
    return tuple(_lines(flat, words, rows, feet))


def _mended(word: str, known: set[str]) -> str:
    """A long word with a letter or two amiss as it is written."""
    near = get_close_matches(word, known, 1, ALIKE) if word not in known and len(word) >= LONG else []
    return near[0] if near else word


def _lines(
    flat: str, words: Sequence[Word], rows: Sequence[Quantity], feet: bool
) -> Iterator[tuple[Line, tuple[Quantity, ...]]]:
    told: set[str] = set()
    for word in words:
        _, *names = word.means.split()
        if not any(re.search(rf"\b{re.escape(phrase)}\b", flat) for phrase in word.says):
            continue
        name = next((one for one in names if any(row.name == one and is_known(row.value) for row in rows)), None)
        if name is None or name in told:
            continue
        told.add(name)
        found = tuple(row for row in rows if row.name == name and is_known(row.value))
        values = [f"{_value(row, feet)}{f' ({row.case})' if row.case else ''}" for row in found[:MOST]]
        line = Line("head", f"{word.says[0][:1].upper()}{word.says[0][1:]}: {'; '.join(dict.fromkeys(values))}.")
        yield line, found


def _value(row: Quantity, feet: bool) -> str:
    if row.name == "price" and is_known(row.value):
        return money((row.value.least, row.value.greatest))
    if row.name == ERROR and is_known(row.value):
        least, most = sorted((abs(row.value.least), abs(row.value.greatest)))
        side = "too far out" if row.value.nominal > 0 else "too close"
        return f"{about(Interval(least, abs(row.value.nominal), most), show_of(row.name, feet))} {side}"
    if row.name == SHUTTER and is_known(row.value):
        from engine.answers.exposure.lighting import seconds

        return seconds(row.value.nominal)
    text = about(row.value, show_of(row.name, feet))
    return f"f/{text}" if row.name.endswith("f_number") else text
