"""A figure of another mount asked in the middle of a talk: told of that mount, and the talk goes on as it was."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk

BEFORE = "M42 50mm on my E body with a 27.5mm ring"


@pytest.mark.parametrize(("turn", "told"), [
    ("what would ten threads have been if it was a T2", "T2: 10 threads measure 7.5 mm"),
    ("and ten crests of LTM would be how long", "LTM: 10 threads measure 9.77 mm"),
    ("how wide is the screw of T2", "T2: 42 mm across."),
    ("what pitch would a T2 have had", "T2: thread M42x0.75"),
    ("what would the register be on a T2 then", "T2: register 55 mm"),
    ("flange distance of FD?", "FD-mount: register 42 mm"),
])  # fmt: skip
def test_it_is_told_of_the_mount_named_and_the_lens_stays(club, turn, told):
    _, found, on = talk(club, BEFORE, turn, "how far does it see")
    assert flat(found).startswith(told)
    assert on.question.lenses[0].ids == ("m42",)
    assert on.question.adapters[0].thickness_mm == (27.5, 27.5)


@pytest.mark.parametrize(("turn", "told"), [
    ("and CS", "CS: register 12.526 mm"), ("T2?", "T2: register 55 mm"), ("and for M42 lenses", "M42: register 45.46"),
    ("and its pitch", "D: thread 5/8-32"),
])  # fmt: skip
def test_the_same_is_asked_of_one_mount_more(club, turn, told):
    assert flat(talk(club, "C mount 25 on mft", "whats the register of D then", turn)[-1]).startswith(told)


@pytest.mark.parametrize("turn", ["is the register of CS shorter", "why is the register of D so short", "and on E?"])
def test_what_asks_more_than_a_figure_is_read_as_it_stands(club, turn):
    found = talk(club, "C mount 25 on mft", turn)[-1]
    assert found.question.text == turn


@pytest.mark.parametrize(("question", "told"), [
    ("threads measure 41.8 outside and i counted 13.5 threads in 10mm, what is it", "0.741 mm of pitch"),
    ("42 across, 9.5 threads over 9.5 mm, what is it", "pitch 1 mm"),
])  # fmt: skip
def test_crests_may_be_counted_to_the_half(club, question, told):
    assert told in flat(talk(club, question)[0])


@pytest.mark.parametrize(("turn", "mounts"), [
    ("what mount is a lens with 39 mm thread, 26 tpi", {"ltm"}),
    ("a lens with a 42 mm thread and 0.75 pitch, which mount", {"t2"}),
    ("got another lens, 39 mm thread, 26 tpi, what is it", {"ltm"}),
    ("I have a lens with a 25.4 mm thread, 32 tpi, what is it", {"c"}),
    ("my other lens has a 39 mm thread, what is it", {"ltm"}),
])  # fmt: skip
def test_a_thread_that_is_told_of_a_lens_asks_which_mount_that_lens_has(club, turn, mounts):
    found = talk(club, "how do I get an AR lens on MFT", turn)[-1]
    assert found.question.intent == "identify-mount"
    assert {one.ids[0] for one in found.question.lenses} == mounts
    assert not found.question.bodies


def test_a_thread_told_of_the_lens_spoken_of_stays_with_it(club):
    found = talk(club, "how do I get an AR lens on MFT", "its a lens with a 39 mm thread, pitch 1, what is it")[-1]
    assert [one.ids for one in found.question.lenses] == [("ar-mount",)]


def test_a_screw_told_with_its_turns_an_inch_is_no_travel(club):
    asked = "I have a lens with a thread of about 25.4 mm, 32 turns an inch, what is it"
    found = talk(club, "how do I get an AR lens on MFT", asked)[-1]
    assert found.question.said("travel") is None
    assert "A thread of 25.4 mm across and 0.794 mm of pitch may be" in flat(found)


def test_a_pitch_of_one_is_no_picture_at_life_size(club):
    asked = "I have another lens with a thread of about 42 mm, pitch 1, what is it"
    assert "M42x1" in flat(talk(club, "how do I get an AR lens on MFT", asked)[-1])


@pytest.mark.parametrize("turn", [
    "what is the diameter of the image circle of a C-mount lens", "what's the circle dia of the C lens",
])  # fmt: skip
def test_the_circle_of_another_lens_is_neither_its_thread_nor_the_circle_before(club, turn):
    found = talk(club, "how do I get an AR lens on MFT", turn)[-1]
    names = {row.name for row in found.quantities}
    assert "thread_diameter_mm" not in names
    assert not any(row.name == "image_circle_mm" and row.value.nominal > 43 for row in found.quantities)
    assert "circle" in flat(found)


@pytest.mark.parametrize("turn", ["and where's the nearest shop", "and pizza?"])
def test_what_is_none_of_its_business_leans_on_nothing(club, turn):
    found = talk(club, "how do I get an AR lens on MFT", turn)[-1]
    assert (found.intent, found.unread) == ("out-of-scope", None)
    assert found.question.lenses == ()
