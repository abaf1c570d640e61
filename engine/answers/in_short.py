"""What is said to the last answer alone: 'shorter', 'just the number', or a number that points at nothing of it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from engine.answers.parts.answer import NOT_UNDERSTOOD, Answer, Line
from engine.base.compact import replace
from grammar.questions import Unread
from grammar.words.mentioned import mentioned

KEY: Final = "in-short"
_TOLD: Final = ("head", "chain")  # kinds of lines that hold what was asked for
_WARNS: Final = frozenset(["danger", "caution"])  # and those that are never cut
_MOST_LEFT: Final = 12  # signs of other words beside the phrase
CUT: Final = "The rest, cautions among it, stands in the answer before."


def in_short(text: str, last: Answer | None, phrases: Mapping[str, tuple[str, ...]]) -> Answer | None:
    """The head of the answer and its first way, with every warning; None where the text asks anything else."""
    if last is None or not last.lines or last.question is None or any(sign.isdigit() for sign in text):
        return None
    found = mentioned(text, {KEY: phrases.get(KEY, ())})
    left = list(text)
    for one in found:
        left[one.at : one.end] = " " * (one.end - one.at)
    # 'shorter tubes' is of tubes: a word by itself must stand alone
    most = _MOST_LEFT if any(" " in text[one.at : one.end] for one in found) else 0
    if not found or len([sign for sign in left if sign.isalpha()]) > most:
        return None
    heads = [next((line for line in last.lines if line.kind == kind), None) for kind in _TOLD]
    told = [line for line in heads if line is not None] or list(last.lines[:1])
    warned = [line for line in last.lines if line.kind in _WARNS]
    rest = [Line("note", CUT)] if len(last.lines) > len(told) + len(warned) else []
    lines = tuple(replace(line, depth=0) for line in told) + tuple(warned) + tuple(rest)
    return replace(last, text=text, lines=lines, document=None, saved=None, aside=True)


def no_list(text: str) -> Answer:
    """To a bare number where nothing is listed by number."""
    found = f"Nothing is listed under that number just now, so '{text.strip()}' picks nothing"
    expected = "what it is of: '2 m', 'f/2', '2 adapters', or 'the second one' of what was listed before"
    unread = Unread(text, 1, found, expected)
    return Answer(text, None, NOT_UNDERSTOOD, (Line("ask", f"{found}. Say {expected}."),), unread=unread, aside=True)
