"""One thing on another by way of a third, off a camera, or by rings that are each measured: as it is read in a talk."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.outside.running import piped


@pytest.mark.parametrize(
    ("said", "reading"),
    [
        (["a 25mm off an old 8mm cine camera. z body"],
         "how do I get a 25 mm D-mount lens made for Regular 8 on a Z-mount body"),
        (["my reflex is m42, the new mirrorless is L. adapter"],
         "how do I get an M42 lens on an L-mount mirrorless body with an adapter"),
        (["ltm 50 to m to e, rings 1.0 + 9.8"],
         "how do I get a 50 mm LTM lens on an E-mount body with a 1 mm LTM to M-mount adapter and a 9.8 mm M-mount to"
         " E-mount adapter, via M-mount"),
        (["X 50 -> Z"], "how do I get a 50 mm X-mount lens on a Z-mount body"),
        (["c mount 25 on m43", "and apsc e?", "and the d-mount one 13mm"],
         "how do I get a 13 mm D-mount lens on an E-mount APS-C body"),
        (["ar 40 1.8 on z", "and on E", "the other body again"],
         "how do I get a 40 mm f/1.8 AR-mount lens on a Z-mount body"),
        (["adaptall 90 to z, I have the m42 adaptall ring", "no, the F ring"],
         "how do I get a 90 mm Adaptall-2 lens on a Z-mount body with an F-mount adapter"),
    ],
)  # fmt: skip
def test_which_is_lens_body_and_ring(tmp_path: Path, said: list[str], reading: str) -> None:
    assert piped(tmp_path, said)[-1]["reading"] == reading


def test_one_ring_of_a_row_is_told_anew(tmp_path: Path) -> None:
    first, then = piped(tmp_path, ["ltm 50 to m to e, rings 1.0 + 9.8", "and if the 2nd is 9.9"])
    assert "seat 10.8 mm" in first["text"]
    assert "seat 10.9 mm" in then["text"]


def test_a_name_that_nobody_knows_is_said_to_be_unknown(tmp_path: Path) -> None:
    asked = ["md 50 on x", "does it cover", "and on zorbex?"]
    assert "Found zorbex" in piped(tmp_path, asked)[-1]["text"]
