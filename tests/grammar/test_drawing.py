"""Questions for a drawing: which one, of what, under which name."""

from __future__ import annotations

import pytest

from grammar.echo.echo import canonical
from grammar.questions import Question, Unread
from grammar.reader import read
from tests.grammar.names import lexicon

BEFORE = "can a 25mm f/1.4 C-mount lens reach infinity on m43"


def asked(text: str, before: str = "") -> Question:
    got = read(text, lexicon(), asked(before) if before else None)
    assert isinstance(got, Question), got
    return got


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("draw it", None),
        ("draw the stack", "section"),
        ("draw the frame", "frame"),
        ("draw the distances", "distances"),
        ("draw the distances and the frame", "frame and distances"),
        ("make me a picture of the stack", "section"),
        ("a sketch of how it lights the corners", "frame"),
        ("can I get a drawing?", None),
        ("diagram please", None),
        ("save a drawing of that as herons.svg", None),
    ],
)
def test_a_follow_up_draws_what_was_talked_about(text: str, topic: str | None) -> None:
    question = asked(text, BEFORE)
    assert (question.intent, question.topic) == ("draw", topic)
    assert question.lens is not None
    assert question.body is not None
    assert question.lens.focal_length_mm == 25
    assert question.body.id == "mft-mount"


def test_a_follow_up_may_say_another_stop_body_or_chain() -> None:
    assert asked("draw it at f/8", BEFORE).f_number == 8
    body = asked("draw it on an E-mount body", BEFORE).body
    assert body is not None
    assert body.id == "e-mount"
    assert asked("draw the second one", BEFORE).number == 2


def test_feet_are_spoken_and_left_again() -> None:
    assert asked("draw the distances in feet", BEFORE).feet
    before = asked("draw the distances in feet", BEFORE)
    again = read("draw it in metres", lexicon(), before)
    assert isinstance(again, Question)
    assert not again.feet


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("save a drawing of that as herons.svg", "herons.svg"),
        ("draw it as ../../herons.svg", "../../herons.svg"),
        ('draw it as "the herons.svg"', "the herons.svg"),
        ("draw it as Herons.SVG.", "Herons.SVG"),
        ("draw it as .svg", None),
    ],
)
def test_the_name_of_the_file_is_kept_as_it_was_typed(text: str, name: str | None) -> None:
    assert asked(text, BEFORE).said("file") == name


def test_marks_that_are_told_are_those_of_the_lens() -> None:
    question = asked("draw a 50mm M42 lens on an E-mount body, marks at 1 m, 2 m and 5 m")
    assert question.said("mark") == "1000 mm, 2000 mm, 5000 mm"
    assert question.distance_mm is None


@pytest.mark.parametrize(
    "text",
    [
        "draw a 25mm f/1.4 C-mount lens on m43 at f/8",
        "draw the frame and the distances of a 50mm M42 lens on an F-mount body in feet, without glass",
        "draw the distances of a 50mm M42 lens on an E-mount body, marks at 3 ft and 6 ft, as terns.svg",
        "draw an M42 lens and an FD lens on an E-mount body",
    ],
)
def test_what_is_said_back_is_read_as_the_same(text: str) -> None:
    question = asked(text)
    sentence = canonical(question, lexicon().name_for)
    again = asked(sentence)
    assert canonical(again, lexicon().name_for) == sentence
    for part in ("intent", "topic", "values", "feet", "limits", "f_number", "number"):
        assert getattr(again, part) == getattr(question, part), part


@pytest.mark.parametrize("text", ["draw it", "draw the frame", "save it as herons.svg", "draw the second one"])
def test_with_nothing_before_it_asks_which_lens_and_body(text: str) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Unread) or (got.intent == "draw" and not got.lenses)


@pytest.mark.parametrize(
    ("text", "intent"),
    [
        ("drawing of a ring to make for an Exakta lens on a Z-mount body", "diy-dimension"),
        ("effective f number at 120 mm of bellows draw with a 50mm lens", "macro-distance"),
        ("black picture with a C-mount lens on my E-mount body", "gear-setting"),
    ],
)
def test_a_drawing_is_not_made_where_something_else_is_asked(text: str, intent: str) -> None:
    assert asked(text).intent == intent
