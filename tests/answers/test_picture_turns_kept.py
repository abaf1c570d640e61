"""What stays in a talk on the picture: the stops when a filter is bought, the frame and not what it was likened to."""

from __future__ import annotations

import pytest

from engine.answers.parts.answer import Answer
from engine.talk import Talk
from tests.desks import desk_of

DESK = desk_of()


def last(*said: str) -> Answer:
    talk = Talk()
    return [DESK.ask(one, talk) for one in said][-1]


def values(answer: Answer, name: str) -> list[float]:
    return [row.value.nominal for row in answer.quantities or () if row.name == name]


@pytest.mark.parametrize("turn", [
    "which filter do i actually buy", "so which nd should i get", "what do i buy then", "one filter to buy, which",
])  # fmt: skip
def test_the_filter_to_buy_holds_back_the_stops_told_before(turn: str) -> None:
    found = last("f2 sun 1/50 iso 800 nd?", turn)
    assert found.intent == "exposure-nd"
    assert values(found, "nd_stops")[0] == pytest.approx(10.36, abs=0.01)


def test_and_goes_on_from_there() -> None:
    found = last("f2.8 sun iso 400 1/48 nd?", "which do i buy", "i have an nd8 lying around", "what if its overcast")
    assert found.lines[0].text.startswith("5.4 stops")


@pytest.mark.parametrize(("opening", "turn", "frame"), [
    ("got a 25mm f1.4 c mount on m43, whats that in full frame", "does it cover", "Four Thirds needs 21.64 mm"),
    ("got a 25mm f1.4 on m43, whats that in full frame", "depth of field at 2m", "25 mm f/1.4 at 2 m, Four Thirds"),
    ("35mm f2 on aps-c = ? in full frame", "hyperfocal f8", "35 mm f/8, APS-C"),
])  # fmt: skip
def test_what_a_view_was_likened_to_is_no_frame_of_what_follows(opening: str, turn: str, frame: str) -> None:
    text = " ".join(line.text for line in last(opening, turn).lines)
    assert frame in text
    assert "full frame needs" not in text
    assert "f/8, full frame" not in text


@pytest.mark.parametrize("turn", [
    "what stop gives me 40 cm", "which stop for 40 cm then", "i need 40 cm sharp", "not enough, i need 40 cm",
])  # fmt: skip
def test_so_much_shall_be_sharp_at_the_distance_of_before(turn: str) -> None:
    found = last("50mm f2 on aps-c, 2 m, depth of field?", turn)
    assert values(found, "f_number")[0] == pytest.approx(6.5, abs=0.1)


def test_a_zoom_named_by_a_film_is_made_for_it() -> None:
    text = " ".join(line.text for line in last("12-120 16mm zoom on mft cover?").lines)
    assert "Lens made for 16 mm film: does not cover Four Thirds" in text


def test_both_extenders_told_one_after_the_other_stand_behind_each_other() -> None:
    found = last("135 f2.8 with 1.4x: f and loss", "and 2x?", "both stacked?")
    assert values(found, "f_number")[0] == pytest.approx(2.8 * 2.8)


@pytest.mark.parametrize(("opening", "turn", "stops"), [
    ("what does nd 0.9 do to 1/500", "i want 1/8", 5.966), ("nd8 on, 1/500 becomes?", "i need 1 second", 8.966),
    ("which nd do i need", "shutter 1/500 i want 1/8, what nd do i need", 5.966),
])  # fmt: skip
def test_a_time_that_is_wanted_asks_what_must_be_held_back(opening: str, turn: str, stops: float) -> None:
    assert values(last(opening, turn), "nd_stops")[0] == pytest.approx(stops, abs=0.01)


def test_another_size_is_wanted_of_the_same_tubes() -> None:
    found = last("60mm macro, tube for 1:1?", "i have 12 20 36", "what about 1:2")
    assert found.lines[0].text.startswith("Of what you have, 20 + 12 mm comes nearest to the 30 mm")
