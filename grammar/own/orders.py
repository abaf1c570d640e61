"""A whole line that is an order: 'start over', 'thanks', and several pleasantries in a row: 'ok thats it, thanks'."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from grammar.words.atoms import key_of

_PLEASANT: Final = ("thanks", "noted")  # orders that may stand in a row; the first of these tells what is meant
_WORD: Final = re.compile(r"[^\s,.;!?]+")
_LONGEST: Final = 5  # words of one of them
_MOST: Final = 12  # words of the row


def order_of(line: str, orders: Mapping[str, str]) -> str | None:
    """The order that a line is; None where it says anything else. `orders`: key of a phrase -> order."""
    if not line:
        return None
    known = orders.get(key_of(line))
    if known is not None:
        return known
    words = _WORD.findall(line)
    row = _row(words, orders) if 1 < len(words) <= _MOST else None
    return next((one for one in _PLEASANT if row and one in row), None)


def _row(words: list[str], orders: Mapping[str, str]) -> tuple[str, ...] | None:
    """The pleasantries that the words are made of, one behind the other; None where other words are among them."""
    if not words:
        return ()
    for end in range(min(_LONGEST, len(words)), 0, -1):
        order = orders.get(key_of(" ".join(words[:end])))
        if order not in _PLEASANT:
            continue
        rest = _row(words[end:], orders)
        if rest is not None:
            return (order or "", *rest)
    return None
