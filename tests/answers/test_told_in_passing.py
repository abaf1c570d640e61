"""Lenses, rings and filters told in passing: by a screw alone, by their kind, by what a ring says, by a colon."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk


@pytest.mark.parametrize(
    ("text", "focal_mm"),
    [
        ("screw mount 50mm on E", 50.0),
        ("a screw mount 58/2 on Z", 58.0),
        ("my 135 screw-mount on L", 135.0),
        ("my 400 screw mount sits on EF with the normal 1.46 ring", 400.0),
    ],
)
def test_a_lens_with_no_more_than_a_screw_is_taken_for_the_usual_one(club: Desk, text: str, focal_mm: float) -> None:
    (answer,) = talk(club, text)
    assert answer.question is not None
    (lens,) = answer.question.lenses
    assert (lens.id, lens.focal_length_mm) == ("m42", focal_mm)
    assert "Taken for M42" in flat(answer)


@pytest.mark.parametrize("text", ["the screw on the 50 is loose", "a lens with a 44 mm screw, on E"])
def test_a_screw_that_is_a_part_or_told_by_its_width_is_no_such_lens(club: Desk, text: str) -> None:
    (answer,) = talk(club, text)
    assert answer.question is not None
    assert all("m42" not in lens.ids for lens in answer.question.lenses)


@pytest.mark.parametrize("kind", ["cctv fisheye", "cctv wide", "cctv lens"])
def test_a_mount_right_behind_the_kind_of_a_lens_is_its_own(club: Desk, kind: str) -> None:
    (answer,) = talk(club, f"2.8mm {kind}, CS. want it on my MFT, is there an adaptor")
    assert answer.question is not None
    assert [lens.id for lens in answer.question.lenses] == ["cs"]
    assert [body.id for body in answer.question.bodies] == ["mft-mount"]


def test_what_a_ring_says_is_its_length_unless_it_is_in_metres(club: Desk) -> None:
    (ring,) = talk(club, "Is the moon reachable with a 100mm macro in P6 on K, ring says 29.0?")
    assert "0.36 mm too far out" in flat(ring)
    (scale,) = talk(club, "how close does a 50mm macro get with a 10 mm tube, ring says 0.45")
    assert scale.question is not None
    assert scale.question.said("close_focus") == "450 mm"


def test_two_words_for_the_nearest_mark_are_one(club: Desk) -> None:
    (answer,) = talk(club, "400mm native close focus 5 m. adding 25mm of tube, now how near")
    assert "3.39 m from the sensor" in flat(answer)


def test_what_stands_behind_a_colon_is_not_where_something_is(club: Desk) -> None:
    (answer,) = talk(club, "ring shots at a wedding: 85mm with a 36 tube, how big and how far from the rings")
    assert "0.42x" in flat(answer)


@pytest.mark.parametrize(("said", "stops"), [("10 stopper", 10), ("6 stopper", 6), ("three stopper", 3)])
def test_a_stopper_is_so_many_stops_of_filter(club: Desk, said: str, stops: int) -> None:
    (answer,) = talk(club, f"1/30 bare. with the {said} on?")
    assert f"{stops} stops longer" in flat(answer)


@pytest.mark.parametrize("without", ["w/out the glass thing", "without the glass thing", "w/out any glass"])
def test_without_the_glass_thing_is_without_glass(club: Desk, without: str) -> None:
    (answer,) = talk(club, f"can FD lenses focus far on an A mount body {without}")
    assert "2.5 mm too far out" in flat(answer)
    assert "close-up only" in flat(answer)
