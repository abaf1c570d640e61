"""The practice questions that wording is fitted to: what is said, what it asks, and after which question."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from engine.base.compact import compact
from tests.grammar.sentences import SENTENCES
from tests.reading import loaded

DATA = Path(__file__).parents[1] / "data" / "asked"
LISTS = (DATA.parent / "questions.yaml", DATA.parent / "further.yaml")


@compact
class Asked:
    """One line of a talk. `before`: the turns before it, the last one last, with their intents."""

    source: str
    say: str
    intent: str
    lens: str | None = None
    body: str | None = None
    before: tuple[tuple[str, str], ...] = ()


def asked() -> Iterator[Asked]:
    """Every question of every file, and every turn of every talk; then the lists of questions and our own sentences."""
    for path in sorted(DATA.glob("*.yaml")):
        data = loaded(path)
        for row in data.get("asked", ()):
            yield _asked(path.stem, row, ())
        for talk in data.get("talks", ()):
            before: tuple[tuple[str, str], ...] = ()
            for row in talk:
                yield _asked(path.stem, row, before)
                before = (*before, (row["say"], row["intent"]))

    for path in LISTS:
        yield from _of_list(path)
    for text, intent, lens, body in SENTENCES:
        yield Asked("sentences", text, intent, lens, body)


def _of_list(path: Path) -> Iterator[Asked]:
    data, source = loaded(path), "list" if path is LISTS[0] else path.stem
    for row in data["asked"]:
        after = ((row["after"], "chain"),) if row.get("after") else ()
        yield Asked(source, row["say"], row["reads_as"]["intent"], before=after)
    for talk in data["talks"]:
        before: tuple[tuple[str, str], ...] = ()
        for turn in talk["turns"]:
            yield Asked(source, turn["say"], turn["reads_as"]["intent"], before=before)
            before = (*before, (turn["say"], turn["reads_as"]["intent"]))


def _asked(source: str, row: dict[str, Any], before: tuple[tuple[str, str], ...]) -> Asked:
    return Asked(source, row["say"], row["intent"], row.get("lens"), row.get("body"), before)
