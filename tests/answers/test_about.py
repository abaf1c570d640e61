"""Which advice is found by the words of a question: a list of what is asked and what must answer it."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest

from engine.answers.parts.answer import NO
from engine.facts.subjects import subjects_of
from engine.render.record import record_of
from engine.talk import Talk
from tests.desks import desk_of
from tests.reading import loaded

LIST = Path(__file__).parents[1] / "data" / "about.yaml"
LEAST_SHARE = 0.9  # of the questions whose nearest advice must be right
DESK = desk_of()


@cache
def rows() -> list[dict[str, Any]]:
    asked: list[dict[str, Any]] = loaded(LIST)["asked"]
    return asked


def nearest_ids(text: str) -> list[str]:
    return [match.id for match in subjects_of(DESK.catalogue).matches(text)]


def told(text: str) -> str:
    return str(record_of(DESK.ask(text, Talk()), DESK.knowledge)["text"])


def test_every_advice_of_the_list_is_known() -> None:
    wanted = {id_ for row in rows() for id_ in row["about"]}
    assert wanted <= set(DESK.catalogue.advice)


def test_the_nearest_advice_is_mostly_the_right_one() -> None:
    missed = [
        row["say"] for row in rows() if nearest_ids(row["say"])[:1] and nearest_ids(row["say"])[0] not in row["about"]
    ]
    assert len(missed) <= (1 - LEAST_SHARE) * len(rows()), missed


@pytest.mark.parametrize("say", loaded(LIST)["strange"])
def test_advice_that_shares_a_word_by_chance_answers_nothing(say: str) -> None:
    answer = DESK.ask(say, Talk())
    told = {f"{row.topic}: {row.says}" for row in DESK.catalogue.advice.values()}
    assert answer.status == NO
    other = next((n for n, line in enumerate(answer.lines) if line.text.startswith("Or, if you meant")), None)
    assert not [line for line in answer.lines[:other] if line.text in told]  # another reading may be of something else


def test_a_misspelt_word_finds_the_same_advice() -> None:
    assert nearest_ids("fungas inside my lens")[0] == nearest_ids("fungus inside my lens")[0] == "fungus"


def test_words_that_mean_the_same_find_the_same_advice() -> None:
    assert nearest_ids("spores in the glass, contagious?")[0] == "fungus"
    assert nearest_ids("mushy at f22")[0] == nearest_ids("blurry at f22")[0] == "diffraction-soft"


def test_what_is_asked_for_leave_is_answered_first() -> None:
    text = told("is it ok to shoot the eclipse with a 500 and an ND1000 behind the lens")
    assert text.startswith("No:")
    assert "safe in ordinary use" in told("is a thoriated lens dangerous to have at home")


def test_a_measured_rear_is_set_against_seat_and_register() -> None:
    text = told("rear of the M wide sticks out 12 mm past its flange, 9.8 mm ring on my E body, is that safe")
    assert "2.2 mm inside" in text
    assert "15.8 mm before the sensor" in text


def test_terms_side_by_side_are_both_told() -> None:
    text = told("parfocal vs varifocal")
    assert "holds focus while zooming" in text
    assert "focused anew" in text


def test_a_term_is_told_in_numbers_of_the_formats_beside_it() -> None:
    record = record_of(DESK.ask("circle of confusion for full frame and MFT", Talk()), DESK.knowledge)
    values = [round(row["nominal"] if "nominal" in row else row["least"], 3) for row in
              record["quantities"]["allowed_blur_mm"]]  # fmt: skip
    assert values == [0.03, 0.015]


@pytest.mark.parametrize(
    ("say", "begins"),
    [
        ("may i sand the chipped edge of a thoriated element", "No: never grind"),
        ("turning thoriated elements into a magnifier for reading, harmful?", "Not there"),
        ("how many microsievert a year from a thorium lens on the camera", "Small"),
        ("is my radioactive lens dangerous", "Yes, safe"),
    ],
)
def test_what_is_done_with_a_thing_is_ruled_on_before_the_thing(say: str, begins: str) -> None:
    assert told(say).startswith(begins)


@pytest.mark.parametrize(
    ("say", "topic"),
    [
        ("what voltage does a b4 servo take", "servo lenses"),
        ("can i peek into the slide projector while lit to line up the lens", "inside an old projector"),
        ("how many kilos can the e mount hold", "how much a mount bears"),
        ("how can i find out if the ring is bad or the lens", "is it the ring, the lens or the body"),
        ("which lens name do i type in the camera menu", "lens name and data in the body"),
    ],
)
def test_a_question_made_of_a_whole_phrase_of_an_advice_is_about_that(say: str, topic: str) -> None:
    assert topic in " ".join(told(say).split())[:200].casefold()


@pytest.mark.parametrize(
    ("before", "say", "says"),
    [
        ("50mm f1.4 m42 on e", "is the yellow tint dangerous", "thoriated glass"),
        ("m42 135 on mft", "can it get mouldy", "70 percent"),
        ("t2 lens in an m42 body", "and if i force it?", "No force"),
        ("400mm f5.6 m42 on mft", "safe to leave it on the camera in my backpack?", "Carry by the lens"),
    ],
)
def test_a_danger_asked_after_a_way_is_a_danger(before: str, say: str, says: str) -> None:
    talk = Talk()
    DESK.ask(before, talk)
    record = record_of(DESK.ask(say, talk), DESK.knowledge)
    assert record["intent"] == "hazard"
    assert says in str(record["text"])


@pytest.mark.parametrize(
    ("before", "say", "begins"),
    [
        ("c lens on a cs camera", "and could that scratch the sensor", "No, not without the ring."),
        ("pl prime on ef", "will it hit something", "Not safe with most of them."),
        ("bnc 50 on bncr", "does that touch the mirror", "No: never"),
        ("k 50 on ef", "does the rear hit anything", "Not safe on full frame"),
        ("k 50 on e", "does the rear hit anything", "Not known before it is measured."),
    ],
)
def test_what_is_known_of_just_that_pair_is_told_before_what_holds_of_any(before: str, say: str, begins: str) -> None:
    talk = Talk()
    DESK.ask(before, talk)
    assert str(record_of(DESK.ask(say, talk), DESK.knowledge)["text"]).startswith(begins)


def test_a_danger_of_one_body_is_not_told_of_another() -> None:
    assert not told("ef-s lens on e mount, safe?").startswith("Not safe")


@pytest.mark.parametrize(
    "say",
    [
        "is it the ring or the lens thats out? how do i tell",
        "who is guilty, my adapter or my lens? infinity is off",
        "lens or adapter wrong? both are new to me",
        "ring bad or lens bad, how do i know",
    ],
)
def test_which_of_two_parts_is_at_fault_is_told_by_trying_another(say: str) -> None:
    assert "Put a second lens on the same ring" in " ".join(told(say).split())


@pytest.mark.parametrize(
    "say",
    [
        "can you tell me where to buy the ring nearest to me",
        "which shop near me sells rings",
        "who sells m42 rings in my town",
    ],
)
def test_shops_are_not_told_of(say: str) -> None:
    assert told(say).startswith("Sorry")


@pytest.mark.parametrize(
    "say", ["is a helicoid a zoom", "is a bellows a helicoid", "is a teleconverter an extension tube"]
)
def test_whether_one_thing_is_another_is_told_by_what_they_are(say: str) -> None:
    assert record_of(DESK.ask(say, Talk()), DESK.knowledge)["intent"] == "definition"


@pytest.mark.parametrize("say", ["is 0.1 mm really that bad?? its nothing", "does 0.05 mm matter"])
def test_a_small_error_alone_is_weighed_by_the_lenses_it_stops(say: str) -> None:
    assert "the farthest that comes sharp" in " ".join(told(say).split())


@pytest.mark.parametrize("say", ["can i kill fungus with uv", "does a uv torch harm the lens"])
def test_ultraviolet_light_is_no_filter(say: str) -> None:
    assert "filter" not in str(record_of(DESK.ask(say, Talk()), DESK.knowledge)["reading"])
