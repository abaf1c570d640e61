"""The worked stories are told as they are written, and a story told wrong is found out."""

from __future__ import annotations

from pathlib import Path

import pytest

from engine.doors.replay import at_path, differences, matches, read_scenario
from tests.outside.running import ROOT, ringpath

STORIES = sorted(path for path in (ROOT / "scenarios").iterdir() if path.is_dir())


@pytest.mark.parametrize("story", STORIES, ids=lambda story: story.name)
def test_a_story_is_answered_as_told(story: Path) -> None:
    assert list(differences(read_scenario(story))) == []


def test_there_are_stories() -> None:
    assert len(STORIES) >= 4


def test_a_wrong_expectation_is_a_difference_and_status_one(tmp_path: Path) -> None:
    story = tmp_path / "talk.yaml"
    story.write_text(
        "turns:\n  - say: M42 on an E-mount body\n    holds:\n      chains.1.verdict: unusable\n", encoding="utf-8"
    )
    done = ringpath(tmp_path, "replay", str(story))
    assert done.returncode == 1
    assert 'chains.1.verdict is "infinity", expected unusable' in done.stdout


def test_a_turn_that_compares_nothing_is_refused(tmp_path: Path) -> None:
    story = tmp_path / "talk.yaml"
    story.write_text("turns:\n  - say: M42 on an E-mount body\n", encoding="utf-8")
    done = ringpath(tmp_path, "replay", str(story))
    assert done.returncode == 2
    assert "expected 'holds' or 'shows'" in done.stdout


def test_paths_and_wants() -> None:
    record = {"chains": [{"glass": False, "error": {"least": 1.0, "greatest": 2.0}}]}
    assert at_path(record, "chains.1.glass") is False
    assert at_path(record, "chains.2.glass") is None
    assert matches(at_path(record, "chains.1.error"), "1..2")
    assert not matches(at_path(record, "chains.1.error"), "1.1..2")
    assert matches(False, "no")
    assert not matches(None, "0..1")
