"""Questions about all of one's own gear, asked from the outside: JSON, statuses, and a talk on a pipe."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.outside.running import ROOT, asked, piped, ringpath

GEAR = ROOT / "scenarios" / "a-box-of-lenses" / "gear.yaml"


def test_the_record_tells_of_each_lens_whether_it_fulfils(tmp_path: Path) -> None:
    answer = asked(tmp_path, "which of my lenses cover the dory, widest first", "--gear", str(GEAR))
    assert answer["status"] == 0
    assert answer["intent"] == "which-own"
    fulfils = {row["case"]: (row["least"], row["greatest"]) for row in answer["quantities"]["fulfils"]}
    assert fulfils["dunlin"] == (1, 1)
    assert fulfils["stint"] == (0, 0)
    assert fulfils["avocet"] == (0, 1)
    assert len(fulfils) == 12
    shares = {row["case"]: row["least"] for row in answer["quantities"]["lit_share"]}
    assert all(share >= 0.9995 for name, share in shares.items() if fulfils[name] == (1, 1))
    focals = [chain["coverage"]["equivalent_focal_mm"] for chain in answer["chains"]]
    known = [focal for focal in focals if focal is not None]
    assert known == sorted(known)


def test_a_talk_goes_from_all_to_one_and_back_to_what_was_said(tmp_path: Path) -> None:
    said = ["which of my lenses reach infinity on the punt, closest first", "the second one", "and on the skiff?",
            "which of the two was better", "which of my lenses shine"]  # fmt: skip
    records = piped(tmp_path, said, "--gear", str(GEAR))
    assert [record["intent"] for record in records] == ["which-own", "chain", "chain", "compare", None]
    assert "my plover on my punt" in records[1]["reading"]
    assert "my plover on my skiff" in records[2]["reading"]
    assert records[4]["problem"]["found"] == "shine"


def test_nothing_told_leaves_with_status_one(tmp_path: Path) -> None:
    answer = asked(tmp_path, "which of my lenses cover full frame")
    assert answer["status"] == 1
    assert "my avocet is a 25mm f/1.4 C-mount lens" in answer["text"]


@pytest.mark.parametrize("question", ["all my lenses on all my bodies", "compare my lenses on the dory"])
def test_a_table_on_a_pipe_has_no_line_beyond_eighty_columns(tmp_path: Path, question: str) -> None:
    done = ringpath(tmp_path, "--gear", str(GEAR), "ask", "--", question)
    assert done.returncode == 0
    assert max(map(len, done.stdout.splitlines())) <= 80
    assert "avocet" in done.stdout
