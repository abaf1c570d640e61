"""Questions about all of one's own gear: their conditions, their order, and what of them could not be read."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from grammar.echo.echo import canonical
from grammar.questions import Demand, Question, Sought, Unread
from grammar.reader import read
from grammar.words.lexicon import Lexicon
from tests.grammar.names import SHARED, names, words

OWN = [("avocet", "lens", "avocet"), ("dunlin", "lens", "dunlin"), ("skiff", "body", "skiff"), ("dory", "body", "dory")]


@cache
def owned() -> Lexicon:
    return Lexicon.build([*OWN, *names()], words(), SHARED, {id_ for _, _, id_ in OWN})


def question(text: str, before: Question | None = None) -> Question:
    got = read(text, owned(), before)
    assert isinstance(got, Question), got
    return got


def sought(text: str, before: Question | None = None) -> Sought:
    told = question(text, before).sought
    assert told is not None
    return told


def shown(got: Question) -> str:
    return canonical(got, owned().name_for)


READ = [
    (
        "which of my lenses cover the dory and reach infinity, widest first?",
        "which of my lenses cover the frame and reach infinity on my dory, widest first",
    ),
    ("which of my lenses focus closer than 30 cm on the skiff",
     "which of my lenses focus closer than 30 cm on my skiff"),
    ("which of my lenses give at least 1:2 on the dory", "which of my lenses magnify at least 0.5x on my dory"),
    ("my lenses that cover m43, fastest first",
     "which of my lenses cover the frame on a Micro Four Thirds body, fastest first"),
    ("which of my lenses work on the skiff without glass", "which of my lenses work on my skiff, without glass"),
    ("which of my lenses is lightest", "my lenses, lightest first"),
    ("which of my lenses are good in low light", "my lenses, fastest first"),
    ("which of my lenses is good for macro on the skiff", "my lenses on my skiff, most magnified first"),
    ("which of my lenses needs the least ring", "my lenses, least ring first"),
    ("which of my adapters fit E", "which of my adapters fit an E-mount body"),
    ("which of my bodies take the avocet to infinity", "which of my bodies reach infinity with my avocet"),
    ("which of my lenses are wider than a 35 equivalent on the skiff",
     "which of my lenses are wider than 35 mm on my skiff"),
    ("which of my lenses don't reach infinity on the dory", "which of my lenses do not reach infinity on my dory"),
    ("which lens of mine lights the whole sensor of the skiff", "which of my lenses cover the frame on my skiff"),
    ("my lenses on the skiff, sorted by coverage", "my lenses on my skiff, by frame lit"),
    ("which of my lenses have the least coverage on the dory", "my lenses on my dory, by frame lit lowest first"),
    ("which of my lenses are usable on the skiff but not on the dory",
     "which of my lenses work on my skiff and do not work on my dory"),
    ("which of my lenses cover either the dory or the skiff",
     "which of my lenses cover the frame on my dory or cover the frame on my skiff"),
    ("which of my lenses cover both the dory and the skiff",
     "which of my lenses cover the frame on my dory and my skiff"),
    ("which of my lenses cover each of the dory and the skiff",
     "which of my lenses cover the frame on each of my dory and my skiff"),
    ("which of my lenses has a focal length over 50mm and weighs under 300g",
     "which of my lenses have focal length over 50 mm and have weight under 300 g"),
    ("which of my lenses are between 20 and 40 mm",
     "which of my lenses have focal length at least 20 mm and have focal length at most 40 mm"),
    ("which of my C-mount lenses cover the dory", "which of my C-mount lenses cover the frame on my dory"),
    ("which of my 50mm lenses cover the dory", "which of my 50 mm lenses cover the frame on my dory"),
    ("which of my lenses are wider than the dunlin on the skiff",
     "which of my lenses are wider than my dunlin on my skiff"),
    ("which of my lenses are ligther than 200 g", "which of my lenses weigh less than 200 g"),
    ("what is my widest lens on the skiff", "my lenses on my skiff, widest first"),
    ("on the skiff, which of my lenses reach infinity with what I own",
     "which of my lenses reach infinity on my skiff, with what I own"),
    ("all my lenses on all my bodies", "all my lenses on all my bodies"),
    ("my gear at a glance", "all my lenses on all my bodies"),
    ("which of my lenses is closest to a 50mm equivalent on the dory",
     "my lenses on my dory, closest to 50 mm equivalent"),
    ("which of my lenses are best for macro on the dory", "my lenses on my dory, most magnified first"),
    ("which of my lenses focus closer than 1 ft on the skiff", "which of my lenses focus closer than 1 ft on my skiff"),
    ("which of my lenses cover the dory by at least 50 %",
     "which of my lenses have frame lit at least 50 % on my dory"),
    ("how many of my lenses cover the dory", "which of my lenses cover the frame on my dory"),
    ("which of my lenses can't be mounted on the dory", "which of my lenses do not work on my dory"),
    ("which of my lenses is the most like a 40mm on full frame on the skiff",
     "my lenses on my skiff, closest to 40 mm equivalent"),
    ("which of my lenses did I pay the least for", "my lenses, least paid first"),
    ("compare my lenses on the skiff", "compare my lenses on my skiff"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "sentence"), READ)
def test_a_question_about_ones_own_is_read_back_in_canonical_words(text: str, sentence: str) -> None:
    assert shown(question(text)) == sentence


@pytest.mark.parametrize("sentence", sorted({sentence for _, sentence in READ}))
def test_the_canonical_sentence_is_read_as_itself(sentence: str) -> None:
    assert shown(question(sentence)) == sentence


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("which of my lenses have swirly pictures", "swirly"),
        ("which of my lenses cover the dory and have nice bokeh", "bokeh"),
        ("which of my lenses are sharp", "are sharp"),
        ("which of my lenses focus closer than on the dory", "on"),
        ("which of my lenses focus closer than f/2", "f/2"),
        ("which of my lenses do not", "do not"),
        ("which of my lenses are faster than 30 cm", "30 cm"),
        ("which of my lenses are under 30 cm", "under 30 cm"),
    ],
)
def test_what_is_no_condition_is_shown_with_a_caret_and_never_passed_over(text: str, found: str) -> None:
    got = read(text, owned())
    assert isinstance(got, Unread)
    assert got.found == found
    assert text[got.column - 1 :].startswith(found)


@pytest.mark.parametrize(
    "text",
    ["all my lenses go past infinity on this E ring", "how do I get my lenses on the skiff", "my lenses are old",
     "my 25 mm C lens on the skiff"],
)  # fmt: skip
def test_what_only_speaks_of_ones_lenses_asks_nothing_of_each(text: str) -> None:
    got = read(text, owned())
    assert not isinstance(got, Question) or got.sought is None


def test_a_fragment_changes_the_body_the_order_or_the_conditions() -> None:
    first = question("which of my lenses cover the dory, widest first")
    second = question("and on the skiff?", first)
    assert shown(second) == "which of my lenses cover the frame on my skiff, widest first"
    third = question("closest first", second)
    assert shown(third) == "which of my lenses cover the frame on my skiff, closest first"
    fourth = question("which of those reach infinity?", third)
    assert shown(fourth) == "which of my lenses cover the frame and reach infinity on my skiff, closest first"
    fifth = question("without glass", fourth)
    assert fifth.limits.without_glass
    assert fifth.sought == fourth.sought
    why = question("why not the avocet", fourth)
    assert why.sought is not None
    assert why.sought.why
    assert [thing.id for thing in why.lenses] == ["avocet"]


@pytest.mark.parametrize(
    "text", ["and which ones don't?", "and the ones that don't", "which don't", "which of those do not?"]
)
def test_the_others_are_those_of_the_condition_denied(text: str) -> None:
    first = question("which of my lenses cover the dory, widest first")
    denied = question(text, first)
    assert shown(denied) == "which of my lenses do not cover the frame on my dory, widest first"
    assert shown(question(text, denied)) == shown(first)


def test_another_question_after_it_is_no_fragment() -> None:
    first = question("which of my lenses cover the dory, widest first")
    assert question("how close can the avocet focus on it", first).intent == "macro-distance"
    assert question("what is a helicoid", first).intent == "definition"
    assert question("and the dunlin?", first).intent == "chain"


CONDITIONS = ("cover the dory", "reach infinity on the dory", "are faster than f/2", "weigh less than 300 g",
              "focus closer than 30 cm on the skiff", "do not cover the skiff", "have an aperture ring")  # fmt: skip
ORDERS = ("widest first", "closest first", "by weight", "sorted by coverage", "cheapest first", "lightest first",
          "by price, highest first")  # fmt: skip


@given(st.lists(st.sampled_from(CONDITIONS), min_size=1, max_size=3, unique=True), st.sampled_from(ORDERS))
def test_an_order_changes_no_condition(conditions: list[str], order: str) -> None:
    plain = f"which of my lenses {' and '.join(conditions)}"
    assert sought(plain).any_of == sought(f"{plain}, {order}").any_of
    assert sought(f"{plain}, {order}").order is not None


@given(st.lists(st.sampled_from([one for one in CONDITIONS if "not" not in one]), min_size=1, max_size=3, unique=True))
def test_a_not_denies_the_condition_behind_it_and_no_other(conditions: list[str]) -> None:
    def of(text: str) -> tuple[Demand, ...]:
        (group,) = sought(f"which of my lenses {text}").any_of
        return group

    plain = of(" and ".join(conditions))
    denied = of(" and ".join([f"do not {conditions[0]}", *conditions[1:]]))
    assert [demand.negated for demand in denied] == [True, *(False for _ in conditions[1:])]
    assert [(one.quantity, one.how, one.number, one.word) for one in plain] == [
        (one.quantity, one.how, one.number, one.word) for one in denied
    ]
