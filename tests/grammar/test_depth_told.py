"""A lens, its stop, a distance and a frame in every order: each stays what it is, as does the blur allowed."""

from __future__ import annotations

from itertools import cycle, permutations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon

LENSES = ("25mm f/2.8", "f2.8 on a 25mm", "25mm set to f/2.8", "25 f2.8", "25/2.8", "25 mm, f/2.8")
AWAY = ("1.2 m", "at 1.2m", "120 cm", "1.2 meters", "subject at 1.2 m", "focus at 1.2m")
FRAMES = ("mft", "on mft", "aps-c", "on an mft body", '1" sensor', "full frame", "s16")


def scattered() -> list[str]:
    lenses, away, frames, joints = cycle(LENSES), cycle(AWAY), cycle(FRAMES), cycle((", ", " "))
    rows = zip(range(168), lenses, away, frames, joints, cycle(permutations(range(3))), strict=False)
    out = []
    for n, lens, far, frame, joint, order in rows:
        said = joint.join((lens, far, frame)[at] for at in order)
        out.append(f"dof {said}" if n % 2 else f"{said}, depth of field?")
    return out


def wrongly_read(asked: str) -> str:
    got = read(asked, lexicon())
    if not isinstance(got, Question) or got.intent != "depth-of-field":
        return "intent"
    focals = {lens.focal_length_mm for lens in got.lenses} - {None}
    stop = got.f_number or next((lens.f_number for lens in got.lenses if lens.f_number), None)
    rest = (focals == {25.0}, stop == 2.8, got.distance_mm == 1200)
    return ", ".join(name for name, right in zip(("focal", "stop", "distance"), rest, strict=True) if not right)


def test_lens_stop_and_distance_are_told_apart_in_every_order() -> None:
    wrong = {asked: why for asked in scattered() if (why := wrongly_read(asked))}
    assert not wrong


@pytest.mark.parametrize(
    "said",
    [
        "coc 0.02",
        "c = 0.02",
        "c=.02mm",
        "circle of confusion 0.02 mm",
        "20 micron blur",
        "blur circle .02mm",
        "20 um coc",
    ],
)
def test_the_blur_allowed_is_no_length_and_no_mount(said: str) -> None:
    got = read(f"50mm f/4 hyperfocal, {said}", lexicon())
    assert isinstance(got, Question)
    assert got.intent == "depth-of-field"
    assert got.said("blur") == "0.02 mm"
    assert [lens.ids for lens in got.lenses] == [()]
