"""Cards from the outside: the file, its name, and every number on it against the record of the answer."""

from __future__ import annotations

import os
import re
from math import isclose
from pathlib import Path
from typing import Any

import pytest

from tests.outside.running import ROOT, asked, piped, ringpath
from tests.render.pages import Reading

GEAR = ROOT / "tests" / "data" / "cards-gear.yaml"
ASKED = [
    "card for the avocet on the skiff at f/2.8, 1/50 in full sun",
    "cards for all my lenses on the punt in open shade at 1/100",
    "cards for all my lenses on the ketch in feet",
    "card for the knot on the skiff with the thick club ring",
    "card for the knot on the skiff with the thin club ring in feet, EV 9, iso 3200",
    "card for a 50mm f/2.8 enlarger lens on an E-mount APS-C body with a helicoid",
    "card for an 85mm f/1.4 CY lens on an E-mount APS-C body with a 0.71 reducer, 2.39:1",
]
MM = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "ft": 304.8, "in": 25.4}
NUMBER = re.compile(r"\d+(?:\.\d+)?")


def page_of(home: Path, question: str) -> tuple[dict[str, Any], str]:
    answer = asked(home, question, "--gear", str(GEAR))
    assert answer["status"] == 0, answer
    return answer, Path(answer["document"]["path"]).read_text("utf-8")


def ends_of(text: str) -> list[tuple[float, float]]:
    """The least and the greatest that a written number may stand for, in mm, seconds, or as it stands."""
    text = text.removesuffix(" or more").replace("∞", "infinity")
    low, _, high = text.partition(" to ")
    unit = re.search(r"(mm|cm|m|ft|in|%|kg|g|s)$", high or low)
    parts = [part for part in (low, high) if part and part != "infinity"]
    return [_one(part, unit[1] if unit else "") for part in parts]


def _one(text: str, unit: str) -> tuple[float, float]:
    ratio = re.fullmatch(r"(\d+(?:\.\d+)?)[:/](\d+(?:\.\d+)?)(?: s)?", text)
    if ratio:
        value = float(ratio[1]) / float(ratio[2])
        return value * 0.99, value * 1.01
    if text.startswith("ND"):
        return float(text[2:]), float(text[2:])
    feet = re.fullmatch(r"(\d+) ft(?: (\d+))?(?: in)?", text)
    if feet:
        value, step = int(feet[1]) * 304.8 + int(feet[2] or 0) * 25.4, 25.4 if feet[2] else _step(feet[1]) * 304.8
        return value - step / 2, value + step / 2
    own = re.search(r"[a-z%]+$", text)
    unit = own[0] if own else unit
    (number,) = NUMBER.findall(text)
    scale = {**MM, "%": 0.01, "kg": 1000.0}.get(unit, 1.0)
    value, step = float(number) * scale, _step(number) * scale
    return value - step / 2, value + step / 2


def _step(number: str) -> float:
    """What the last figure of a number counts: two figures at least are shown of every number."""
    _, point, places = number.partition(".")
    if point:
        return 10.0 ** -len(places)
    return 10.0 ** max(len(number) - 2, 0) if number.endswith("0") else 1.0


def told(answer: dict[str, Any], name: str, case: str) -> dict[str, Any]:
    rows = answer["quantities"][name]
    found = [row for row in (rows if isinstance(rows, list) else [rows]) if row.get("case") == case]
    assert len(found) == 1, (name, case, rows)
    return dict(found[0])


@pytest.mark.parametrize("question", ASKED)
def test_every_number_on_a_card_is_that_of_the_record(question: str, tmp_path: Path) -> None:
    answer, page = page_of(tmp_path, question)
    cards = Reading(page).cards
    assert len(cards) == answer["document"]["cards"] == len(answer["chains"])
    assert sum(len(card["figures"]) for card in cards) > 10 * len(cards)
    for n, card in enumerate(cards, start=1):
        for name, case, text in card["figures"]:
            assert case.split(",")[0] == f"card {n}"
            row = told(answer, name, case)
            if name == "nd_filter_stops":
                assert isclose(2 ** row["least"], float(text[2:]), rel_tol=0.03), (name, case, text, row)
                continue
            shown = ends_of(text)
            wanted = [row["least"], row["greatest"]]
            if row["state"] == "infinite":
                assert wanted[1] is None
                assert text.endswith(("or more", "infinity", "∞"))
                wanted = wanted[:1]
            if len(shown) == 1 and len(wanted) == 2:
                shown *= 2
            assert len(shown) == len(wanted), (name, case, text, row)
            for (low, high), value in zip(shown, wanted, strict=True):
                slack = 1e-6 + abs(value) * 1e-9
                assert low - slack <= value <= high + slack, (name, case, text, row)


@pytest.mark.parametrize("question", ASKED)
def test_no_number_stands_on_a_card_but_as_a_figure_or_in_a_name(question: str, tmp_path: Path) -> None:
    """So that none can be there which the record does not hold."""
    answer, page = page_of(tmp_path, question)
    titles = " ".join(_titles(answer))
    for card in Reading(page).cards:
        stray = [words for words in card["words"] if re.search(r"\d", words)]
        assert not stray
        for name in card["names"]:
            for part in re.split(r"screwed straight into | bayonet seated in ", name):
                assert not re.search(r"\d", part) or part.casefold() in titles.casefold(), name


def _titles(answer: dict[str, Any]) -> list[str]:
    """Names that may hold digits: of things, of pieces, of formats, and of whom to ask, as the facts have them."""
    facts = "".join(path.read_text("utf-8") for path in sorted((ROOT / "kb").rglob("*.yaml")))
    own = GEAR.read_text("utf-8")
    return [re.sub(r"\s+", " ", facts), own, answer["text"].replace("\n", " ")]


def test_unknown_numbers_are_words(tmp_path: Path) -> None:
    _, page = page_of(tmp_path, "card for the dunlin on the dory")
    text = Reading(page).cards[0]["text"]
    for words in ("Focal length not known", "f-number not known", "Not known whether the barrel enters the cup"):
        assert words in text
    assert not re.search(r"\b0(\.0)? (mm|m|cm|stops)\b|None|nan|unknown amount", text)


def test_a_card_tells_the_settings_that_go_with_its_body(tmp_path: Path) -> None:
    def text_of(question: str) -> str:
        return str(Reading(page_of(tmp_path, question)[1]).cards[0]["text"])

    moving = text_of("card for the avocet on the skiff")
    assert "stabiliser at 25 mm" in moving
    assert "lock the moving sensor for transport" in moving
    assert "allow release without a lens" in moving
    still = text_of("card for the avocet on the dory")
    assert "stabiliser" not in still
    assert "moving sensor" not in still
    maybe = text_of("card for a 50mm f/1.4 CY lens on an E-mount APS-C body with a 0.71 reducer")
    assert "stabiliser, if any, at 35.5 mm" in maybe
    contacts = text_of("card for the godwit on the dory with the wired club ring")
    assert "set the aperture on the body" in contacts
    assert "stabiliser" not in contacts  # the body is known to have none
    assert "release without a lens" not in contacts


def test_files_are_numbered_and_names_stay_in_the_folder(tmp_path: Path) -> None:
    here = tmp_path / "here"
    here.mkdir()
    said = "card for an M42 50mm f/1.8 lens on an E-mount APS-C body\n"
    for _ in range(2):
        assert ringpath(tmp_path, said=said, cwd=here).returncode == 0
    for name in ("../friday.html", "/tmp/friday.html", "friday.html"):
        done = ringpath(tmp_path, "ask", "--", f"{said.strip()} as {name}", cwd=here)
        assert done.returncode == 0, done.stdout + done.stderr
    assert sorted(path.name for path in here.iterdir()) == [
        "card-a-50-mm-f1.8-M42-lens-on-an-E-mount-APS-C-body-2.html",
        "card-a-50-mm-f1.8-M42-lens-on-an-E-mount-APS-C-body.html",
        "friday-2.html", "friday-3.html", "friday.html",
    ]  # fmt: skip
    assert not (tmp_path / "friday.html").exists()


def test_a_folder_that_may_not_be_written_is_one_line(tmp_path: Path) -> None:
    folder = tmp_path / "kept"
    folder.mkdir(mode=0o500)
    if os.geteuid() == 0:
        folder = Path("/sys")  # nobody makes files there, whoever they are
    done = ringpath(tmp_path, "ask", "--", "card for an M42 50mm lens on an E-mount body as friday.html", cwd=folder)
    assert done.returncode == 1
    assert done.stderr == ""
    lines = [line for line in done.stdout.splitlines() if not line.startswith(">")]
    assert len(" ".join(lines)) < 160
    assert lines[0].startswith("? Not saved: ")


def test_follow_ups_keep_what_was_said_before(tmp_path: Path) -> None:
    answers = piped(
        tmp_path,
        [
            "how do I get the knot on the skiff",
            "card for the second one",
            "which nd for it at f/4, 1/100 in open shade",
            "card for it in feet",
            "card for #9",
            "save cards as friday.html",
            "at f/8?",
            "print a card",
        ],
        "--gear",
        str(GEAR),
    )
    pieces = [chain["pieces"][0]["id"] for chain in answers[0]["chains"]]
    second = answers[1]["chains"]
    assert [chain["pieces"][0]["id"] for chain in second] == [pieces[1]]
    inherits = answers[3]
    assert inherits["entities"]["f_number"] == 4
    assert (inherits["entities"]["shutter"], inherits["entities"]["light"]) == ("1/100 s", "open-shade")
    assert "1/100 s, open shade" in Reading(Path(inherits["document"]["path"]).read_text("utf-8")).cards[0]["text"]
    assert " ft" in Path(inherits["document"]["path"]).read_text("utf-8")
    assert "1 to 3" in answers[4]["text"]
    assert "document" not in answers[4]
    assert Path(answers[5]["document"]["path"]).name == "friday.html"
    assert answers[6]["intent"] == "chain"  # no file is written unasked
    assert "document" not in answers[6]
    assert told(answers[7], "f_number", "card 1")["least"] == 8


def test_without_anything_to_make_a_card_of_it_asks(tmp_path: Path) -> None:
    for question in ("print a card", "card for the avocet", "cards for all my lenses on m43", "save cards as x.html"):
        done = ringpath(tmp_path, "ask", "--", question)
        assert done.returncode in (1, 2)
        assert not list(tmp_path.glob("*.html"))


def test_a_pile_of_cards_is_told_where_it_ends(tmp_path: Path) -> None:
    rows = "".join(f"  l{n}: {{name: l{n}, mount: m42, focal_length: 50 mm, f_number: f/2}}\n" for n in range(103))
    gear = tmp_path / "gear.yaml"
    gear.write_text("lenses:\n" + rows, "utf-8")
    answer = asked(tmp_path, "cards for all my lenses on an E-mount body", "--gear", str(gear))
    assert answer["document"]["cards"] == 100
    assert "Only the first 100 of 103" in answer["text"]
