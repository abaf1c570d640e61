"""The name of a file as people type it: 'herons.svg', 'friday.html', in quotes where it holds blanks."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

ENDINGS: Final = (".svg", ".html", ".htm")


def file_at(line: str, at: int) -> tuple[str, int] | None:
    """The file name that begins at character `at` of a line, and the character after it; None where none does."""
    folded = line.casefold()
    if not any(ending in folded for ending in ENDINGS):
        return None
    match = _pattern().match(line, at)
    name = (match.group("quoted") or match.group("bare")) if match else ""
    # the ending alone is a word about files, no name of one
    return (name, match.end()) if match and name.casefold() not in ENDINGS else None


@cache
def _pattern() -> re.Pattern[str]:
    ending = r"\.(?:svg|html?)"
    bare = rf"""(?P<bare>[^\s"'<>|?*;,]+?{ending})(?![\w.]*\w)"""
    return re.compile(rf"""(?P<quote>["'])(?P<quoted>[^"'\n]*?{ending})(?P=quote)|{bare}""", re.IGNORECASE)
