"""How sure an answer is, what to measure first, what would put a chain right, and what is only supposed."""

from __future__ import annotations

from pathlib import Path

from engine.facts.catalogue import load_catalogue
from engine.facts.lexicon_store import lexicon_of
from grammar.questions import Question
from grammar.reader import read
from tests.grammar.asked import asked
from tests.outside.running import piped

CUP = "how do I get a 25mm f/1.4 C-mount lens on a Micro Four Thirds body"
FAR = "FD 50/1.4 on EF without glass"


def test_what_is_known_assumed_and_open_is_told_apart(tmp_path: Path) -> None:
    _, answer = piped(tmp_path, [CUP, "are you sure?"])
    text = answer["text"]
    assert answer["reading"].startswith("how sure is it")
    assert "known: register of C, 17.53 mm (standard)" in text
    assert "assumed: " in text
    assert "not measured: the seat of C to MFT cup" in text
    first = text.split("What would help most: ")[1]
    assert first.startswith("measure the barrel just ahead of the seat")


def test_it_is_asked_in_other_words_too(tmp_path: Path) -> None:
    for words in ("how do you know", "which measurement would help most", "what do you assume"):
        assert "What would help most" in piped(tmp_path, [CUP, words])[1]["text"], words


def test_what_would_fix_it_names_the_smallest_change(tmp_path: Path) -> None:
    _, answer = piped(tmp_path, [FAR, "what would fix it"])
    assert "to lift it: take 2 mm off the seat" in answer["text"]
    assert "The seat that is right here: -2 mm" in answer["text"]


def test_a_chain_that_is_right_needs_nothing(tmp_path: Path) -> None:
    _, answer = piped(tmp_path, ["M42 on E", "what would fix it"])
    assert "There is nothing to put right" in answer["text"]


def test_what_is_supposed_asks_the_same_anew(tmp_path: Path) -> None:
    _, stopped, thinner = piped(tmp_path, [CUP, "what if I stop down to f/8", "what if the ring is 0.1 thinner"])
    assert stopped["reading"].startswith("how do I get")
    assert stopped["reading"].endswith("at f/8")
    assert "depth of focus at f/8" in stopped["text"]
    assert "0.1 mm too close" in thinner["text"]


def test_a_reading_in_doubt_offers_another_by_number(tmp_path: Path) -> None:
    lexicon = lexicon_of(load_catalogue()[0])
    questions = (read(row.say, lexicon) for row in asked() if not row.before)
    doubted = next(one for one in questions if isinstance(one, Question) and one.instead)
    first, picked = piped(tmp_path, [doubted.text, "1"])
    assert "type a number" in first["text"]
    assert doubted.instead[0][:20] in " ".join(first["text"].split())
    assert picked["reading"][:20] == doubted.instead[0][:20]


def test_a_ring_supposed_thinner_is_that_ring_thinner(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text(
        "lenses:\n  avocet: {name: avocet, mount: c, focal_length: 25 mm, f_number: f/1.4}\n"
        "bodies:\n  skiff: {name: skiff, mount: e-mount, format: aps-c-1.5}\n"
        "adapters:\n  plate: {name: C to E plate, front: c, rear: e-mount, kind: plain, thickness: 0.5 mm,\n"
        "    seat_basis: measured, aliases: [plate], owned: 1}\n",
        encoding="utf-8",
    )
    asks = ["does the avocet reach infinity on the skiff with the plate", "and if the plate was 0.1 thinner"]
    answers = piped(tmp_path, [*asks, "what if it is 0.3 mm thick"], "--gear", str(gear))
    errors = [answer["chains"][0]["register_error_mm"]["least"] for answer in answers]
    # 0.5 + 18 - 17.526 = 0.974 too far out; a tenth less, and two tenths less
    assert [round(error, 3) for error in errors] == [0.974, 0.874, 0.774]
    assert "0.1 mm thinner" in answers[1]["reading"]
