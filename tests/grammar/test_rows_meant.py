"""Rows of lenses and bodies as they are dropped: with what in brackets, several of a mount, rings for bodies."""

from __future__ import annotations

import pytest

from tests.grammar.test_reader import asked, ids


def test_what_stands_in_brackets_tells_which_mount_and_is_no_body() -> None:
    got = asked("AR + MD + F (the slr one) glass, and both an RF and an X body in the house. fewest rings?")
    assert ids(got.lenses) == ["ar-mount", "sr-mount", "f-mount"]
    assert ids(got.bodies) == ["rf-mount", "x-mount"]
    got = asked("have OM, F (46.5mm slr) and exakta lenses, an L and a MFT body. adapters?")
    assert ids(got.lenses) == ["om-mount", "f-mount", "exakta-mount"]
    assert all(lens.focal_length_mm is None for lens in got.lenses)


def test_what_stands_in_brackets_within_a_ring_parts_no_ring() -> None:
    got = asked("I have a K (the 45.46 register slr one) to M ring and an M to Z ring under a 60mm K lens, infinity?")
    assert [piece.front[0] for piece in got.adapters] == ["k-mount", "m-mount"]
    assert [(lens.ids[0], lens.focal_length_mm) for lens in got.lenses] == [("k-mount", 60)]
    assert got.said("flange_to_image") == "45.46 mm"


def test_rings_told_by_the_mount_of_a_body_lead_to_as_many_bodies() -> None:
    got = asked("where could PL lenses live w/out optics: E, L, m43 rings pls")
    assert ids(got.bodies) == ["e-mount", "l-mount", "mft-mount"]
    assert got.limits.without_glass


@pytest.mark.parametrize("text", ["my FDs on E", "FDs and a K on E"])
def test_several_of_a_mount_of_two_letters_are_told_by_their_capitals(text: str) -> None:
    got = asked(text)
    assert got.lenses[0].id == "fd-mount"
    assert ids(got.bodies) == ["e-mount"]


def test_what_is_counted_behind_lenses_is_another_lens() -> None:
    got = asked("two C-mount lenses one M42 onto RF and E with least money")
    assert ids(got.lenses) == ["c", "m42"]
    assert ids(got.bodies) == ["rf-mount", "e-mount"]


@pytest.mark.parametrize(
    "question",
    [
        "50mm M42 lens on an E-mount body with 10 mm 16 mm and 21 mm M42 tubes and a helicoid",
        "my 50mm lens on E-mount with 10mm 16mm 21mm tubes",
    ],
)
def test_lengths_written_one_behind_the_other_are_each_a_tube(question: str) -> None:
    sizes = [thing.thickness_mm[0] for thing in asked(question).adapters if thing.thickness_mm]
    assert sizes == [10.0, 16.0, 21.0]


@pytest.mark.parametrize("text", [
    "one E and one Z body, lenses in m42 and om. how many adapters", "an E and a Z body, lenses in m42 and om",
    "two bodies, an E and a Z, lenses in m42 and om",
    "we have two bodies on the shoot, one E and one Z, and lenses in m42 and om", "E and Z body, lenses in m42 and om",
])  # fmt: skip
def test_mounts_counted_as_bodies_are_bodies_beside_the_lenses(text: str) -> None:
    found = asked(text)
    assert [body.id for body in found.bodies if body.ids] == ["e-mount", "z-mount"]
    assert ids(found.lenses) == ["m42", "om-mount"]


@pytest.mark.parametrize(("text", "ring"), [
    ("50 1.8 sr, sr to x ring 25.70. can i use it for skyline", ("sr-mount", "x-mount")),
    ("28 2.8 fd, fd to z ring 26.1, far sharp?", ("fd-mount", "z-mount")),
    ("135 k, k to rf ring 25.3 infinity", ("k-mount", "rf-mount")),
])  # fmt: skip
def test_a_ring_from_the_mount_of_the_lens_before_it_has_both_its_mounts(text: str, ring: tuple[str, str]) -> None:
    found = asked(text)
    assert [(piece.front[0], piece.rear[0]) for piece in found.adapters] == [ring]
    assert [lens.id for lens in found.lenses] == [ring[0]]


@pytest.mark.parametrize(
    ("text", "lens", "bodies"),
    [
        ("13mm f1.9 d mount. got an E and a mft. which is better for it?", "d", ["e-mount", "mft-mount"]),
        ("c mount 25mm, i own a mft and an L, which is better", "c", ["mft-mount", "l-mount"]),
        ("m42 50mm, got an E and a Z, where does it go best", "m42", ["e-mount", "z-mount"]),
        ("have a Z and an X, want to use a K 50", "k-mount", ["z-mount", "x-mount"]),
    ],
)
def test_mounts_of_bodies_in_a_row_beside_one_lens_are_bodies(text: str, lens: str, bodies: list[str]) -> None:
    got = asked(text)
    assert ids(got.lenses) == [lens]
    assert ids(got.bodies) == bodies


def test_a_row_that_ends_on_a_body_is_of_lenses() -> None:
    got = asked("50mm C/Y, an EF and an F for my E")
    assert ids(got.lenses) == ["cy-mount", "ef-mount", "f-mount"]
    assert ids(got.bodies) == ["e-mount"]


@pytest.mark.parametrize(
    ("text", "lens", "body"),
    [
        ("got a machine vision cam with CS thread and a C mount 16mm lens on its 5mm ring", "c", "cs"),
        ("a camera with a C mount and a 16mm D lens", "d", "c"),
        ("camera with C thread, 50mm M42 lens", "m42", "c"),
    ],
)
def test_the_thread_that_a_camera_is_told_with_is_its_own(text: str, lens: str, body: str) -> None:
    got = asked(text)
    assert ids(got.lenses) == [lens]
    assert ids(got.bodies) == [body]
