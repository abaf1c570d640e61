"""Numbers of the picture in their roles: how deep it shall be, what a lens opens to beside glass."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon


@pytest.mark.parametrize(("said", "deep", "away"), [
    ("need 30cm in focus at 1.5m with a 50 on full frame, which stop", "300 mm", 1500),
    ("i want 20 cm of depth at 2m, 85mm on aps-c, what aperture", "200 mm", 2000),
    ("what f stop gives me 1 m depth of field at 5 m with a 100mm on ff", "1000 mm", 5000),
    ("10 mm in focus at 40 cm, 60mm macro, mft, which aperture", "10 mm", 400),
    ("to have 2m sharp around 6m with a 75 what f do i need on apsc", "2000 mm", 6000),
    ("25mm mft, subject 1.2 m away, want 40cm of it sharp, stop?", "400 mm", 1200),
    ("a depth of field of 20 cm at 2 m with a 135 on ff, which stop?", "200 mm", 2000),
    ("is my 50mm f/2 sharp at 3 m, depth of field", None, 3000),
])  # fmt: skip
def test_what_shall_be_sharp_is_no_distance(said: str, deep: str | None, away: float) -> None:
    got = read(said, lexicon())
    assert isinstance(got, Question)
    assert (got.intent, got.said("depth"), got.distance_mm) == ("depth-of-field", deep, away)


@pytest.mark.parametrize(("said", "stop"), [
    ("1.7x extender on a 2.8 tele whats the f then", 2.8), ("1.4x converter on a 2.8 tele: fnumber and loss?", 2.8),
    ("converter 1.4x and lens 5.6, what f is that", 5.6), ("my 4.5 telezoom + 2x tc, aperture?", 4.5),
])  # fmt: skip
def test_a_decimal_beside_a_lens_with_glass_is_its_stop(said: str, stop: float) -> None:
    got = read(said, lexicon())
    assert isinstance(got, Question)
    assert got.intent in ("crop-equivalent", "exposure-nd")
    assert stop in (got.f_number, *(lens.f_number for lens in got.lenses))
    assert len([piece for piece in got.adapters if piece.factor]) == 1


@pytest.mark.parametrize("said", [
    "super 35 gate (24.89 wide, 4 perf) and a 50. full frame equiv?", "s16 gate, 12.52 mm wide, 50mm lens, ff equiv",
    "super16 prime 50mm on a 1 inch CX sensor. what full frame focal?", "old 50mm on super8, how wide in degrees",
])  # fmt: skip
def test_the_size_of_a_frame_is_no_lens(said: str) -> None:
    got = read(said, lexicon())
    assert isinstance(got, Question)
    assert (got.intent, [lens.focal_length_mm for lens in got.lenses]) == ("crop-equivalent", [50.0])


@pytest.mark.parametrize(("said", "key", "value"), [
    ("what's 1/1000 minus 4 and 2/3 stops", "stops", "4.67"), ("my 28mm close focus 25cm w 5 mm tube how near now",
    "close_focus", "250 mm"), ("how much does stopping from f2 to f4 gain in depth at 2m, 50mm aps-c", "depth", None),
])  # fmt: skip
def test_numbers_beside_other_numbers_keep_their_part(said: str, key: str, value: str | None) -> None:
    got = read(said, lexicon())
    assert isinstance(got, Question)
    assert got.said(key) == value
