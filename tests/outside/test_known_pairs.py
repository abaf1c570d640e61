"""Lens mounts on body mounts whose outcome the trade knows, asked without glass."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from engine.ask import Desk
from tests.desks import desk_of

ROWS = json.loads((Path(__file__).parents[1] / "data" / "pairs.json").read_text("utf-8"))
KNOWN = [row for row in ROWS if row["basis"] in ("reported", "trade") and row["register_confidence"] != "memory"]
JUDGED = ("infinity-plain", "infinity-recessed-adapter", "infinity-needs-glass", "macro-only-plain")


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def outcome(desk: Desk, row: dict[str, Any]) -> tuple[str | None, bool, str, str]:
    """Best verdict, whether through a cup, the ring that would do, and the text."""
    from engine.render.record import record_of

    answer = desk.ask(f"how do I get a {row['lens']} lens on a {row['body']} body without glass")
    record = record_of(answer, desk.knowledge)
    for role in ("lens", "body"):
        named = record["entities"].get(role)
        assert isinstance(named, dict), (role, record["reading"], record["text"])
        assert named["mount"] == row[role], (role, record["reading"])
    chains = record["chains"]
    best = chains[0]["verdict"] if chains else None
    cup = bool(chains) and any(piece["kind"] == "recessed" for piece in chains[0]["pieces"])
    return best, cup, record["ring_to_make"]["possible"], record["text"]


def agrees(expected: str, best: str | None, cup: bool, ring: str) -> bool:
    if expected == "infinity-plain":
        return best == "infinity" or (best is None and ring == "plain")
    if expected == "infinity-recessed-adapter":
        return (best == "infinity" and cup) or ring == "recessed"
    if expected == "infinity-needs-glass":
        return best != "infinity" and ring == "no"
    if expected == "macro-only-plain":
        return best == "macro-only" or (best is None and ring == "no")
    if expected == "unusable":
        return best == "unusable" or (best is None and ring == "no")
    return best != "infinity" and ring in ("no", "recessed")  # impractical-thin


@pytest.mark.parametrize(
    "row", [row for row in KNOWN if row["expected"] in JUDGED], ids=lambda row: f"{row['lens']}-on-{row['body']}"
)
def test_known_pair_comes_out_as_the_trade_knows_it(desk: Desk, row: dict[str, Any]) -> None:
    best, cup, ring, text = outcome(desk, row)
    assert agrees(row["expected"], best, cup, ring), (row["expected"], best, cup, ring, text)


def test_register_differences_are_those_of_the_pairs(desk: Desk) -> None:
    from engine.base.interval import is_known

    mounts = desk.catalogue.mounts
    for row in KNOWN:
        lens, body = mounts[row["lens"]].register_mm, mounts[row["body"]].register_mm
        if row["difference_mm"] is not None and is_known(lens) and is_known(body):
            assert lens.nominal - body.nominal == pytest.approx(row["difference_mm"], abs=0.006), row
