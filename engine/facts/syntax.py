"""What broke a YAML file off, in words of our own: the place, what stands there, what could."""

from __future__ import annotations

import re
from typing import Any, Final

from engine.base.compact import compact
from engine.base.place import Place
from engine.base.problem import Problem


@compact
class Break:
    """A way to break a file: what the parser's message holds, and what is said of it."""

    message: re.Pattern[str]
    expected: str
    at_start: bool = False  # told where the broken thing begins, not where the parser gave up
    found: str | None = None  # said instead of the words that stand there


_QUOTE: Final = "the quote that ends this text"
# the first that fits counts; both parsers' messages are covered, and what fits none is told plainly
_BREAKS: Final = (
    Break(re.compile(r"quoted scalar.*(?:end of stream|document separator)"), _QUOTE, at_start=True),
    Break(re.compile(r"escape|hexdecimal"), "an escape that YAML knows, or the text in single quotes", found="\\"),
    Break(re.compile(r"flow sequence"), "a ',' or ']' that goes on with or ends this list", at_start=True),
    Break(re.compile(r"flow mapping"), "a ',' or '}' that goes on with or ends this mapping", at_start=True),
    Break(re.compile(r"node content"), "a value"),
    Break(re.compile(r"cannot start any token"), "a value; text that begins like this must be quoted"),
    Break(re.compile(r"expected ':'"), "'key: value'", at_start=True),
    Break(
        re.compile(r"mapping values are not allowed"),
        "one 'key: value' a line; a ':' may be missing above, or quotes around text that holds ': '",
    ),
    Break(re.compile(r"sequence entries are not allowed"), "a list that begins on a line of its own"),
    Break(re.compile(r"block scalar"), "nothing behind the sign that begins a block of text"),
    Break(re.compile(r"an? (?:anchor|alias|tag)|tag handle"), "a value without tag, anchor or alias", at_start=True),
    Break(re.compile(r"document start"), "the end of the file, or '---' on a line of its own"),
    Break(re.compile(r"block (?:mapping|collection|end)"), "a key or item that lines up with those before it"),
)
_TAB: Final = "a tab"
_PLAIN: Final = "YAML: 'key: value' lines, set in by spaces"


def syntax_problem(file: str, text: str, error: Any) -> Problem:
    """The one problem of a file that `error`, PyYAML's own, ended."""
    mark = getattr(error, "problem_mark", None)
    if mark is None:
        return Problem(Place(file, 1, 1), "text that is no YAML", _PLAIN)
    message = " ".join(f"{getattr(error, 'context', None)}; {getattr(error, 'problem', None)}".split())
    way = next((way for way in _BREAKS if way.message.search(message)), None)
    if way and way.at_start:
        mark = getattr(error, "context_mark", None) or mark
    lines = re.split("\r\n|\r|\n", text)
    line, column = mark.line, mark.column
    here = lines[line] if line < len(lines) else ""
    if way and way.found and (back := here.rfind(way.found, 0, column + 1)) >= 0:
        column = back
    if not here[column:].strip() and line >= len(lines) - 1:
        # the parsers disagree on where the end is: behind the last thing that is written
        line = min(line, len(lines) - 1)
        while line and not lines[line].strip():
            line -= 1
        return Problem(Place(file, line + 1, len(lines[line].rstrip()) + 1), "the end of the file", _expected(way))
    found, expected = _stands(here, column), _expected(way)
    if found == _TAB:
        expected = "blanks: no line may be set in by a tab"
    return Problem(Place(file, line + 1, column + 1), found, expected)


def _expected(way: Break | None) -> str:
    return way.expected if way else _PLAIN


def _stands(line: str, column: int) -> str:
    rest = line[column:]
    if rest[:1] == "\t":
        return _TAB
    if not rest.strip():
        return "the end of the line"
    word = rest[:2] if rest[0] == "\\" else rest.split()[0]
    return word if word[0] in "'\"" else f"'{word}'"
