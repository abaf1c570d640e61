"""Who and what is meant in a talk: which lens is pointed at, what is told of it anew, what stays and what goes."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk


def reading(club: Desk, *turns: str) -> str:
    return talk(club, *turns)[-1].reading


BOX = "got a box of old stuff, a 50mm enlarger lens and 2 c-mount ones. body is a m43. what can i use"
PAIR = "28mm f2.8 m42 and a 50mm f1.8 fd on e mount"


@pytest.mark.parametrize(
    ("text", "lenses"),
    [
        (BOX, "a 50 mm enlarger lens and 2 C-mount lenses"),
        ("2 m42 lenses, a 50 and a 135, on my zorbex with z mount", "a 50 mm M42 lens and a 135 mm M42 lens"),
        ("three c mount lenses, one says 25mm f1.9 other 75mm, another 12.5mm. body m43",
         "a 25 mm f/1.9 C-mount lens and a 75 mm C-mount lens and a 12.5 mm C-mount lens"),
        ("i have two lenses, a 28mm f2.8 and a 50mm f2, both m42, and an e mount body",
         "a 28 mm f/2.8 M42 lens and a 50 mm f/2 M42 lens"),
        ("lens 1: 35mm f2.8 m42, lens 2: 200mm f4 k mount, on z",
         "a 35 mm f/2.8 M42 lens and a 200 mm f/4 K-mount lens"),
        ("a 35mm m42 one and an fd one on z", "a 35 mm M42 lens and an FD-mount lens"),
    ],
)  # fmt: skip
def test_several_lenses_of_one_message_are_held_apart(club: Desk, text: str, lenses: str) -> None:
    assert reading(club, text).startswith(f"how do I get {lenses} on a")


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("a 1.5 inch 16mm lens on m43", "a 38.1 mm C-mount lens made for 16 mm film"),
        ("1 inch cine lens on e mount", "a 25.4 mm cine lens"),
        ('8mm 1/2 inch cs lens on m43', "an 8 mm CS-mount lens made for 1/2 in"),
        ("depth of field at 3m 75mm f1.4 on m43", "a 75 mm f/1.4 lens on a Micro Four Thirds body, at 3 m"),
    ],
)  # fmt: skip
def test_inches_are_of_the_lens_or_of_what_it_was_made_for(club: Desk, text: str, read: str) -> None:
    assert read in reading(club, text)


@pytest.mark.parametrize(
    ("turns", "expected"),
    [
        ((BOX, "the enlarger one is 39mm thread"),
         "how do I get a 50 mm Enlarger 39 enlarger lens on a Micro Four Thirds body"),
        (("m39 lens on e mount", "the lens is actually ltm"), "how do I get an LTM lens on an E-mount body"),
        (("m39 lens on e mount", "no, the body is a z"), "how do I get an LTM lens on a Z-mount body"),
        (("c mount 16mm f1.8 on m43", "its cs actually", "no wait its c"),
         "how do I get a 16 mm f/1.8 C-mount lens on a Micro Four Thirds body"),
        (("exakta 58mm f2 on an rf body", "the lens is m42 not exakta"),
         "how do I get a 58 mm f/2 M42 lens on an RF-mount body"),
        (("50mm f2 om on ef", "the body is aps-c"),
         "how do I get a 50 mm f/2 OM-mount lens on an EF-mount APS-C 1.6x body"),
    ],
)  # fmt: skip
def test_what_is_told_of_a_thing_changes_that_thing_and_asks_anew(
    club: Desk, turns: tuple[str, ...], expected: str
) -> None:
    assert reading(club, *turns) == expected


@pytest.mark.parametrize(
    ("turns", "lens"),
    [
        (("the fd one",), "a 50 mm f/1.8 FD-mount lens"),
        (("the fd one", "the other lens"), "a 28 mm f/2.8 M42 lens"),
        (("the wide one",), "a 28 mm f/2.8 M42 lens"),
        (("the longer one",), "a 50 mm f/1.8 FD-mount lens"),
        (("and the 50",), "a 50 mm f/1.8 FD-mount lens"),
        (("the 28 one",), "a 28 mm f/2.8 M42 lens"),
        (("the fastest",), "a 50 mm f/1.8 FD-mount lens"),
        (("the fd one", "back to the first lens"), "a 28 mm f/2.8 M42 lens"),
        (("the second one",), "a 50 mm f/1.8 FD-mount lens"),
        (("lens 2",), "a 50 mm f/1.8 FD-mount lens"),
        (("the fd one", "both"), "a 28 mm f/2.8 M42 lens and a 50 mm f/1.8 FD-mount lens"),
    ],
)  # fmt: skip
def test_a_lens_spoken_of_is_pointed_at(club: Desk, turns: tuple[str, ...], lens: str) -> None:
    assert reading(club, PAIR, *turns) == f"how do I get {lens} on an E-mount body"


def test_a_lens_is_added_beside_the_one_spoken_of(club: Desk) -> None:
    answers = talk(club, "300mm m42 on r", "the other lens is a 58mm f2 m42", "which is longer")
    assert answers[-1].intent == "compare"
    assert "a 300 mm M42 lens and a 58 mm f/2 M42 lens" in answers[-1].reading


@pytest.mark.parametrize("text", ["which of them is wider", "which one is faster", "which covers better"])
def test_which_of_them_sets_them_side_by_side(club: Desk, text: str) -> None:
    answer = talk(club, PAIR, text)[-1]
    assert answer.intent == "compare"
    assert "28 mm" in flat(answer)
    assert "50 mm" in flat(answer)


@pytest.mark.parametrize(
    ("turns", "expected"),
    [
        (("what lenses fit m43", "do d mounts work"), "how do I get a D-mount lens on a Micro Four Thirds body"),
        (("c mount on m43", "and on z?"), "how do I get a C-mount lens on a Z-mount body"),
        (("c mount on m43", "what about m42 lenses"), "how do I get an M42 lens on a Micro Four Thirds body"),
        (("c mount lens on z", "how about d"), "how do I get a D-mount lens on a Z-mount body"),
        (("50mm f1.8 k mount on ef", "no i meant f mount body", "not the body, the lens"),
         "how do I get a 50 mm f/1.8 F-mount lens on an EF-mount body"),
        (("100mm m42 on m43", "the body is e mount sorry", "scrap that"),
         "how do I get a 100 mm M42 lens on a Micro Four Thirds body"),
        (("58mm f2 m42 on k", "what ring for it", "same question for an om lens"),
         "how do I get a 58 mm f/2 OM-mount lens on a K-mount body"),
    ],
)  # fmt: skip
def test_a_mount_of_a_follow_up_is_that_of_the_lens_or_of_the_body(
    club: Desk, turns: tuple[str, ...], expected: str
) -> None:
    assert reading(club, *turns) == expected


@pytest.mark.parametrize("text", ["how do i know if it really is c and not cs", "is it really c?", "is it c or cs"])
def test_a_mount_in_doubt_is_never_that_of_the_body(club: Desk, text: str) -> None:
    answer, next_one = talk(club, "25mm f1.4 c mount on m43", text, "does it cover")[1:]
    assert answer.intent == "identify-mount"
    assert "from flange to the image" in flat(answer)
    assert next_one.reading == "does a 25 mm f/1.4 C-mount lens cover a Micro Four Thirds body"


def test_a_magnification_stays_while_it_is_about_how_close(club: Desk) -> None:
    answers = talk(club, "75mm c mount on m43", "1:1", "so how long a tube", "will it cover", "can it reach infinity")
    assert answers[2].intent == "macro-distance"
    assert "Extension: 75 mm" in flat(answers[2])
    assert "magnification" not in answers[3].reading
    assert answers[3].reading.startswith("does a 75 mm C-mount lens cover a Micro Four Thirds body")
    assert answers[4].reading.startswith("can a 75 mm C-mount lens reach infinity on a Micro Four Thirds body")


@pytest.mark.parametrize(
    ("first", "then", "expected"),
    [
        ("with a 10mm tube", "and with 20", "with a 20 mm extension tube"),
        ("what helicoid do i need", "will 17-31 do", "with a 17..31 mm helicoid"),
    ],
)
def test_a_length_is_that_of_the_piece_spoken_of(club: Desk, first: str, then: str, expected: str) -> None:
    assert reading(club, "50mm f2 m42 on e", first, then).endswith(expected)


def test_a_ring_asked_for_and_a_cheapest_are_not_dragged_along(club: Desk) -> None:
    answers = talk(club, "50mm m42 on e", "which ring", "cheapest", "does it cover", "and on z")
    assert "adapter" not in answers[3].reading
    assert "cheapest" not in answers[3].reading


@pytest.mark.parametrize("number", ["2", "3", "#2"])
def test_a_bare_number_picks_a_chain_of_the_list(club: Desk, number: str) -> None:
    listed, picked = talk(club, "how do i get c mount on e", number)
    assert listed.chains is not None
    wanted = int(number.strip("#"))
    assert picked.lines[0].text.startswith(f"{wanted}. ")
    assert listed.chains[wanted - 1].title in flat(picked)


def test_a_bare_number_without_a_list_says_so(club: Desk) -> None:
    covered, told, after = talk(club, "does a 25mm c mount cover m43", "2", "and a 50mm")
    assert "Nothing is listed under that number" in flat(told)
    assert covered.reading not in flat(told)
    assert after.reading == "does a 50 mm C-mount lens cover a Micro Four Thirds body"


@pytest.mark.parametrize(
    "doubt", ["sure?", "really?", "u sure", "no way", "that can't be right", "but i read it doesn't", "i heard no"]
)
def test_doubt_is_answered_with_how_sure_it_is(club: Desk, doubt: str) -> None:
    first, answer = talk(club, "ltm lens on a z body", doubt)
    assert answer.intent == "why"
    assert "What would help most" in flat(answer)
    assert answer.lines != first.lines


def test_doubt_after_another_question_is_of_the_lens_and_body_spoken_of(club: Desk) -> None:
    answer = talk(club, PAIR, "the fd one", "with a 20mm tube", "does it cover", "sure?")[-1]
    # the tube stands there still: it was only asked what the lens covers with it
    assert "Chain 1, your 20 mm tube + FD to E ring" in flat(answer)


def test_doubt_twice_is_answered_with_the_reasons(club: Desk) -> None:
    once, twice, thrice = talk(club, "ltm lens on a z body", "really?", "no way", "hm why")[1:]
    assert once.reading.startswith("how sure is it")
    assert twice.reading.startswith("why for")
    assert "all that the facts hold" in flat(thrice)


def test_no_answer_stands_twice_word_for_word_unless_the_same_is_asked(club: Desk) -> None:
    first, other, same = talk(club, PAIR, "will they work", PAIR)
    assert other.lines != first.lines
    assert "the rest stands as" in flat(other)
    assert same.lines == first.lines


def test_a_mount_misspelt_is_told_its_name_though_the_slip_is_near_a_word_too(club: Desk) -> None:
    last = talk(club, "exacta lens on x mount")[-1]
    assert last.status == 2
    assert last.unread is not None
    assert last.unread.nearest == "Exakta"


def test_stopping_down_to_a_number_is_a_stop(club: Desk) -> None:
    assert reading(club, "28mm m42 on mft, ring .1 too thick", "how about stopping down to 8").endswith(
        "at f/8, 0.1 mm too thick"
    )


@pytest.mark.parametrize("asked", ["why", "are you sure"])
def test_the_register_of_a_lens_told_by_its_focal_length_is_not_said_to_be_nought(club: Desk, asked: str) -> None:
    last = talk(club, "50mm with 10mm tube how close", asked)[-1]
    assert "register of its own mount" not in flat(last)
    assert "the two cancel" in flat(last)


def test_a_reading_of_which_nothing_is_known_is_not_told_beside(asked):
    found = asked("y does everything get darker as i rack out the bellows, aperture is same")
    assert "N(1 + m)" in found["text"]
    assert "Nothing in the facts" not in found["text"]


def test_doubt_after_another_question_is_of_the_ring_that_was_measured(club: Desk) -> None:
    turns = ("mine measures 26.9", "does it cover the sensor", "are you sure")
    answer = talk(club, "how do i put my exakta 58 f2 on my L-mount body so it reaches infinity", *turns)[-1]
    # the coverage lists rings as they are sold, and none of them is in the hand
    assert "Chain 1, your 26.9 mm ring: close-up only" in flat(answer)


@pytest.mark.parametrize("before", [(), ("ltm lens on a z body",), ("how do i get m42 on E", "does it cover")])
def test_an_app_asked_for_is_out_of_scope(club: Desk, before: tuple[str, ...]) -> None:
    assert talk(club, *before, "whats the best photo app")[-1].intent == "out-of-scope"


def test_a_spacer_before_a_corrector_is_none_where_it_is_too_long(club: Desk) -> None:
    fits, long = talk(club, "M48 flattener 55mm back focus, ring for K plus camera, what's left", "wants 44")
    spacers = [[one for one in answer.quantities or () if one.name == "stack_mm"] for answer in (fits, long)]
    assert [len(one) for one in spacers] == [1, 0]
    assert "1.46 mm too long already" in flat(long)
