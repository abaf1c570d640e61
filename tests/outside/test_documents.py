"""What README and help say is what happens."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from engine.answers.about_itself import TEACHING
from engine.answers.plain_talk import EXAMPLES
from engine.ask import Desk
from engine.render.terminal import shown
from engine.talk import Talk
from tests.desks import desk_of
from tests.outside.running import ROOT, ringpath

README = (ROOT / "README.md").read_text("utf-8")


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def indented(after: str) -> list[str]:
    """The indented block that follows a sentence of README.md."""
    lines = README[README.index(after) :].splitlines()[1:]
    block: list[str] = []
    for line in lines:
        if line.startswith("    "):
            block.append(line[4:])
        elif line.strip() and block:
            break
        elif block:
            block.append("")
    return block


def test_the_first_command_gives_the_answer_that_is_printed_under_it(desk: Desk) -> None:
    (question,) = re.findall(r'ringpath ask "([^"]+)"', "".join(indented("On a machine with Python")))
    answer = desk.ask(question)
    assert "\n".join(indented("It reads the question back")).strip() == shown(answer, 80).strip()
    assert answer.chains
    assert len(answer.chains[0].listed.judged.chain.adapters) == 2


def test_the_talk_of_the_readme_is_understood(desk: Desk) -> None:
    talk = Talk()
    for line in indented("Say it as you would"):
        if line.strip():
            answer = desk.ask(line, talk)
            assert answer.intent is not None, (line, answer.unread)
            assert "not yet computed" not in shown(answer), line


def test_what_the_readme_asks_of_a_whole_box_is_answered() -> None:
    desk, talk = desk_of(ROOT / "scenarios" / "a-box-of-lenses" / "gear.yaml"), Talk()
    lines = [line for line in indented("Then ask of the whole box") if line.strip()]
    assert len(lines) >= 5
    for line in lines:
        answer = desk.ask(line, talk)
        assert answer.status == 0, (line, answer.unread)


def test_the_gear_of_the_readme_is_read_and_used(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text("\n".join(indented("write what you own")) + "\n", "utf-8")
    (question,) = re.findall(r'ringpath --gear gear.yaml ask "([^"]+)"', README)
    done = ringpath(tmp_path, "--gear", str(gear), "ask", "--", question)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "reaches infinity" in done.stdout


@pytest.mark.parametrize("example", [example for _, example in EXAMPLES])
def test_help_shows_only_what_is_answered(desk: Desk, example: str) -> None:
    answer = desk.ask(example)
    assert answer.intent is not None, answer.unread
    assert answer.status in (0, 1)
    assert "not yet computed" not in shown(answer)


def test_the_test_command_of_the_readme_is_the_one_that_ci_runs() -> None:
    (command,) = indented("Run the tests:")[:1]
    assert command in (ROOT / ".ci" / "run").read_text("utf-8").splitlines()


def test_every_file_named_in_the_guide_exists() -> None:
    guide = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    room = ""
    for cell in re.findall(r"^\| \w \| `([^`]+)` \| (.*) \|$", guide, re.MULTILINE):
        room, files = cell
        for name in re.findall(r"`(\w+\.(?:py|lark))`", files):
            assert (ROOT / room / name).is_file(), f"{room}{name}"
    assert room


def test_the_sentences_that_help_teaches_with_are_kept(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text("", "utf-8")
    desk, talk = Desk(gear=gear, writes=gear), Talk()
    for _, sentence in TEACHING:
        asked = " ".join(shown(desk.ask(sentence, talk)).split())
        assert asked.endswith("yes / no"), (sentence, asked)
        desk.ask("yes", talk)
        assert talk.pending is None


@pytest.mark.parametrize(
    ("line", "holds"),
    [
        ("how do I add my own lens?", "--gear FILE"),
        ("where do your numbers come from", "with its source"),
        ("can I trust this", "are you sure?"),
        ("who are you", "nothing is looked up or sent"),
        ("what can't you do?", "No repairs"),
    ],
)
def test_what_is_asked_of_the_program_itself_is_answered(desk: Desk, line: str, holds: str) -> None:
    answer = desk.ask(line, Talk())
    assert answer.intent == "help"
    assert holds in " ".join(shown(answer).split())
