"""Layers of facts, each read onto those before it: the shipped ones, extra folders, the user's own gear."""

from __future__ import annotations

import gc
import os
from collections.abc import Sequence
from typing import Final

from engine.base.compact import compact
from engine.base.problem import Problem
from engine.facts import cache
from engine.facts.basis import Source
from engine.facts.encoding import Odd, decoded, encoded
from engine.facts.files import FactFile, Layer, files_of, shipped_layer, shown_path
from engine.facts.sections import SECTIONS
from engine.facts.tables import Part, Table, Tables, laid_over, nothing

OWN: Source = Source("own", "your own gear file and measurements")
_MOST_SHIPPED: Final = 2
# the shipped facts that were prepared in this run, by their key and where they are seen from: gear that is written is
# laid over them anew, and they stay as they are
_shipped: dict[tuple[str, str], Part] = {}


@compact
class Loaded:
    """All that the layers say. `gear_ids`: the records written in the user's gear file.

    `key`: changes with the content of any file; '' where nothing may be kept under it.
    """

    tables: Tables
    problems: tuple[Problem, ...] = ()
    gear_ids: frozenset[str] = frozenset()
    key: str = ""


def load(layers: Sequence[Layer], cached: bool = False) -> Loaded:
    """The records that are good and every problem, in the order of the files; `cached`: prepared facts may be used."""
    collecting = gc.isenabled()
    gc.disable()  # tens of thousands of small values that all stay
    try:
        return _load(layers, cached)
    finally:
        if collecting:
            gc.enable()


def _load(layers: Sequence[Layer], cached: bool) -> Loaded:
    tables: Tables = {**nothing(), "sources": Table({OWN.id: OWN})}
    problems: list[Problem] = []
    gear: frozenset[str] = frozenset()
    origins: dict[str, tuple[int, str]] = {}
    key = cache.first_key() if cached else None
    for number, layer in enumerate(layers):
        files = files_of(layer)
        if not files:
            continue
        origins |= {file.shown: (number, file.inside) for file in files}
        if key and not any(file.problem for file in files):
            key = cache.key_of(key, layer, files)
        else:
            key = None
        part = _kept(layers, layer, key) if key else None
        if part is None:
            part = _read(layer, files, tables)
            if part.problems:
                key = None  # they would be told in the words of the folder they were first met from
            elif key:
                cache.keep(layer, key, encoded(part, origins))
        tables = laid_over(tables, part)
        problems += part.problems
        if layer.own:
            gear |= part.written
    return Loaded({section: tables[section] for section in SECTIONS}, tuple(problems), gear, key or "")


def _read(layer: Layer, files: Sequence[FactFile], tables: Tables) -> Part:
    from engine.facts.loading import read_part  # and with it the YAML reader, which prepared facts do without

    return read_part(files, tables, layer.own)


def _kept(layers: Sequence[Layer], layer: Layer, key: str) -> Part | None:
    def shown(number: int, inside: str) -> str:
        path = layers[number].path
        return shown_path(os.path.join(path, inside) if inside else path)

    seen = (key, shown_path(layer.path)) if layer == shipped_layer() else None
    if seen is not None and seen in _shipped:
        return _shipped[seen]
    payload = cache.kept(layer, key)
    try:
        part = None if payload is None else decoded(payload, shown)
    except Odd:
        return None
    if seen is not None and part is not None:
        if len(_shipped) >= _MOST_SHIPPED:
            del _shipped[next(iter(_shipped))]
        _shipped[seen] = part
    return part
