"""Mounts by a flange to image distance: those that a ruler cannot tell from it, and no others."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.base.interval import Interval
from engine.render.record import record_of
from engine.talk import Talk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def registers(desk: Desk, text: str) -> dict[str, float]:
    record = record_of(desk.ask(text), desk.knowledge)
    assert record["intent"] == "identify-mount"
    rows = record["quantities"].get("register_mm", [])
    cases = [row["case"] for row in (rows if isinstance(rows, list) else [rows])]
    mounts = desk.catalogue.mounts  # a case may also be of the other reading that is told beside
    return {name: mounts[name].register_mm.nominal for name in cases if name in mounts}


@pytest.mark.parametrize("told", [17.5, 27.8, 42.0, 44.0, 45.5, 52.0, 74.0])
def test_every_mount_named_lies_as_near_as_a_ruler_tells(desk: Desk, told: float) -> None:
    found = registers(desk, f"which mount has a register of {told} mm")
    good = desk.catalogue.assumptions["register-by-paper"].value.greatest
    assert found
    assert all(abs(value - told) <= good + 1e-9 for value in found.values())
    # nearest first, to a tenth: what lies within that goes by how common it is
    offs = [round(abs(value - told), 1) for value in found.values()]
    assert offs == sorted(offs)


def test_the_coupling_that_is_told_leaves_the_others_out(desk: Desk) -> None:
    found = registers(desk, "bayonet lens, flange to image about 44 mm, what mount is it")
    assert found
    # the trade calls a breech lock a bayonet as well
    assert {desk.catalogue.mounts[name].coupling for name in found} <= {"bayonet", "breech-lock"}


def test_a_distance_that_no_mount_has_is_said_to_be_none(desk: Desk) -> None:
    answer = desk.ask("which mount has a register of 190 mm")
    assert "no mount in the facts has that register" in answer.lines[0].text


@pytest.mark.parametrize(("turns", "ring"), [
    (["line scan camera with M58 front, 11.48 flange. a 55mm F lens on it, how long the tube"], 35.02),
    (["line scan camera, flange 11.48, F 55mm lens, tube length?", "correction, data sheet says 12.00"], 34.5),
    (["camera with a 30 mm flange distance, F lens 50mm, what ring", "i measured again, flange is 29.8"], 16.7),
    (["camera with M72 front, 6.56 mm flange distance, F lens 105. how long must the tube be"], 39.94),
])  # fmt: skip
def test_a_register_told_of_a_body_without_a_mount_is_that_of_the_body(
    desk: Desk, turns: list[str], ring: float
) -> None:
    memory = Talk()
    found = [desk.ask(turn, memory) for turn in turns][-1]
    rows = [row.value for row in found.quantities or () if row.name == "ring_thickness_mm"]
    assert any(isinstance(row, Interval) and abs(row.nominal - ring) < 0.02 for row in rows)
