"""One lens offered in several mounts for one body: each by its ring, its price and who closes the iris."""

from __future__ import annotations

import pytest

from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.ways.mounts_on_body import mounts_on_body
from grammar.questions import Question, Thing

ASKED = Question("in which mount do I buy it", "compare")


def _told(club, lenses, bodies):
    mounts = [lens_side(Thing("mount", (name,)), club.catalogue) for name in lenses]
    hosts = [body_side(Thing("mount", (name,)), club.catalogue) for name in bodies]
    assert all(isinstance(one, LensSide) for one in mounts)
    assert all(isinstance(one, BodySide) for one in hosts)
    return mounts_on_body(ASKED, mounts, hosts, club.knowledge)


def test_both_are_told_to_reach_infinity_where_both_do(club):
    told = _told(club, ("m42", "om-mount"), ("e-mount",))
    assert told.lines[0].text.startswith("Both reach infinity there.")
    rings = {row.case: row.value.nominal for row in told.quantities if row.name == "ring_thickness_mm"}
    assert sorted(rings.values()) == [pytest.approx(27.46), pytest.approx(28)]


def test_the_one_that_keeps_infinity_is_named(club):
    told = _told(club, ("m42", "d"), ("ef-mount",))
    assert told.lines[0].text.startswith("Only M42 reaches infinity there.")


def test_infinity_through_glass_alone_is_told_as_such(club):
    first = _told(club, ("m42", "fd-mount"), ("ef-mount",)).lines[0].text
    assert "FD-mount only through a ring with glass" in first
    assert "M42 only" not in first


def test_none_is_said_where_none_does(club):
    assert _told(club, ("d", "c"), ("f-mount",)).lines[0].text == "None of them reaches infinity there."


def test_the_cheapest_ring_is_told_only_where_prices_differ(club):
    told = _told(club, ("m42", "ef-mount"), ("e-mount",))
    prices = [row.value.nominal for row in told.quantities if row.name == "price"]
    assert ("is the cheapest" in told.lines[0].text) == (len(set(prices)) > 1)
    assert "M42 is the cheapest" in told.lines[0].text


@pytest.mark.parametrize(
    ("lenses", "bodies"),
    [(("m42", "m42"), ("e-mount",)), (("m42", "om-mount"), ("e-mount", "z-mount")), (("m42", "om-mount"), ())],
)
def test_nothing_is_set_apart_of_one_mount_or_several_bodies(club, lenses, bodies):
    assert not _told(club, lenses, bodies).lines


def test_infinity_that_hangs_on_a_cup_is_not_promised(club):
    first = _told(club, ("c", "cs"), ("mft-mount",)).lines[0].text
    assert first.startswith("Only where the barrel enters the cup, else close-up only")
    assert first.index("1.72") < first.index("6.72")
    assert "Both reach" not in first


def test_one_that_hangs_on_a_cup_is_told_beside_one_that_does_not(club):
    first = _told(club, ("m42", "c"), ("mft-mount",)).lines[0].text
    assert first.startswith("Only M42 reaches infinity there.")
    assert "Only where the barrel enters the cup" in first
