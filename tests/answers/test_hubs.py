"""One mount in the middle: rings to it and one on to each body, against a ring for every pair."""

from __future__ import annotations

import pytest

from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.ways.hubs import BASE_TOLD, HUB_TOLD, built_on_body, hub_of, through_hub
from engine.base.interval import Interval
from grammar.questions import Question, Thing
from grammar.reader import read
from tests.answers.picture import flat, numbers


def _lenses(club, *mounts):
    sides = [lens_side(Thing("mount", (name,)), club.catalogue) for name in mounts]
    assert all(isinstance(side, LensSide) for side in sides)
    return sides


def _bodies(club, *mounts):
    sides = [body_side(Thing("mount", (name,)), club.catalogue) for name in mounts]
    assert all(isinstance(side, BodySide) for side in sides)
    return sides


ASKED = Question("what to buy", "buy-plan")
M_HUB = Question("what to buy", "buy-plan", adapters=(Thing("mount", ("m-mount",), "M hub", piece="hub"),))


def _value(told, name, case):
    return next(row.value for row in told.quantities if (row.name, row.case) == (name, case))


def test_a_hub_costs_one_ring_a_lens_and_one_a_body(club):
    direct = Interval.exact(6.0)
    lenses, bodies = _lenses(club, "m42", "k-mount", "om-mount"), _bodies(club, "e-mount", "z-mount")
    told = through_hub(M_HUB, lenses, bodies, direct, club.knowledge)
    assert told.lines[0].text.startswith(f"{HUB_TOLD} M-mount as a hub")
    assert _value(told, "adapter_count", "through the hub").nominal == 5
    assert _value(told, "adapter_count", "direct").nominal == 6


def test_the_rings_to_and_from_the_hub_are_differences_of_registers(club):
    told = through_hub(M_HUB, _lenses(club, "m42"), _bodies(club, "e-mount"), None, club.knowledge)
    rings = [row.value.nominal for row in told.quantities if row.name == "ring_thickness_mm"]
    assert rings == [pytest.approx(45.46 - 27.8), pytest.approx(27.8 - 18)]


def test_two_lenses_of_one_mount_share_their_ring(club):
    told = through_hub(M_HUB, _lenses(club, "m42", "m42"), _bodies(club, "e-mount"), None, club.knowledge)
    assert _value(told, "adapter_count", "through the hub").nominal == 2


def test_a_hub_that_lies_too_deep_is_refused_by_name(club):
    ef = Question("what to buy", "buy-plan", adapters=(Thing("mount", ("ef-mount",), "EF hub", piece="hub"),))
    told = through_hub(ef, _lenses(club, "fd-mount"), [], None, club.knowledge)
    first = told.lines[0].text
    assert "does not go" in first or "EF-mount as a hub" not in first  # FD lies 2 mm short of EF


def test_the_hub_is_the_piece_that_is_called_one(club):
    assert hub_of(M_HUB) is M_HUB.adapters[0]
    assert hub_of(ASKED) is None


def test_building_on_the_longer_body_wastes_nothing(club):
    told = built_on_body(ASKED, _lenses(club, "m42"), _bodies(club, "ef-mount", "e-mount"), club.knowledge)
    assert told.lines[0].text.startswith(f"{BASE_TOLD} by building on EF")
    assert _value(told, "ring_thickness_mm", "ef-mount to e-mount").nominal == pytest.approx(26)


@pytest.mark.parametrize(("lens", "bodies"), [("fd-mount", ("ef-mount", "e-mount")), ("m42", ("e-mount",))])
def test_nothing_is_built_on_a_body_that_the_lens_does_not_reach(club, lens, bodies):
    assert not built_on_body(ASKED, _lenses(club, lens), _bodies(club, *bodies), club.knowledge).lines


def test_kinds_of_glass_in_brackets_are_as_many_lenses(club):
    question = club.ask("4 kinds of glass (M42 MD CY F), E and RF bodies. direct or via M, count them for me").question
    assert [lens.ids[0] for lens in question.lenses] == ["m42", "sr-mount", "cy-mount", "f-mount"]
    assert [body.ids[0] for body in question.bodies] == ["e-mount", "rf-mount"]


def test_long_lenses_are_counted_and_no_ring_is_so_long(asked):
    found = asked("each of our three long T2 lenses should work on any of the E, L and Z bodies. least to buy?")
    assert numbers(found, "adapter_count")[0] == (3, 3)
    found = asked("5 long K teles, one body RF, rings?")
    assert "One adapter is enough for all 5" in flat(found)


def test_direct_rings_beside_a_hub_are_counted_singly(asked):
    found = asked(
        "OM, C/Y, MD and FD lenses and two bodies, X and L. how many adapters direct, how many thru an M hub?"
    )
    assert flat(found).startswith("Together 8 adapters")
    assert "6 in all" in flat(found)


@pytest.mark.parametrize(
    ("said", "direct", "through"),
    [
        ("2 bodies (E, RF), 4 kinds of slr lens, is the m hub cheaper in pieces", 8, 6),
        ("4 kinds of slr lens on E and RF bodies: M hub or direct, how many adapters", 8, 6),
        ("3 kinds of lens, E and X bodies, EF hub or single rings", 6, 5),
        ("3 lens mounts, bodies E Z and L, direct or via M how many rings", 9, 6),
        ("three sorts of lens and 3 bodies, does a hub save rings", 9, 6),
    ],
)
def test_lenses_that_are_only_counted_have_not_the_mount_of_the_hub(asked, said, direct, through):
    assert [value[0] for value in numbers(asked(said), "adapter_count")] == [direct, through]


@pytest.mark.parametrize(
    ("said", "direct", "through"),
    [
        ("how many adapters for 5 mounts on 3 bodies direct vs hub?", 15, 8),
        ("how many rings do I need for 5 lens mounts x 2 bodies", 10, 7),
        ("i have 7 lens mounts and 3 camera mounts. how many rings with a hub", 21, 10),
        ("with five different mounts and two bodies how many adapters to buy", 10, 7),
        ("six mounts, two cameras. direct rings or hub, count?", 12, 8),
        ("M hub or direct rings when i own one body and six mounts", 6, 7),
        ("ten lens mounts on one body, how many adapters, hub or no hub", 10, 11),
        ("seven kinds of mount, two bodies, count of rings", 14, 9),
    ],
)
def test_mounts_that_are_only_counted_are_those_of_lenses(asked, said, direct, through):
    found = asked(said)
    assert [least for least, _ in numbers(found, "adapter_count")][:2] == [direct, through], found["text"]


def test_for_one_body_a_hub_does_not_pay(asked):
    assert "pays only from the second body on" in flat(asked("is a hub worth it for 4 mounts and 1 body"))


@pytest.mark.parametrize(
    ("said", "lenses", "bodies"),
    [
        (
            "going from E to Z next spring, own MD, C/Y and M42. how to not buy twice",
            ["sr-mount", "cy-mount", "m42"],
            ["e-mount", "z-mount"],
        ),
        (
            "i will switch from mft to E soon, lenses M42 and K. which rings should i buy now",
            ["m42", "k-mount"],
            ["mft-mount", "e-mount"],
        ),
        (
            "moving X to RF, M42, Exakta glass: do i have to buy all rings again",
            ["m42", "exakta-mount"],
            ["x-mount", "rf-mount"],
        ),
        (
            "changing systems E to L, got OM and M42, what to buy so its future proof",
            ["om-mount", "m42"],
            ["e-mount", "l-mount"],
        ),
    ],
)
def test_bodies_that_follow_each_other_take_the_same_lenses(club, said, lenses, bodies):
    question = read(said, club.lexicon)
    assert [lens.ids[0] for lens in question.lenses] == lenses
    assert [body.ids[0] for body in question.bodies] == bodies


def test_what_is_not_to_be_bought_twice_is_no_ring_to_avoid(asked):
    text = flat(asked("going from E to Z next spring, own MD, C/Y and M42. how to not buy twice"))
    assert "Not for" not in text
    assert "Nothing is wasted by building on E-mount" in text


@pytest.mark.parametrize(
    "said",
    [
        "F and OM lenses, bodies E and Z. direct or by a hub on M?",
        "F and OM lenses, bodies E and Z. direct or over M?",
        "F and OM lenses, bodies E and Z. adapters each vs a hub on M?",
    ],
)
def test_the_mount_of_a_hub_is_no_further_body_or_lens(club, said):
    question = read(said, club.lexicon)
    assert [thing.ids[0] for thing in question.bodies] == ["e-mount", "z-mount"]
    assert [thing.ids[0] for thing in question.lenses] == ["f-mount", "om-mount"]


@pytest.mark.parametrize(
    "said",
    [
        "five lens mounts three bodies: adapters directly vs everything via M?",
        "five lens mounts three bodies: direct or hub",
    ],
)
def test_bodies_that_are_only_counted_stand_apart_from_what_is_behind_a_colon(asked, said):
    text = flat(asked(said))
    assert "5 x 3 = 15" in text
    assert "5 + 3 = 8" in text


def test_what_may_be_built_on_one_body_stands_before_the_rows_of_the_pairs(asked):
    told = flat(asked("OM and SR glass, E and Z bodies. how many rings"))
    assert "of thickness. Nothing is wasted" in told
    assert "By pair: - OM-mount on E-mount" in told
