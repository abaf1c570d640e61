"""Each small file in bad/ holds one mistake; the .txt beside it is what must be printed of it, whole."""

from pathlib import Path

import pytest

from engine.facts.files import FactFile
from engine.facts.loading import read_part
from engine.facts.tables import Tables

BAD = Path(__file__).parent / "bad"
FILES = sorted(path.name for path in BAD.glob("*.yaml"))


@pytest.mark.parametrize("in_python", [False, True], ids=["in-c", "in-python"])
@pytest.mark.parametrize("name", FILES)
def test_mistake_is_told_with_its_place(name: str, in_python: bool, base: Tables) -> None:
    file = FactFile(name, name, (BAD / name).read_bytes())
    part = read_part([file], base, own=name.startswith("gear-"), in_python=in_python)
    told = "".join(f"{problem}\n" for problem in part.problems)
    assert told == (BAD / name).with_suffix(".txt").read_text("utf-8")
    assert told


def test_every_expectation_belongs_to_a_file() -> None:
    assert sorted(path.stem for path in BAD.glob("*.txt")) == [name.removesuffix(".yaml") for name in FILES]
