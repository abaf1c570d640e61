"""Circles that are known only at their least: lenses cover what they were made for, and how much more is not known."""

from __future__ import annotations

from pathlib import Path

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.desks import desk_of
from tests.render.paper import Paper

BARGE = """\
lenses:
  heron:
    mount: m42
    focal_length: 300 mm
    f_number: f/4
  teal:
    mount: m42
    focal_length: 200 mm
    f_number: f/4
    image_circle: 50 mm
bodies:
  barge:
    mount: g-mount
    format: s-4433
"""
LONG = "300mm f/4 M42 lens on a G-mount 44x33 body"
STACKED = "50mm enlarger lens, 45mm flange to image, on an E-mount body with three 10 mm tubes and a 17-31 helicoid"


@pytest.fixture
def boat(tmp_path: Path) -> Desk:
    gear = tmp_path / "gear.yaml"
    gear.write_text(BARGE, "utf-8")
    made = Desk(gear=gear, folder=tmp_path)
    assert not made.problems
    return made


def test_a_lens_that_covers_its_own_format_may_cover_a_larger_one(boat: Desk) -> None:
    found = record_of(boat.ask(f"how do I get a {LONG}", Talk()), boat.knowledge)
    assert "lights at least 88 % of 44x33: circle at least 43.3 mm" in " ".join(found["text"].split())


def test_such_a_lens_is_not_ruled_out_of_those_that_cover(boat: Desk) -> None:
    found = record_of(boat.ask("which of my lenses cover the barge", Talk()), boat.knowledge)
    fulfils = {row["case"]: (row["least"], row["greatest"]) for row in found["quantities"]["fulfils"]}
    assert fulfils == {"heron": (0, 1), "teal": (0, 0)}


def test_its_circle_is_drawn_as_the_least(boat: Desk) -> None:
    answer = boat.ask(f"draw the frame of a {LONG}", Talk())
    assert answer.drawings is not None
    told = Path(answer.drawings[0].path).read_text("utf-8")
    assert "43.3 mm or more" in told
    assert "at least 88 %" in told
    assert Paper(told).one("image_circle_at_far_mm").mm == pytest.approx(43.27, abs=0.01)


def test_the_circle_of_an_enlarger_lens_goes_by_its_focal_length(boat: Desk) -> None:
    (drawn,) = boat.ask(f"draw the frame of a {STACKED}", Talk()).drawings or ()
    assert "lit to the corners" in Path(drawn.path).read_text("utf-8")


def test_glass_nobody_asked_for_is_not_first_behind_a_lens_of_no_register_of_its_own(boat: Desk) -> None:
    found = record_of(boat.ask(f"how do I get a {STACKED}", Talk()), boat.knowledge)
    assert [chain["glass"] for chain in found["chains"]] == [False, False, False]
    error = found["chains"][0]["register_error_mm"]
    assert 20 < error["least"] <= 21


def test_a_mount_of_two_formats_tells_what_is_lit_of_both() -> None:
    desk = desk_of()
    made_smaller = " ".join(line.text for line in desk.ask("aps-c 35mm K lens on e mount", Talk()).lines)
    assert "lights at least 68 % of full frame and covers APS-C: circle at least 28.3 mm" in made_smaller
    small = " ".join(line.text for line in desk.ask("25mm c-mount on e mount", Talk()).lines)
    assert "lights 15 to 44 % of full frame, 36 to 85 % of APS-C" in small
    plain = " ".join(line.text for line in desk.ask("50mm m42 on e mount", Talk()).lines)
    assert "covers full frame:" in plain
