"""Which record stands under which key of a fact file, in reading order, and which of its fields people call it by."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Final

from engine.facts import basis, guidance, records
from engine.facts.records import Record

SECTIONS: Final[Mapping[str, type[Record]]] = {
    "sources": basis.Source,
    "threads": records.Thread,
    "formats": records.Format,
    "mounts": records.Mount,
    "bodies": records.Body,
    "lenses": records.Lens,
    "adapters": records.Adapter,
    "filters": records.Filter,
    "observations": records.Observation,
    "circles": records.Circle,
    "motifs": records.Motif,
    "terms": guidance.Term,
    "advice": guidance.Advice,
    "rules": guidance.Rule,
    "settings": guidance.Setting,
    "assumptions": guidance.Assumption,
    "words": guidance.Word,
    "shared": guidance.Shared,
}

# what the reader may be told of by name; a body's written name may begin with an article, which no question needs
NAMED: Final[Mapping[str, tuple[str, ...]]] = {
    "mounts": ("id", "designation", "aliases"),
    "threads": ("id", "designation", "aliases"),
    "formats": ("id", "name", "aliases"),
    "bodies": ("id", "name", "aliases"),
    "lenses": ("id", "name", "aliases"),
    "adapters": ("id", "name", "aliases"),
    "motifs": ("aliases",),
    "terms": ("id", "names"),
    "advice": ("id", "topic", "names"),
}

SHORTEST_SPOKEN_ID: Final = 4  # letters of an adapter's id, hyphens left out


def noun(section: str) -> str:
    """What one record of the section is called: 'mount' for 'mounts'."""
    return "word shared by mounts" if section == "shared" else SECTIONS[section].__name__.lower()


def one_of(section: str) -> str:
    """The noun with its article."""
    return "advice" if section == "advice" else with_article(noun(section))


def with_article(word: str) -> str:
    """The word behind 'a' or 'an' as it is spoken; a lone letter or a designation is spelled out."""
    spelled = word[:1].isupper() and not word[1:2].islower()
    vowels = "AEFHILMNORSX" if spelled else "AEIOaeio"
    return f"{'an' if word[:1] and word[0] in vowels else 'a'} {word}"


def phrases(section: str, values: Iterable[object]) -> Iterator[str]:
    """What a record of the section is called, each once; `values`: those of its fields that NAMED names."""
    seen: set[str] = set()
    for which, value in enumerate(values):
        for phrase in (value,) if isinstance(value, str) else value if isinstance(value, (tuple, list)) else ():
            phrase = phrase.removeprefix("an ").removeprefix("a ") if section == "bodies" else phrase
            if (
                section == "adapters"
                and NAMED[section][which] == "id"
                and len(phrase.replace("-", "")) < SHORTEST_SPOKEN_ID
            ):
                continue  # names are heard without their hyphens: 'a-e' would swallow 'a E-mount'
            if phrase and phrase not in seen:
                seen.add(phrase)
                yield phrase
