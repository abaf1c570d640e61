"""Mounts by a flange to image distance: those that a ruler cannot tell from it, and no others."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return Desk()


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
