"""Rows of lenses told by their numbers: what is told once of all is told of each."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.talk import Talk
from grammar.questions import Thing
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def _lenses(desk: Desk, text: str) -> list[tuple[float | None, float | None, str]]:
    talk = Talk()
    desk.ask(text, talk)
    assert talk.question is not None
    return [_told(lens) for lens in talk.question.lenses]


def _told(lens: Thing) -> tuple[float | None, float | None, str]:
    return lens.focal_length_mm, lens.f_number, lens.ids[0] if lens.ids else ""


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("28 50 135 all m42 on EF", [(28, None, "m42"), (50, None, "m42"), (135, None, "m42")]),
        ("16mm c 1.6, 25mm c 1.4 and 50mm m42 f1.8 on mft", [(16, 1.6, "c"), (25, 1.4, "c"), (50, 1.8, "m42")]),
        ("3 lenses. 10, 25 and 75, c mount i think. on mft", [(10, None, "c"), (25, None, "c"), (75, None, "c")]),
        ("pk 50 and m42 58, both f1.4, on Z", [(50, 1.4, "k-mount"), (58, 1.4, "m42")]),
        ("a 16 and a 25 in c mount and a 35 in ltm on mft", [(16, None, "c"), (25, None, "c"), (35, None, "ltm")]),
        (
            "35, 50 and 85 on Z, they are all c/y",
            [(35, None, "cy-mount"), (50, None, "cy-mount"), (85, None, "cy-mount")],
        ),
        (
            "50mm lenses in fd, om and sr on EF",
            [(50, None, "fd-mount"), (50, None, "om-mount"), (50, None, "sr-mount")],
        ),
    ],
)
def test_each_lens_has_what_is_told_of_all(
    desk: Desk, text: str, wanted: list[tuple[float | None, float | None, str]]
) -> None:
    assert _lenses(desk, text) == wanted


def test_a_body_behind_a_row_is_no_mount_of_the_lenses(desk: Desk) -> None:
    assert all(mount != "e-mount" for _, _, mount in _lenses(desk, "3 m42 lenses: 35, 58 and 135, E body"))


def test_lengths_of_tubes_are_no_lenses(desk: Desk) -> None:
    assert _lenses(desk, "m42 58mm on E with tubes 10, 16 and 26") == [(58, None, "m42")]


def test_counts_before_mounts_are_no_focal_lengths(desk: Desk) -> None:
    assert _lenses(desk, "5 M42 and 4 OM lenses on E") == [(None, None, "m42"), (None, None, "om-mount")]


def test_one_ring_for_all_is_said_first(desk: Desk) -> None:
    answer = desk.ask("28, 50 and 135, all OM, on L. same ring?", Talk())
    assert "serves all 3" in answer.lines[0].text
    answer = desk.ask("FD and OM lens, E body, can one ring do them all", Talk())
    assert answer.lines[0].text.startswith("No, one ring is not enough")


def test_which_of_several_cover_is_said_first(desk: Desk) -> None:
    talk = Talk()
    desk.ask("c mount 10, 25 and 75 on mft", talk)
    line = desk.ask("which ones cover it", talk).lines[0].text
    assert line.index("75 mm") < line.index("25 mm") < line.index("10 mm")
