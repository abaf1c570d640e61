"""A short question about the answer just given: the number it asks for is told from that answer, first of all."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final

from engine.answers.answer import Line, Quantity
from engine.answers.wording import about, money, show_of
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue

REPLY: Final = "reply"
MOST: Final = 4  # cases told of one quantity


def reply(text: str, rows: Sequence[Quantity], catalogue: Catalogue, feet: bool = False) -> tuple[Line, ...]:
    """The quantities named in the text, each with its cases as the answer has them; none where none is named."""
    flat = " ".join(re.findall(r"[\w/'-]+", text.casefold()))
    return tuple(_lines(flat, rows, catalogue, feet))


def _lines(flat: str, rows: Sequence[Quantity], catalogue: Catalogue, feet: bool) -> Iterator[Line]:
    told: set[str] = set()
    for word in catalogue.words.values():
        sort, *names = word.means.split() or ("",)
        if sort != REPLY or not any(re.search(rf"\b{re.escape(phrase)}\b", flat) for phrase in word.says):
            continue
        name = next((one for one in names if any(row.name == one and is_known(row.value) for row in rows)), None)
        if name is None or name in told:
            continue
        told.add(name)
        found = [row for row in rows if row.name == name and is_known(row.value)]
        values = [f"{_value(row, feet)}{f' ({row.case})' if row.case else ''}" for row in found[:MOST]]
        yield Line("head", f"{word.says[0][:1].upper()}{word.says[0][1:]}: {'; '.join(dict.fromkeys(values))}.")


def _value(row: Quantity, feet: bool) -> str:
    if row.name == "price" and is_known(row.value):
        return money((row.value.least, row.value.greatest))
    text = about(row.value, show_of(row.name, feet))
    return f"f/{text}" if row.name.endswith("f_number") else text
