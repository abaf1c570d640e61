"""`ringpath check`: every problem of the facts and the gear, one a line."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from engine.facts.gearplace import gear_path

FINE = 0
INVALID = 3


def check(paths: Sequence[Path], facts: tuple[Path, ...], gear: Path | None) -> int:
    """Check the shipped facts and what is named: folders as facts, files as gear; gives 3 where there are problems."""
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
            print(_tally(catalogue, file, folders))
    return INVALID if total else FINE


def _tally(catalogue: object, file: Path | None, folders: Sequence[Path]) -> str:
    from engine.facts.catalogue import Catalogue

    assert isinstance(catalogue, Catalogue)
    counts = ", ".join(
        f"{len(getattr(catalogue, name))} {name}"
        for name in ("mounts", "threads", "formats", "adapters", "bodies", "lenses", "rules", "terms", "advice")
    )
    checked = ", ".join(["shipped facts", *(str(path) for path in (*folders, *([file] if file else [])))])
    return f"{checked}: nothing wrong; {counts}"
