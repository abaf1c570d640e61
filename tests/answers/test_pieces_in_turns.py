"""Rings, tubes and helicoids of a talk, each told anew by itself: what they sum to, and what stays as it stood."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from tests.answers.picture import numbers
from tests.answers.talks import flat, talk

OM = "om 50 on E through om-ef and ef-e rings"
LTM = "ltm 50 on Z with a 1mm ltm-m ring and an m-z ring"
P6 = "p6 80mm on Z through p6-F 27.6 and F-z 30.5"
CUT = "had two m42-L rings turned, first came out 25.56. 50mm"
BUSH = "m39 zenit 58 on E with a m42-e ring and a 39-42 ring with a 0.8 lip"
SPACERS = "i have 2.5 and 0.8 spacers only, both"


@pytest.mark.parametrize(
    ("turns", "error"),
    [
        ((LTM, "the second one is really 11.9"), 0.1),
        ((LTM, "the second one is really 11.9", "and if i file that down to 11.75"), -0.05),
        ((OM, "om-ef 2.1 by my caliper", "and the ef one 25.9"), 0.0),
        ((OM, "the ef-e is 25.85", "what can i put in between to make it right", "with the 0.2 i have"), 0.05),
        ((P6, "the F-z is 30.4 and p6 one is 27.8"), 0.1),
        ((P6, "the F-z is 30.4 and p6 one is 27.8", "make both 0.1 thinner"), -0.1),
        (("ltm 35 on E, rings 1.0 and 9.8, both measured", "the thick one is 9.9"), 0.1),
        ((CUT, "second one is 25.4", "back to the first one. where does a 35 stop on it"), 0.1),
        (("two m42-E rings turned for me, 50mm lens", "first one came out 0.1 too thick. where does it stop"), 0.1),
        (("d 13mm on Q, spacer 3.1", SPACERS), 0.21),
        (("d 13mm on Q, spacer 3.1", SPACERS, "just the 2.5"), -0.59),
        (("12.5mm c lens on a cs cam with the 5mm ring", "ok ring is on. can i add another 2mm for close work?"), 2.0),
        (("c lens 25mm on mft", "seller only has flat ones, ok?"), 1.724),
        ((BUSH, "and the kind without a lip"), 0.26),
        (("m39 slr 50 on X with a m42-x ring", "i have a 39-42 ring with a 1mm rim"), 1.26),
        (("dkl 50 on E, dkl-ef 0.7 and ef-e 26", "the dkl one turned out 0.85", "do the errors cancel"), 0.15),
        (("om 28 on Z, om-z ring plus a 0.3 washer i found in it", "two of them in fact", "take one out"), 0.3),
        (("m42 50 on L ring 25.60", "he turns another 0.2 off"), -0.06),
        (("fd-e ring of mine is 23.8, 50mm", "which shim", "only have 0.25"), 0.05),
        (("K 50 on Z, ring measured 29.3", "i put a 0.3 under it by mistake", "so which shim would be right"), -0.16),
        (("m42 135 on E, 17-31 helicoid and 1mm ring", "all the way out with a 50, what do i get"), 4.54),
    ],
)  # fmt: skip
def test_one_piece_told_anew_leaves_the_others_as_they_stood(club: Desk, turns: tuple[str, ...], error: float) -> None:
    record = record_of(talk(club, *turns)[-1], club.knowledge)
    told = numbers(record, "register_error_mm")
    for row in (record["chains"] or ())[:1]:
        told = [(row["register_error_mm"]["least"], row["register_error_mm"]["greatest"])]
    assert sum(told[0]) / 2 == pytest.approx(error, abs=0.001)


def test_what_comes_off_one_ring_is_told_by_all_that_stand_there(club: Desk) -> None:
    last = talk(club, BUSH, "and the kind without a lip", "how much must i take off the E ring then")[-1]
    assert "take 0.26 mm off" in flat(last)


@pytest.mark.parametrize(
    ("turns", "lengths"),
    [
        (("m42 50 on E with a 17-31 helicoid and a 1mm plate", "all the way out", "add a 14mm tube"), [31, 1, 14]),
        (("12-19 helicoid, 10 mm tube, 1mm m42-E ring, 50mm m42", "tube is 15 not 10", "with the helicoid out"),
         [19, 15, 1]),
        (("12-19 helicoid, 10 mm tube, 1mm m42-E ring, 50mm m42", "swap the tube for a 9"), [12, 9, 1]),
    ],
)  # fmt: skip
def test_a_tube_changed_beside_a_helicoid_leaves_it_there(
    club: Desk, turns: tuple[str, ...], lengths: list[float]
) -> None:
    last = talk(club, *turns)[-1].question
    assert last is not None
    assert [piece.thickness_mm[0] for piece in last.adapters if piece.thickness_mm is not None] == lengths
