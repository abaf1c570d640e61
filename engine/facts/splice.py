"""A YAML text that is changed by putting words in or taking lines out, at the places its nodes were read from."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from engine.base.compact import compact
from engine.facts.nodes import Entry, Fields, Items, Node, Text

Value = str | None | Sequence["Value"] | Mapping[str, "Value"]

_LINE_END = re.compile("\r\n|\r|\n")
_SINGLE = re.compile("'(?:[^']|'')*'")
_DOUBLE = re.compile(r'"(?:[^"\\]|\\.)*"', re.DOTALL)
_BLOCK = re.compile(r"[|>](?=(?P<keeps>[1-9]?\+)?)[+-]?(?P<deep>[1-9])?")
_FLOW_END = re.compile(r"(?:[\s,:?]|#[^\r\n]*)*[\]}]")
_REST = re.compile(r"[ \t]*(?:#[^\r\n]*)?")
# what no reader of YAML takes for anything but the text itself
_PLAIN = re.compile(r"(?:[^\W_]|[+-]?\.?[0-9])(?:[\w ./+±°×-]*[\w./+±°×-])?")
_NOT_TEXT: Final = frozenset({"null", "on", "off", "y", "n"})  # to other programs than this one
_NEAR: Final = 3  # lines on each side by which a place is found again


@compact
class Splice:
    """At `at` stands `removed`; `put` comes in its place."""

    at: int
    removed: str
    put: str

    def made(self, text: str) -> str:
        return text[: self.at] + self.put + text[self.at + len(self.removed) :]


@compact
class Patch:
    """What turns a splice back: between `before` and `after`, most likely at `at`, `now` becomes `then` again."""

    at: int
    before: str
    now: str
    then: str
    after: str

    def found(self, text: str) -> Splice | None:
        """The splice, where the lines around, or those on one side, are still there and are so once."""
        for before, after in ((self.before, self.after), (self.before, ""), ("", self.after)):
            whole = before + self.now + after
            start = self.at - len(before)
            if not text.startswith(whole, start):
                start = text.find(whole)
                if start < 0 or text.find(whole, start + 1) >= 0:
                    continue
            return Splice(start + len(before), self.now, self.then)
        return None


class Source:
    """The text with its lines. Lines are counted from 0 here, those of nodes from 1."""

    def __init__(self, text: str) -> None:
        breaks = [match.span() for match in _LINE_END.finditer(text)]
        self.text = text
        self.starts = [0, *(end for _, end in breaks)]
        self.ends = [*(start for start, _ in breaks), len(text)]
        self.line_end = text[slice(*breaks[0])] if breaks else "\n"

    def offset(self, line: int, column: int) -> int:
        return self.starts[line - 1] + column - 1

    def line(self, number: int) -> str:
        return self.text[self.starts[number] : self.ends[number]]

    def at(self, node: Node) -> str:
        """The character a node begins with."""
        start = self.offset(node.line, node.column)
        return self.text[start : start + 1]

    def in_braces(self, node: Node) -> bool:
        """Whether it is a collection in flow style."""
        return not isinstance(node, Text) and self.at(node) in ("{", "[")

    def in_block(self, node: Node) -> bool:
        """Whether it is a text of several lines behind `|` or `>`."""
        return isinstance(node, Text) and node.quoted and self.at(node) in ("|", ">")

    def end_of(self, node: Node) -> int | None:
        """Behind the last character of a node; the comments that follow are not of it. None where it is not found."""
        start = self.offset(node.line, node.column)
        if isinstance(node, Text):
            return self._text_end(node, start)
        last: int | None = start
        children = node.items if isinstance(node, Items) else [entry.value for entry in node.entries.values()]
        braces = self.in_braces(node)
        if children:
            last = self.end_of(children[-1])
        elif braces:
            last = start + 1
        if last is not None and braces:
            closed = _FLOW_END.match(self.text, last)
            return closed.end() if closed else None
        return last

    def _text_end(self, node: Text, start: int) -> int | None:
        if self.in_block(node):
            return self._block_end(start)
        if node.quoted:
            match = (_SINGLE if self.at(node) == "'" else _DOUBLE).match(self.text, start)
        else:  # where it goes on over several lines, these were joined by single blanks or line ends
            match = re.compile(r"\s+".join(map(re.escape, node.text.split()))).match(self.text, start)
        return match.end() if match else None

    def _block_end(self, start: int) -> int:
        first = last = self._line_at(start)
        head = _BLOCK.match(self.text, start)
        assert head is not None
        outside = _set_in(self.line(first))
        inside = outside + int(head["deep"]) if head["deep"] else None
        for number in range(first + 1, len(self.starts)):
            line = self.line(number)
            if not line.strip(" ") and (inside is None or len(line) <= inside):
                continue
            if inside is None:
                inside = max(_set_in(line), outside + 1)
            if _set_in(line) < inside:
                break
            last = number
        if head["keeps"]:  # the blank lines are of the text too
            end = len(self.starts) if self.line(-1) else len(self.starts) - 1
            while last + 1 < end and not self.line(last + 1).strip():
                last += 1
        return self.ends[last]

    def _line_at(self, offset: int) -> int:
        return bisect_right(self.starts, offset) - 1

    def lines_of(self, entry: Entry) -> tuple[int, int] | None:
        """First and last line of an entry with its value; None where it does not have its lines for itself."""
        first = entry.line - 1
        end = self.end_of(entry.value)
        if end is None or self.line(first)[: entry.column - 1].strip(" "):
            return None
        last = self._line_at(end)
        return (first, last) if _REST.fullmatch(self.text, end, self.ends[last]) else None

    def with_comments(self, last: int, deep: int) -> int:
        """The last of the comments that follow a line and are set in by `deep` blanks or more; else the line itself."""
        for number in range(last + 1, len(self.starts)):
            line = self.line(number).strip()
            if line.startswith("#") and _set_in(self.line(number)) >= deep:
                last = number
            elif line:
                break
        return last

    def below(self, last: int, lines: Iterable[str]) -> Splice:
        """The lines put under a line; whether the file ends with a line end stays as it is."""
        return Splice(self.ends[last], "", "".join(self.line_end + line for line in lines))

    def at_the_end(self, last: int, lines: Sequence[str]) -> Splice:
        """The lines put at the end of the text, behind its last comment, or under `last` where more than that follows.

        A blank line is put before them, unless there is one. `last` below 0: no line holds anything to stay behind.
        """
        if not self.text:
            return Splice(0, "", "".join(line + self.line_end for line in lines))
        end = len(self.starts) - 1
        rest = [self.line(number).strip() for number in range(last + 1, end + 1)]
        if last < 0 or all(not line or line.startswith("#") for line in rest):
            last = max(last, end if self.line(end) else end - 1)
        return self.below(last, ["", *lines] if self.line(last).strip() else lines)

    def without(self, first: int, last: int) -> Splice:
        """The lines taken out; whether the file ends with a line end stays as it is."""
        if last + 1 < len(self.starts):
            start, end = self.starts[first], self.starts[last + 1]
        else:
            start, end = self.ends[first - 1] if first else 0, self.ends[last]
        return Splice(start, self.text[start:end], "")

    def turned_back(self, splice: Splice) -> Patch:
        """The patch that undoes the splice in the text it makes."""
        behind = splice.at + len(splice.removed)
        start = self.starts[max(0, self._line_at(splice.at) - _NEAR)]
        end = self.ends[min(len(self.ends) - 1, self._line_at(behind) + _NEAR)]
        return Patch(splice.at, self.text[start : splice.at], splice.put, splice.removed, self.text[behind:end])


def data_of(node: Node) -> Value:
    """What a node says: texts, lists and mappings; None where nothing was written."""
    match node:
        case Text():
            return None if node.empty else node.text
        case Items():
            return [data_of(item) for item in node.items]
        case Fields():
            return {key: data_of(entry.value) for key, entry in node.entries.items()}


def written(value: Value) -> str:
    """The value on one line, quoted unless plainly safe."""
    if value is None:
        return ""
    if isinstance(value, str):
        safe = _PLAIN.fullmatch(value) and value.casefold() not in _NOT_TEXT
        return value if safe else "'" + value.replace("'", "''") + "'"
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{written(key)}: {written(inner)}".rstrip() for key, inner in value.items()) + "}"
    return "[" + ", ".join(map(written, value)) + "]"


def written_lines(key: str, value: Value, deep: int, step: int) -> list[str]:
    """The key with its value, set in by `deep` blanks: a mapping on lines of its own, `step` further in."""
    head = f"{' ' * deep}{written(key)}:"
    if not isinstance(value, Mapping):
        return [f"{head} {written(value)}".rstrip()]
    return [head, *(line for name, inner in value.items() for line in written_lines(name, inner, deep + step, step))]


def _set_in(line: str) -> int:
    return len(line) - len(line.lstrip(" "))
