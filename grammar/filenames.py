"""The name of a drawing's file as people type it: 'herons.svg', with or without a folder before it."""

from __future__ import annotations

import re
from functools import cache

ENDING = ".svg"


def file_at(line: str, at: int) -> tuple[str, int] | None:
    """The file name that begins at character `at` of a line, and the character after it; None where none does."""
    if ENDING not in line.casefold():
        return None
    match = _pattern().match(line, at)
    # the ending alone is a word about files, no name of one
    return (match.group(), match.end()) if match and len(match.group()) > len(ENDING) else None


@cache
def _pattern() -> re.Pattern[str]:
    return re.compile(r"""[^\s"'<>|?*;,]+?\.svg(?![\w.]*\w)""", re.IGNORECASE)
