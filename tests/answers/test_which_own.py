"""Which of one's own things fulfil a condition: what is not known is neither yes nor no, and an order only sorts."""

from __future__ import annotations

import shutil
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.answers.own.own_rulings import NO, OPEN, YES, compared
from engine.answers.parts.answer import Answer
from engine.ask import Desk
from engine.base.interval import Interval
from engine.facts.catalogue import load_catalogue
from engine.render.record import record_of
from engine.render.terminal import plain_text
from engine.talk import Talk
from tests.desks import desk_of
from tests.examples import examples

GEAR = Path(__file__).parents[2] / "scenarios" / "a-box-of-lenses" / "gear.yaml"
CONDITIONS = (
    "cover the frame", "reach infinity", "work", "focus closer than 30 cm", "magnify at least 0.1x",
    "are wider than 50 mm", "are faster than f/2", "weigh less than 220 g", "cost less than 20 dollars",
    "have a fixed iris", "need a ring longer than 20 mm", "have weight under 300 g",
)  # fmt: skip
ORDERS = ("widest first", "closest first", "lightest first", "by frame lit", "cheapest first", "fastest first",
          "by image circle lowest first", "least ring first")  # fmt: skip
BODIES = ("skiff", "dory", "punt")


@cache
def desk() -> Desk:
    return desk_of(GEAR)


@cache
def outcomes(question: str) -> dict[str, tuple[float, float]]:
    """Lens -> whether it fulfils, from 0 (no) to 1 (yes)."""
    answer = desk().ask(question)
    assert answer.intent == "which-own", plain_text(answer)
    return {row.case or "": (row.value.least, row.value.greatest) for row in answer.quantities if row.name == "fulfils"}


def asked(*questions: str) -> Answer:
    talk = Talk()
    return [desk().ask(question, talk) for question in questions][-1]


def listed_in(answer: Answer) -> list[str]:
    """The lenses that are listed by number, in their order."""
    rows = (line.text for line in answer.lines if line.depth == 1 and line.text[:1].isdigit())
    return [text.partition(". ")[2].partition(":")[0] for text in rows]


@settings(max_examples=examples(12), deadline=None)
@given(
    st.lists(st.sampled_from(CONDITIONS), min_size=1, max_size=2, unique=True), st.sampled_from(ORDERS),
    st.sampled_from(BODIES),
)  # fmt: skip
def test_an_order_never_changes_which_lenses_fulfil(conditions: list[str], order: str, body: str) -> None:
    plain = f"which of my lenses {' and '.join(conditions)} on the {body}"
    assert outcomes(plain) == outcomes(f"{plain}, {order}")


@settings(max_examples=examples(12), deadline=None)
@given(st.sampled_from(CONDITIONS), st.sampled_from(BODIES))
def test_a_condition_and_its_denial_split_what_is_decided(condition: str, body: str) -> None:
    plain = outcomes(f"which of my lenses {condition} on the {body}")
    denied = outcomes(f"which of my lenses do not {condition} on the {body}")
    assert plain
    assert {name: (1 - high, 1 - low) for name, (low, high) in plain.items()} == denied


@settings(max_examples=examples(12), deadline=None)
@given(st.sampled_from(CONDITIONS), st.sampled_from(CONDITIONS), st.sampled_from(BODIES))
def test_and_is_the_lesser_of_the_two_and_or_the_greater(one: str, other: str, body: str) -> None:
    first, second = (outcomes(f"which of my lenses {condition} on the {body}") for condition in (one, other))
    both = outcomes(f"which of my lenses {one} and {other} on the {body}")
    either = outcomes(f"which of my lenses {one} or {other} on the {body}")
    if one == other:
        assert both == either == first
        return
    for name, (low, high) in first.items():
        least, most = second[name]
        assert both[name] == (min(low, least), min(high, most))
        assert either[name] == (max(low, least), max(high, most))


@given(st.floats(-9, 9), st.floats(0, 5), st.floats(-9, 9), st.sampled_from(["<", "<=", ">", ">="]))
def test_an_interval_is_decided_only_where_all_of_it_is_on_one_side(
    low: float, width: float, bound: float, how: str
) -> None:
    value = Interval.between(low, low + width)
    holds = {"<": float.__lt__, "<=": float.__le__, ">": float.__gt__, ">=": float.__ge__}[how]
    ends = {holds(value.least, bound), holds(value.greatest, bound)}
    state = compared(value, how, Interval.exact(bound))
    assert state == (OPEN if len(ends) > 1 else YES if ends == {True} else NO)


def test_what_fulfils_comes_in_the_order_asked() -> None:
    wide = asked("which of my lenses cover the dory and reach infinity, widest first?")
    assert listed_in(wide) == ["dunlin", "curlew", "redshank", "plover", "knot", "whimbrel", "godwit", "ruff"]
    assert listed_in(asked("my lenses by weight")) == [
        "sanderling", "avocet", "plover", "knot", "dunlin", "whimbrel", "godwit"
    ]  # fmt: skip
    heavy = listed_in(asked("my lenses by weight, highest first"))
    assert heavy == listed_in(asked("my lenses by weight"))[::-1]


def test_what_is_not_known_is_told_with_the_fact_that_would_tell() -> None:
    text = plain_text(asked("which of my lenses weigh less than 300 g"))
    assert "turnstone: weight not known; to tell: its weight: 'the weight of my turnstone is 200 g'" in text
    text = plain_text(asked("which of my lenses cover the dory"))
    assert "avocet: frame lit 91 % (59 to 100 %): too near 100 % to call" in text
    assert outcomes("which of my lenses cover the dory")["avocet"] == (0.0, 1.0)


def test_a_distance_that_hangs_on_where_the_lens_rests_is_undecided() -> None:
    told = asked("which of my lenses focus closer than 30 cm on the skiff")
    assert outcomes("which of my lenses focus closer than 30 cm on the skiff")["stint"] == (0.0, 1.0)
    text = " ".join(plain_text(told).split())
    assert "stint: nearest focus 20 cm (19 to 21 cm), provided the barrel enters the cup; to tell: measure" in text


def test_the_numbers_are_those_of_the_question_about_the_one_lens() -> None:
    for lens in ("avocet", "stint", "curlew"):
        for body in BODIES:
            all_of_them = record_of(asked(f"which of my lenses cover the {body}"), desk().knowledge)
            (one,) = [row for row in all_of_them["quantities"]["lit_share"] if row["case"] == lens]
            chain = record_of(asked(f"{lens} on the {body}"), desk().knowledge)["chains"][0]
            assert (one["least"], one["greatest"]) == (
                chain["coverage"]["lit"]["least"], chain["coverage"]["lit"]["greatest"]
            )  # fmt: skip


def test_limits_hold_for_every_lens() -> None:
    owned = outcomes("which of my lenses work on the skiff with what I own")
    assert {name for name, (low, _) in owned.items() if low == 1} == {"avocet", "knot", "stint"}
    text = plain_text(asked("which of my lenses work on the skiff with what I own"))
    assert "no way found" in text


def test_another_lens_may_be_the_bound() -> None:
    told = outcomes("which of my lenses are wider than the dunlin on the skiff")
    assert {name for name, (low, _) in told.items() if low == 1} == {"avocet", "sanderling", "stint"}


def test_without_a_body_it_is_the_one_of_before_else_each_of_ones_own(tmp_path: Path) -> None:
    assert "on my punt" in asked("knot on the punt", "which of my lenses reach infinity").reading
    assert "on each of my skiff and my dory and my punt" in asked("which of my lenses reach infinity").reading
    gear = tmp_path / "gear.yaml"
    gear.write_text(
        "lenses:\n  knot: {name: knot, mount: m42, focal_length: 55 mm}\n"
        "bodies:\n  punt: {name: punt, mount: z-mount, format: 35mm-full-frame}\n", "utf-8"
    )  # fmt: skip
    assert "on my punt" in Desk(gear=gear).ask("which of my lenses reach infinity").reading
    gear.write_text("lenses:\n  knot: {name: knot, mount: m42, focal_length: 55 mm}\n", "utf-8")
    asks = Desk(gear=gear).ask("which of my lenses reach infinity")
    assert [line.kind for line in asks.lines] == ["ask"]


@pytest.mark.parametrize("question", ["which of my lenses cover full frame", "which of my bodies take a C lens",
                                      "which of my adapters fit E", "all my lenses on all my bodies"])  # fmt: skip
def test_without_gear_it_says_how_to_tell_it(question: str) -> None:
    answer = desk_of().ask(question)
    assert answer.status == 1
    assert [line.kind for line in answer.lines] == ["ask"]
    assert "Tell them" in answer.lines[0].text


def test_bodies_and_adapters_are_asked_alike() -> None:
    assert listed_in(asked("which of my bodies take the avocet to infinity")) == ["skiff", "dory", "punt"]
    assert listed_in(asked("which of my bodies does the curlew cover")) == ["skiff", "dory"]
    assert listed_in(asked("which of my adapters fit E")) == ["club's C to E cup", "my M42 to E ring"]
    assert listed_in(asked("which of my adapters are thicker than 20 mm")) == ["my M42 to E ring", "my OM to MFT ring"]


def test_a_reason_tells_each_condition_and_the_talk_goes_on_with_the_list() -> None:
    why = asked("which of my lenses cover the skiff and reach infinity", "why not the avocet")
    text = plain_text(why)
    assert "Avocet: it is not among them." in text
    assert "reach infinity: yes" in text
    assert "cover the frame: no" in text
    on = asked("which of my lenses cover the skiff and reach infinity", "why not the avocet", "closest first")
    assert listed_in(on)[0] == "plover"


def test_one_of_the_list_can_be_pointed_at() -> None:
    told = asked("which of my lenses cover the punt, closest first", "the second one")
    assert "my dunlin on my punt" in told.reading


def test_a_new_condition_needs_only_a_word(tmp_path: Path) -> None:
    (tmp_path / "words.yaml").write_text(
        "words:\n  own-thin-depth: {means: sift test equivalent_f_number <, says: [blur more than]}\n", "utf-8"
    )
    answer = Desk((tmp_path,), GEAR).ask("which of my lenses blur more than f/2.5 on the punt")
    assert answer.intent == "which-own", plain_text(answer)
    assert "avocet" in listed_in(answer)
    assert "dunlin" not in listed_in(answer)


def test_a_word_for_a_quantity_that_is_none_is_a_problem(tmp_path: Path) -> None:
    from engine.judging.checks import problems_of

    (tmp_path / "words.yaml").write_text(
        "words:\n  own-wrong: {means: sift test lit_shar <, says: [light hardly more than]}\n", "utf-8"
    )
    catalogue, problems = load_catalogue((tmp_path,))
    assert not problems
    (found,) = [str(problem) for problem in problems_of(catalogue)]
    assert "found quantity 'lit_shar'" in found
    assert "nearest: lit_share" in found


def test_the_gear_file_is_left_as_it_was(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    shutil.copy(GEAR, gear)
    own = Desk(gear=gear, writes=gear)
    talk = Talk()
    for question in ("my lenses that cover m43", "which of my lenses is lightest", "my lenses by weight", "yes"):
        own.ask(question, talk)
    assert gear.read_text("utf-8") == GEAR.read_text("utf-8")


def test_what_hangs_on_a_body_is_asked_of_the_body_and_what_needs_a_frame_of_the_frame() -> None:
    told = outcomes("which of my lenses reach infinity on the skiff and cover full frame")
    assert told["dunlin"] == (1.0, 1.0)
    assert told["curlew"] == (0.0, 0.0)
    odd = outcomes("which of my lenses reach infinity on the skiff and do not reach infinity on full frame")
    assert odd["dunlin"] == (0.0, 0.0)


def _club() -> Desk:
    return desk_of(Path(__file__).parents[1] / "render" / "gear.yaml")


@pytest.mark.parametrize(
    ("question", "reading"),
    [
        ("which of my lenses are f/2 or faster", "have f-number at most f/2"),
        ("which of my lenses focus 60 cm or closer on the skiff", "have nearest focus at most 60 cm on my skiff"),
        ("which of my lenses have a rear reach over 5 mm", "have rear reach over 5 mm"),
        ("which of my lenses give me 1:10 or better on the skiff", "magnify at least 0.1x on my skiff"),
    ],
)
def test_a_bound_may_be_told_behind_its_number_and_of_any_quantity(question: str, reading: str) -> None:
    assert (record_of(_club().ask(question), None)["reading"] or "").endswith(reading)


def test_a_stop_that_nobody_told_is_neither_fast_nor_slow() -> None:
    answer = _club().ask("which of my lenses are f/2 or faster")
    told = {row.case: (row.value.least, row.value.greatest) for row in answer.quantities if row.name == "fulfils"}
    assert told["stilt"] == (0.0, 1.0)
    assert told["avocet"] == (1.0, 1.0)
