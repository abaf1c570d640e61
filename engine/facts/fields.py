"""How the value of one key becomes that of a field: readers made from limits and choices, refusals told in place."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection
from typing import Any, Final

from engine.base.compact import compact, field
from engine.base.interval import UNKNOWN, Interval, Measure
from engine.base.problem import nearest_of
from engine.base.span import Span
from engine.facts.nodes import Fields, Items, Node, Text, told
from engine.facts.yamlfile import Sheet
from grammar import values
from grammar.values import Fault

ID: Final = re.compile(r"[A-Za-z0-9][A-Za-z0-9.:_+-]*")


@compact
class Reference:
    """An id that must stand in `section`, and where it was written."""

    section: str
    id: str
    key: str
    line: int
    column: int


@compact(frozen=False)
class Desk:
    """One record as it is read: the sheet that takes the problems, and the ids it refers to."""

    sheet: Sheet
    references: list[Reference] = field(default_factory=list)

    def refuse(self, node: Node, key: str, expected: str, nearest: str | None = None) -> Any:
        """Tells that the node is no value for the key; gives REFUSED."""
        self.sheet.tell(node.line, node.column, f"{key} {told(node)}", expected, nearest)
        return REFUSED


class Refused:
    """Stands for a value that could not be read; what was wrong has been told."""


REFUSED: Final = Refused()
# a reader gives the field's value, or REFUSED after telling why
Read = Callable[[Node, str, Desk], Any]


def text(node: Node, key: str, desk: Desk) -> Any:
    """Words, their white space made single blanks."""
    words = " ".join(node.text.split()) if isinstance(node, Text) else ""
    return words or desk.refuse(node, key, "text")


def texts(node: Node, key: str, desk: Desk) -> Any:
    """A list of texts."""
    return _listed(node, key, desk, text)


def flag(node: Node, key: str, desk: Desk) -> Any:
    """`yes` or `no`."""
    if isinstance(node, Text) and node.text in ("yes", "no", "true", "false"):
        return node.text in ("yes", "true")
    return desk.refuse(node, key, "'yes' or 'no'")


def choice(choices: Collection[str]) -> Read:
    """One of the words."""

    def read(node: Node, key: str, desk: Desk) -> Any:
        if isinstance(node, Text) and node.text in choices:
            return node.text
        nearest = nearest_of(node.text, choices) if isinstance(node, Text) else None
        return desk.refuse(node, key, f"one of {', '.join(choices)}", nearest)

    return read


def listed(one: Read) -> Read:
    """A list of what `one` reads."""
    return lambda node, key, desk: _listed(node, key, desk, one)


def reference(section: str) -> Read:
    """The id of a record in `section`; whether it is there is looked up when every file has been read."""

    def read(node: Node, key: str, desk: Desk) -> Any:
        if not isinstance(node, Text) or node.empty:
            return desk.refuse(node, key, f"an id in '{section}'")
        desk.references.append(Reference(section, node.text, key, node.line, node.column))
        return node.text

    return read


def quantity(
    parse: Callable[[str], Any], least: float, greatest: float, unit: str, above: bool = False, known: bool = False
) -> Read:
    """What `parse` reads, inside `least`..`greatest` (`above`: `least` itself is out); `known`: not `unknown`."""
    low, high = (values.decimal(end) + (f" {unit}" if unit else "") for end in (least, greatest))
    bounds = f"above {low} and up to {high}" if above else f"from {low} to {high}"

    def read(node: Node, key: str, desk: Desk) -> Any:
        if not isinstance(node, Text) or node.empty:
            return desk.refuse(node, key, f"a quantity {bounds}")
        value = parse(node.text)
        if isinstance(value, Fault):
            return desk.refuse(node, key, value.expected, value.nearest)
        ends = _ends(value)
        if ends is None:
            return desk.refuse(node, key, f"a quantity {bounds}") if known else value
        if ends[0] < least or ends[1] > greatest or (above and ends[0] <= least):
            return desk.refuse(node, key, f"a quantity {bounds}")
        return value

    return read


def single(read_measure: Read) -> Read:
    """One number without tolerance, from a reader of a measure."""

    def read(node: Node, key: str, desk: Desk) -> Any:
        value = read_measure(node, key, desk)
        if isinstance(value, Interval) and value.is_exact:
            return value.nominal
        return value if value is REFUSED else desk.refuse(node, key, "one number, without a tolerance")

    return read


def parsed(parse: Callable[[str], Any]) -> Read:
    """What `parse` reads, without further limits."""

    def read(node: Node, key: str, desk: Desk) -> Any:
        if not isinstance(node, Text) or node.empty:
            return desk.refuse(node, key, "a value")
        value = parse(node.text)
        return desk.refuse(node, key, value.expected, value.nearest) if isinstance(value, Fault) else value

    return read


def or_word(word: str, read_value: Read) -> Read:
    """The word itself, or what the other reader gives."""

    def read(node: Node, key: str, desk: Desk) -> Any:
        if isinstance(node, Text) and node.text == word:
            return word
        if isinstance(node, Text) and nearest_of(node.text, [word]):
            return desk.refuse(node, key, f"'{word}' or a quantity", word)
        return read_value(node, key, desk)

    return read


def count(node: Node, key: str, desk: Desk) -> Any:
    """How many there are: `yes` (one), `no` (none), or a number up to 99."""
    given = node.text if isinstance(node, Text) else ""
    if given in ("yes", "no"):
        return int(given == "yes")
    if re.fullmatch("[0-9]{1,2}", given):
        return int(given)
    return desk.refuse(node, key, "'yes', or how many")


def nested(cls: type[Any], keys: dict[str, tuple[str, Read]]) -> Read:
    """A mapping of its own: key -> (field of `cls`, reader)."""

    def read(node: Node, key: str, desk: Desk) -> Any:
        if not isinstance(node, Fields):
            return desk.refuse(node, key, f"a mapping with {' and '.join(keys)}")
        given: dict[str, Any] = {}
        for name, entry in node.entries.items():
            if name not in keys:
                where = f"key '{name}' under {key}"
                desk.sheet.tell(entry.line, entry.column, where, f"one of {', '.join(keys)}", nearest_of(name, keys))
                given[name] = REFUSED
            else:
                attribute, read_one = keys[name]
                given[attribute] = read_one(entry.value, name, desk)
        return REFUSED if any(value is REFUSED for value in given.values()) else cls(**given)

    return read


def _listed(node: Node, key: str, desk: Desk, one: Read) -> Any:
    if not isinstance(node, Items):
        return desk.refuse(node, key, "a list", f"[{node.text}]" if isinstance(node, Text) and node.text else None)
    items = [one(item, key, desk) for item in node.items]
    return REFUSED if any(item is REFUSED for item in items) else tuple(items)


def _ends(value: Measure | Span | tuple[float, float]) -> tuple[float, float] | None:
    """The least and the greatest that is meant, or None where it is unknown."""
    if isinstance(value, tuple):
        return value
    measure = value.hull() if isinstance(value, Span) else value
    return None if measure is UNKNOWN or not isinstance(measure, Interval) else (measure.least, measure.greatest)
