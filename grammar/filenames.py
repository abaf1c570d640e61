"""The name of a drawing's file as people type it: 'herons.svg', in quotes where it holds blanks."""

from __future__ import annotations

import re
from functools import cache

ENDING = ".svg"


def file_at(line: str, at: int) -> tuple[str, int] | None:
    """The file name that begins at character `at` of a line, and the character after it; None where none does."""
    if ENDING not in line.casefold():
        return None
    match = _pattern().match(line, at)
    name = (match.group("quoted") or match.group("bare")) if match else ""
    # the ending alone is a word about files, no name of one
    return (name, match.end()) if match and len(name) > len(ENDING) else None


@cache
def _pattern() -> re.Pattern[str]:
    bare = r"""(?P<bare>[^\s"'<>|?*;,]+?\.svg)(?![\w.]*\w)"""
    return re.compile(rf"""(?P<quote>["'])(?P<quoted>[^"'\n]*?\.svg)(?P=quote)|{bare}""", re.IGNORECASE)
