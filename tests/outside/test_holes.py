"""What `ringpath check` notes beside mistakes: what a gear file, or the facts as a whole, leave open."""

from __future__ import annotations

from pathlib import Path

from tests.outside.running import ringpath

GEAR = """\
lenses:
  tern: {name: my tern, mount: proj706, focal_length: 50 mm}
  gull: {name: my gull, mount: m42, focal_length: 50 mm}
bodies:
  skiff: {name: the skiff, mount: e-mount, format: 35mm-full-frame}
adapters:
  short: {kind: plain, front: m42, rear: e-mount, thickness: 27.4 mm, owned: 1}
  other: {kind: plain, front: fd-mount, rear: z-mount, thickness: 26 mm, owned: 1}
"""
FACTS = """\
sources:
  b: {title: measured on the bench}
mounts:
  pool-a: {designation: pool A, kind: cine, coupling: bayonet, register: 40 mm, confidence: memory, sources: [b]}
  pool-b: {designation: pool B, kind: cine, coupling: bayonet, register: 30 mm, confidence: memory, sources: [b]}
  pool-c: {designation: pool C, kind: cine, coupling: bayonet, register: 50 mm, confidence: memory, sources: [b]}
adapters:
  pool-a-b: {name: A to B, kind: plain, front: pool-a, rear: pool-b, thickness: 10 mm, confidence: memory, sources: [b]}
  pool-c-e: {name: C-E, kind: plain, front: pool-c, rear: e-mount, thickness: 32 mm, confidence: memory, sources: [b]}
"""


def test_a_lens_without_a_way_and_a_ring_without_a_use_are_noted_at_their_place(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text(GEAR, "utf-8")
    done = ringpath(tmp_path, "check", "gear.yaml")
    assert done.returncode == 0, done.stdout
    *notes, tally = done.stdout.splitlines()
    assert [note.partition(" ")[2] for note in notes] == [
        "note: no ring that is known brings 'tern' (mount proj706) onto a body of yours",
        "note: 'other' helps none of your lenses onto a body of yours",
    ]
    assert notes[0].startswith("gear.yaml:2:")
    assert "nothing wrong" in tally


def test_gear_that_goes_together_brings_no_note(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    kept = (line for line in GEAR.splitlines(keepends=True) if "tern" not in line and "other" not in line)
    gear.write_text("".join(kept), "utf-8")
    done = ringpath(tmp_path, "check", "gear.yaml")
    assert "note" not in done.stdout


def test_what_a_folder_of_facts_leaves_open_is_told_when_it_is_asked_for(tmp_path: Path) -> None:
    folder = tmp_path / "pool"
    folder.mkdir()
    (folder / "pool.yaml").write_text(FACTS, "utf-8")
    assert "note" not in ringpath(tmp_path, "check", "pool").stdout
    done = ringpath(tmp_path, "check", "--holes", "pool")
    assert done.returncode == 0, done.stdout
    notes = [line for line in done.stdout.splitlines() if "pool" in line]
    assert any(line.startswith("note: no chain leads to a mirrorless body from cine") for line in notes)
    assert all(name in notes[0] for name in ("pool-a", "pool-b"))
    assert "pool-c" not in notes[0]
    assert any("'pool-a-b' leads to pool-b, and from there no chain leads to any body" in line for line in notes)
    only = "every way from pool-c to a mirrorless body goes through 'pool-c-e', which rests on memory"
    assert any(line.endswith(only) for line in notes)


def test_a_folder_with_a_mistake_is_told_of_that_alone(tmp_path: Path) -> None:
    folder = tmp_path / "pool"
    folder.mkdir()
    (folder / "pool.yaml").write_text(FACTS.replace("rear: pool-b", "rear: pool-d"), "utf-8")
    done = ringpath(tmp_path, "check", "--holes", "pool")
    assert done.returncode == 3
    assert "note" not in done.stdout
