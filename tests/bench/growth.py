"""What grows with its input, in milliseconds, the best of five: python -m tests.bench.growth

A parser made ready from the shipped tables and without them, a row of a thousand tokens, 50,000 names indexed and a
question read with them, and forty lenses told on six bodies.
"""

from __future__ import annotations

import random
import string
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace

from engine.ask import Desk
from grammar import parsing
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import tokens_of
from tests.grammar.names import words

NAMES = 50_000
MOUNTS = ("c", "m42", "sr-mount", "f-mount", "om-mount", "ltm", "d", "pl", "ef-mount", "enl39")
BODIES = (("e-mount", "aps-c-1.5"), ("mft-mount", "four-thirds"), ("z-mount", "35mm-full-frame"),
          ("l-mount", "35mm-full-frame"), ("x-mount", "aps-c-1.5"), ("rf-mount", "35mm-full-frame"))  # fmt: skip


def milliseconds(work: Callable[[], object], runs: int = 5) -> float:
    spent = []
    for _ in range(runs):
        before = time.perf_counter()
        work()
        spent.append((time.perf_counter() - before) * 1000)
    return min(spent)


def forty_on_six(folder: Path) -> Desk:
    lenses = "".join(
        f"  bird{n}: {{name: bird{n}, mount: {MOUNTS[n % 10]}, focal_length: {12 + 5 * n} mm, f_number: f/2.8}}\n"
        for n in range(40)
    )
    bodies = "".join(f"  boat{n}: {{name: boat{n}, mount: {m}, format: {f}}}\n" for n, (m, f) in enumerate(BODIES))
    gear = folder / "gear.yaml"
    gear.write_text(f"lenses:\n{lenses}bodies:\n{bodies}", "utf-8")
    desk = Desk(gear=gear)
    desk.ask("what is a shim")
    return desk


def main() -> None:
    for name in parsing.GRAMMARS:
        ready = milliseconds(lambda name=name: parsing.tables_of.__wrapped__(name))  # type: ignore[misc]
        without = milliseconds(lambda name=name: parsing.built(name))  # type: ignore[misc]
        print(f"parser of {name}: ready in {ready:.2f} ms, without its tables {without:.0f} ms")
    row = [SimpleNamespace(kind=kind, text=kind) for kind in ["MOUNT"] * 1000 + ["LENS"]]
    print(f"a row of {len(row)} tokens: {milliseconds(lambda: parsing.parse('question', row)):.2f} ms")  # type: ignore[arg-type]
    chance, listed = random.Random(3), words()
    names = [("".join(chance.choices(string.ascii_lowercase, k=9)) + f" {n}mm", "lens", f"l{n}") for n in range(NAMES)]
    empty, full = milliseconds(lambda: Lexicon.build([], listed)), milliseconds(lambda: Lexicon.build(names, listed))
    print(f"{NAMES} names indexed: {full - empty:.0f} ms")
    many = Lexicon.build([*names, ("M42", "mount", "m42"), ("E-mount", "mount", "e")], listed)
    text = f"get {names[77][0]} on an E-mount body with at most two adapters"
    print(f"a question read with them: {milliseconds(lambda: tokens_of(text, many), 50):.2f} ms")
    with tempfile.TemporaryDirectory() as folder:
        desk = forty_on_six(Path(folder))
        spent = milliseconds(lambda: desk.ask("all my lenses on all my bodies"), 2)
    print(f"forty lenses on six bodies: {spent:.0f} ms")


if __name__ == "__main__":
    main()
