"""Answers about one's own lenses, asked as people type: shims, what to buy, what to set on the camera."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.desks import desk_of
from tests.outside.running import ROOT

GEAR = ROOT / "scenarios" / "a-box-of-lenses" / "gear.yaml"
Said = Callable[..., list[dict[str, Any]]]


@pytest.fixture(scope="module")
def box() -> Desk:
    made = desk_of(GEAR)
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


BUY = "what to buy so that all my lenses work on the skiff"


@pytest.mark.parametrize("before", [(), ("which of my lenses reach infinity on the skiff",)])
def test_a_plan_for_all_of_ones_own_buys_each_ring_once_and_no_owned_one(said: Said, before: tuple[str, ...]) -> None:
    *_, plan = said(*before, "what should I buy so all of them work on the skiff" if before else BUY)
    assert plan["intent"] == "buy-plan"
    assert plan["reading"] == "what to buy for all my lenses on my skiff"
    assert len(plan["chains"]) == 12
    pieces = {
        piece["id"]: piece for chain in plan["chains"] if chain["verdict"] != "unusable" for piece in chain["pieces"]
        if piece["kind"] not in ("thread-alike", "shared-bayonet")
    }  # fmt: skip
    bought = [piece["price"] for piece in pieces.values() if not piece["owned"]]
    count = {row["case"]: row["least"] for row in plan["quantities"]["adapter_count"]}
    assert count["all pairs"] == len(pieces)
    assert count["to buy"] == len(bought) < len(pieces)
    (price,) = [row for row in plan["quantities"]["price"] if row["case"] == "all pairs"]
    assert (price["least"], price["greatest"]) == (sum(p[0] for p in bought), sum(p[1] for p in bought))


def test_all_of_them_are_those_that_were_named_last(said: Said) -> None:
    *_, plan = said("avocet and knot on the skiff", "what should I buy so that all of them work on the dory")
    assert plan["reading"] == "what to buy for my avocet and my knot on my dory"


def test_a_plan_for_all_goes_on_with_another_body_and_one_lens(said: Said) -> None:
    _, second, third = said(BUY, "and on the dory?", "and just the knot?")
    assert second["reading"] == "what to buy for all my lenses on my dory"
    assert third["reading"] == "what to buy for my knot on my dory"


def test_what_is_owned_already_costs_nothing(said: Said) -> None:
    (plan,) = said("what to buy for the avocet and the knot on the skiff")
    assert "nothing to buy" in plan["text"]
    (price,) = [row for row in plan["quantities"]["price"] if row["case"] == "all pairs"]
    assert price["greatest"] == 0


def test_several_lenses_at_once_keep_their_cautions(said: Said) -> None:
    (plan,) = said(BUY)
    assert "turnstone, curlew and stint: lenses of this kind may reach past the shutter" in " ".join(
        plan["text"].split()
    )


@pytest.mark.parametrize(
    "question",
    ["what settings on the skiff with the knot", "what should I set on the skiff for the knot",
     "what to set on the skiff with the knot"],
)  # fmt: skip
def test_all_settings_are_told_where_none_is_named(said: Said, question: str) -> None:
    (answer,) = said(question)
    assert answer["intent"] == "gear-setting"
    assert answer["reading"] == "which camera setting for my knot on my skiff"
    for told in ("my M42 to E ring", "ring on the lens", "release without a lens", "working aperture", "at 55 mm"):
        assert told in answer["text"]
    assert answer["quantities"]["combined_focal_mm"][0]["least"] == 55


def test_settings_are_those_of_the_lens_and_body_talked_of(said: Said) -> None:
    _, answer = said("avocet on the punt", "what do i set on the camera")
    assert answer["text"].startswith("Avocet on punt, C to Z ring")
    assert "at 25 mm" in answer["text"]


def test_a_setting_that_is_named_is_told_alone(said: Said) -> None:
    (answer,) = said("what do I enter for stabilisation with the knot on the skiff")
    assert "ibis_focal_mm" in answer["quantities"]
    assert "release without a lens" not in answer["text"]


def test_settings_without_a_lens_ask_for_it(box: Desk) -> None:
    lines = box.ask("what settings on the skiff").lines
    assert lines[0].text.startswith("menus in short")
    assert any(line.kind == "ask" and line.text.startswith("Which lens?") for line in lines)


def test_an_undecided_plane_in_focus_says_what_to_measure(said: Said) -> None:
    (answer,) = said("does my ruff reach infinity on the punt with a 20 mm tube")
    chain = answer["chains"][0]
    assert any(row["rule"] == "focus-inside-the-lens" and not row["decided"] for row in chain["findings"])
    text = " ".join(answer["text"].split())
    assert "provided the plane in focus lies ahead of its front glass" in text
    assert "from the seat (flange) to its front glass" in text


def test_two_own_lenses_of_one_name_are_ruled_apart(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text(
        "lenses:\n"
        "  one: {name: avocet, mount: c, focal_length: 25 mm, f_number: f/1.4, image_circle: 13 mm, weight: 120 g}\n"
        "  two: {name: avocet, mount: m42, focal_length: 55 mm, f_number: f/2, image_circle: 43.3 mm, weight: 300 g}\n"
        "bodies:\n  skiff: {name: skiff, mount: e-mount, format: aps-c-1.5}\n",
        encoding="utf-8",
    )
    desk = Desk(gear=gear)
    answer = record_of(desk.ask("which of my lenses cover the skiff"), desk.knowledge)
    assert sorted(row["least"] for row in answer["quantities"]["fulfils"]) == [0, 1]


RINGS = """
bodies:
  skiff: {name: skiff, mount: e-mount, format: aps-c-1.5}
adapters:
  plain: {name: plain ring, front: m42, rear: e-mount, kind: plain, thickness: 27.44 mm, seat_basis: measured, owned: 1}
  lit: {name: reducer, front: ef-mount, rear: e-mount, kind: focal-reducer, factor: 0.71, thickness: 26 mm,
    seat_basis: measured, owned: 1}
  bare: {name: bare ring, front: om-mount, rear: e-mount, kind: plain, thickness: unknown, seat_basis: measured,
    owned: 1}
"""


@pytest.mark.parametrize(
    ("question", "fulfils"),
    [
        ("which of my adapters have glass", {"reducer": (1, 1), "plain ring": (0, 0), "bare ring": (0, 0)}),
        ("which of my adapters have no glass", {"reducer": (0, 0), "plain ring": (1, 1), "bare ring": (1, 1)}),
        ("which of my adapters fit the skiff, thinnest first",
         {"reducer": (1, 1), "plain ring": (1, 1), "bare ring": (0, 1)}),
    ],
)  # fmt: skip
def test_own_adapters_by_glass_and_in_order(tmp_path: Path, question: str, fulfils: dict[str, tuple[int, int]]) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text(RINGS, encoding="utf-8")
    desk = Desk(gear=gear)
    assert not desk.problems
    answer = record_of(desk.ask(question), desk.knowledge)
    assert {row["case"]: (row["least"], row["greatest"]) for row in answer["quantities"]["fulfils"]} == fulfils
    assert "no way found" not in answer["text"]
    assert ("Undecided" in answer["text"]) == ((0, 1) in fulfils.values())


THICK = """
adapters:
  plain: {name: plain ring, front: m42, rear: e-mount, kind: plain, thickness: 27.44 mm, seat_basis: measured, owned: 1}
  thick: {name: thick ring, front: m42, rear: e-mount, kind: plain, thickness: 27.8 mm, seat_basis: measured, owned: 1}
  bare: {name: bare ring, front: om-mount, rear: e-mount, kind: plain, thickness: unknown, seat_basis: measured,
    owned: 1}
"""


@pytest.mark.parametrize(
    "question",
    [
        "which of my adapters reach infinity", "which adapters of mine reach infinity",
        "which of my rings get to infinity", "do any of my adapters reach infinity",
        "which rings of mine keep infinity on e", "which of the adapters i own go to infinity",
    ],
)  # fmt: skip
def test_own_adapters_that_reach_infinity_are_told_by_their_seats(tmp_path: Path, question: str) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text(THICK, encoding="utf-8")
    desk = Desk(gear=gear)
    assert not desk.problems
    answer = record_of(desk.ask(question), desk.knowledge)
    found = {row["case"]: (row["least"], row["greatest"]) for row in answer["quantities"]["fulfils"]}
    assert found == {"plain ring": (1, 1), "thick ring": (0, 0), "bare ring": (0, 1)}


def test_the_lens_compared_with_is_a_case_like_the_others(said: Said) -> None:
    (answer,) = said("which of my lenses are wider than the dunlin")
    cases = [row["case"] for row in answer["quantities"]["fulfils"]]
    assert len(set(cases)) == len(cases) == 36
    assert all(" on " in case for case in cases)


def test_two_answers_set_against_each_other_keep_their_numbers_apart(said: Said) -> None:
    first, second, both = said(
        "depth of field of the knot at f/8 at 3 m on the skiff", "and at f/4?", "compare the last two answers"
    )
    near = {row["case"]: row["least"] for row in both["quantities"]["dof_near_mm"]}
    told = [
        (f"{which}, {row['case']}", row["least"])
        for which, answer in (("before", first), ("then", second))
        for row in answer["quantities"]["dof_near_mm"]
    ]
    assert len(told) == 6  # at 3 m, at the hyperfocal distance and at infinity, of each
    assert near == dict(told)
    assert all(row["case"].startswith(("before", "then")) for rows in both["quantities"].values() for row in rows)
