"""Answers about one's own lenses, asked as people type: shims, what to buy, what to set on the camera."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.outside.running import ROOT

GEAR = ROOT / "scenarios" / "a-box-of-lenses" / "gear.yaml"
Said = Callable[..., list[dict[str, Any]]]


@pytest.fixture(scope="module")
def box() -> Desk:
    made = Desk(gear=GEAR)
    assert not made.problems
    return made


@pytest.fixture(scope="module")
def said(box: Desk) -> Said:
    """The records of a talk."""

    def say(*lines: str) -> list[dict[str, Any]]:
        talk = Talk()
        return [record_of(box.ask(line, talk), box.knowledge) for line in lines]

    return say


def test_a_shim_goes_by_the_focal_length_of_the_own_lens(said: Said) -> None:
    (answer,) = said("how thick a shim for my avocet on the skiff, infinity is at the 3 m mark")
    shim = 25 * 25 / (3000 - 50)  # x = f*f / (u - 2f), the mark told from the sensor, without hiatus
    assert answer["quantities"]["shim_mm"]["least"] == pytest.approx(shim, rel=0.02)
    assert "brass" in {row["case"].split()[0] for row in answer["quantities"]["layer_count"]}
    for row in answer["quantities"]["layer_count"]:
        if row["case"] == "brass shim":
            assert row["least"] == round(shim / 0.05)


def test_the_same_ring_on_another_own_lens_needs_the_same_shim(said: Said) -> None:
    first, second, third = said(
        "how thick a shim for my avocet on the skiff, infinity is at the 3 m mark", "and for the knot?", "and the ruff?"
    )
    shim = first["quantities"]["shim_mm"]["least"]
    assert second["quantities"]["shim_mm"]["least"] == pytest.approx(shim, rel=1e-4)
    assert second["quantities"]["scale_mark_mm"][0]["case"] == "55 mm lens"
    assert third["quantities"]["shim_mm"]["least"] == pytest.approx(shim, rel=1e-4)


def test_no_layers_are_told_for_a_lens_of_unknown_focal_length(said: Said) -> None:
    (answer,) = said("how thick a shim for my ruff on the skiff, infinity is at the 3 m mark")
    assert len(answer["quantities"]["shim_mm"]) > 1
    assert "layer_count" not in answer["quantities"]
