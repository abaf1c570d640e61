"""How many questions of the list get the answer they expect. Run: python -m tests.answers.expects [-v] [-t] [intent].

`--further`: of the further questions, which wording is fitted to as to those of the list; `--unpractised`: of those
that nothing was fitted to; `--aside`: of those that nothing was mended by either.
Every check of a question must hold. What is looked at is the record that `--json` prints, and nothing else.
"""

from __future__ import annotations

import re
import sys
from collections import Counter, defaultdict
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

from engine.ask import Desk
from engine.base.compact import compact
from engine.render.record import record_of
from engine.talk import Talk
from tests.desks import desk_of
from tests.reading import loaded

DATA = Path(__file__).parents[1] / "data" / "questions.yaml"
OTHERS = {
    "--further": DATA.parent / "further.yaml",
    "--unpractised": DATA.parent / "unpractised.yaml",  # nothing is fitted to these
    "--aside": DATA.parent / "aside.yaml",  # nor was anything mended by these: only their count is looked at
}
# the end of an interval may lie this far off: four tolerances, or this share of the number
SHARE = 0.30
CHAIN_PARTS = {
    "register_error_mm": ("register_error_mm",),
    "far_from_sensor_mm": ("focus.far_from_sensor_mm",),
    "near_from_sensor_mm": ("focus.near_from_sensor_mm",),
    "focus_from_sensor_mm": ("focus.far_from_sensor_mm", "focus.near_from_sensor_mm"),
    "working_distance_mm": ("focus.far_from_front_glass_mm", "focus.near_from_front_glass_mm"),
    "magnification": ("focus.far_magnification", "focus.near_magnification"),
    "infinity_from_f_number": ("focus.infinity_from_f_number",),
    "extension_mm": ("extension_mm.shortest", "extension_mm.longest"),
    "image_circle_mm": ("coverage.image_circle_mm",),
    "lit_share": ("coverage.lit",),
    "crop_factor": ("coverage.crop_factor",),
    "equivalent_focal_mm": ("coverage.equivalent_focal_mm",),
}

Number = tuple[float, float, str]  # least, greatest, for which case


@compact(slots=False)
class Score:
    """One question or turn: the checks that did not hold, and the record that was looked at."""

    id: str
    intent: str
    say: str
    failed: tuple[str, ...]
    record: dict[str, Any]


@cache
def questions() -> dict[str, Any]:
    data: dict[str, Any] = loaded(DATA)
    return data


def scores(data: dict[str, Any] | None = None) -> list[Score]:
    """Every single question, and every turn of every talk, each talk in one memory."""
    desk, data = desk_of(), data or questions()
    out = []
    for row in data["asked"]:
        talk = Talk()
        if row.get("after"):
            desk.ask(row["after"], talk)
        out.append(_score(row["id"], row, desk, talk))
    for told in data["talks"]:
        talk = Talk()
        out += [_score(f"{told['id']}.{n}", turn, desk, talk) for n, turn in enumerate(told["turns"], start=1)]
    return out


def _score(id_: str, row: dict[str, Any], desk: Desk, talk: Talk) -> Score:
    record = record_of(desk.ask(row["say"], talk), desk.knowledge)
    failed = tuple(told for check in row["expect"] if (told := fault(check, record)) is not None)
    return Score(id_, row["reads_as"]["intent"], row["say"], failed, record)


def fault(check: dict[str, Any], record: dict[str, Any]) -> str | None:
    """What is wrong with a record by one check; None where it holds."""
    if "quantity" in check:
        return _wrong_number(check, record)
    if "verdict" in check:
        return _wrong_verdict(check, record)
    if "says" in check:
        missing = [entry for entry in check["says"] if not says(str(entry), record["text"])]
        return f"does not say {missing}" if missing else None
    words = str(questions()["vocabulary"]["asks_for"][check["asks_for"]])
    return None if any(says(words, asked) for asked in asking(record["text"])) else f"asks not for {check['asks_for']}"


def says(entry: str, text: str) -> bool:
    """Whether one of the alternatives, parted by '|', stands in the text: a short one as a word, else as its start."""
    flat = " ".join(text.casefold().split())
    for part in entry.casefold().split("|"):
        word = part.strip()
        tail = r"(?!\w)" if len(word) <= 3 else ""
        if re.search(rf"(?<!\w){re.escape(word)}{tail}", flat):
            return True
    return False


def asking(text: str) -> Iterator[str]:
    """The sentences that ask for something: with a question mark, or that bid measure or tell."""
    lines = re.sub(r"\n(?!\s*(?:\? |- |\d+\. |DANGER|Caution|Note))\s*", " ", text).splitlines()
    for line in lines:
        for sentence in re.split(r"(?<=\w[.?!])\s+(?=[A-Z])", line):
            if "?" in sentence or re.search(r"\b(measure|caliper)", sentence, re.IGNORECASE):
                yield sentence


def _wrong_verdict(check: dict[str, Any], record: dict[str, Any]) -> str | None:
    chains = record.get("chains") or []
    wanted = check["verdict"]
    if wanted == "depends":
        depends = any(chain["certainty"] == "unknown" for chain in chains[:1])
        return None if depends or (not chains and any(asking(record["text"]))) else "does not depend"
    if "case" in check:
        if any(chain["verdict"] == wanted for chain in chains) or (check.get("if_shown") and not chains):
            return None
    elif chains and chains[0]["verdict"] == wanted:
        return None
    got = [chain["verdict"] for chain in chains]
    return f"verdict {got}, not {wanted}" + (f" ({check['case']})" if "case" in check else "")


def _wrong_number(check: dict[str, Any], record: dict[str, Any]) -> str | None:
    given = numbers(check["quantity"], record)
    if any(meets(number, check) for number in given):
        return None
    if check.get("if_shown"):
        given = [number for number in given if _same_case(number[2], check.get("case", ""))]
        if not given:
            return None
    shown = ", ".join(f"{low:.5g}..{high:.5g}" + (f" [{case}]" if case else "") for low, high, case in given[:8])
    case = f" [{check['case']}]" if "case" in check else ""
    return f"{check['quantity']} wanted {check['value']}{case}, got {shown or 'none'}"


def _same_case(told: str, wanted: str) -> bool:
    """Whether a case told is the one that is checked: the same numbers in it, and no words beside units."""
    if told.startswith("chain "):
        return False
    numerals = [sorted(set(re.findall(r"\d+(?:\.\d+)?", text))) for text in (told, wanted)]
    return bool(numerals[0]) and numerals[0] == numerals[1]


def meets(number: Number, check: dict[str, Any]) -> bool:
    """Whether a number, or an interval, is what is expected: see the head of the list for how far it may be off."""
    value = check["value"]
    least, greatest = (value[0], value[1]) if isinstance(value, list) else (value, value)
    tolerance = check.get("abs_tol", 0.0) + check.get("rel_tol", 0.0) * max(abs(least), abs(greatest))
    low, high, _ = number
    if high < least - tolerance - 1e-9 or low > greatest + tolerance + 1e-9:
        return False
    if low == high:
        return True
    room = max(4 * tolerance, SHARE * max(abs(least), abs(greatest)))
    return low >= least - room and high <= greatest + room


def numbers(name: str, record: dict[str, Any]) -> list[Number]:
    """Every number that a record gives for a quantity of the vocabulary."""
    out: list[Number] = []
    for chain in record.get("chains") or []:
        out += _of_chain(name, chain)
    ring = record.get("ring_to_make")
    if name == "ring_thickness_mm" and ring:
        out += _finite(ring["thickness_mm"], "ring to make")
    given = (record.get("quantities") or {}).get(name, [])
    for row in given if isinstance(given, list) else [given]:
        out += _finite(row, row.get("case", "") if isinstance(row, dict) else "")
    return out


def _of_chain(name: str, chain: dict[str, Any]) -> Iterator[Number]:
    case = f"chain {chain['rank']}"
    for path in CHAIN_PARTS.get(name, ()):
        value: Any = chain
        for key in path.split("."):
            value = value.get(key) if value is not None else None
        yield from _finite(value, case)
    pieces = chain["pieces"]
    if name == "adapter_count":
        yield float(len(pieces)), float(len(pieces)), case
    seats = [list(_finite(piece["thickness_mm"], case)) for piece in pieces]
    if name in ("ring_thickness_mm", "stack_mm") and all(seats) and seats:
        if name == "ring_thickness_mm":
            yield from (row[0] for row in seats)
        yield sum(row[0][0] for row in seats), sum(row[0][1] for row in seats), case
    prices = [piece["price"] for piece in pieces]
    if name == "price" and prices and all(prices):
        yield float(sum(row[0] for row in prices)), float(sum(row[1] for row in prices)), case


def _finite(value: Any, case: str) -> Iterator[Number]:
    if isinstance(value, int | float):
        yield float(value), float(value), case
    elif isinstance(value, dict) and value["state"] == "finite":
        yield value["least"], value["greatest"], case


def shares(rows: list[Score]) -> dict[str, tuple[int, int]]:
    """Intent -> (met, asked)."""
    table: dict[str, Counter[str]] = defaultdict(Counter)
    for row in rows:
        table[row.intent]["asked"] += 1
        table[row.intent]["met"] += not row.failed
    return {intent: (counts["met"], counts["asked"]) for intent, counts in sorted(table.items())}


def main(arguments: list[str]) -> None:
    others = next((path for flag, path in OTHERS.items() if flag in arguments), None)
    rows = scores(loaded(others) if others else None)
    wanted = [one for one in arguments if not one.startswith("-")]
    for row in rows:
        chosen = row.intent in wanted or row.id.split(".")[0] in wanted or ("-v" in arguments and not wanted)
        if chosen and (row.failed or "-a" in arguments):
            print(f"{row.id} {row.intent} {row.say!r}\n    read: {row.record['intent']}: {row.record['reading']}")
            for told in row.failed:
                print(f"    {told}")
            if "-t" in arguments:
                print("      | " + row.record["text"].replace("\n", "\n      | "))
    total = [0, 0]
    for intent, (met, asked) in shares(rows).items():
        print(f"{intent:18}{met:>4}/{asked:<4}{met / asked:>7.0%}")
        total = [total[0] + met, total[1] + asked]
    print(f"{'all':18}{total[0]:>4}/{total[1]:<4}{total[0] / total[1]:>7.0%}")
    read = sum(row.record["intent"] == row.intent for row in rows)
    print(f"{'read as wanted':18}{read:>4}/{len(rows):<4}{read / len(rows):>7.0%}")


if __name__ == "__main__":
    main(sys.argv[1:])
