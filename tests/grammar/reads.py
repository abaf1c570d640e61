"""How many questions of the list are read right, by intent. Run: python -m tests.grammar.reads [-v] [intent]."""

from __future__ import annotations

import re
import sys
from collections import Counter, defaultdict
from pathlib import Path
from typing import Any

from engine.base.compact import compact
from engine.facts.catalogue import load_catalogue
from engine.facts.lexicon_store import lexicon_of
from grammar.questions import Question, Thing, Unread
from grammar.reader import read
from tests.reading import loaded

FACTS = load_catalogue()[0]
DATA = Path(__file__).parents[1] / "data" / "questions.yaml"


@compact(slots=False)
class Score:
    """One question: whether each part was read as wanted (None: nothing to compare)."""

    id: str
    say: str
    wanted: dict[str, Any]
    got: Question | Unread
    right: dict[str, bool | None]


def scores() -> list[Score]:
    """Every single question, and every turn of every talk with the turns before it read first."""
    data, lexicon = loaded(DATA), lexicon_of(FACTS)
    out = []
    for row in data["asked"]:
        before = read(row["after"], lexicon) if row.get("after") else None
        got = read(row["say"], lexicon, before if isinstance(before, Question) else None)
        out.append(_score(row["id"], row["say"], row["reads_as"], got, _asks_back(row)))
    for talk in data["talks"]:
        last: Question | None = None
        for turn_number, turn in enumerate(talk["turns"], start=1):
            got = read(turn["say"], lexicon, last)
            last = got if isinstance(got, Question) else last
            out.append(_score(f"{talk['id']}.{turn_number}", turn["say"], turn["reads_as"], got, False))
    return out


def _asks_back(row: dict[str, Any]) -> bool:
    return any(check.get("asks_for") == "the question before" for check in row["expect"])


def _score(id_: str, say: str, wanted: dict[str, Any], got: Question | Unread, asks_back: bool) -> Score:
    right: dict[str, bool | None] = {"intent": False, "lens": None, "body": None, "aperture": None}
    if isinstance(got, Unread):
        right["intent"] = asks_back
    else:
        right["intent"] = got.intent == wanted["intent"]
    lens, body = wanted.get("lens"), wanted.get("body")
    question = got if isinstance(got, Question) else Question(say, "")
    things = (*question.lenses, *question.things)
    right["lens"] = _things_match(lens, things, question.lenses)
    right["body"] = _things_match(body, (*question.bodies, *question.things), question.bodies)
    if isinstance(wanted.get("aperture"), str) and wanted["aperture"].startswith("f/"):
        stops = {question.f_number, *(thing.f_number for thing in question.lenses)}
        right["aperture"] = float(wanted["aperture"][2:]) in stops
    return Score(id_, say, wanted, got, right)


def _things_match(wanted: Any, things: tuple[Thing, ...], strict: tuple[Thing, ...]) -> bool | None:
    if wanted is None:
        return not any(thing.ids for thing in strict) or None
    rows = wanted if isinstance(wanted, list) else [wanted]
    told = [_told(str(row)) for row in rows]
    if not any(told):
        return None
    mounts = {id_ for thing in things for id_ in thing.ids}
    mounts |= {FACTS.bodies[id_].mount for id_ in mounts & set(FACTS.bodies)}
    focals = {thing.focal_length_mm for thing in things}
    stops = {thing.f_number for thing in things}
    for row in told:
        if "mount" in row and row["mount"] not in mounts:
            return False
        if "focal" in row and not any(one is not None and abs(one - row["focal"]) < 0.2 for one in focals):
            return False
        if "stop" in row and row["stop"] not in stops:
            return False
    return True


def _told(text: str) -> dict[str, Any]:
    """Focal length, f-number and mount of one reading in canonical words."""
    out: dict[str, Any] = {}
    focal = re.match(r"([\d.]+) mm", text)
    if focal:
        out["focal"] = float(focal.group(1))
    stop = re.search(r"\bf/([\d.]+)", text)
    if stop:
        out["stop"] = float(stop.group(1))
    last = text.split()[-1]
    known = [word for word in text.split() if word in FACTS.mounts or word == "f-mount"]
    if known:
        out["mount"] = known[-1]
    elif last in FACTS.formats:
        pass
    return out


def main(arguments: list[str]) -> None:
    rows = scores()
    wanted = [one for one in arguments if not one.startswith("-")]
    table: dict[str, Counter[str]] = defaultdict(Counter)
    for row in rows:
        counts = table[row.wanted["intent"]]
        counts["asked"] += 1
        for part, right in row.right.items():
            if right is not None:
                counts[f"{part} of"] += 1
                counts[part] += bool(right)
        wrong = [part for part, right in row.right.items() if right is False]
        if wrong and ("-v" in arguments or row.wanted["intent"] in wanted):
            print(
                f"{row.id} {row.say!r}\n    wrong: {', '.join(wrong)}; wanted {row.wanted}\n    got: {_short(row.got)}"
            )
    parts = ("intent", "lens", "body", "aperture")
    print(f"{'':18}" + "".join(f"{part:>12}" for part in parts))
    total: Counter[str] = Counter()
    for intent, counts in sorted(table.items()):
        total.update(counts)
        print(f"{intent:18}" + "".join(f"{counts[part]:>6}/{counts[part + ' of']:<5}" for part in parts))
    print(f"{'all':18}" + "".join(f"{total[part]:>6}/{total[part + ' of']:<5}" for part in parts))


def _short(got: Question | Unread) -> str:
    if isinstance(got, Unread):
        return f"unread at {got.column}: {got.found!r}; {got.expected[:60]}"
    things = [
        f"{role} {_thing(thing)}"
        for role, group in (("lens", got.lenses), ("body", got.bodies), ("piece", got.adapters), ("thing", got.things))
        for thing in group
    ]
    return f"{got.intent} [{'; '.join(things)}] {dict(got.values)} {got.topic} skipped={got.skipped}"


def _thing(thing: Thing) -> str:
    told = [
        str(thing.focal_length_mm or ""),
        f"f/{thing.f_number}" if thing.f_number else "",
        thing.lens_kind or "",
        thing.piece or "",
        "/".join(thing.ids),
        "+".join(thing.front + thing.rear),
        thing.format or "",
        ",".join(thing.traits),
    ]
    return " ".join(one for one in told if one)


if __name__ == "__main__":
    main(sys.argv[1:])
