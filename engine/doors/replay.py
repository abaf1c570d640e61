"""`ringpath replay`: a scenario's talk is held again and its answers compared with what they must hold."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from engine.ask import Desk
from engine.base.compact import compact
from engine.render.record import record_of
from engine.talk import Talk

SAME = 0
DIFFERENT = 1


@compact
class Turn:
    """A thing said, and what the answer must hold: `path` in its record -> what stands there."""

    say: str
    holds: Mapping[str, str]
    shows: tuple[str, ...]
    line: int


@compact
class Scenario:
    name: str
    gear: Path | None
    turns: tuple[Turn, ...]


def read_scenario(path: Path) -> Scenario:
    """A scenario from `talk.yaml` (in the folder, or the file itself) and the `gear.yaml` beside it."""
    from engine.facts.nodes import Fields, Items, Text
    from engine.facts.yamlfile import read_sheet

    file = path / "talk.yaml" if path.is_dir() else path
    sheet = read_sheet(str(file), file.read_bytes())
    if sheet.problems or sheet.fields is None:
        raise ValueError("; ".join(str(problem) for problem in sheet.problems) or f"{file}: no talk")
    rows = sheet.fields.entries.get("turns")
    if rows is None or not isinstance(rows.value, Items):
        raise ValueError(f"{file}: found no list under 'turns', expected what is said and what must be answered")
    turns = []
    for node in rows.value.items:
        if not isinstance(node, Fields) or "say" not in node.entries:
            raise ValueError(f"{file}:{node.line}:{node.column}: found no 'say', expected a turn with what is said")
        said = node.entries["say"].value
        holds, shows = node.entries.get("holds"), node.entries.get("shows")
        pairs = {
            key: entry.value.text
            for key, entry in (holds.value.entries.items() if holds and isinstance(holds.value, Fields) else ())
            if isinstance(entry.value, Text)
        }
        words = tuple(
            item.text for item in (shows.value.items if shows and isinstance(shows.value, Items) else [])
            if isinstance(item, Text)
        )  # fmt: skip
        if not pairs and not words:
            raise ValueError(f"{file}:{node.line}:{node.column}: found nothing to compare, expected 'holds' or 'shows'")
        turns.append(Turn(said.text if isinstance(said, Text) else "", pairs, words, node.line))
    gear = file.parent / "gear.yaml"
    return Scenario(path.name if path.is_dir() else file.stem, gear if gear.is_file() else None, tuple(turns))


def differences(scenario: Scenario) -> Iterator[str]:
    """What the answers lack, turn by turn."""
    with TemporaryDirectory() as folder:
        yield from _told_otherwise(scenario, Path(folder))


def _told_otherwise(scenario: Scenario, folder: Path) -> Iterator[str]:
    desk = Desk((), scenario.gear, folder=folder)
    yield from (str(problem) for problem in desk.problems)
    if desk.problems:
        return
    talk = Talk()
    for turn in scenario.turns:
        answer = desk.ask(turn.say, talk)
        record = record_of(answer, None if answer.unread else desk.knowledge)
        record["status"] = answer.status
        for path, wanted in turn.holds.items():
            found = at_path(record, path)
            if not matches(found, wanted):
                yield f"line {turn.line}: {turn.say!r}: {path} is {json.dumps(found)}, expected {wanted}"
        for words in turn.shows:
            if words.casefold() not in " ".join(record["text"].split()).casefold():
                yield f"line {turn.line}: {turn.say!r}: the answer does not say {words!r}: {record['text']!r}"


def at_path(record: Any, path: str) -> Any:
    """The value at a path such as 'chains.1.pieces.2.id': lists are counted from 1; None where nothing is there."""
    for part in path.split("."):
        if isinstance(record, list) and part.isdigit() and 0 < int(part) <= len(record):
            record = record[int(part) - 1]
        elif isinstance(record, dict):
            record = record.get(part)
        else:
            return None
    return record


def matches(found: Any, wanted: str) -> bool:
    """Whether a value is what is wanted: a word, 'a..b' for a number or an interval inside it, 'null'."""
    if wanted == "null":
        return found is None
    low, dots, high = wanted.partition("..")
    if dots:
        least, greatest = (found["least"], found["greatest"]) if isinstance(found, dict) else (found, found)
        if least is None or greatest is None:
            return False
        return bool(float(low) <= least and greatest <= float(high))
    if isinstance(found, bool):
        return wanted == ("yes" if found else "no")
    return str(found) == wanted


def replay_all(paths: Sequence[Path]) -> int:
    """Replay each scenario and say how it went; 1 on a difference, 2 where one cannot be read."""
    worst = SAME
    for path in paths:
        try:
            scenario = read_scenario(path)
        except (OSError, ValueError) as fault:
            print(f"{path}: {getattr(fault, 'strerror', None) or fault}")
            worst = max(worst, 2)
            continue
        found = list(differences(scenario))
        for line in found:
            print(f"{path}: {line}")
        if not found:
            print(f"{path}: {len(scenario.turns)} turns as told")
        worst = max(worst, DIFFERENT if found else SAME)
    return worst
