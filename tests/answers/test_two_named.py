"""Two terms or mounts asked about one after the other, then set against each other without being named again."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import flat
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def _last(desk: Desk, *turns: str) -> dict[str, object]:
    talk = Talk()
    answers = [desk.ask(turn, talk) for turn in turns]
    return record_of(answers[-1], desk.knowledge)


def test_two_terms_of_before_are_told_side_by_side(desk: Desk) -> None:
    text = str(_last(desk, "what's a helicoid", "and a bellows", "difference between the two")["text"])
    assert "several starts" in text
    assert "folding tunnel" in text


@pytest.mark.parametrize("asked", ["differences", "how do these two differ", "are those two the same"])
def test_two_mounts_of_before_are_told_apart(desk: Desk, asked: str) -> None:
    found = _last(desk, "what's T2", "and m42?", asked)
    assert found["intent"] == "look-alike"
    assert "No, T2 and M42 are not the same" in str(found["text"])


def test_two_bodies_of_before_are_chosen_between(desk: Desk) -> None:
    assert _last(desk, "what is E mount", "and Z", "which of the two for adapting")["intent"] == "compare"


def test_what_is_named_in_the_question_itself_is_what_is_meant(desk: Desk) -> None:
    found = _last(desk, "what's T2", "and m42?", "difference between C and CS")
    assert "C and CS are not the same" in str(found["text"])


def test_another_question_between_ends_the_row(desk: Desk) -> None:
    found = _last(desk, "what's T2", "and m42?", "how do I get an FD lens on an E body", "difference between the two")
    assert "T2" not in str(found["reading"])


@pytest.mark.parametrize(
    ("first", "then", "intent"),
    [
        ("what is E mount", "and Z", "definition"),
        ("what's a macro tube?", "and a close-up lens?", "definition"),
        ("what is E mount", "and on Z", "chain"),
    ],
)
def test_what_is_only_named_next_is_asked_about_too(desk: Desk, first: str, then: str, intent: str) -> None:
    assert _last(desk, first, then)["intent"] == intent


def test_what_was_not_answered_in_between_changes_nothing(desk: Desk) -> None:
    found = _last(desk, "what's a T number", "and an f number", "mumble frump", "difference")
    assert "T-stop" in str(found["text"])
    assert "f-number" in str(found["text"])


def test_whether_the_two_go_on_one_another_is_asked_of_both(desk: Desk) -> None:
    found = _last(desk, "what is LTM", "and M", "one on the other?")
    assert "No, LTM and M-mount are not the same" in str(found["text"])


def test_of_two_mounts_it_is_said_which_register_is_the_longer(desk: Desk) -> None:
    text = " ".join(str(_last(desk, "which has the longer register, OM or FD")["text"]).split())
    assert "the registers differ by 4 mm, OM-mount has the longer" in text


def test_a_lens_that_lies_a_little_too_close_may_still_come_sharp_by_its_own_travel(desk: Desk) -> None:
    text = " ".join(str(_last(desk, "is K mount the same as SA")["text"]).split())
    assert "1.46 mm too close: sharp only by its own travel" in text
    assert "1.46 mm too far out: close-up only" in text


@pytest.mark.parametrize(
    "text",
    [
        "two 37mm threads on the bench, 0.75 and 1.0, will one go in the other",
        "two 42 mm threads, pitch 1 and 0.75, same?",
        "40.5 thread at 0.5 pitch and one at 0.75, will they screw together",
        "37 mm thread, one is 0.75 pitch the other 1.0 pitch, do they mate",
    ],
)
def test_two_pitches_of_one_width_do_not_go_together(talked, text):
    found = flat(talked(text))
    assert found.startswith("No, M")
    assert "Do not force it" in found


@pytest.mark.parametrize(
    "asked",
    [
        "same as an M42 with a step ring?",
        "is that the same as M42",
        "so is it like M42",
        "how does it differ from M42",
        "M42 and this one, same thing?",
    ],
)
def test_a_mount_is_likened_to_that_of_the_lens_spoken_of(desk: Desk, asked: str) -> None:
    found = _last(desk, "39mm screw lens, how do i tell what it is", "its 45.2", "what bodies can it go on", asked)
    assert found["intent"] == "look-alike"
    assert flat(found).startswith(
        "No, M39x1 SLR and M42 are not the same: the threads differ and the registers differ by 0.26 mm"
    )


def test_after_a_list_another_mount_for_which_the_same_is_asked_is_listed(desk: Desk) -> None:
    assert _last(desk, "what bodies can an FD lens go on", "and the same for OM?")["intent"] == "list-fits"


@pytest.mark.parametrize(
    "text",
    ["52mm filter thread vs m52 helicoid, do they go together", "can i screw a 52mm filter ring into an M52 helicoid"],
)
def test_one_thread_by_two_names_goes_together(desk, text):
    found = record_of(desk.ask(text), desk.knowledge)
    assert flat(found).startswith("Yes, one and the same thread, M52x0.75")


@pytest.mark.parametrize(
    "said",
    [
        "can I screw a T2 lens in an M42 ring",
        "does a T2 lens fit in my M42 ring",
        "will a T2 lens screw into a M42 ring",
        "can I screw a T2 lens into an M42 adapter",
    ],
)
def test_a_ring_that_a_lens_is_put_into_is_no_body_that_a_ring_is_bought_for(asked, said):
    found = asked(said)
    assert found["intent"] == "look-alike"
    assert "then binds" in flat(found)
    assert "do not force it" in flat(found)


@pytest.mark.parametrize(
    "said",
    [
        "39x1 tube on a 39x26 lens, goes a few turns then stiff. same thread or not",
        "will a 39x26 lens go in a 39x1 ring",
        "is 39x26 the same as 39x1",
    ],
)
def test_a_thread_told_by_turns_to_the_inch_is_one_before_a_lens_too(asked, said):
    text = flat(asked(said))
    assert text.startswith("No, ")
    assert "binds before it is" in text
