"""Whole answers against ray-traced lenses: a gear file, a question, the numbers of the record."""

from __future__ import annotations

import json
from pathlib import Path
from statistics import median
from typing import Any

import pytest

from engine.ask import Desk
from engine.render.record import record_of

TRACED = json.loads((Path(__file__).parents[1] / "physics" / "data" / "traced-lenses.json").read_text("utf-8"))
BODY_REGISTER = 18.0  # of E, whose body it is asked on
# a ring for each error of the seat that was traced, mm
RINGS = {"alder": 0.1, "birch": 0.5, "cedar": 1.0, "elm": 2.0, "hazel": 5.0, "larch": 8.0, "maple": 12.0, "rowan": 25.0}


def gear(lens: dict[str, Any], full: bool) -> str:
    """A gear file with the lens, with all its facts or those a caliper gives, and a ring for each register error."""
    front = lens["front_glass_to_flange"]
    if full:  # first-order planes go with the first-order T0
        front = lens["front_glass_to_sensor_first_order"] - lens["register"]
    rows = [
        "lenses:", "  plover:", "    name: plover", "    mount: m42", f"    register: {lens['register']} mm",
        f"    focal_length: {lens['f']} mm", f"    f_number: f/{lens['widest']}", "    focusing: unit",
        f"    front_vertex: {front} mm", "    travel: 0 mm", "    iris: ring",
    ]  # fmt: skip
    if full:
        rows += [
            f"    hiatus: {lens['hiatus']} mm", f"    pupil_magnification: {lens['pupil_magnification']}",
            f"    front_focal_offset: {lens['front_focal_offset']} mm",
        ]  # fmt: skip
    rows += [
        "bodies:", "  coracle:", "    name: coracle", "    mount: e-mount", "    format: 35mm-full-frame", "adapters:",
    ]  # fmt: skip
    for name, error in RINGS.items():
        seat = lens["register"] - BODY_REGISTER + error
        rows += [
            f"  {name}-ring:", f"    name: {name} ring", "    front: m42", "    rear: e-mount", "    kind: plain",
            f"    thickness: {seat:.6f} mm", "    seat_basis: measured", "    owned: 1",
        ]  # fmt: skip
    return "\n".join(rows) + "\n"


def desk_with(folder: Path, lens: dict[str, Any], full: bool) -> Desk:
    file = folder / "gear.yaml"
    file.write_text(gear(lens, full), "utf-8")
    desk = Desk((), file)
    assert not desk.problems, [str(problem) for problem in desk.problems]
    return desk


def focus_with(desk: Desk, ring: str) -> dict[str, Any]:
    answer = desk.ask(f"how do I get the plover on the coracle with the {ring} ring with what I own")
    (chain, *_) = record_of(answer, desk.knowledge)["chains"]
    assert chain["pieces"][-1]["id"] == f"{ring}-ring"
    found: dict[str, Any] = chain["focus"]
    return found


@pytest.mark.parametrize("name", TRACED["lenses"])
def test_with_all_its_facts_the_answer_is_the_first_order_one(tmp_path: Path, name: str) -> None:
    lens = TRACED["lenses"][name]
    desk = desk_with(tmp_path, lens, full=True)
    for ring, error in RINGS.items():
        first_order, at_f8, _ = lens["x"][str(error) if str(error) in lens["x"] else f"{error:g}"]
        focus = focus_with(desk, ring)
        for key, n, share in (
            ("far_from_sensor_mm", 0, 0.01),
            ("far_from_front_glass_mm", 1, 0.02 if error / lens["f"] > 0.5 else 0.01),
            ("far_magnification", 2, 0.006),
        ):
            length = focus[key]
            assert length["least"] == pytest.approx(length["greatest"], rel=1e-6)
            assert length["least"] == pytest.approx(first_order[n], rel=1e-5, abs=2e-4), (error, key)
            if at_f8 is not None:
                assert length["least"] == pytest.approx(at_f8[n], rel=share), (error, key)


def test_with_what_a_caliper_gives_the_interval_holds_the_traced_distance(tmp_path: Path) -> None:
    held: dict[str, list[bool]] = {}
    widths = []
    for name, lens in TRACED["lenses"].items():
        desk = desk_with(tmp_path, lens, full=False)
        for ring, error in RINGS.items():
            _, at_f8, _ = lens["x"][str(error) if str(error) in lens["x"] else f"{error:g}"]
            if at_f8 is None:
                continue
            focus = focus_with(desk, ring)
            for key, n in (("far_from_sensor_mm", 0), ("far_from_front_glass_mm", 1)):
                length = focus[key]
                held.setdefault(name, []).append(length["least"] <= at_f8[n] <= length["greatest"])
            length = focus["far_from_sensor_mm"]
            widths.append((length["greatest"] - length["least"]) / at_f8[0])
    shares = {name: sum(rows) / len(rows) for name, rows in held.items()}
    whole = sum(sum(rows) for rows in held.values()) / sum(len(rows) for rows in held.values())
    assert whole >= 0.95, shares
    assert min(shares.values()) >= 0.8, shares
    assert median(widths) <= 0.10, median(widths)


def test_a_tube_shifts_the_register_error_by_its_length(tmp_path: Path) -> None:
    lens = TRACED["lenses"]["triplet-50"]
    file = tmp_path / "gear.yaml"
    tube = "  tin-tube:\n    name: tin tube\n    front: m42\n    rear: m42\n    kind: extension-tube\n"
    file.write_text(gear(lens, full=True) + tube + "    thickness: 7.125 mm\n    owned: 1\n", "utf-8")
    desk = Desk((), file)
    told = "how do I get the plover on the coracle with what I own with the tin tube and the birch ring"
    record = record_of(desk.ask(told), desk.knowledge)
    ids = [piece["id"] for piece in record["chains"][0]["pieces"]]
    assert ids == ["tin-tube", "birch-ring"]
    assert record["chains"][0]["register_error_mm"]["least"] == pytest.approx(7.625, abs=1e-9)
