"""Rings of different mounts against each other, and two that lead on from one another."""

from __future__ import annotations

import pytest

from engine.render.record import record_of
from tests.answers.expects import numbers
from tests.answers.picture import flat
from tests.desks import desk_of


def record(text: str) -> dict[str, object]:
    desk = desk_of()
    return record_of(desk.ask(text), desk.knowledge)


def test_the_thinner_ring_is_named_and_both_seats_are_told() -> None:
    told = record("which is thicker, M42 to EF or EF to E")
    assert told["intent"] == "compare"
    assert {1.46, 26.0} <= {round(low, 2) for low, high, _ in numbers("ring_thickness_mm", told) if low == high}
    assert "thinner: 1.46 mm against 26 mm" in " ".join(str(told["text"]).split())


def test_rings_that_end_on_different_bodies_are_not_put_on_one() -> None:
    told = record("is the m42-e ring or the m42-z ring thinner")
    assert {27.46, 29.46} <= {round(low, 2) for low, high, _ in numbers("ring_thickness_mm", told) if low == high}
    assert "E to Z" not in str(told["text"])


def test_two_rings_that_meet_in_one_mount_are_a_stack() -> None:
    told = record("50mm, m42 to EF then EF to E")
    chains = told["chains"]
    assert isinstance(chains, list)
    assert len(chains[0]["pieces"]) == 2
    assert chains[0]["verdict"] == "infinity"


@pytest.mark.parametrize(
    "say",
    [
        "M42 on K: flush bush or the ring with a lip",
        "m42 to K flush bush or lipped ring",
        "M42 on K, bush vs ring with lip",
    ],
)
def test_a_flush_ring_and_one_with_a_lip_are_told_apart_by_the_seat(asked, say):
    found = flat(asked(say))
    assert found.startswith("M42 to K flush bush keeps infinity.")
    assert "ring with a lip: close-up only" in found
    assert "reducer" not in found.lower()


@pytest.mark.parametrize(
    "text",
    ["is M42 to EF then EF to E worse than M42 to E direct", "is one M42-E ring better than M42-EF and EF-E?"],
)
def test_rings_that_lead_on_are_one_way_against_the_direct_one(asked, text):
    told = asked(text)["text"].replace("\n", " ")
    assert "is the cheaper: 8 to 25 dollars against 18 to 45 dollars" in told
    assert "has fewer joints" in told
