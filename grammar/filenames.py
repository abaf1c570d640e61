"""The name of a file as people type it, 'herons.svg' or 'friday.html', with or without a folder before it."""

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
    # the ending alone is a word about files, no name of one
    return (match.group(), match.end()) if match and match.group().casefold() not in ENDINGS else None


@cache
def _pattern() -> re.Pattern[str]:
    return re.compile(r"""[^\s"'<>|?*;,]+?\.(?:svg|html?)(?![\w.]*\w)""", re.IGNORECASE)
