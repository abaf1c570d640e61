"""A new thing of one's own is told with its name in many orders; nothing else is taken for such a statement."""

from __future__ import annotations

from itertools import product

import pytest

from grammar.questions import Question, Taught
from grammar.reader import read
from grammar.words.lexicon import Lexicon
from tests.grammar.names import SHARED, lexicon, names, words

FORMS = (
    "{n} is my {l}", "got a {l}, calling it {n}", "new lens: {n}, {l}", "add lens {n}: {l}", "my {n}: {l}", "{n} = {l}",
    "my {l} is called {n}", "my {l} is {n}", "call my {l} {n}", "save a {l} as {n}", "this is my {n}, a {l}",
    "i have a lens called {n}, {l}", "picked up a {l} called {n}", "my {n}'s a {l}", "{n}, my {l}",
)  # fmt: skip
LENSES = (("50mm f/2 M42 lens", "m42", "50 mm"), ("25mm f/1.4 C-mount", "c", "25 mm"), ("M42 135/2.8", "m42", "135 mm"))
OWN = [("plank", "adapter", "plank"), ("dunlin", "lens", "dunlin"), *names()]


def taught(text: str) -> Taught | None:
    got = read(text, lexicon())
    return got.taught if isinstance(got, Question) and got.intent == "teach" else None


def test_a_lens_is_named_in_whatever_order_it_is_told() -> None:
    amiss = []
    for form, (said, mount, focal) in product(FORMS, LENSES):
        told = taught(form.format(n="zorbex", l=said))
        fields = dict(told.fields) if told is not None else {}
        if told is None or told.id != "zorbex" or (fields["mount"], fields["focal_length"]) != (mount, focal):
            amiss.append(form.format(n="zorbex", l=said))
    assert not amiss


@pytest.mark.parametrize(
    "text",
    [
        "my zorbex 50mm f/2 M42",
        "a zorbex 50mm M42 lens on E-mount",
        "my 50mm M42 is stuck",
        "got a 50mm f/2 M42 lens",
        "can my zorbex, a 50mm f/2 M42, reach infinity",
    ],
)
def test_a_lens_spoken_of_is_not_taught(text: str) -> None:
    assert taught(text) is None


def test_a_body_is_named_by_what_it_is_called() -> None:
    for text in (
        "my camera is called zorbex, E-mount",
        "my E-mount body is called zorbex",
        "new body: zorbex, E-mount",
    ):
        told = taught(text)
        assert told is not None, text
        assert (told.section, told.id, dict(told.fields)["mount"]) == ("bodies", "zorbex", "e-mount"), text


def test_what_is_measured_and_what_is_sold_is_told_of_ones_own() -> None:
    known = Lexicon.build(OWN, words(), SHARED, {"plank", "dunlin"})
    said = {
        "i measured the plank at 27.42": ("teach", "plank", ("thickness", "27.42 mm")),
        "rear reach of dunlin is 8mm": ("teach", "dunlin", ("rear_reach", "8 mm")),
        "my dunlin weighs 220 grams": ("teach", "dunlin", ("weight", "220 g")),
        "dunlin has a fixed iris": ("teach", "dunlin", ("iris", "fixed")),
        "sold the dunlin": ("forget", "dunlin", None),
        "i dont have the plank anymore": ("forget", "plank", None),
    }
    for text, (intent, name, field) in said.items():
        got = read(text, known)
        assert isinstance(got, Question), text
        assert got.taught is not None, text
        assert (got.intent, got.taught.id) == (intent, name), text
        assert field is None or field in got.taught.fields, text
    for text in ("remove the dunlin from the ring", "take the dunlin off the plank"):
        got = read(text, known)
        assert not isinstance(got, Question) or got.intent != "forget", text
