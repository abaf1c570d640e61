"""A designation that several mounts carry: asked by number once, kept as the user's own word, and given up again."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from tests.outside.running import piped


@pytest.fixture
def gear(tmp_path: Path) -> Path:
    path = tmp_path / "gear.yaml"
    path.write_text("lenses: {}\n", encoding="utf-8")
    return path


def test_it_is_asked_answered_by_number_and_kept(tmp_path: Path, gear: Path) -> None:
    said = ["S lens on m43", "1", "yes", "S lens on m43"]
    first, picked, written, again = piped(tmp_path, said, "--gear", str(gear))
    assert "Which one is it? 1. S (M12), 2. S-mount (rangefinder) or 3." in first["text"]
    assert picked["entities"]["lens"]["mount"] == "s"
    assert "Write this to" in picked["text"]
    assert "Written to" in written["text"]
    assert again["entities"]["lens"]["mount"] == "s"
    assert "Which one is it?" not in again["text"]
    (row,) = yaml.safe_load(gear.read_text(encoding="utf-8"))["shared"].values()
    assert row["mounts"] == ["s"]
    # the word is kept for the talks to come too
    assert piped(tmp_path, ["S lens on m43"], "--gear", str(gear))[0]["entities"]["lens"]["mount"] == "s"


def test_it_can_be_said_and_forgotten(tmp_path: Path, gear: Path) -> None:
    said = [
        "by S I mean S-mount (rangefinder)",
        "yes",
        "S lens on m43",
        "forget what I mean by S",
        "yes",
        "S lens on m43",
    ]
    *_, kept, _, _, again = piped(tmp_path, said, "--gear", str(gear))
    assert kept["entities"]["lens"]["mount"] == "s-mount-rf"
    assert "Which one is it?" not in kept["text"]
    assert "Which one is it?" in again["text"]


def test_without_a_yes_nothing_is_written(tmp_path: Path, gear: Path) -> None:
    before = gear.read_bytes()
    piped(tmp_path, ["S lens on m43", "2", "no"], "--gear", str(gear))
    assert gear.read_bytes() == before


def test_a_designation_with_a_likely_meaning_is_not_asked(tmp_path: Path, gear: Path) -> None:
    (answer,) = piped(tmp_path, ["F lens on E body"], "--gear", str(gear))
    assert "Which one is it?" not in answer["text"]
    assert "may also mean" in answer["text"]


def test_an_unknown_mount_is_refused_with_the_nearest(tmp_path: Path, gear: Path) -> None:
    (answer,) = piped(tmp_path, ["by S I mean Exacta"], "--gear", str(gear))
    assert answer["intent"] is None
    assert "Exakta" in answer["problem"]["nearest"]


@pytest.mark.parametrize(
    "word",
    [
        "C",
        "lens",
        "quit",
        "yes",
        "no",
        "25mm",
        "f/2",
        "--",
        "42",
        "undo",
        "Exakta",
        "helicoid",
        "heron",
        "my frog",
        "why",
    ],
)
def test_a_word_that_is_read_already_gets_no_other_meaning(tmp_path: Path, word: str) -> None:
    own = tmp_path / "own.yaml"
    own.write_text("lenses:\n  heron: {name: heron, mount: c, focal_length: 25 mm}\n", encoding="utf-8")
    before = own.read_bytes()
    refused, _ = piped(tmp_path, [f"by {word} I mean M42", "yes"], "--gear", str(own))
    assert refused["intent"] is None
    assert "a word that nothing else reads" in " ".join(refused["text"].split())
    assert own.read_bytes() == before


@pytest.mark.parametrize("word", ["wombat", "S", "M39", "42 mm screw"])
def test_a_word_that_is_free_or_ambiguous_gets_its_meaning_and_may_get_another(
    tmp_path: Path, gear: Path, word: str
) -> None:
    said = [
        f"by {word} I mean M42",
        "yes",
        f"{word} lens on m43",
        f"by {word} I mean Exakta",
        "yes",
        f"{word} lens on m43",
    ]
    _, _, first, _, _, then = piped(tmp_path, said, "--gear", str(gear))
    assert first["entities"]["lens"]["mount"] == "m42"
    assert then["entities"]["lens"]["mount"] != "m42"
    assert len(yaml.safe_load(gear.read_text(encoding="utf-8"))["shared"]) == 1
