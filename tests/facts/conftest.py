"""A small good set of facts for the tests of this room to lay files over."""

from pathlib import Path

import pytest

from engine.facts.files import FactFile
from engine.facts.loading import read_part
from engine.facts.overlay import OWN
from engine.facts.tables import Table, Tables, laid_over, nothing

HERE = Path(__file__).parent


@pytest.fixture(scope="session")
def base() -> Tables:
    before: Tables = {**nothing(), "sources": Table({OWN.id: OWN})}
    part = read_part([FactFile("base.yaml", "base.yaml", (HERE / "base.yaml").read_bytes())], before)
    assert part.problems == ()
    return laid_over(before, part)
