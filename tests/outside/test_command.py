"""The command from the outside: questions, bad input, exit statuses, what one question does not load."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from tests.outside.running import ROOT, asked, environment, piped, ringpath, started

THIRTY = [
    "how do I get a C lens on my E-mount body",
    "how can I put an M42 lens on m43",
    "what adapter do I need for a QBM lens on a Z-mount body",
    "get LTM on E without glass",
    "M42 on F-mount at most 2 adapters",
    "which adapters for a D-mount lens on MFT",
    "mount an F-mount lens on an EF-mount body under 40 dollars",
    "can a 25mm f/1.4 C-mount lens reach infinity on an E-mount APS-C body",
    "will a CS-mount lens focus to infinity on a C-mount body",
    "does FD reach infinity on EF without glass",
    "can I get infinity with a 50mm f/1.8 M42 lens on a K-mount body",
    "how close does a 50mm LTM lens focus on an E-mount body",
    "from where to where does a 35mm f/2.8 M42 lens focus on an F-mount body",
    "why not infinity for a CS lens on a C body",
    "why does an M42 lens on an F-mount body not reach infinity",
    "what looks like M42",
    "what looks like LTM and what goes wrong if I use it",
    "is M42 the same as T2",
    "what is a helicoid",
    "what is the register",
    "what is a C-mount",
    "what is M39x1",
    "which lenses fit an L-mount body",
    "what fits on MFT",
    "where does a C-mount lens fit",
    "which bodies take a D-mount lens with infinity",
    "how do I get an OM-mount lens on an X-mount body at f/8",
    "how do I adapt a P6 lens to an EF-mount body",
    "an SR-mount lens on a Z-mount body, at most 1 adapter",
    "what can I ask",
]


def test_thirty_questions_through_a_pipe_are_all_answered(tmp_path: Path) -> None:
    answers = piped(tmp_path, THIRTY)
    assert len(answers) == len(THIRTY)
    for question, answer in zip(THIRTY, answers, strict=True):
        assert answer["intent"] is not None, (question, answer.get("problem"))
        assert answer["text"].strip(), question
        assert "not yet computed" not in answer["text"], question


BAD = [
    "",
    "   ",
    "x" * 10_000,
    "get " + "very " * 3000 + "old lens",
    "\x1b[31m\x07\x00 blorf lens on E",
    "как поставить объектив на камеру",
    "レンズをカメラに付けたい",
    "عدسة على كاميرا",
    "get a blorf lens on an E-mount body",
    "how do I get a grobnik lens on an E-mount body",
    "get an E-mount body on a C-mount lens",
    "C-mount lens on E-mount at most 0 adapters",
    "C-mount lens on E-mount with glass without glass",
    "C-mount lens on E-mount at f/0",
    "C-mount lens on E-mount under -5 dollars",
    "(((((((",
    "'; DROP TABLE lenses; --",
    "{extension_mm} ${HOME} %s %n",
]


@pytest.mark.parametrize("question", BAD, ids=range(len(BAD)))
def test_bad_input_gets_a_helpful_line_and_never_a_traceback(tmp_path: Path, question: str) -> None:
    done = started(tmp_path, "ask", "--", question.replace("\x00", ""))
    assert done.returncode in (1, 2)
    assert "Traceback" not in done.stderr + done.stdout
    assert done.stdout.strip()
    assert "\x1b" not in done.stdout
    assert "\x07" not in done.stdout
    assert len(done.stdout) < 2500


def test_the_line_for_an_unknown_name_points_at_it(tmp_path: Path) -> None:
    answer = asked(tmp_path, "get a blorf lens on an E-mount body")
    assert answer["status"] == 2
    assert answer["intent"] is None
    assert answer["problem"]["column"] == 7
    assert "blorf" in answer["problem"]["found"]


def test_a_misspelt_name_is_told_with_the_nearest(tmp_path: Path) -> None:
    answer = asked(tmp_path, "how do I get a exakat lens on an E-mount body")
    assert answer["problem"]["nearest"].casefold().startswith("exakta")


def test_no_way_leaves_with_status_one(tmp_path: Path) -> None:
    assert asked(tmp_path, "how do I get an E-mount lens on an F-mount body")["status"] == 1


def test_status_of_a_pipe_is_the_highest_of_its_lines(tmp_path: Path) -> None:
    assert started(tmp_path, said="what is a helicoid\n").returncode == 0
    assert started(tmp_path, said="what is a helicoid\nget a blorf lens on E\n").returncode == 2


def test_start_over_on_a_pipe_prints_an_object_and_forgets(tmp_path: Path) -> None:
    first, over, after = piped(tmp_path, ["C-mount lens on E-mount body", "start over", "why?"])
    assert first["chains"]
    assert over["intent"] == "start-over"
    assert after["intent"] is None or after["text"]
    assert "chains" not in after


def test_json_says_unknown_and_null_apart(tmp_path: Path) -> None:
    chain = asked(tmp_path, "how do I get a C-mount lens on a Z-mount body")["chains"][0]
    assert chain["focus"]["far_from_sensor_mm"] is None  # no focal length was told: it does not apply
    assert chain["clearance"]["overhang_mm"] == {"least": None, "greatest": None, "state": "unknown"}


def test_json_is_strict_json_and_alone_on_standard_output(tmp_path: Path) -> None:
    done = started(tmp_path, "ask", "--json", "--", "M42 on E-mount")
    answer = json.loads(done.stdout, parse_constant=lambda text: pytest.fail(f"{text} is no JSON"))
    assert set(answer) >= {"format", "question", "reading", "intent", "entities", "text", "ring_to_make", "chains"}
    assert done.stdout.count("\n") == 1


def test_colour_is_for_terminals_alone(tmp_path: Path) -> None:
    assert "\x1b" not in started(tmp_path, "ask", "--", "M42 on E-mount").stdout


def test_one_question_loads_only_what_it_needs(tmp_path: Path) -> None:
    started(tmp_path, "ask", "--", "M42 on E-mount")  # prepares the facts
    code = (
        "import sys; from engine.doors.cli import main; status = main(['ask', 'how do I get a C lens on an E body']);"
        "print('\\n'.join(sorted(sys.modules)), file=sys.stderr); raise SystemExit(status)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, env=environment(tmp_path), cwd=ROOT, check=True
    )
    loaded = set(done.stderr.split())
    assert "engine.answers.howto" in loaded
    for name in (
        "networkx", "prompt_toolkit", "asyncio", "yaml", "difflib", "importlib.metadata", "logging.config",
        "engine.answers.found.lookalike", "engine.answers.seat.reasons", "engine.render.record", "engine.facts.loading",
    ):  # fmt: skip
        assert name not in loaded, name


def test_a_closed_pipe_is_silent(tmp_path: Path) -> None:
    command = f"{sys.executable} -m engine.doors.cli ask 'which lenses fit an E-mount body' | head -n 1 >/dev/null"
    done = subprocess.run(
        ["bash", "-c", command], capture_output=True, text=True, env=environment(tmp_path), cwd=ROOT, check=False
    )
    assert done.stderr == ""


def test_gear_that_cannot_be_read_leaves_with_status_three(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text("lenses:\n  avocet:\n    name: avocet\n    mount: m24\n", "utf-8")
    done = started(tmp_path, "--gear", str(gear), "ask", "--", "avocet on E-mount")
    assert done.returncode == 3
    assert "gear.yaml:4:12: found" in done.stderr
    assert "m24" in done.stderr


def test_check_of_the_shipped_facts_finds_nothing_wrong(tmp_path: Path) -> None:
    done = started(tmp_path, "check")
    assert done.returncode == 0, done.stdout
    assert "nothing wrong" in done.stdout


def test_a_gear_file_that_was_named_must_be_there(tmp_path: Path) -> None:
    done = started(tmp_path, "--gear", "nowhere.yaml", "ask", "--", "M42 on E-mount")
    assert done.returncode == 3
    assert "nowhere.yaml" in done.stderr


def test_facts_of_ones_own_are_laid_over_the_shipped_ones(tmp_path: Path) -> None:
    folder = tmp_path / "more"
    folder.mkdir()
    (folder / "tide.yaml").write_text(
        "mounts:\n  tide-mount:\n    designation: Tide-mount\n    kind: mirrorless\n    coupling: bayonet\n"
        "    register: 15 mm\n    throat: 50 mm\n    mirror: no\n    format: aps-c-1.5\n    formats: [aps-c-1.5]\n"
        "    confidence: one-source\n    sources: [own]\n"
        "adapters:\n  m42-tide:\n    name: M42 to tide ring\n    front: m42\n    rear: tide-mount\n    kind: plain\n"
        "    thickness: 30.46 mm\n    seat_basis: derived\n    confidence: one-source\n    sources: [own]\n",
        "utf-8",
    )
    answer = asked(tmp_path, "how do I get an M42 lens on a Tide-mount body", "--facts", str(folder))
    assert answer["chains"][0]["pieces"][0]["id"] == "m42-tide"
    assert answer["chains"][0]["verdict"] == "infinity"


def test_check_lists_every_problem_and_leaves_with_status_three(tmp_path: Path) -> None:
    bad = tmp_path / "bad.yaml"
    bad.write_text(
        "lenses:\n  tern:\n    mount: m42\n    focal_length: 50\n    foo: 1\n  tern:\n    mount: c\n", "utf-8"
    )
    done = started(tmp_path, "check", str(bad))
    assert done.returncode == 3
    lines = [line for line in done.stdout.splitlines() if ": found " in line]
    assert len(lines) == 3
    assert all(line.startswith("bad.yaml:") for line in lines)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("M42 on E",), "to ask a question: ringpath ask 'QUESTION'"),
        (("frob",), "'ask', 'check', 'replay'"),
        (("ask",), "see ringpath ask --help"),
        (("--frob",), "see ringpath --help"),
        (("check", "--gear"), "see ringpath check --help"),
        (("a\x1b[2J b",), "ask"),
    ],
)
def test_wrong_usage_is_told_in_one_line(tmp_path: Path, words: tuple[str, ...], told: str) -> None:
    done = ringpath(tmp_path, *words)
    assert done.returncode == 2
    assert done.stdout == ""
    assert told in done.stderr
    assert done.stderr.count("\n") == 1
    assert "\x1b" not in done.stderr
