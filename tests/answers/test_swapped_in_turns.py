"""A turn that only swaps a lens, a mount or a body: the rest stays, and what was asked."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk

FIRST = {
    "chain": "50mm f/2 m42 on E aps-c",
    "focus-verdict": "does a 50mm f/2 m42 lens reach infinity on E aps-c",
    "coverage": "does a 50mm f/2 m42 lens cover E aps-c",
    "crop-equivalent": "50mm f/2 m42 on E aps-c ff equivalent",
    "macro-distance": "50mm f/2 m42 on E aps-c with a 20mm tube, how close",
    "depth-of-field": "dof 50mm f/2 m42 on E aps-c at f4, 3m",
    "exposure-nd": "nd for 50mm f/2 m42 on E aps-c, full sun, 1/50, iso 100",
}


def asked_on(asked: str, body: str) -> str:
    """What is asked on another body than that of FIRST: there it is a way that is looked for, and how it focuses."""
    return "chain" if asked == "focus-verdict" and body != "e-mount" else asked


SWAPS = [
    ("and C/Y?", 50, "cy-mount", "e-mount"),
    ("same for FD", 50, "fd-mount", "e-mount"),
    ("QBM instead", 50, "qbm", "e-mount"),
    ("same in FD?", 50, "fd-mount", "e-mount"),
    ("and an OM lens?", 50, "om-mount", "e-mount"),
    ("and on Z?", 50, "m42", "z-mount"),
    ("how about an X body", 50, "m42", "x-mount"),
    ("mft then?", 50, "m42", "mft-mount"),
    ("28 instead of 50", 28, "m42", "e-mount"),
    ("and a 35?", 35, "m42", "e-mount"),
    ("same with my 28", 28, "m42", "e-mount"),
]


@pytest.mark.parametrize("asked", FIRST)
@pytest.mark.parametrize(("said", "focal", "mount", "body"), SWAPS, ids=[row[0] for row in SWAPS])
def test_what_is_swapped_is_swapped_alone(
    club: Desk, asked: str, said: str, focal: float, mount: str, body: str
) -> None:
    last = talk(club, FIRST[asked], said)[-1]
    assert last.question is not None
    assert [(one.focal_length_mm, mount in one.ids) for one in last.question.lenses] == [(focal, True)]
    assert any(body in id_ for id_ in last.question.bodies[0].ids)
    assert last.intent == asked_on(asked, body)


@pytest.mark.parametrize(
    ("asked", "own"),
    [
        ("a 50 on aps-c, is that a 75?", 50),
        ("does a 50mm turn into 75 on my aps-c", 50),
        ("35mm on mft, so thats a 70 then?", 35),
        ("is a 28 on aps-c like a 42", 28),
    ],
)
def test_what_a_lens_frames_like_is_no_second_lens(club: Desk, asked: str, own: float) -> None:
    last = talk(club, asked)[-1]
    assert last.question is not None
    assert [one.focal_length_mm for one in last.question.lenses] == [own]
    assert len({row.name for row in last.quantities or () if row.name == "equivalent_focal_mm"}) == 1


@pytest.mark.parametrize(
    ("asked", "lost"),
    [
        ("25mm tube behind the 50, how much do i open up. handheld meter", 1.17),
        ("1.4x converter on my f4 tele, meter by hand. what do i dial in", 0.97),
        ("handheld meter, 36mm of tubes on a 100, how many stops do i open", 0.89),
    ],
)
def test_a_meter_held_in_the_hand_is_no_lens_held_by_hand(club: Desk, asked: str, lost: float) -> None:
    last = talk(club, asked)[-1]
    told = [row.value for row in last.quantities or () if row.name == "light_difference_stops"]
    assert any(value.least - 0.05 <= lost <= value.greatest + 0.05 for value in told)
    assert not any(row.name == "shutter_s" for row in last.quantities or ())


def test_densities_alone_add_up(club: Desk) -> None:
    last = talk(club, "stacked a 0.6 and a 1.2, total?")[-1]
    assert "Together 6 stops" in flat(last)


SHIMMED = "50mm f/2 m42 on E aps-c with a M42-E ring: infinity at the 5m mark, shim?"


def test_a_distance_after_a_mark_is_another_mark(club: Desk) -> None:
    last = talk(club, SHIMMED, "and at 7 m?")[-1]
    assert "it sits 0.36 mm too close" in flat(last)


def test_a_ring_that_was_off_is_off_for_the_next_lens_too(club: Desk) -> None:
    last = talk(club, SHIMMED, "and a 135 f2.8?")[-1]
    assert "reaches infinity" not in flat(last)
    assert "it is the same 0.51 mm for this lens" in flat(last)


def test_coverage_asked_in_a_talk_is_of_its_lens(club: Desk) -> None:
    last = talk(club, FIRST["depth-of-field"], "and coverage?")[-1]
    assert last.intent == "coverage"
    assert last.question is not None
    assert [one.focal_length_mm for one in last.question.lenses] == [50]


def test_a_thread_asked_about_in_between_leaves_the_body_told_before(club: Desk) -> None:
    last = talk(club, "a C lens on E apsc", "25.4 and pitch 0.79 by ten crests", "so will it reach infinity")[-1]
    assert last.question is not None
    assert [one.ids[0] for one in last.question.lenses] == ["c"]
    assert [one.ids[0] for one in last.question.bodies] == ["e-mount"]


def test_an_unmarked_lens_and_another_are_two(club: Desk) -> None:
    last = talk(club, "an unmarked 1 inch lens and a 135 M42 on E")[-1]
    assert last.question is not None
    assert [one.focal_length_mm for one in last.question.lenses] == [None, 135]


def test_the_density_is_asked_of_the_other_body_too(club: Desk) -> None:
    last = talk(club, FIRST["exposure-nd"], "how about an X body")[-1]
    assert "stops of ND to hold back" in flat(last)


def test_what_it_costs_is_told_after_what_costs_nothing(club: Desk) -> None:
    last = talk(club, FIRST["coverage"], "how much does that cost")[-1]
    assert "dollars" in flat(last)


@pytest.mark.parametrize(
    ("first", "turn", "focal", "mount", "body"),
    [
        ("E or X for C mount lenses?", "25mm on the X one, equivalent?", 25, "c", "x-mount"),
        ("Z or L for M42 lenses?", "50mm on the L one, equivalent?", 50, "m42", "l-mount"),
        ("E or MFT for C lenses?", "a 25 on the E one, how close with 5 mm of tube", 25, "c", "e-mount"),
        ("can my K 50 go on E or MFT", "what is it like on the MFT one", 50, "k-mount", "mft-mount"),
    ],
)
def test_the_one_that_a_lens_stands_on_by_a_mount_of_bodies_is_a_body(club, first, turn, focal, mount, body):
    _, found = talk(club, first, turn)
    question = found.question
    assert [(one.focal_length_mm, one.ids[:1]) for one in question.lenses] == [(focal, (mount,))]
    assert [one.ids[:1] for one in question.bodies] == [(body,)]
