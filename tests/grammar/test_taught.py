"""Statements about one's own gear are told from questions, and read into the fields of the gear file."""

from __future__ import annotations

from functools import cache

import pytest

from grammar.echo.echo import canonical
from grammar.questions import Question, Taught, Unread
from grammar.reader import read
from grammar.words.lexicon import Lexicon
from tests.grammar.names import SHARED, lexicon, names, words

OWN = [("avocet", "lens", "avocet"), ("skiff", "body", "skiff"), ("my C to E cup", "adapter", "my-cup"),
       ("my-cup", "adapter", "my-cup")]  # fmt: skip


@cache
def owned() -> Lexicon:
    return Lexicon.build([*OWN, *names()], words(), SHARED, {"avocet", "skiff", "my-cup"})


def told(text: str, known: Lexicon, before: Question | None = None) -> Taught:
    got = read(text, known, before)
    assert isinstance(got, Question), got
    assert got.intent == "teach", got
    assert got.taught is not None
    return got.taught


def question(text: str, known: Lexicon) -> Question:
    got = read(text, known)
    assert isinstance(got, Question), got
    return got


@pytest.mark.parametrize(
    ("text", "section", "name", "fields"),
    [
        (
            "my avocet is a 25mm f/1.4 C-mount lens, made for 16mm", "lenses", "avocet",
            {"mount": "c", "focal_length": "25 mm", "f_number": "f/1.4", "made_for": "16mm"},
        ),
        (
            "avocet is a 25mm C lens with a 30.5 mm collar and weighs 120 g", "lenses", "avocet",
            {"mount": "c", "focal_length": "25 mm", "collar": "30.5 mm", "weight": "120 g"},
        ),
        ("My skiff is an E-mount APS-C camera.", "bodies", "skiff", {"mount": "e-mount", "format": "aps-c-1.5"}),
        (
            "I own a C to E ring, 4.02 mm thick", "adapters", "",
            {"front": "c", "rear": "e-mount", "kind": "plain", "thickness": "4.02 mm", "seat_basis": "measured"},
        ),
        (
            "I've got a 10 mm E-mount extension tube called tube-10", "adapters", "tube-10",
            {"front": "e-mount", "rear": "e-mount", "kind": "extension-tube", "thickness": "10 mm",
             "seat_basis": "nominal"},
        ),
        ("my-zoom is a 50mm M42 lens", "lenses", "my-zoom", {"mount": "m42", "focal_length": "50 mm"}),
        (
            "my knot is a 35mm f/2 acme-k lens", "lenses", "knot",
            {"mount": "k-mount", "focal_length": "35 mm", "f_number": "f/2"},
        ),
        (
            "my knot is an acme 35mm f/2 K-mount lens", "lenses", "knot",
            {"mount": "k-mount", "focal_length": "35 mm", "f_number": "f/2"},
        ),
        (
            "I own an acme C to E ring, 4.02 mm thick", "adapters", "",
            {"front": "c", "rear": "e-mount", "kind": "plain", "thickness": "4.02 mm", "seat_basis": "measured"},
        ),
        (
            "my tern is an E-mount APS-C body with 6000 x 4000 pixels", "bodies", "tern",
            {"mount": "e-mount", "format": "aps-c-1.5", "pixels": "6000 x 4000"},
        ),
    ],
)  # fmt: skip
def test_a_new_thing_is_described(text: str, section: str, name: str, fields: dict[str, str]) -> None:
    got = told(text, lexicon())
    assert (got.section, got.name, dict(got.fields)) == (section, name, fields)


@pytest.mark.parametrize(
    ("text", "id_", "fields"),
    [
        ("the register of my avocet is really 17.48", "avocet", {"register": "17.48 mm"}),
        ("my avocet's register is 17.48 mm ±0.02", "avocet", {"register": "17.48 mm ±0.02"}),
        ("the avocet weighs 120 g", "avocet", {"weight": "120 g"}),
        ("my avocet sticks out is 3.9 mm", "avocet", {"rear_reach": "3.9 mm"}),
        ("avocet's nearest mark is 0.5 m", "avocet", {"close_focus": "0.5 m"}),
        ("the aperture of the avocet is really f/1.6", "avocet", {"f_number": "f/1.6"}),
        ("my-cup measures 4.02", "my-cup", {"thickness": "4.02 mm", "seat_basis": "measured"}),
        ("the skiff's register is 17.95 mm", "skiff", {"register": "17.95 mm"}),
        ("my skiff has 6000 x 4000 pixels", "skiff", {"pixels": "6000 x 4000"}),
        ("the skiff has 6000 by 4000 px", "skiff", {"pixels": "6000 x 4000"}),
    ],
)
def test_a_measurement_of_a_known_thing(text: str, id_: str, fields: dict[str, str]) -> None:
    got = told(text, owned())
    assert (got.id, dict(got.fields)) == (id_, fields)


def test_it_is_the_own_thing_of_the_question_before() -> None:
    before = question("can my avocet reach infinity on my skiff", owned())
    assert told("its register is really 17.48", owned(), before) == Taught(
        "lenses", "avocet", "avocet", (("register", "17.48 mm"),)
    )
    assert told("it weighs 120 g", owned(), before).id == "avocet"


def test_the_ring_measures_so_much_between_the_mounts_spoken_of() -> None:
    before = question("how do I get a 25mm C lens on an E-mount APS-C body", lexicon())
    got = read("the ring measures 4.02", lexicon(), before)
    assert isinstance(got, Question)
    assert got.taught == Taught(
        "adapters", fields=(("kind", "plain"), ("thickness", "4.02 mm"), ("seat_basis", "measured"))
    )
    assert (got.lens and got.lens.id, got.body and got.body.id) == ("c", "e-mount")


def test_what_was_just_told_can_be_named_and_added_to() -> None:
    first = question("I own a 25mm C-mount lens", lexicon())
    named = read("call it heron", lexicon(), first)
    assert isinstance(named, Question)
    assert named.taught is not None
    assert named.taught.name == "heron"
    assert dict(told("its collar is 30.5", lexicon(), named).fields)["collar"] == "30.5 mm"


@pytest.mark.parametrize(
    "text",
    [
        "I have a 25mm C lens, will it reach infinity on my E body?",
        "I have a 25mm C lens, will it reach infinity on my E body",
        "I have a 25mm C-mount lens for my E body",
        "I have a C lens and an E body, which ring do I need",
        "is the avocet a C-mount lens",
        "my avocet is a C-mount lens?",
        "my C lens is stuck on the ring",
        "M42 is a screw mount",
        "how thick is a C to E ring",
        "my ring is 26.0 mm, does M42 reach infinity on MFT",
        "my knot is a 35mm f/2 K lens frobbed",
        "my knot is an acme frobbed 35mm f/2 K lens",
        "my skiff has 6000 pixels",
        "my skiff has 0 x 4000 pixels",
        "found a screw lens just stamped M39, ltm-E adapter in hand. will it hit infinity",
        "tested my ring, M42 to E. can it get to infinity with a 28?",
    ],
)
def test_what_asks_teaches_nothing(text: str) -> None:
    got = read(text, owned())
    assert isinstance(got, Unread) or got.intent not in ("teach", "forget"), got


@pytest.mark.parametrize("name", ["M42", "lens", "helicoid", "good", "avo_cet", "a/b"])
def test_a_name_that_means_something_is_no_new_name(name: str) -> None:
    got = read(f"I own a 25mm C-mount lens called {name}", owned())
    assert isinstance(got, Unread), got
    assert got.column > 1


def test_what_a_thing_does_not_have_is_refused_with_what_it_has() -> None:
    got = read("my skiff's collar is really 30 mm", owned())
    assert isinstance(got, Unread)
    assert "register" in got.expected


def test_forgetting() -> None:
    for text, meant in (
        ("forget the avocet", Taught("lenses", "avocet", "avocet")),
        ("forget the register of my avocet", Taught("lenses", "avocet", "avocet", (("register", ""),))),
        ("undo", Taught("")),
    ):
        got = read(text, owned())
        assert isinstance(got, Question)
        assert (got.intent, got.taught) == ("forget", meant)
    unknown = read("forget the avocett", owned())
    assert isinstance(unknown, Unread)
    assert unknown.nearest == "avocet"
    assert isinstance(read("forget my avocet and frog", owned()), Unread)
    # without anything told, it is the talk that is forgotten
    assert question("forget that", owned()).intent == "start-over"


@pytest.mark.parametrize(
    "text",
    [
        "my avocet is a 25mm f/1.4 C-mount lens, made for 16mm",
        "my skiff is an E-mount APS-C body",
        "my heron is a 50mm M42 lens with a 30.5 mm collar",
        "I own a C to E ring, 4.02 mm thick",
    ],
)
def test_the_sentence_shown_is_read_as_the_same(text: str) -> None:
    first = question(text, lexicon())
    again = question(canonical(first, lexicon().name_for), lexicon())
    assert again.taught == first.taught


@pytest.mark.parametrize("text", ["the iris of my avocet is really fixed", "my avocet has no iris"])
def test_whatever_is_taught_is_read_back_and_reads_as_the_same(text: str) -> None:
    got = question(text, owned())
    assert got.taught is not None
    assert got.taught.fields == (("iris", "fixed"),)
    said = canonical(got, lambda kind, id_: id_)
    assert said == "the iris of my avocet is really fixed"
