"""`ringpath check`: every problem of the facts and the gear, one a line, and what they leave open."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from engine.facts.gearplace import gear_path

if TYPE_CHECKING:
    from engine.answers.parts.knowledge import Knowledge
    from engine.facts.catalogue import Catalogue
    from engine.judging.holes import Hole

FINE = 0
INVALID = 3


def check(paths: Sequence[Path], facts: tuple[Path, ...], gear: Path | None, holes: bool = False) -> int:
    """Check the shipped facts and what is named: folders as facts, files as gear; gives 3 where there are problems.

    What one's own lenses have no way to is noted; with `holes` also what the facts as a whole leave open.
    """
    from engine.answers.parts.knowledge import Knowledge
    from engine.facts.catalogue import load_catalogue
    from engine.judging.checks import problems_of
    from engine.judging.settings import setting_cases

    folders = [*facts, *(path for path in paths if path.is_dir())]
    files = [path for path in paths if not path.is_dir()]
    own = gear_path(gear)
    if own is not None and (gear is not None or not paths):
        files.append(own)
    total = 0
    targets: list[Path | None] = [*files] if files else [None]
    for file in targets:
        catalogue, problems = load_catalogue(folders, file, gear_needed=file is not None, cached=False)
        found = list(problems)
        if not found:
            knowledge = Knowledge.of(catalogue)
            found += [*knowledge.problems, *setting_cases(catalogue.settings.values())[1], *problems_of(catalogue)]
        for problem in found:
            print(problem)
        total += len(found)
        if not found:
            for hole in _holes(knowledge, holes):
                print(hole)
            print(_tally(catalogue, file, folders))
    return INVALID if total else FINE


def _holes(knowledge: Knowledge, of_facts: bool) -> Iterator[Hole]:
    from engine.judging.holes import holes_of_facts, holes_of_gear

    yield from holes_of_gear(knowledge.catalogue, knowledge.rings)
    if of_facts:
        yield from holes_of_facts(knowledge.catalogue, knowledge.rings)


def _tally(catalogue: Catalogue, file: Path | None, folders: Sequence[Path]) -> str:
    counts = ", ".join(
        f"{len(getattr(catalogue, name))} {name}"
        for name in ("mounts", "threads", "formats", "adapters", "bodies", "lenses", "rules", "terms", "advice")
    )
    checked = ", ".join(["shipped facts", *(str(path) for path in (*folders, *([file] if file else [])))])
    return f"{checked}: nothing wrong; {counts}"
