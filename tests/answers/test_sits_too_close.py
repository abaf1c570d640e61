"""A lens that sits too close is not drawn out by its error, however the question of its marks is put."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


@pytest.mark.parametrize(
    ("text", "mark", "now"),
    [
        ("50mm sits 0.3 too close, how close does it focus with native 0.5 m", "50 cm", "52 cm"),
        ("how close does a 50mm focus if the ring is 0.5 too thin, native 0.45 m", "45 cm", "47 cm"),
        ("where is 2 m on a 16mm C lens that sits 0.1 too close", "2 m", "8.54 m"),
    ],
)
def test_a_mark_then_means_something_farther(asked, text, mark, now):
    found = flat(asked(text))
    assert f"At its {mark} mark: it is now sharp at {now}" in found
    assert "of tube" not in found


def test_a_lens_told_behind_the_word_for_its_scale_is_no_mark(asked):
    found = asked("re-mark scale: 50mm, ring 0.2 too thin, marks 1 2 5 10 inf")
    assert "50 mm lens" in found["reading"]
    assert numbers(found, "scale_mark_mm")[0][0] == pytest.approx(12600, rel=0.02)


def test_what_to_do_about_an_error_is_no_doubt_whether_it_matters(talked):
    found = flat(
        talked(
            "T2 400/6.3 on a K body",
            "it wont go to infinity, stops at 120 m",
            "how much is that ring off",
            "ok what do i do",
        )
    )
    assert not found.startswith("Yes")
    assert "take 1.34 mm off" in found


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("my 50 has a scale in feet only, where do I put it for 3 m", "At its 9 ft 10 in mark (3 m)"),
        ("where is 3 m on the scale", "At its 3 m mark (9 ft 10 in)"),
    ],
)
def test_a_distance_asked_for_on_the_scale_is_no_mark_of_infinity(asked, text, told):
    found = flat(asked(text))
    assert told in found
    assert "add a shim" not in found


def test_a_ring_turned_down_is_so_much_thinner_and_not_so_thick(talked):
    found = talked("50 OM on E", "what if i turn the ring down 0.1")
    assert "0.1 mm too close" in found["reading"]
    assert "27.9 mm: 0.1 mm too close" in flat(found)


def test_no_mirror_is_told_of_mirrorless_bodies_alone(talked):
    assert "no mirror" not in flat(talked("K 50 on F body", "shutter is 10 behind the flange"))


def test_a_distance_on_the_scale_is_told_for_the_seat_that_a_mark_of_infinity_told(talked):
    found = flat(talked("50 OM on E, infinity is at the 10 m mark", "where is 3 m on the scale"))
    assert "At its 3 m mark: it is now sharp at 4.2 m" in found
    assert "0.86 mm" not in found


def test_no_ring_is_said_to_be_thinner_than_nothing(talked):
    assert "if the ring is the cause" not in flat(talked("13mm D on Q", "infinity is at the 0.05 m mark"))
