"""Questions by the thousand, made of practice ones by slips of hand and mind: python -m tests.outside.generated COUNT.

Each is asked whole, alone or in a talk, and must come to an answer that can be shown, with the status that it means.
"""

from __future__ import annotations

import json
import random
import sys
import tempfile
import traceback
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from engine.answers.parts.answer import ANSWERED, NO, NOT_UNDERSTOOD, Answer
from engine.ask import Desk
from engine.render.record import record_of
from engine.render.terminal import shown
from engine.talk import Talk
from tests.grammar.asked import asked

GEAR = """\
lenses:
  avocet: {name: avocet, mount: c, focal_length: 25 mm, f_number: f/1.4, made_for: 16mm, collar: 30.5 mm}
  dunlin: {name: dunlin, mount: m42, focal_length: 58 mm, f_number: f/2, close_focus: 0.5 m}
  knot: {name: knot, mount: d}
bodies:
  skiff: {name: skiff, mount: e-mount, format: aps-c-1.5}
  dory: {name: dory, mount: mft-mount, format: four-thirds, pixels: 5184x3888}
adapters:
  plate: {name: C to MFT plate, front: c, rear: mft-mount, kind: recessed, thickness: -1.72 mm, owned: 1}
"""
OWN = ("avocet", "dunlin", "knot", "skiff", "dory", "plate", "it", "that", "the second one", "why", "yes", "no", "undo",
       "forget", "my", "at f/8", "draw", "card", "which of my lenses", "in feet", "1", "2", "help")  # fmt: skip
LETTERS = "abcdefghijklmnopqrstuvwxyz0123456789 .,/?-'\"()"
STRANGE = (
    "\u0000",
    "\u202e",
    "ƒ",
    "½",
    "∞",
    "漢",
    "\u200b",
    "é",
    "−",
    "{",
    "%s",
    "\\n",
    "1e309",
    "0",
    "-1",
    "999999999 mm",
)
LONGEST_TALK = 6


def slipped(text: str, chance: random.Random, words: list[str]) -> str:
    """The text with up to four slips: a letter, a word, a number or something strange."""
    for _ in range(chance.choice((0, 1, 1, 2, 2, 3, 4))):
        parts = text.split(" ")
        at = chance.randrange(len(parts))
        kind = chance.randrange(8)
        if kind == 0:
            parts[at] = _misspelt(parts[at], chance)
        elif kind == 1 and len(parts) > 1:
            del parts[at]
        elif kind == 2 and len(parts) > 1:
            other = chance.randrange(len(parts))
            parts[at], parts[other] = parts[other], parts[at]
        elif kind == 3:
            parts.insert(at, chance.choice(words))
        elif kind == 4:
            parts[at] = chance.choice(words)
        elif kind == 5:
            parts.insert(at, chance.choice(OWN))
        elif kind == 6:
            parts[at:] = parts[at : at + chance.randrange(1, 4)]
        else:
            parts.insert(at, chance.choice(STRANGE))
        text = " ".join(parts)
    return text


def _misspelt(word: str, chance: random.Random) -> str:
    at = chance.randrange(len(word) + 1)
    return word[:at] + chance.choice((chance.choice(LETTERS), "")) + word[at + chance.randrange(2) :]


def faults(count: int, seed: int, gear: Path, told: bool = False) -> Iterator[str]:
    """What is wrong with the answers to `count` questions, each with the talk that led there."""
    chance = random.Random(seed)
    texts = sorted({row.say for row in asked()})
    words = sorted({word for text in texts for word in text.split()})
    desk = Desk(gear=gear, writes=None)
    assert not desk.problems, desk.problems
    statuses: Counter[int] = Counter()
    talk, lines = Talk(), list[str]()
    for number in range(count):
        if len(lines) >= LONGEST_TALK or chance.random() < 0.4:
            talk, lines = Talk(), []
        text = slipped(chance.choice(texts), chance, words)
        lines.append(text)
        try:
            answer = desk.ask(text, talk)
            wrong = _wrong(answer)
            json.dumps(record_of(answer, desk.knowledge), allow_nan=False)
            page = shown(answer, chance.choice((40, 80, 200)), False)
            if any(ord(char) < 32 and char != "\n" for char in page):
                wrong = wrong or "a control character is shown"
            statuses[answer.status] += 1
        except Exception:
            wrong = traceback.format_exc(limit=-3)
        if wrong:
            yield f"{wrong}: {lines!r}"
        if told and number % 5000 == 4999:
            print(f"{number + 1} asked; by status {dict(sorted(statuses.items()))}", flush=True)


def _wrong(answer: Answer) -> str:
    if answer.status not in (ANSWERED, NO, NOT_UNDERSTOOD):
        return f"status {answer.status}"
    untold = answer.intent is None and answer.unread is None and not answer.aside
    if untold or (answer.intent is not None and answer.unread is not None):
        return f"intent {answer.intent} with {answer.unread}"
    if answer.unread is not None and answer.status != NOT_UNDERSTOOD:
        return f"unread, yet status {answer.status}"
    if answer.unread is None and not answer.reading and not answer.aside:
        return "an answer without the question read back"
    if not answer.lines and not answer.leaves:
        return "nothing is said"
    return ""


def main(arguments: list[str]) -> int:
    count = int(arguments[0]) if arguments else 2000
    seed = int(arguments[1]) if len(arguments) > 1 else 1
    with tempfile.TemporaryDirectory() as folder:
        gear = Path(folder) / "gear.yaml"
        gear.write_text(GEAR, encoding="utf-8")
        found = 0
        for fault in faults(count, seed, gear, told=True):
            found += 1
            print(fault, flush=True)
    print(f"{count} questions, seed {seed}: {found} faults")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
