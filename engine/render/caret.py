"""A line and a caret under one of its words, cut around that word where the window is narrower than the line."""

from __future__ import annotations

from typing import Final
from unicodedata import combining, east_asian_width

_DOTS: Final = "..."


def columns_of(text: str) -> int:
    """How many columns of a terminal the text takes."""
    return len(text) if text.isascii() else sum(_columns(char) for char in text)


def with_caret(text: str, at: int, width: int) -> tuple[str, str]:
    """The line no wider than `width`, and the line below it whose caret stands under character `at`, from 0.

    `at` may be one behind the last character. What is cut off is shown by dots.
    """
    size = [_columns(char) for char in text] + [1]  # the caret may stand behind the end
    last = len(size)
    start, end = at, at + 1
    word_end = next((one for one in range(end, len(text)) if text[one].isspace()), len(text))
    while end < last:  # the word under which the caret stands is seen whole, if it can be
        if end >= word_end or not _fits(size, start, end + 1, width):
            break
        end += 1
    grown = True
    while grown:
        grown = False
        for before, after in ((start - 1, end), (start, end + 1)):
            if before >= 0 and after <= last and _fits(size, before, after, width):
                start, end, grown = before, after, True
                break
        if grown and end < last and _fits(size, start, end + 1, width):
            end += 1
    ahead = _DOTS if start else ""
    shown = ahead + text[start:end] + (_DOTS if end < len(text) else "")
    return shown, " " * (len(ahead) + sum(size[start:at])) + "^"


def _fits(size: list[int], start: int, end: int, width: int) -> bool:
    dots = len(_DOTS) * ((start > 0) + (end < len(size) - 1))
    return sum(size[start:end]) + dots - (end == len(size)) <= width


def _columns(char: str) -> int:
    if combining(char):
        return 0
    return 2 if east_asian_width(char) in "WF" else 1
