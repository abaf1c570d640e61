"""Lenses, bodies, chains and earlier answers side by side: only what differs, and what is not known is said."""

from __future__ import annotations

from functools import cache

from engine.answers.parts.answer import Answer
from engine.ask import Desk
from engine.render.record import record_of
from engine.render.terminal import plain_text
from engine.talk import MOST_PAST, Talk
from tests.answers.test_which_own import GEAR
from tests.desks import desk_of


@cache
def desk() -> Desk:
    return desk_of(GEAR)


def asked(*questions: str) -> Answer:
    talk = Talk()
    return [desk().ask(question, talk) for question in questions][-1]


def rows_of(answer: Answer) -> dict[str, str]:
    """Label -> what is said of each side."""
    facts = (line.text for line in answer.lines if line.kind == "fact" and line.depth == 1)
    return {text.partition(": ")[0]: text.partition(": ")[2] for text in facts}


def test_two_lenses_on_a_body_are_told_by_what_differs() -> None:
    answer = asked("compare the avocet and the dunlin on the skiff")
    rows = rows_of(answer)
    assert rows["frame lit"] == "avocet 62 % (36 to 85 %); dunlin 100 %"
    assert rows["equivalent"] == "avocet 38 mm; dunlin 43 mm"
    assert rows["f-number"] == "avocet f/1.4; dunlin f/2.8"
    assert rows["depth-of-field equivalent"] == "avocet f/2.1; dunlin f/4.3"
    assert rows["weight"] == "avocet 120 g; dunlin 235 g"
    assert rows["cost of the rings"] == "avocet nothing to buy; dunlin 10 to 25 dollars"
    assert "iris" not in rows
    text = " ".join(plain_text(answer).split())
    assert "Avocet: widest, fastest, lightest" in text
    assert "Alike: iris by the ring on the lens." in text


def test_a_quantity_that_is_known_of_one_alone_is_shown_and_said() -> None:
    rows = rows_of(asked("compare the knot and the redshank on the skiff"))
    assert rows["weight"] == "knot 215 g; redshank not known"
    assert "Not known of any" in plain_text(asked("compare the knot and the plover on the skiff"))


def test_one_lens_on_two_bodies_is_told_by_what_differs() -> None:
    rows = rows_of(asked("avocet on the skiff or the dory?"))
    assert rows["equivalent"] == "skiff 38 mm; dory 50 mm"
    assert "f-number" not in rows
    assert "weight" not in rows


def test_lenses_that_are_only_described_are_compared_too() -> None:
    rows = rows_of(asked("25mm f/1.4 C vs 28mm f/2.8 SR on m43"))
    assert rows["equivalent"] == "25 mm f/1.4 C-mount lens 50 mm; 28 mm f/2.8 SR-mount lens 56 mm"


def test_the_numbers_stand_in_the_record_by_lens() -> None:
    record = record_of(asked("compare the avocet and the dunlin on the skiff"), desk().knowledge)
    assert {row["case"]: row["least"] for row in record["quantities"]["lens_weight_g"]} == {
        "avocet": 120,
        "dunlin": 235,
    }


def test_all_of_ones_lenses_are_set_side_by_side() -> None:
    answer = asked("compare my lenses on the skiff")
    rows = [line.text.split("\t") for line in answer.lines if line.kind == "row"]
    assert len(rows) == 12
    heads = next(line.text.split("\t") for line in answer.lines if line.kind == "columns")
    assert heads[:3] == ["lens", "far limit", "nearest focus"]


def test_two_chains_of_the_last_answer_are_set_against_each_other() -> None:
    answer = asked("knot on the skiff", "what's the difference between the first and the second")
    assert answer.reading == "compare #1 and #2 of the last answer"
    assert rows_of(answer)["cost of the rings"] == "#1 nothing to buy; #2 8 to 25 dollars"
    assert asked("knot on the skiff", "compare #1 and #9").status == 1
    assert asked("knot on the skiff", "compare that with the third").reading == "compare #1 and #3 of the last answer"


def test_two_answers_of_before_are_set_against_each_other() -> None:
    talk = ("knot on the skiff", "and on the dory?")
    for question in ("compare that with the one before", "which of the two was better", "compare the last two answers"):
        answer = asked(*talk, question)
        assert rows_of(answer)["equivalent"] == "skiff 84 mm; dory 110 mm", question
        assert answer.lines[0].text == "Better: skiff, reaches infinity (certain); dory: reaches infinity (likely)."


def test_an_answer_can_be_set_against_the_first_body() -> None:
    answer = asked(
        "knot on the skiff", "and on the dory?", "and on the punt?", "how does that differ from the first body"
    )
    assert rows_of(answer)["equivalent"] == "skiff 84 mm; punt 55 mm"


def test_answers_without_chains_are_told_by_the_numbers_that_changed() -> None:
    answer = asked("does the avocet cover the skiff", "and the dory?", "compare the last two answers")
    assert rows_of(answer)["frame lit"] == "before 62 % (36 to 85 %), then 91 % (59 to 100 %)"


def test_a_look_back_leaves_the_talk_where_it_was() -> None:
    talk = ("knot on the skiff", "and on the dory?", "which of the two was better")
    assert asked(*talk, "at f/8?").reading == "how do I get my knot on my dory, at f/8"


def test_with_one_answer_there_is_nothing_to_compare_and_only_a_few_are_kept() -> None:
    talk = Talk()
    desk().ask("does the avocet cover the skiff", talk)
    assert desk().ask("compare that with the one before", talk).status == 1
    for number in range(2, 3 + MOST_PAST):
        desk().ask(f"{number * 10}mm M42 lens on the skiff", talk)
    assert len(talk.past) == MOST_PAST
    desk().ask("start over", talk)
    assert talk.past == ()
