"""What the tests of the physics share: the shipped assumptions as numbers, and cases that were ray-traced elsewhere."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
import yaml

from engine.base.interval import Interval
from grammar.values import Fault, measured

HERE = Path(__file__).parent
JUDGING = HERE.parents[1] / "kb" / "judging"


@pytest.fixture(scope="session")
def assumptions() -> dict[str, Interval]:
    """Every shipped assumption about optics, making and practice, by id."""
    rows = {}
    for name in ("optics.yaml", "making.yaml", "practice.yaml"):
        text = (JUDGING / name).read_text(encoding="utf-8")
        for key, fields in yaml.load(text, Loader=yaml.BaseLoader)["assumptions"].items():
            read = measured(fields["value"])
            assert not isinstance(read, Fault), f"{name}: {key}: {read}"
            rows[key] = read[0]
    return rows


@pytest.fixture(scope="session")
def traced() -> dict:
    """Nine traced lenses with their distances by extension."""
    return json.loads((HERE / "data" / "traced-lenses.json").read_text(encoding="utf-8"))


@pytest.fixture(scope="session")
def traced_glass() -> dict:
    """Traced plates, converters and image circles."""
    return json.loads((HERE / "data" / "traced-glass.json").read_text(encoding="utf-8"))


@pytest.fixture(scope="session")
def meetings() -> dict:
    """Threads, and what happens where two of them meet."""
    return json.loads((HERE / "data" / "thread-meetings.json").read_text(encoding="utf-8"))
