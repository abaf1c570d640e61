"""All that is known, by kind and id, and what each thing is called: shipped facts, further ones, and own gear."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from engine.base.compact import compact, field
from engine.base.problem import Problem
from engine.facts.basis import Source
from engine.facts.files import Layer, shipped_layer
from engine.facts.guidance import Advice, Assumption, Rule, Setting, Shared, Term, Word
from engine.facts.overlay import Loaded, load
from engine.facts.records import Adapter, Body, Circle, Filter, Format, Lens, Motif, Mount, Observation, Thread
from engine.facts.sections import NAMED, noun
from engine.facts.tables import Table


def _none() -> Any:
    return Table()


@compact(eq=False)
class Catalogue:
    """Tables of records by id; a table makes a record when it is first asked for."""

    sources: Mapping[str, Source] = field(default_factory=_none)
    threads: Mapping[str, Thread] = field(default_factory=_none)
    formats: Mapping[str, Format] = field(default_factory=_none)
    mounts: Mapping[str, Mount] = field(default_factory=_none)
    bodies: Mapping[str, Body] = field(default_factory=_none)
    lenses: Mapping[str, Lens] = field(default_factory=_none)
    adapters: Mapping[str, Adapter] = field(default_factory=_none)
    filters: Mapping[str, Filter] = field(default_factory=_none)
    observations: Mapping[str, Observation] = field(default_factory=_none)
    circles: Mapping[str, Circle] = field(default_factory=_none)
    motifs: Mapping[str, Motif] = field(default_factory=_none)
    terms: Mapping[str, Term] = field(default_factory=_none)
    advice: Mapping[str, Advice] = field(default_factory=_none)
    rules: Mapping[str, Rule] = field(default_factory=_none)
    settings: Mapping[str, Setting] = field(default_factory=_none)
    assumptions: Mapping[str, Assumption] = field(default_factory=_none)
    words: Mapping[str, Word] = field(default_factory=_none)
    shared: Mapping[str, Shared] = field(default_factory=_none)
    gear_ids: frozenset[str] = frozenset()  # of the records that the user's gear file holds
    key: str = ""  # changes with the content of the facts; '' where nothing may be kept under it

    @staticmethod
    def of(loaded: Loaded) -> Catalogue:
        return Catalogue(**loaded.tables, gear_ids=loaded.gear_ids, key=loaded.key)

    def names(self) -> Iterator[tuple[str, str, str]]:
        """(phrase, kind, id) for everything that can be called by name: ids, designations, names, aliases.

        A phrase that several records carry comes once for each.
        """
        for section in NAMED:
            table = getattr(self, section)
            kind = noun(section)
            for phrase, record_id in (table if isinstance(table, Table) else Table(table)).called(section):
                yield phrase, kind, record_id


def layers_of(
    facts_dirs: Iterable[str | os.PathLike[str]] = (),
    gear_path: str | os.PathLike[str] | None = None,
    gear_needed: bool = False,
) -> list[Layer]:
    """The shipped facts, then each extra folder, then the gear file, whose absence is a problem where `gear_needed`."""
    layers = [shipped_layer(), *(Layer("extra", os.fspath(folder)) for folder in facts_dirs)]
    if gear_path is not None:
        layers.append(Layer("gear", os.fspath(gear_path), gear_needed))
    return layers


def load_catalogue(
    facts_dirs: Iterable[str | os.PathLike[str]] = (),
    gear_path: str | os.PathLike[str] | None = None,
    *,
    gear_needed: bool = False,
    cached: bool = True,
) -> tuple[Catalogue, tuple[Problem, ...]]:
    """Everything known and everything that is wrong with it; `cached`: prepared facts may be used and are kept."""
    loaded = load(layers_of(facts_dirs, gear_path, gear_needed), cached)
    return Catalogue.of(loaded), loaded.problems
