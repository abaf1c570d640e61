"""Pieces that change in a talk: what is not exchanged stays, and what is to come off a ring is told of that ring."""

from __future__ import annotations

import pytest

from engine.answers.parts.answer import Answer
from engine.ask import Desk
from engine.talk import Talk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def _last(desk: Desk, *turns: str) -> Answer:
    talk = Talk()
    return [desk.ask(turn, talk) for turn in turns][-1]


_ENLARGER = "105 enlarger on E, measured 98 flange to image, m42 25-55 helicoid plus 1 mm ring and 28 tube. infinity?"


@pytest.mark.parametrize("turn", ["and with the 17-31 helicoid in its place?", "would my 17-31 do instead"])
def test_the_other_rings_stay(desk: Desk, turn: str) -> None:
    told = _last(desk, _ENLARGER, turn).question
    assert told is not None
    assert sorted(one.thickness_mm for one in told.adapters if one.thickness_mm) == [(1, 1), (17, 31), (28, 28)]


@pytest.mark.parametrize(("turn", "span"), [("ok the long one. how near", (25, 55)), ("the shorter one", (17, 31))])
def test_which_of_the_two_is_told_by_its_length(desk: Desk, turn: str, span: tuple[int, int]) -> None:
    told = _last(desk, _ENLARGER, "would my 17-31 do instead", turn).question
    assert told is not None
    assert span in [one.thickness_mm for one in told.adapters]


@pytest.mark.parametrize(
    ("turns", "off"),
    [
        (("exakta 50 on E, ring is 26.95", "its for exakta? why doesnt it reach", "how much do i take off"), 0.25),
        (("M42 35 on X with a 27.9 ring. infinity", "how come", "how much must i lap"), 0.14),
        (("K 50 on MFT, my ring mics 26.5", "why not infinity", "what must come off"), 0.29),
    ],
)  # fmt: skip
def test_what_comes_off_after_the_reason(desk: Desk, turns: tuple[str, ...], off: float) -> None:
    answer = _last(desk, *turns)
    assert answer.intent == "shim-calibration"
    assert [row.value.nominal for row in answer.quantities if row.name == "shim_mm"] == [pytest.approx(off, abs=0.01)]


def test_another_lens_on_that_ring_is_judged(desk: Desk) -> None:
    answer = _last(desk, "M42 35 on X with a 27.9 ring", "how much has to come off", "until then, my 20mm on it?")
    assert answer.intent == "focus-verdict"
    assert (answer.chains or ())[0].listed.judged.verdict == "macro-only"


def test_a_lens_told_before_keeps_its_mount_on_a_ring(desk: Desk) -> None:
    told = _last(desk, "can i screw a LTM lens on my M42 slr", "with the 1mm m39-m42 ring, its a 50. any far?").question
    assert told is not None
    assert [(one.id, one.focal_length_mm) for one in told.lenses] == [("ltm", 50.0)]


@pytest.mark.parametrize(
    ("said", "travel", "focal"),
    [
        ("helicoid M-E +6mm, 21mm lens at infinity mark fully out. distance?", "6 mm", 21.0),
        ("LTM-Z helicoid +5, 50 at its infinity mark, wound out. how close", "5 mm", 50.0),
        ("helicoid LTM to Z, +5mm, 50mm lens fully out, how close", "5 mm", 50.0),
    ],
)
def test_a_plus_behind_a_helicoid_is_its_travel(desk: Desk, said: str, travel: str, focal: float) -> None:
    told = desk.ask(said).question
    assert told is not None
    assert told.said("travel") == travel
    assert [one.focal_length_mm for one in told.lenses] == [focal]
    assert not any(one.factor for one in told.adapters)
