"""Parts of a stop told without that word: 'close one third from f/4', '2/3 open from f/2.8', 'f/4 and a third'."""

from __future__ import annotations

import re
from functools import cached_property
from typing import Final

from grammar.words.grouping import Groups
from grammar.words.groups import CLOSES_OR_OPENS, CUT_IN_PARTS, GOES_ON_FROM, HOW_IT_MOVES, LIGHT_CHANGED

_PART: Final = r"(?:(?:an?|one|two|[12])[ -])?(?:half|thirds?)|[12]\s?/\s?[23](?!\d)"
_STOP: Final = re.compile(r"\bf\s?/?\s?\d")
_THIRDS: Final = re.compile(r"third|/\s?3")
_TWO: Final = re.compile(r"two|2\s?/|\b2\b")


class PartsOfStops:
    """How such parts are told, by the groups of words that they are told with."""

    def __init__(self, groups: Groups) -> None:
        self._groups = groups

    def said_in(self, line: str, columns: tuple[int, ...]) -> tuple[str, tuple[int, ...]]:
        """The line with such a part as '1/3 stop', where a stop is told that it is counted from; and its columns."""
        folded = line.casefold()
        if not _STOP.search(folded) or any(word in folded for word in self._groups.words_of(CUT_IN_PARTS)):
            return line, columns
        match = next((found for pattern in self._said for found in pattern.finditer(folded)), None)
        if match is None or len(folded) != len(line):
            return line, columns
        start, end = match.span("part")
        part = match["part"]
        said = f"{'2' if _TWO.search(part) else '1'}/{3 if _THIRDS.search(part) else 2} stop"
        inner = [columns[min(start + at, end - 1)] for at in range(len(said) - 1)]
        return line[:start] + said + line[end:], (*columns[:start], *inner, columns[end - 1], *columns[end:])

    @cached_property
    def _said(self) -> tuple[re.Pattern[str], ...]:
        moved, how, goes_on, changed = (
            self._groups.one_of(group) for group in (CLOSES_OR_OPENS, HOW_IT_MOVES, GOES_ON_FROM, LIGHT_CHANGED)
        )
        ends = rf"(?=\s*(?:$|[,.;?!]|{goes_on}|of\sf\s?/?\d))"
        return (
            re.compile(rf"\b{moved}(?:\s{how})*\s(?P<part>{_PART}){ends}"),
            re.compile(
                rf"\b(?P<part>{_PART})\s(?!stops?\b)(?={moved}\b|(?:more|further|down|up)\b(?!\s*(?:the|a|my)\b)|{changed})"
            ),
            re.compile(rf"\bf\s?/?\s?\d+(?:\.\d+)?\s?(?:and|plus|minus|less|\+|-)\s?(?P<part>{_PART}){ends}"),
        )
