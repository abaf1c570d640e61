"""A YAML file read strictly into nodes with places, and what is wrong with it; every scalar stays the text it was."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any, Final

import yaml

from engine.base.compact import compact, field
from engine.base.place import Place
from engine.base.problem import Problem
from engine.facts.nodes import Entry, Fields, Items, Node, Text
from engine.facts.syntax import syntax_problem

DEEPEST: Final = 32
# YAML 1.1 ends a line at U+0085, U+2028 and U+2029, where no editor does: places would be off
_UNSAFE = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufeff\ufffe\uffff]"
)
_DIRECTIVE = re.compile("^%[^\\s#]*", re.MULTILINE)
_LINE_END = re.compile("\r\n|\r|\n")
Next = Callable[[], Any]


@compact(frozen=False)
class Sheet:
    """What a file held; not `whole` where reading broke off: then `fields` is None, and `text` is what was there."""

    file: str
    text: str
    fields: Fields | None = None
    problems: list[Problem] = field(default_factory=list)

    @property
    def whole(self) -> bool:
        return self.fields is not None

    def tell(self, line: int, column: int, found: str, expected: str, nearest: str | None = None) -> None:
        self.problems.append(Problem(Place(self.file, line, column), found, expected, nearest))


def read_sheet(file: str, data: bytes, in_python: bool = False) -> Sheet:
    """The file's one document, which must be a mapping; `in_python` leaves the parser written in C aside.

    Refused: bytes that are not UTF-8, control characters, tags, anchors, aliases, merge keys, keys that are no plain
    text or stand twice, a second document, more than 32 levels.
    """
    sheet = Sheet(file, "")
    try:
        sheet.text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8-sig", "replace")
        sheet.tell(*_place_of(before, len(before)), f"byte 0x{data[error.start]:02x}", "text in UTF-8")
        return sheet
    for match in _UNSAFE.finditer(sheet.text):
        sheet.tell(*_place_of(sheet.text, match.start()), _named(match[0]), "text without control characters")
    for match in _DIRECTIVE.finditer(sheet.text):
        sheet.tell(*_place_of(sheet.text, match.start()), f"directive '{match[0]}'", "facts alone")
    if sheet.problems:
        return sheet
    get = _events(sheet.text, in_python)
    try:
        sheet.fields = _Builder(sheet, get).document()
    except yaml.YAMLError as error:
        sheet.problems.append(syntax_problem(file, sheet.text, error))
    return sheet


def _events(text: str, in_python: bool) -> Next:
    if not in_python:
        try:
            from yaml._yaml import CParser
        except ImportError:  # an installation without the C library: the same events, slower
            pass
        else:
            get: Next = CParser(text).get_event
            return get
    return iter(yaml.parse(text, Loader=yaml.SafeLoader)).__next__


def _place_of(text: str, offset: int) -> tuple[int, int]:
    ends = [match.end() for match in _LINE_END.finditer(text, 0, offset)]
    return len(ends) + 1, offset - (ends[-1] if ends else 0) + 1


def _named(char: str) -> str:
    return f"character U+{ord(char):04X}"


class _Builder:
    """Nodes from the parser's events."""

    def __init__(self, sheet: Sheet, get: Next) -> None:
        self.sheet = sheet
        self.get = get
        self.depth = 0

    def document(self) -> Fields:
        self.get()  # the stream's start
        empty = Fields({}, 1, 1)
        if type(self.get()) is yaml.StreamEndEvent:
            return empty
        event = self.get()
        node = self.node(event)
        self.get()  # the document's end
        after = self.get()
        if type(after) is not yaml.StreamEndEvent:
            self.tell(after, "a second document", "one document in a file")
            while type(self.get()) is not yaml.StreamEndEvent:
                pass
        if isinstance(node, Fields):
            return node
        if not (isinstance(node, Text) and node.empty):
            self.tell(event, "no mapping", "kinds of records, such as 'lenses:', each with records under it")
        return empty

    def tell(self, event: Any, found: str, expected: str) -> None:
        mark = event.start_mark
        self.sheet.tell(mark.line + 1, mark.column + 1, found, expected)

    def node(self, event: Any) -> Node:
        mark = event.start_mark
        line, column = mark.line + 1, mark.column + 1
        kind = type(event)
        if kind is yaml.AliasEvent:
            self.tell(event, f"alias '*{event.anchor}'", "the value itself, written out")
            return Text("", False, line, column)
        if event.anchor is not None:
            self.tell(event, f"anchor '&{event.anchor}'", "a value without an anchor")
        if event.tag is not None:
            tag = event.tag.replace("tag:yaml.org,2002:", "!!")
            self.tell(event, f"tag '{tag}'", "a value without a tag")
        if kind is yaml.ScalarEvent:
            # the parser's own check saw the file; an escape in double quotes may still have made such a character
            if event.style == '"' and (unsafe := _UNSAFE.search(event.value)):
                self.tell(event, _named(unsafe[0]), "text without control characters")
            return Text(event.value, not event.implicit[0], line, column)
        if self.depth == DEEPEST:
            self.tell(event, f"more than {DEEPEST} levels", "fewer levels")
            self.skip()
            return Text("", False, line, column)
        self.depth += 1
        node = self.fields(line, column) if kind is yaml.MappingStartEvent else self.items(line, column)
        self.depth -= 1
        return node

    def skip(self) -> None:
        """Past the end of the collection that has just begun."""
        level = 1
        while level:
            kind = type(self.get())
            level += kind in (yaml.MappingStartEvent, yaml.SequenceStartEvent)
            level -= kind in (yaml.MappingEndEvent, yaml.SequenceEndEvent)

    def items(self, line: int, column: int) -> Items:
        items: list[Node] = []
        while type(event := self.get()) is not yaml.SequenceEndEvent:
            items.append(self.node(event))
        return Items(items, line, column)

    def fields(self, line: int, column: int) -> Fields:
        entries: dict[str, Entry] = {}
        while type(event := self.get()) is not yaml.MappingEndEvent:
            told = len(self.sheet.problems)
            key = self.node(event)
            refused = len(self.sheet.problems) > told
            value = self.node(self.get())
            if refused:
                continue
            if not isinstance(key, Text) or key.empty:
                self.tell(event, "a key that is no text", "a plain key")
            elif key.text == "<<" and not key.quoted:
                self.tell(event, "merge key '<<'", "the keys themselves, written out")
            elif key.text in entries:
                first = entries[key.text].line
                self.tell(event, f"key '{key.text}' again", f"each key once (it stands at line {first} already)")
            else:
                entries[key.text] = Entry(key.line, key.column, value)
        return Fields(entries, line, column)
