"""The tree of a rule's condition: what is compared with what, which names it looks at, and its form as plain lists."""

from __future__ import annotations

from typing import Any, Final

from engine.base.compact import compact, fields


@compact
class Number:
    """A number; a length in mm."""

    value: float


@compact
class Name:
    name: str


@compact
class Text:
    text: str


@compact
class Ends:
    """The shortest or the longest setting of a quantity that can be set."""

    end: str
    name: str


@compact
class Sum:
    left: Term
    right: Term


@compact
class Difference:
    left: Term
    right: Term


@compact
class Product:
    left: Term
    right: Term


@compact
class Quotient:
    left: Term
    right: Term


Term = Number | Name | Text | Ends | Sum | Difference | Product | Quotient


@compact
class Compare:
    """`op`: one of < <= > >= = !=."""

    left: Term
    op: str
    right: Term


@compact
class Known:
    """Whether something is known of `name`, or, where `known` is False, that nothing is."""

    name: str
    known: bool


@compact
class OneOf:
    name: str
    choices: tuple[str, ...]


@compact
class Has:
    """Whether `word` is among the words of `name`."""

    name: str
    word: str


@compact
class Not:
    part: Condition


@compact
class Both:
    parts: tuple[Condition, ...]


@compact
class Either:
    parts: tuple[Condition, ...]


Condition = Compare | Known | OneOf | Has | Not | Both | Either


def names_in(condition: Condition) -> frozenset[str]:
    """Every quantity that a condition looks at."""
    if isinstance(condition, Both | Either):
        return frozenset().union(*(names_in(part) for part in condition.parts))
    if isinstance(condition, Not):
        return names_in(condition.part)
    if isinstance(condition, Compare):
        return names_of(condition.left) | names_of(condition.right)
    return frozenset([condition.name])


def to_plain(condition: Condition | Term) -> list[Any]:
    """The tree as nested lists of plain values, for keeping as JSON."""
    return [type(condition).__name__, *(_plain_field(getattr(condition, row.name)) for row in fields(type(condition)))]


def from_plain(plain: list[Any]) -> Any:
    """The tree that `to_plain` made `plain` of."""
    kind, *values = plain
    return _KINDS[kind](*(_rich_field(one) for one in values))


def names_of(term: Term) -> frozenset[str]:
    """Every quantity that a side of a comparison looks at."""
    if isinstance(term, Name | Ends):
        return frozenset([term.name])
    if isinstance(term, Number | Text):
        return frozenset()
    return names_of(term.left) | names_of(term.right)


_KINDS: Final = {
    kind.__name__: kind
    for kind in (
        Number,
        Name,
        Text,
        Ends,
        Sum,
        Difference,
        Product,
        Quotient,
        Compare,
        Known,
        OneOf,
        Has,
        Not,
        Both,
        Either,
    )
}


def _plain_field(value: Any) -> Any:
    if isinstance(value, tuple):
        return ["*", *(_plain_field(one) for one in value)]
    return to_plain(value) if type(value).__name__ in _KINDS else value


def _rich_field(value: Any) -> Any:
    if isinstance(value, list):
        return tuple(_rich_field(one) for one in value[1:]) if value[0] == "*" else from_plain(value)
    return value
