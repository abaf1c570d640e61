"""What the user saw of a lens on a body: kept, set beside what is computed, and explained where the two differ."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.outside.running import piped

GEAR = """\
# the film club's things
lenses:
  avocet:  # bought at a fair
    name: avocet
    mount: c
    focal_length: 25 mm
    f_number: f/1.4
bodies:
  skiff:
    name: skiff
    mount: e-mount
    format: aps-c-1.5
adapters:
  plate:
    name: C to E plate
    front: c
    rear: e-mount
    kind: plain
    thickness: 0.2 mm
    seat_basis: measured
    aliases: [plate]
    owned: 1
"""
ASK = "does the avocet reach infinity on the skiff with the plate"


@pytest.fixture
def gear(tmp_path: Path) -> Path:
    path = tmp_path / "gear.yaml"
    path.write_text(GEAR, encoding="utf-8")
    return path


def told(home: Path, gear: Path, *lines: str) -> list[dict[str, Any]]:
    return piped(home, list(lines), "--gear", str(gear))


def number(answer: dict[str, Any], name: str, case: str | None = None) -> Any:
    rows = answer["quantities"][name]
    rows = rows if isinstance(rows, list) else [rows]
    return next(row for row in rows if row.get("case") == case) if case else rows[0]


def test_an_observation_is_echoed_confirmed_and_kept(tmp_path: Path, gear: Path) -> None:
    first, done = told(tmp_path, gear, "avocet reaches infinity on the skiff with the plate: I tried it", "yes")
    assert first["intent"] == "teach"
    assert "avocet on skiff with C to E plate reaches infinity" in first["reading"]
    assert done["status"] == 0 if "status" in done else "Written" in done["text"]
    kept = yaml.safe_load(gear.read_text(encoding="utf-8"))["observations"]
    assert list(kept) == ["avocet-on-skiff-with-plate"]
    assert kept["avocet-on-skiff-with-plate"]["with"] == ["plate"]
    assert "# bought at a fair" in gear.read_text(encoding="utf-8")


def test_what_contradicts_is_shown_beside_what_is_computed(tmp_path: Path, gear: Path) -> None:
    answers = told(tmp_path, gear, "avocet reaches infinity on the skiff with the plate: I tried it", "yes", ASK)
    answer = answers[-1]
    assert answer["chains"][0]["verdict"] == "macro-only", "what was seen overrules no computation"
    assert "You tried it" in answer["text"]
    # computed: 0.2 + 18 - 17.526 = 0.674 too far; forgiven at f/1.4 on APS-C: 1.4 x 28.35 / 1442 = 0.0275
    assert number(answer, "fact_off_mm")["least"] == pytest.approx(0.674 - 0.0275, abs=0.001)
    assert "18.17 mm instead of 17.53 mm" in answer["text"]


def test_a_farthest_distance_tells_the_register_error(tmp_path: Path, gear: Path) -> None:
    said = "I tested it: the avocet stops at 1.5 m on the skiff with the plate"
    answer = told(tmp_path, gear, said, "yes", ASK)[-1]
    seen = number(answer, "register_error_mm", "as you saw it")
    # x of a thin 25 mm lens sharp at 1.5 m from the sensor: D = 2 f + f^2 / x + x
    middle = 1500 - 50
    thin = (middle - (middle * middle - 4 * 25 * 25) ** 0.5) / 2
    assert seen["least"] <= thin <= seen["greatest"]
    assert seen["greatest"] - seen["least"] < 0.05


def test_what_agrees_is_said_to(tmp_path: Path, gear: Path) -> None:
    answer = told(tmp_path, gear, "I checked: avocet on the skiff with the plate has no infinity", "yes", ASK)[-1]
    assert "did not reach infinity, as computed" in answer["text"]


def test_follow_up_takes_the_chain_just_shown(tmp_path: Path, gear: Path) -> None:
    told(tmp_path, gear, ASK, "it does reach infinity, I tried it", "yes")
    kept = yaml.safe_load(gear.read_text(encoding="utf-8"))["observations"]
    (row,) = kept.values()
    assert (row["lens"], row["body"], row["with"], row["infinity"]) == ("avocet", "skiff", ["plate"], True)


def test_it_can_be_forgotten_and_brought_back(tmp_path: Path, gear: Path) -> None:
    said = "avocet reaches infinity on the skiff with the plate: I tried it"
    told(tmp_path, gear, said, "yes")
    shutil.copy(gear, before := tmp_path / "before.yaml")
    answers = told(tmp_path, gear, "forget what I saw of avocet on the skiff", "yes", ASK)
    assert "You tried it" not in answers[-1]["text"]
    told(tmp_path, gear, said, "yes", "forget avocet", "yes", "undo", "yes")
    again = yaml.safe_load(gear.read_text(encoding="utf-8"))
    assert again == yaml.safe_load(before.read_text(encoding="utf-8"))


def test_forgetting_a_lens_takes_what_was_seen_of_it(tmp_path: Path, gear: Path) -> None:
    told(
        tmp_path, gear, "avocet reaches infinity on the skiff with the plate: I tried it", "yes", "forget avocet", "yes"
    )
    left = yaml.safe_load(gear.read_text(encoding="utf-8"))
    assert not left.get("observations")
    assert not left.get("lenses")


@pytest.mark.parametrize(
    "line",
    ["does the avocet reach infinity on the skiff", "will avocet reach infinity on the skiff, I have not tried it"],
)
def test_a_question_teaches_nothing(tmp_path: Path, gear: Path, line: str) -> None:
    assert told(tmp_path, gear, line)[0]["intent"] != "teach"


def test_an_unknown_lens_is_asked_for(tmp_path: Path, gear: Path) -> None:
    (answer,) = told(tmp_path, gear, "a 50mm M42 lens reaches infinity on the skiff, I tried it")
    assert "Which lens of yours" in answer["text"]


def test_a_nearest_distance_alone_says_nothing_of_infinity(tmp_path: Path, gear: Path) -> None:
    said = "I tested it: the avocet focuses down to 0.05 m on the skiff with the plate"
    answer = told(tmp_path, gear, said, "yes", ASK)[-1]
    assert "came as near as 5 cm" in answer["text"]
    assert "both cannot be" not in answer["text"]
    assert "did not reach infinity" not in answer["text"]
    assert "fact_off_mm" not in answer["quantities"]


@pytest.mark.parametrize(
    ("ring", "kept"),
    [
        ("the C to E cup", ["c-e"]),
        ("my C to E ring", ["plate"]),
        ("the ring", None),
        ("the plate and the C to E cup", ["plate", "c-e"]),
        ("the LTM to M42 ring and the M42 to E ring", ["ltm-m42-macro", "m42-e"]),
    ],
)
def test_a_ring_told_by_its_name_or_its_mounts_is_found(
    tmp_path: Path, gear: Path, ring: str, kept: list[str] | None
) -> None:
    told(tmp_path, gear, f"avocet stops at 1 m on the skiff with {ring}, I tried it", "yes")
    (row,) = yaml.safe_load(gear.read_text(encoding="utf-8"))["observations"].values()
    assert row.get("with") == kept


def test_a_ring_that_none_or_several_may_be_is_asked_for(tmp_path: Path, gear: Path) -> None:
    for ring in ("a C to E helicoid", "a 10 mm tube"):
        (answer,) = told(tmp_path, gear, f"avocet stops at 1 m on the skiff with {ring}, I tried it")
        assert "Which ring is" in answer["text"]


@pytest.mark.parametrize(
    "said", ["it does reach infinity, I tried it", "it reaches infinity with the ring, I tried it"]
)
def test_a_ring_spoken_of_generally_is_that_of_the_chain_listed(tmp_path: Path, gear: Path, said: str) -> None:
    first, answer = told(tmp_path, gear, "does the avocet reach infinity on the skiff with a ring", said)
    assert "Which ring" not in answer["text"]
    best = first["text"].split("1. ")[1].split("  ")[0]
    assert f"with {best} " in answer["reading"]


def test_it_is_the_lens_also_where_a_ring_is_told_by_its_mounts(tmp_path: Path, gear: Path) -> None:
    own = gear.read_text("utf-8").replace(
        "bodies:\n", "bodies:\n  wherry: {name: wherry, mount: mft-mount, format: four-thirds}\n"
    )
    gear.write_text(own, "utf-8")
    answer = told(tmp_path, gear, ASK, "it reaches infinity on the wherry with the C to MFT ring, I tried it")[-1]
    assert answer["reading"].startswith("avocet on wherry with C to MFT cup reaches infinity")


def test_came_as_near_as_is_what_was_seen(tmp_path: Path, gear: Path) -> None:
    (answer,) = told(tmp_path, gear, "I tested it: avocet came as near as 30 cm on the skiff with the plate")
    assert answer["intent"] == "teach"
    assert "near: 30 cm" in answer["text"]


@pytest.mark.parametrize(
    "said", ["reaches 3 m on the skiff with the plate, i tried it", "goes to 3 m on the skiff with the plate: tested"]
)
def test_every_phrase_of_the_word_list_for_an_end_is_heard(tmp_path: Path, gear: Path, said: str) -> None:
    (answer,) = told(tmp_path, gear, f"avocet {said}")
    assert answer["intent"] == "teach"
    assert "far: 3 m" in answer["text"]


def test_forgetting_an_observation_keeps_its_lens(tmp_path: Path, gear: Path) -> None:
    said = "avocet reaches infinity on the skiff with the plate: I tried it"
    told(tmp_path, gear, said, "yes", "forget the observation of avocet", "yes")
    left = yaml.safe_load(gear.read_text(encoding="utf-8"))
    assert not left.get("observations")
    assert list(left["lenses"]) == ["avocet"]


def test_a_mount_alone_is_its_usual_body_and_a_cup_the_one_between(tmp_path: Path, gear: Path) -> None:
    told(tmp_path, gear, "avocet on the mft with the cup stops at 4 m, i tried it", "yes")
    kept = yaml.safe_load(gear.read_text(encoding="utf-8"))["observations"]
    assert [(row["body"], row["with"]) for row in kept.values()] == [("generic-mft-mount-four-thirds", ["c-mft"])]


@pytest.mark.parametrize("asked", ["how much do i take off the ring", "how thick a washer do i take away"])
def test_what_is_to_be_taken_off_is_told_by_what_was_seen(tmp_path: Path, gear: Path, asked: str) -> None:
    """25 mm at 4 m: 25 squared over 4000 less 50 is 0.158 mm."""
    seen = "avocet on the mft with the cup stops at 4 m, i tried it"
    answer = told(tmp_path, gear, seen, "yes", "avocet on mft", asked)[-1]
    assert "sits 0.16 mm too far out: take that off the ring" in " ".join(answer["text"].split())


def test_a_cup_of_ones_own_is_the_one_that_is_spoken_of(tmp_path: Path, gear: Path) -> None:
    """What was measured of it is kept, and after what was taught the talk is about the same as before."""
    *_, spoken, seen, _, asked = told(
        tmp_path, gear, "avocet on a MFT body?", "I own a C to MFT cup, measured -1.68", "yes",
        "what are we talking about?", "avocet reaches infinity on a MFT body with the cup: I tried it", "yes",
        "which of my adapters for it",
    )  # fmt: skip
    assert "how do I get my avocet on a Micro Four Thirds body" in spoken["text"]
    assert "with: [my-c-mft-mount-cup]" in seen["text"]
    assert "with what I own" in asked["reading"]
    kept = yaml.safe_load(gear.read_text(encoding="utf-8"))["adapters"]["my-c-mft-mount-cup"]
    assert (kept["thickness"], kept["seat_basis"]) == ("-1.68 mm", "measured")
