"""Which of two mounts, bodies or rings is the easier: told first, with what each does; and no caution told twice."""

from __future__ import annotations

from typing import Any

import pytest

from engine.ask import Desk
from engine.talk import Talk
from tests.answers.picture import flat
from tests.answers.talks import flat as lines_of
from tests.answers.talks import talk


def verdicts(record: dict[str, Any]) -> list[str]:
    return [chain["verdict"] for chain in record["chains"]]


def test_the_bare_one_of_two_rings_is_a_ring_without_glass(asked):
    found = asked("m42 to F: the one with the lens in it or the bare one")
    assert verdicts(found) == ["infinity", "macro-only"]
    assert "without glass" in flat(found)


def test_two_mounts_of_one_lens_are_told_by_how_each_comes_out_and_in_the_other_ring(asked):
    found = asked("a 12mm lens is offered in C or CS mount, which for a micro four thirds body")
    assert found["text"].split("\n")[0].startswith("The easier is 12 mm C")
    assert verdicts(found) == ["infinity", "infinity", "macro-only"]
    assert "5 mm too far out" in flat(found)


def test_two_bodies_for_one_lens_are_told_by_how_each_comes_out(asked):
    found = asked("M42 on EF or on F, which is better")
    assert flat(found).startswith("The easier is M42 on EF-mount. M42 on EF-mount: to infinity; M42 on F-mount: to "
                                  "infinity only through glass.")  # fmt: skip
    assert "lights 100 %" not in flat(found)


def test_lenses_described_on_two_bodies_are_told_so_too(asked):
    text = flat(asked("MD 50/1.4 on A-mount or on E, which is better"))
    assert text.startswith("The easier is E-mount body.")
    assert "least ring" not in text


def test_mounts_to_adapt_to_no_body_in_particular_are_set_apart_by_their_iris(asked):
    text = flat(asked("FD or EF glass for adapting to mirrorless, which and why"))
    assert "FD-mount: register 42 mm; the iris by a ring on the lens." in text
    assert "only a ring with electronics closes it" in text
    assert "not the same" not in text


def test_of_a_lens_of_no_known_mount_only_what_it_hangs_on_is_told(asked):
    text = flat(asked("will my 50mm old lens reach infinity on E mount? no idea what mount"))
    assert "It depends" in text
    assert "service shims" not in text


@pytest.fixture(scope="module")
def deep(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    path = tmp_path_factory.mktemp("gear") / "gear.yaml"
    text = "lenses:\n  avocet:\n    name: avocet\n    mount: m-mount\n    focal_length: 35 mm\n    rear_reach: 15 mm\n"
    path.write_text(text, encoding="utf-8")
    return Desk(gear=path)


def test_how_far_the_rear_reaches_is_told_once(deep):
    chain = lines_of(deep.ask("avocet on E-mount", Talk()))
    assert chain.count("behind the body flange") - chain.count("lies behind the body flange") == 1
    card = deep.ask("card for avocet on E-mount", Talk()).document
    assert card is not None
    assert card.text.count("look before you close up") == 0
    assert "measure before mounting" in card.text


def test_a_danger_that_is_told_leaves_of_the_chain_only_its_numbers(deep):
    text = lines_of(deep.ask("is it safe to mount avocet on E, the rear is deep", Talk()))
    assert "the rear reaches 5.2 mm behind the body flange" in text
    assert text.count("Measure how") == 1


def test_rings_of_two_lengths_are_told_by_what_each_does(asked):
    found = asked("difference between a 2mm and a 1.46 M42-EF ring")
    assert sorted(verdicts(found)) == ["infinity", "macro-only"]
    assert "0.54 mm too far out" in flat(found)


def test_the_one_with_glass_is_set_against_the_plain_one_told_before(club):
    then = talk(club, "M42 on F body, flat ring", "what about the one with glass then, is it better?")[1]
    assert lines_of(then).startswith("Only ring with glass reaches infinity.")
