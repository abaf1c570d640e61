"""Teaching from the outside: proposed, confirmed, written with its date, used, shown as one's own, and undone."""

from __future__ import annotations

import datetime
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from engine.ask import Desk
from engine.talk import Talk
from tests.outside.running import ROOT, environment, piped, ringpath
from tests.outside.terminal import Terminal

AVOCET = "my avocet is a 25mm f/1.4 C-mount lens, made for 16mm"
GEAR = """\
# mine
bodies:
  skiff:   # the old one
    format: aps-c-1.5
    mount: e-mount
    name: skiff

lenses:
  avocet:
    name: avocet
    mount: c
    focal_length: 25 mm
    f_number: f/1.4
    collar: 30.5 mm      # by caliper
"""


@pytest.fixture
def gear(tmp_path: Path) -> Path:
    path = tmp_path / "own.yaml"
    path.write_text(GEAR, encoding="utf-8")
    return path


def usual(home: Path) -> Path:
    return home / ".local" / "share" / "ringpath" / "gear.yaml"


def test_a_yes_writes_with_the_date_and_the_next_question_knows_it(tmp_path: Path) -> None:
    day = datetime.date.today().isoformat()
    rows = piped(tmp_path, [AVOCET, "yes", "can the avocet reach infinity on m43", "list gear"])
    assert rows[0]["intent"] == "teach"
    assert "yes / no" in rows[0]["text"]
    assert "gear.yaml" in rows[1]["text"]
    assert rows[2]["entities"]["lens"]["id"] == "avocet"
    assert "avocet" in rows[3]["text"]
    text = usual(tmp_path).read_text("utf-8")
    assert "focal_length: 25 mm" in text
    assert "own observation\n  avocet:" in text
    assert f"# {day}" in text or datetime.date.today().isoformat() != day  # a talk over midnight
    assert ringpath(tmp_path, "check").returncode == 0


@pytest.mark.parametrize("then", [[], ["no"], ["what is a helicoid", "yes"]])
def test_without_a_yes_nothing_is_written(tmp_path: Path, then: list[str]) -> None:
    piped(tmp_path, [AVOCET, *then])
    assert not usual(tmp_path).exists()


def test_one_question_only_shows_what_would_be_written(tmp_path: Path) -> None:
    done = ringpath(tmp_path, "ask", AVOCET)
    assert done.returncode == 0
    assert "focal_length: 25 mm" in done.stdout
    assert "talk" in done.stdout
    assert not usual(tmp_path).exists()


def test_a_correction_keeps_every_other_byte_and_is_for_that_thing_only(tmp_path: Path, gear: Path) -> None:
    rows = piped(
        tmp_path,
        ["does the avocet reach infinity on the skiff with a 10 mm C tube", "its register is really 17.48", "yes",
         "how do I get the avocet on the skiff"],
        "--gear", str(gear),
    )  # fmt: skip
    assert "register: 17.48 mm" in rows[1]["text"]
    text = gear.read_text("utf-8")
    added = [line for line in text.splitlines() if line not in GEAR.splitlines()]
    assert len(added) == 1
    assert added[0].startswith("    register: 17.48 mm  # ")
    assert added[0].endswith(", own observation")
    assert text.replace(added[0] + "\n", "") == GEAR
    # the same mount, another lens: the shipped register
    other = piped(tmp_path, ["how do I get a 25mm C lens on an E-mount APS-C body"], "--gear", str(gear))
    before = piped(tmp_path, ["how do I get a 25mm C lens on an E-mount APS-C body"])
    assert other[0]["chains"] == before[0]["chains"]


def test_why_says_that_it_was_measured_by_the_user(tmp_path: Path, gear: Path) -> None:
    rows = piped(
        tmp_path,
        ["I own a C to E ring, 4.02 mm thick, called thin-one", "yes", "the register of my avocet is really 17.48",
         "yes", "how do I get the avocet on the skiff with what I own", "why"],
        "--gear", str(gear),
    )  # fmt: skip
    assert "17.48 mm (own measured" in rows[-1]["text"]
    assert "4.02 mm (measured" in rows[-1]["text"]


def test_what_was_written_is_undone(tmp_path: Path, gear: Path) -> None:
    piped(tmp_path, ["the register of my avocet is really 17.48", "yes", "forget that", "yes"], "--gear", str(gear))
    assert gear.read_text("utf-8") == GEAR
    piped(tmp_path, ["forget the avocet", "yes", "undo", "yes"], "--gear", str(gear))
    assert gear.read_text("utf-8") == GEAR


def test_a_thing_forgotten_is_gone_from_the_file(tmp_path: Path, gear: Path) -> None:
    rows = piped(tmp_path, ["forget the avocet", "yes", "list gear"], "--gear", str(gear))
    assert "avocet" not in rows[2]["text"]
    assert "skiff" in gear.read_text("utf-8")


def test_what_cannot_be_is_refused_and_not_written(tmp_path: Path, gear: Path) -> None:
    rows = piped(tmp_path, ["the collar of my avocet is really 900 mm", "yes"], "--gear", str(gear))
    assert "300 mm" in rows[0]["text"]
    assert gear.read_text("utf-8") == GEAR


def test_a_register_that_no_such_body_has_is_asked_about(tmp_path: Path, gear: Path) -> None:
    rows = piped(tmp_path, ["50 K on skiff", "its register is really 45.5", "yes"], "--gear", str(gear))
    said = " ".join(rows[1]["text"].split())
    assert "45.5 mm cannot be the register of skiff: E-mount has 18 mm" in said
    assert gear.read_text("utf-8") == GEAR


def test_a_yes_is_only_for_what_was_asked_last(tmp_path: Path, gear: Path) -> None:
    for between in ("my newt is a 35mm lens", "qwertz", "my toad is an EF-mount body", "forget the newt"):
        rows = piped(tmp_path, ["forget the avocet", between, "yes"], "--gear", str(gear))
        assert "not written" in rows[1]["text"], between
        assert gear.read_text("utf-8") == GEAR
    piped(tmp_path, ["forget the avocet", "my newt is a 35mm M42 lens", "yes"], "--gear", str(gear))
    assert gear.read_text("utf-8").startswith(GEAR)


@pytest.mark.parametrize("word", ["yes", "No.", "no thanks"])
def test_a_bare_yes_or_no_with_nothing_waiting_changes_nothing(tmp_path: Path, gear: Path, word: str) -> None:
    first = "does the avocet reach infinity on the skiff"
    asked, bare, then = piped(tmp_path, [first, word, "why"], "--gear", str(gear))
    assert bare["text"].strip() == "Nothing waits for a yes."
    assert then["text"] == piped(tmp_path, [first, "why"], "--gear", str(gear))[-1]["text"]
    assert asked["text"] != then["text"]
    assert gear.read_text("utf-8") == GEAR


def test_an_ok_with_nothing_waiting_is_no_yes(tmp_path: Path, gear: Path) -> None:
    (bare,) = piped(tmp_path, ["ok"], "--gear", str(gear))
    assert bare["intent"] == "noted"
    assert gear.read_text("utf-8") == GEAR


def test_a_no_that_goes_on_is_a_follow_up(tmp_path: Path, gear: Path) -> None:
    lines = ["does the avocet reach infinity on the skiff", "no, on m43"]
    assert "Nothing waits" not in piped(tmp_path, lines, "--gear", str(gear))[-1]["text"]


def test_what_another_talk_wrote_is_known_before_anything_is_proposed(gear: Path) -> None:
    one, other = (Desk(gear=gear, writes=gear) for _ in range(2))
    talk, elsewhere = Talk(), Talk()
    one.ask("does the avocet reach infinity on the skiff", talk)
    for line in ("my heron is a 50mm M42 lens", "yes", "I tested it: the avocet has no infinity on the skiff", "yes"):
        other.ask(line, elsewhere)
    answer = one.ask("forget the avocet", talk)
    assert "avocet-on-skiff" in str(answer.lines), "what was seen of it goes with it"
    assert "Taken out of" in str(one.ask("yes", talk).lines)
    assert "heron" in str(one.ask("can my heron reach infinity on the skiff", talk).lines).casefold()
    assert "avocet" not in gear.read_text("utf-8")


def test_two_talks_at_once_lose_nothing(tmp_path: Path) -> None:
    names = ["heron", "plover", "dunlin", "godwit"]
    talks = [
        subprocess.Popen(
            [sys.executable, "-m", "engine.doors.cli"], stdin=subprocess.PIPE, stdout=subprocess.DEVNULL,
            env=environment(tmp_path), cwd=ROOT, text=True,
        )
        for _ in names
    ]  # fmt: skip
    for name, talk in zip(names, talks, strict=True):
        assert talk.stdin is not None
        talk.stdin.write(f"my {name} is a 50mm M42 lens\nyes\n")
        talk.stdin.close()
    assert [talk.wait(60) for talk in talks] == [0] * len(names)
    text = usual(tmp_path).read_text("utf-8")
    assert all(f"  {name}:\n" in text for name in names)
    assert ringpath(tmp_path, "check").returncode == 0


def test_ctrl_c_at_the_prompt_loses_nothing_that_was_written(tmp_path: Path) -> None:
    terminal = Terminal(tmp_path, 100)
    try:
        terminal.read("? ")
        terminal.type(f"{AVOCET}\r")
        terminal.read("Write this to")
        terminal.type("ye\x03")
        terminal.type("yes\r")
        terminal.read("Written to")
        terminal.type("its register is really 17.48\r")
        terminal.read("own observation\n? Write")
        terminal.type("\x03")
        terminal.type("\x04")
        assert terminal.ended() == 0
    finally:
        terminal.close()
    text = usual(tmp_path).read_text("utf-8")
    assert "avocet" in text
    assert "17.48" not in text


def test_a_killed_talk_keeps_what_was_confirmed_and_no_more(tmp_path: Path) -> None:
    talk = subprocess.Popen(
        [sys.executable, "-m", "engine.doors.cli", "--json"], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
        env=environment(tmp_path), cwd=ROOT, text=True,
    )  # fmt: skip
    assert talk.stdin is not None
    assert talk.stdout is not None
    for line in (AVOCET, "yes", "its register is really 17.48"):
        talk.stdin.write(line + "\n")
        talk.stdin.flush()
        assert talk.stdout.readline()
    talk.send_signal(signal.SIGKILL)
    talk.wait(20)
    talk.stdin.close()
    talk.stdout.close()
    text = usual(tmp_path).read_text("utf-8")
    assert "avocet" in text
    assert "17.48" not in text


def test_the_kind_of_lens_decides_which_mount_of_one_name_is_written(tmp_path: Path) -> None:
    piped(tmp_path, ["my dunlin is an 80mm f/5.6 enlarger lens, M39", "yes"])
    assert "mount: enl39" in usual(tmp_path).read_text("utf-8")


def test_a_ring_that_it_is_put_on_with_is_not_taken_for_another_lens(tmp_path: Path) -> None:
    put = "i put it on the E body with a 25-55 helicoid and a m42-E ring. can it reach infinity"
    rows = piped(tmp_path, ["my dunlin is an 80mm f/5.6 enlarger lens, M39", "yes", put])
    assert rows[2]["entities"]["lens"]["id"] == "dunlin"
    assert rows[2]["chains"][0]["certainty"] == "unknown"  # how far behind its flange the image lies was not told
