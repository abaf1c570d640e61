"""Records of one section by id, each made when first asked for; and what a layer adds to the tables before it."""

from __future__ import annotations

from collections.abc import Callable, ItemsView, Iterator, Mapping, ValuesView
from typing import Any, Generic, TypeVar, cast

from engine.base.compact import compact, fields
from engine.base.problem import Problem
from engine.facts.records import Record
from engine.facts.sections import NAMED, SECTIONS, phrases

R = TypeVar("R", bound=Record)
Row = list[Any]
Waiting = tuple[Callable[[Row], Any], Row]  # a record still to be made


class Table(Mapping[str, R], Generic[R]):
    """id -> record, in the order of the facts."""

    __slots__ = ("_called", "_entries", "_whole")

    def __init__(self, entries: Mapping[str, R | Waiting] | None = None) -> None:
        self._entries: dict[str, Any] = dict(entries or {})
        self._whole = False
        self._called: list[tuple[str, str]] | None = None  # what `called` told before

    def __getitem__(self, record_id: str) -> R:
        entry = self._entries[record_id]
        if type(entry) is tuple:
            entry = self._entries[record_id] = entry[0](entry[1])
        return cast(R, entry)

    def __iter__(self) -> Iterator[str]:
        return iter(self._entries)

    def __len__(self) -> int:
        return len(self._entries)

    def __contains__(self, record_id: object) -> bool:
        return record_id in self._entries

    def __repr__(self) -> str:
        return f"Table({self._made()!r})"

    def values(self) -> ValuesView[R]:
        return self._made().values()

    def items(self) -> ItemsView[str, R]:
        return self._made().items()

    def under(self, later: Table[R]) -> Table[R]:
        """This table with the later one's records added or put in the place of its own."""
        if not later._entries:
            return self
        return Table({**self._entries, **later._entries}) if self._entries else later

    def called(self, section: str) -> Iterator[tuple[str, str]]:
        """(phrase, id) for each way to call a record by name, without making it."""
        if self._called is None:
            self._called = list(self._names(section))
        return iter(self._called)

    def _names(self, section: str) -> Iterator[tuple[str, str]]:
        order = [field.name for field in fields(SECTIONS[section])]
        columns = [order.index(name) for name in NAMED[section]]
        for record_id, entry in self._entries.items():
            if type(entry) is tuple:
                values = [entry[1][column] for column in columns]
            else:
                values = [getattr(entry, name) for name in NAMED[section]]
            for phrase in phrases(section, values):
                yield phrase, record_id

    def _made(self) -> dict[str, R]:
        if not self._whole:
            for record_id in self._entries:
                self[record_id]
            self._whole = True
        return self._entries


Tables = Mapping[str, Table[Any]]


@compact
class Part:
    """What one layer adds. `written`: the ids of the records that stand in its files, not derived from others."""

    tables: Tables
    written: frozenset[str] = frozenset()
    problems: tuple[Problem, ...] = ()


def nothing() -> Tables:
    return {section: Table() for section in SECTIONS}


def laid_over(earlier: Tables, part: Part) -> Tables:
    return {section: earlier[section].under(part.tables[section]) for section in SECTIONS}
