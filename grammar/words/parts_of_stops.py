"""Parts of a stop told without that word: 'close one third from f/4', '2/3 open from f/2.8', 'f/4 and a third'."""

from __future__ import annotations

import re
from typing import Final

_PART: Final = r"(?:(?:an?|one|two|[12])[ -])?(?:half|thirds?)|[12]\s?/\s?[23](?!\d)"
_MOVED: Final = r"(?:clos|open|stopp?|narrow)(?:e|ed|ing|ing it|er)?"
_ENDS: Final = (
    r"(?=\s*(?:$|[,.;?!]|from|more|down|up|off|over|under|after|below|above|past|beyond|is|gives|makes|"
    r"what|which|how|of\sf\s?/?\d))"
)
_SAID: Final = (
    re.compile(rf"\b{_MOVED}(?:\s(?:it|down|up|by|the|lens|iris|more|another|further|ring))*\s(?P<part>{_PART}){_ENDS}"),
    re.compile(
        rf"\b(?P<part>{_PART})\s(?={_MOVED}\b|(?:more|further|down|up)\b(?!\s*(?:the|a|my)\b)|darker|brighter|slower|faster)"
    ),
    re.compile(rf"\bf\s?/?\s?\d+(?:\.\d+)?\s?(?:and|plus|minus|less|\+|-)\s?(?P<part>{_PART}){_ENDS}"),
)  # fmt: skip
_STOP: Final = re.compile(r"\bf\s?/?\s?\d")
_OF_OTHERS: Final = re.compile(r"turn|screw|thread|sensor|chip|inch|life|frame|format|tube|mount|4/3|shutter")
_THIRDS: Final = re.compile(r"third|/\s?3")
_TWO: Final = re.compile(r"two|2\s?/|\b2\b")


def with_stops_said(line: str, columns: tuple[int, ...]) -> tuple[str, tuple[int, ...]]:
    """The line with such a part as '1/3 stop', where a stop is told that it is counted from; and its columns."""
    folded = line.casefold()
    if not _STOP.search(folded) or _OF_OTHERS.search(folded):
        return line, columns
    match = next((found for pattern in _SAID for found in pattern.finditer(folded)), None)
    if match is None or len(folded) != len(line):
        return line, columns
    start, end = match.span("part")
    part = match["part"]
    said = f"{'2' if _TWO.search(part) else '1'}/{3 if _THIRDS.search(part) else 2} stop"
    inner = [columns[min(start + at, end - 1)] for at in range(len(said) - 1)]
    return line[:start] + said + line[end:], (*columns[:start], *inner, columns[end - 1], *columns[end:])
