"""A layer's records as plain lists for JSON, and back: the shape is looked at once, a record is made when asked for."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from itertools import chain
from math import isfinite
from typing import Any, Final

from engine.base.compact import compact, fields
from engine.base.interval import UNKNOWN, Interval, Measure, Unknown
from engine.base.place import NOWHERE, Place
from engine.base.span import Span
from engine.facts.basis import Basis
from engine.facts.records import Cup, Record
from engine.facts.sections import SECTIONS
from engine.facts.tables import Part, Row, Table

Fits = Callable[[Sequence[Any]], bool]


class Odd(Exception):
    """The payload is not what this module wrote; whoever reads it goes without."""


@compact
class Codec:
    """How the values of one type are written, whether a column of them is in shape, and how they are read back."""

    fits: Fits
    write: Callable[[Any], Any] | None = None  # None: as it is
    read: Callable[[Any], Any] | None = None


def _of(*types: type) -> Fits:
    allowed = frozenset(types)
    return lambda column: allowed.issuperset(map(type, column))


def _lists_of(fit: Fits, lengths: Collection[int] | None = None) -> Fits:
    """Whether a column holds only lists (of these lengths) and their items, taken as one column, fit."""
    return lambda column: (
        _of(list)(column)
        and (lengths is None or all(length in lengths for length in set(map(len, column))))
        and fit([*chain.from_iterable(column)])
    )


def _or_none(fit: Fits) -> Fits:
    return lambda column: fit([value for value in column if value is not None])


def _below(count: int) -> Fits:
    return lambda column: _of(int)(column) and (not column or (min(column) >= 0 and max(column) < count))


def _are_measures(column: Sequence[Any]) -> bool:
    floats = [value for value in column if type(value) is float]
    lists = [value for value in column if type(value) is list]
    unknown = sum(value is None for value in column)
    return (
        len(floats) + len(lists) + unknown == len(column) and all(map(isfinite, floats)) and all(map(_is_spread, lists))
    )


def _is_spread(value: Any) -> bool:
    finite = len(value) == 3 and all(type(end) is float and isfinite(end) for end in value)
    return finite and bool(value[0] <= value[2] <= value[1])


def _write_measure(value: Measure) -> Any:
    if isinstance(value, Unknown):
        return None
    return value.nominal if value.is_exact else [value.least, value.greatest, value.nominal]


def _read_measure(value: Any) -> Measure:
    if value is None:
        return UNKNOWN
    return Interval(*value) if type(value) is list else Interval(value, value, value)


def _write_span(value: Span) -> Any:
    shortest = _write_measure(value.shortest)
    return [shortest] if value.is_fixed else [shortest, _write_measure(value.longest)]


def _read_span(value: Any) -> Span:
    shortest = _read_measure(value[0])
    return Span(shortest, shortest if len(value) == 1 else _read_measure(value[1]))


_PAIR_READ: Final[Callable[[Any], Any]] = lambda value: None if value is None else tuple(value)  # noqa: E731

# by the annotation of the field; `Basis` and `Place` are written as numbers into lists of the payload's own
CODECS: Final[Mapping[str, Codec]] = {
    "str": Codec(_of(str)),
    "str | None": Codec(_of(str, type(None))),
    "bool": Codec(_of(bool)),
    "bool | None": Codec(_of(bool, type(None))),
    "int": Codec(_of(int)),
    "float": Codec(_of(float)),
    "float | None": Codec(_of(float, type(None))),
    "tuple[str, ...]": Codec(_lists_of(_of(str)), list, tuple),
    "tuple[int, int] | None": Codec(_or_none(_lists_of(_of(int), (2,))), None, _PAIR_READ),
    "tuple[float, float] | None": Codec(_or_none(_lists_of(_of(float), (2,))), None, _PAIR_READ),
    "Measure": Codec(_are_measures, _write_measure, _read_measure),
    "Interval": Codec(lambda column: None not in column and _are_measures(column), _write_measure, _read_measure),
    "Span": Codec(_lists_of(_are_measures, (1, 2)), _write_span, _read_span),
    "Cup | None": Codec(
        _or_none(_lists_of(_are_measures, (2,))),
        lambda cup: cup and [_write_measure(cup.bore_mm), _write_measure(cup.depth_mm)],
        lambda v: v and Cup(_read_measure(v[0]), _read_measure(v[1])),
    ),
}
Origins = Mapping[str, tuple[int, str]]  # a file as shown -> the number of its layer, its name inside


def encoded(part: Part, origins: Origins) -> dict[str, Any]:
    """The part as JSON writes it. Its problems are not kept: only what is without any should be."""
    bases: dict[Basis, int] = {}
    files: dict[str, int] = {}

    def write_place(place: Place) -> Any:
        return [files.setdefault(place.file, len(files)), place.line, place.column] if place != NOWHERE else None

    special = {"Basis": lambda basis: bases.setdefault(basis, len(bases)), "Place": write_place}
    tables: dict[str, list[Row]] = {}
    for section, cls in SECTIONS.items():
        columns = [(f.name, special.get(str(f.type)) or CODECS[str(f.type)].write) for f in fields(cls)]
        tables[section] = [
            [write(getattr(record, name)) if write else getattr(record, name) for name, write in columns]
            for record in part.tables[section].values()
        ]
    return {
        "bases": [[basis.confidence, *basis.sources] for basis in bases],
        "files": [origins[file] for file in files],
        "tables": tables,
        "written": sorted(part.written),
    }


def decoded(payload: Any, shown: Callable[[int, str], str]) -> Part:
    """The part that was encoded; `shown` gives a file's name from the number of its layer and its name inside.

    Raises Odd where anything is not in shape, so that a record made later cannot fail.
    """
    try:
        bases = [Basis(basis[0], tuple(basis[1:])) for basis in payload["bases"]]
        files = [shown(number, inside) for number, inside in payload["files"]]
        tables = {name: _table(cls, payload["tables"][name], bases, files) for name, cls in SECTIONS.items()}
        return Part(tables, frozenset(payload["written"]))
    except (KeyError, TypeError, ValueError, IndexError) as error:
        raise Odd from error


def _table(cls: type[Record], rows: list[Row], bases: list[Basis], files: list[str]) -> Table[Any]:
    codecs = dict(CODECS)
    codecs["Basis"] = Codec(_below(len(bases)), None, bases.__getitem__)
    codecs["Place"] = Codec(_are_places(len(files)), None, lambda v: Place(files[v[0]], v[1], v[2]) if v else NOWHERE)
    columns = [codecs[str(f.type)] for f in fields(cls)]
    if any(type(row) is not list or len(row) != len(columns) for row in rows):
        raise Odd
    for codec, column in zip(columns, zip(*rows, strict=True), strict=False):
        if not codec.fits(column):
            raise Odd
    readers = [(i, codec.read) for i, codec in enumerate(columns) if codec.read]

    def made(row: Row) -> Record:
        values = row.copy()
        for i, read in readers:
            values[i] = read(values[i])
        return cls(*values)

    return Table({row[0]: (made, row) for row in rows})


def _are_places(files: int) -> Fits:
    are_triples = _lists_of(_of(int), (3,))
    return _or_none(lambda column: are_triples(column) and _below(files)([place[0] for place in column]))
