"""How a talk opens: facts without a question, names nobody knows, a greeting; what is told is kept and completed."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk


@pytest.mark.parametrize(
    ("opening", "reading"),
    [
        ("my friend gave me a 50mm f1.8 m42 lens, i shoot with an e mount body",
         "how do I get a 50 mm f/1.8 M42 lens on an E-mount body"),
        ("found a 13mm d mount lens in a drawer", "how do I get a 13 mm D-mount lens"),
        ("i have a zorbex Z camera and an old 50mm f2 om lens",
         "how do I get a 50 mm f/2 OM-mount lens on a Z-mount body"),
    ],
)  # fmt: skip
def test_facts_alone_ask_how_the_lens_goes_on(club: Desk, opening: str, reading: str) -> None:
    (answer,) = talk(club, opening)
    assert answer.intent == "chain"
    assert answer.reading == reading


@pytest.mark.parametrize(
    "opening",
    ["50mm f1.8 m42, zorbex a7", "I have a 50mm f1.8 m42 lens and a zorbex alfa 7",
     "my lens: 50mm f1.8 m42. on a zorbex 5d"],
)  # fmt: skip
def test_which_mount_a_camera_has_is_asked_and_its_name_taken_for_nothing_else(club: Desk, opening: str) -> None:
    first, second = talk(club, opening, "it has e mount")
    assert first.reading == "how do I get a 50 mm f/1.8 M42 lens on a body"
    assert "Which lens mount is on your zorbex" in flat(first)
    assert second.reading == "how do I get a 50 mm f/1.8 M42 lens on an E-mount body"
    assert second.chains


def test_what_was_understood_of_a_question_that_could_not_be_read_is_completed(club: Desk) -> None:
    first, second, third = talk(club, "how do i get my zorbex 55mm f1.2 on my zorbex 5d", "K mount", "EF")
    assert first.unread is not None
    assert second.reading == "how do I get a 55 mm f/1.2 K-mount lens on a body"
    assert third.reading == "how do I get a 55 mm f/1.2 K-mount lens on an EF-mount body"


@pytest.mark.parametrize(
    ("said", "mount"),
    [("and on a zorbex q", "Q-mount"), ("body is zorbex z", "Z-mount"), ("i have a zorbex X", "X-mount")],
)  # fmt: skip
def test_a_makers_word_before_a_letter_is_passed_over(club: Desk, said: str, mount: str) -> None:
    _, answer = talk(club, "how do I get a 25mm C-mount lens on a body", said)
    assert answer.reading == f"how do I get a 25 mm C-mount lens on {'an' if mount[0] == 'X' else 'a'} {mount} body"


def test_what_falls_behind_an_unknown_name_is_no_zoom(club: Desk) -> None:
    (answer,) = talk(club, "zorbex 44-2 58mm f2 m42 on m43")
    assert answer.reading == "how do I get a 58 mm f/2 M42 lens on a Micro Four Thirds body"


def test_small_talk_is_answered_and_changes_nothing(club: Desk) -> None:
    asked = "how do I get a 50mm M42 lens on an E-mount body"
    turns = talk(club, "hi", asked, "ok thanks!", "great", "and on m43")
    assert [turn.status for turn in turns] == [0, 0, 0, 0, 0]
    assert turns[-1].reading == "how do I get a 50 mm M42 lens on a Micro Four Thirds body"


def test_a_list_becomes_a_question_of_one_pair_once_the_body_is_told(club: Desk) -> None:
    _, answer = talk(club, "which bodies take an m42 lens", "its z mount")
    assert answer.reading == "how do I get an M42 lens on a Z-mount body"


@pytest.mark.parametrize(
    ("asked", "reply", "reading"),
    [
        ("how close does a m42 lens get with 20mm tube", "58",
         "how close does a 58 mm M42 lens focus with a 20 mm extension tube"),
        ("how do I get my 50mm m42 on my camera", "z", "how do I get a 50 mm M42 lens on a Z-mount body"),
        ("bought an unmarked lens", "42mm, 1mm pitch",
         "identify the mount (no name) for an unmarked lens, thread 42 mm x 1 mm"),
        ("does a 25mm c lens cover mft", "about 16mm",
         "does a 25 mm C-mount lens cover a Micro Four Thirds body, 16 mm image circle"),
    ],
)  # fmt: skip
def test_a_bare_reply_completes_what_was_asked_for(club: Desk, asked: str, reply: str, reading: str) -> None:
    _, answer = talk(club, asked, reply)
    assert answer.reading == reading


def test_a_number_that_cannot_be_what_was_asked_for_is_none(club: Desk) -> None:
    _, answer = talk(club, "how close does a m42 lens get with 20mm tube", "0.3")
    assert "0.3 mm M42" not in answer.reading


@pytest.mark.parametrize(
    "text", ["25mm c lens on E, apsc", "35mm QBM on E, ff", "d mount 13mm on MFT, super 16", "C-mount 75 on E apsc"]
)
def test_a_lens_a_body_and_its_frame_named_alone_ask_how_it_goes_on(club: Desk, text: str) -> None:
    (answer,) = talk(club, text)
    assert answer.intent == "chain"


def test_a_lens_and_a_frame_alone_ask_what_is_lit(club: Desk) -> None:
    (answer,) = talk(club, "25mm c lens on apsc")
    assert answer.intent == "coverage"


@pytest.mark.parametrize("text", ["m42 200/4 with 2x converter on E", "2x converter m42 with the 200/4, on E"])
def test_a_lens_with_its_extender_and_a_body_alone_ask_how_they_go_together(club: Desk, text: str) -> None:
    answer, on = talk(club, text, "what lens is that now")
    assert answer.intent == "chain"
    assert on.intent == "crop-equivalent"
    assert "400 mm f/8" in flat(on)
