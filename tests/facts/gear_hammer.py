"""Two processes edit one gear file and are killed at random moments: python -m tests.facts.gear_hammer [EDITS]

Each worker writes down what it is about to do and, when the edit has come back, that it is done. After every kill the
file must load, hold each statement that was done (of the one under way: before or after), and keep the user's lines.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from typing import Any

from engine.base.problem import Problem
from engine.facts.files import Layer
from engine.facts.gearfile import Append, Drop, Edit, SetField, apply_all
from engine.facts.overlay import load
from engine.facts.splice import data_of
from engine.facts.yamlfile import read_sheet

ROOT = Path(__file__).resolve().parents[2]
FACTS = Layer("shipped", str(Path(__file__).parent / "base.yaml"))
WORKERS = ("wren", "dunlin")
OWN_COMMENT = "2026-11-24, own observation of"
SEED = """\
# what hangs in the boat house

lenses:   # cine glass first
  # the good one
  avocet:
    name: "avocet"          # in double quotes
    mount: c
    focal_length: 25 mm     # engraved

    # measured twice
    collar: 30.5 mm ±0.02
    # and lent to the club
  # godwit: sold

bodies:
  skiff:
    mount: e-mount
    format: 'aps-c-1.5'
# the end
"""
SAW = "-saw"
Record = dict[str, Any]
Told = tuple[tuple[Edit, ...], str, Record | None]  # the edits of one statement, what of, and its record afterwards


@dataclass
class Story:
    """What a worker has told: id -> its record (None: dropped), and the statement under way."""

    records: dict[str, Record | None] = field(default_factory=dict)
    pending: tuple[str, Record | None] | None = None
    done: int = 0

    @staticmethod
    def of(log: Path) -> Story:
        story = Story()
        for line in log.read_text().splitlines(keepends=True) if log.exists() else ():
            if not line.endswith("\n"):
                break
            step, record_id, record = json.loads(line)
            if step == "try":
                story.pending = record_id, record
            else:
                story.records[record_id] = record
                story.pending = None
                story.done += step == "done"
        return story


def held_in(gear: Path) -> dict[str, Record]:
    """The lenses and what was seen of them; no id is of both."""
    sheet = read_sheet("gear.yaml", gear.read_bytes())
    assert sheet.fields is not None
    assert sheet.problems == []
    data: Any = data_of(sheet.fields)
    return data["lenses"] | (data.get("observations") or {})


def work(name: str, gear: Path, log: Path, seed: int, edits: int) -> None:
    """Edits made until killed, or until `edits` are done since the start."""
    rng = Random(seed)
    story = Story.of(log)
    descriptor = os.open(log, os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o600)

    def say(step: str, record_id: str, record: Record | None) -> None:
        os.write(descriptor, (json.dumps([step, record_id, record]) + "\n").encode())

    if story.pending:  # the last life ended in the middle: what is there now counts
        record_id = story.pending[0]
        story.records[record_id] = held_in(gear).get(record_id)
        say("settled", record_id, story.records[record_id])
    last: Told | None = None
    for _ in range(edits):
        edits_told, record_id, after = last if last and rng.random() < 0.15 else chosen(rng, name, story.records)
        before = story.records.get(record_id)
        say("try", record_id, after)
        outcome = apply_all(gear, edits_told)
        assert not isinstance(outcome, Problem), outcome
        say("done", record_id, after)
        story.records[record_id] = after
        last = tuple(one.inverse for one in reversed(outcome)), record_id, before


def chosen(rng: Random, name: str, records: dict[str, Record | None]) -> Told:
    """What is told of one of the worker's own lenses or observations, and what the record is afterwards."""
    live = sorted(record_id for record_id, record in records.items() if record and not record_id.endswith(SAW))
    chance = rng.random()
    if chance > 0.7:
        return seen(rng, name + SAW, records)
    chance /= 0.7
    if not live or (chance < 0.35 and len(live) < 12):
        record_id = f"{name}-{len(records) + 1}"
        record: Record = {"name": f"{name} № {rng.randrange(99)}: 'ü'", "mount": "c", "f_number": "f/1.4"}
        return (Append("lenses", record_id, record, f"{OWN_COMMENT} {record_id}"),), record_id, record
    record_id = rng.choice(live)
    record = records[record_id] or {}
    if chance > 0.85:
        return (Drop("lenses", record_id),), record_id, None
    key = rng.choice(("collar", "rear_reach", "focal_length", "name"))
    value = f"# {rng.random()}" if key == "name" else f"{rng.randrange(100, 9000) / 100} mm"
    edit = SetField("lenses", record_id, key, value, "2026-11-25, own observation")
    return (edit,), record_id, record | {key: value}


def seen(rng: Random, record_id: str, records: dict[str, Record | None]) -> Told:
    """An observation told, or told anew: the one of before makes way for it in the same statement."""
    record: Record = {"lens": "avocet", "body": "skiff", "far": f"{rng.randrange(100, 9000) / 1000} m"}
    before = (Drop("observations", record_id),) if records.get(record_id) else ()
    told = Append("observations", record_id, record, f"{OWN_COMMENT} {record_id}")
    return (*before, told), record_id, record


def check(gear: Path, stories: list[Story]) -> None:
    """The file loads, holds what the stories say, and still has every line that the user wrote."""
    loaded = load([FACTS, Layer("gear", str(gear))])
    assert loaded.problems == (), [str(problem) for problem in loaded.problems]
    held = held_in(gear)
    text = gear.read_text()
    lines = iter(text.splitlines())
    assert all(line in lines for line in SEED.splitlines()), text
    for story in stories:
        for record_id, record in story.records.items():
            allowed = [record] + ([story.pending[1]] if story.pending and story.pending[0] == record_id else [])
            assert held.get(record_id) in allowed, (record_id, held.get(record_id), allowed)
            comment = f"  # {OWN_COMMENT} {record_id}\n  {record_id}:\n"
            assert text.count(comment) == (record_id in held), record_id
            assert (record_id in loaded.gear_ids) == (record_id in held)


@dataclass
class Figures:
    edits: int = 0
    kills: int = 0
    caught: int = 0  # kills in the middle of an edit
    made: int = 0  # of these, the edit was in the file
    strays: int = 0  # half-made files left lying, seen after a kill
    seconds: float = 0.0

    def __str__(self) -> str:
        return (
            f"{self.edits} edits done, {self.kills} kills in {self.seconds:.0f} s: {self.caught} in an edit "
            f"(file new {self.made}, old {self.caught - self.made}), {self.strays} half-made files seen, none kept"
        )


@dataclass
class Life:
    """A worker process, and how many edits it is left to do before it may be killed."""

    process: subprocess.Popen[bytes]
    until: int


def hammer(folder: Path, edits: int, seed: int, longest_life: int = 8) -> Figures:
    """Kills and starts the workers until `edits` are done, checking after every kill.

    `longest_life`: edits; a worker is killed up to 6 ms, some edits more, after as many or fewer.
    """
    rng, figures, began = Random(seed), Figures(), time.monotonic()
    gear = folder / "gear.yaml"
    gear.write_text(SEED)
    logs = {name: folder / f"{name}.log" for name in WORKERS}
    lives: dict[str, Life] = {}
    while figures.edits < edits:
        for name, log in logs.items():
            done = Story.of(log).done
            if name not in lives:
                until = done + rng.randint(1, longest_life)
                lives[name] = Life(started(name, gear, log, rng.randrange(10**6)), until)
            elif done >= lives[name].until or lives[name].process.poll() is not None:
                time.sleep(rng.uniform(0, 0.006))
                killed(lives.pop(name), gear, log, figures)
        time.sleep(0.0005)
        figures.edits = sum(Story.of(log).done for log in logs.values())
    for name, life in lives.items():
        killed(life, gear, logs[name], figures)
    figures.edits = sum(Story.of(log).done for log in logs.values())
    assert isinstance(apply_all(gear, (SetField("bodies", "skiff", "name", "skiff"),)), tuple)
    assert isinstance(apply_all(gear, (SetField("bodies", "skiff", "name", None),)), tuple)
    check(gear, [Story.of(log) for log in logs.values()])
    assert sorted(path.name for path in folder.iterdir() if path.name.startswith(".")) == [".gear.yaml.lock"]
    figures.seconds = time.monotonic() - began
    return figures


def killed(life: Life, gear: Path, log: Path, figures: Figures) -> None:
    """Kills the worker, looks at what it left, and checks the file while the other goes on."""
    life.process.kill()
    assert life.process.wait() == -9, "the worker gave up by itself"
    figures.kills += 1
    story = Story.of(log)
    if story.pending:
        figures.caught += 1
        record_id, after = story.pending
        figures.made += held_in(gear).get(record_id) == after
    figures.strays += gear.with_name(".gear.yaml.new").exists()
    check(gear, [story])


def started(name: str, gear: Path, log: Path, seed: int, edits: int = 10**6) -> subprocess.Popen[bytes]:
    """A worker as a process of its own."""
    words = [name, str(gear), str(log), str(seed), str(edits)]
    command = [sys.executable, "-m", "tests.facts.gear_hammer", "--worker", *words]
    return subprocess.Popen(command, cwd=ROOT, env=os.environ | {"PYTHONPATH": str(ROOT)})


def main() -> None:
    if sys.argv[1:2] == ["--worker"]:
        name, gear, log, start, edits = sys.argv[2:]
        work(name, Path(gear), Path(log), int(start), int(edits))
        return
    told, seed = int(sys.argv[1]) if len(sys.argv) > 1 else 1000, int(time.time())
    with tempfile.TemporaryDirectory() as folder:
        print(f"seed {seed}: {hammer(Path(folder), told, seed, longest_life=24)}")


if __name__ == "__main__":
    main()
