"""Rings named by the body they go on, for lenses in a row: each is worked out on that body, not the other way about."""

from __future__ import annotations

import pytest

from tests.answers.talks import talk


@pytest.mark.parametrize(
    ("say", "body", "lenses"),
    [
        ("E-mount rings: how thick for M42, OM and K?", "e-mount", ["m42", "om-mount", "k-mount"]),
        ("how thick are x adapters for FD, K and M42", "x-mount", ["fd-mount", "k-mount", "m42"]),
        ("mft rings for OM, FD, LTM: thickness", "mft-mount", ["om-mount", "fd-mount", "ltm"]),
        ("what do Z adapters for F and K lenses cost", "z-mount", ["f-mount", "k-mount"]),
    ],
)
def test_the_mount_of_the_rings_is_that_of_the_body(club, say, body, lenses):
    (answer,) = talk(club, say)
    assert [one.id for one in answer.question.bodies] == [body]
    assert [one.id for one in answer.question.lenses] == lenses


def test_rings_named_by_the_lens_stay_of_the_lens(club):
    (answer,) = talk(club, "M42 adapters for E, X and Z, how thick")
    assert [one.id for one in answer.question.bodies] == ["e-mount", "x-mount", "z-mount"]
    assert [one.id for one in answer.question.lenses] == ["m42"]


@pytest.mark.parametrize(
    ("say", "bodies"),
    [
        ("our two cameras have mounts Z and X. how thick an M42 ring does each need?", ["z-mount", "x-mount"]),
        ("two bodies at home, mounts E and L: which M42 ring for each?", ["e-mount", "l-mount"]),
    ],
)
def test_cameras_told_by_a_row_of_their_mounts_are_the_bodies(club, say, bodies):
    (answer,) = talk(club, say)
    assert [one.id for one in answer.question.bodies] == bodies
    assert [one.id for one in answer.question.lenses] == ["m42"]
