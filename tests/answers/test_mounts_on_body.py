"""One lens offered in several mounts for one body: which is the easier, what it hangs on, what each ring costs."""

from __future__ import annotations

import pytest

from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.ways.pairs_apart import pairs_apart
from grammar.questions import Question, Thing
from grammar.reader import read
from tests.answers.picture import flat, numbers

ASKED = Question("in which mount do I buy it", "compare")


def _told(club, lenses, bodies):
    mounts = [lens_side(Thing("mount", (name,)), club.catalogue) for name in lenses]
    hosts = [body_side(Thing("mount", (name,)), club.catalogue) for name in bodies]
    assert all(isinstance(one, LensSide) for one in mounts)
    assert all(isinstance(one, BodySide) for one in hosts)
    return pairs_apart(ASKED, mounts, hosts, club.knowledge)[0]


def test_both_rings_are_told_where_both_reach_infinity(club):
    told = _told(club, ("m42", "om-mount"), ("e-mount",))
    rings = {row.case: row.value.nominal for row in told.quantities if row.name == "ring_thickness_mm"}
    assert sorted(rings.values()) == [pytest.approx(27.46), pytest.approx(28)]


def test_the_one_that_keeps_infinity_is_named_first(club):
    assert "M42" in _told(club, ("m42", "d"), ("ef-mount",)).lines[0].text.split(":")[0]


def test_infinity_through_glass_alone_is_told_as_such(club):
    text = " ".join(line.text for line in _told(club, ("m42", "fd-mount"), ("ef-mount",)).lines)
    assert "FD-mount" in text
    assert "through glass" in text or "with glass" in text


@pytest.mark.parametrize(
    ("lenses", "bodies"),
    [(("m42", "m42"), ("e-mount",)), (("m42", "om-mount"), ())],
)
def test_nothing_is_set_apart_of_one_mount_or_without_a_body(club, lenses, bodies):
    assert not _told(club, lenses, bodies).lines


def test_of_two_bodies_that_serve_both_lenses_none_is_named_the_better(club):
    told = _told(club, ("m42", "om-mount"), ("e-mount", "z-mount"))
    assert told.lines[0].text.startswith("No body serves them better than the other:")


def test_infinity_that_hangs_on_a_cup_is_not_promised(club):
    told = _told(club, ("c", "cs"), ("mft-mount",))
    text = " ".join(line.text for line in told.lines)
    assert "if the barrel enters the cup" in told.lines[0].text
    assert text.index("1.72 mm deep") < text.index("6.72 mm deep")


def test_one_that_hangs_on_a_cup_comes_after_one_that_does_not(club):
    assert _told(club, ("m42", "c"), ("mft-mount",)).lines[0].text.startswith("The easier is M42")


def test_mirrorless_mounts_are_asked_for_as_mirrorless_bodies_are(asked):
    found = flat(asked("which mirrorless mounts can take C at infinity, and which need a cup"))
    assert "E-mount" in found
    assert "C-RX" not in found


@pytest.mark.parametrize(
    ("say", "head", "named", "never"),
    [
        ("which slr mounts are too short for F body", "Too short for F-mount (46.5 mm)", "M42 (45.46 mm)", "E-mount ("),
        (
            "which lenses cant reach infinity on a K body",
            "Too short for K-mount (45.46 mm)",
            "FD-mount (42 mm)",
            "M42 (",
        ),
        (
            "what slr lenses will not focus to infinity on my F dslr",
            "Too short for F-mount",
            "OM-mount (46 mm)",
            "T2 (",
        ),
        ("which bodies can't take FD lenses", "Too deep for FD-mount (42 mm)", "EF-mount (44 mm)", "E-mount ("),
    ],
)
def test_the_mounts_that_do_not_do_are_told_first_where_they_are_asked_for(asked, say, head, named, never):
    found = asked(say)
    first = flat(found).partition(". ")[0]
    assert found["intent"] == "list-fits"
    assert first.startswith(head)
    assert named in flat(found).partition(" fit with ")[0]
    assert never not in flat(found).partition(" fit with ")[0].replace(head, "")


@pytest.mark.parametrize(
    "say",
    [
        "list rings for z body: R slr, C/Y, OM, MD. thickness",
        "Z body: OM, R slr and MD, which rings",
        "rings for OM, R slr to Z",
        "fewest rings for R slr, K on Z",
    ],
)
def test_a_mount_of_slrs_in_a_row_of_mounts_is_that_of_a_lens(club, say):
    question = read(say, club.lexicon)
    assert "r-mount-slr" in [lens.ids[0] for lens in question.lenses]
    assert [body.ids[0] for body in question.bodies] == ["z-mount"]


def test_bodies_told_by_slr_in_a_row_stay_bodies(club):
    question = read("OM lenses for R slr and K bodies", club.lexicon)
    assert [body.ids[0] for body in question.bodies] == ["r-mount-slr", "k-mount"]


@pytest.mark.parametrize(
    ("text", "ring"),
    [("any 645 lenses for my Z body? list pls", 47.3), ("half frame lenses for an X body, which are there", 11.25)],
)
def test_lenses_of_a_format_are_listed_by_their_mounts(asked, text, ring):
    found = asked(text)
    assert found["intent"] == "list-fits"
    assert any(low == pytest.approx(ring) for low, _ in numbers(found, "ring_thickness_mm"))
    assert "M42:" not in flat(found)


def test_t2_lenses_are_among_those_that_a_ring_could_be_made_for(asked):
    found = asked("which still lenses hold infinity on a PL camera?")
    assert "T2: nothing is sold, a plain ring could be made; ring for infinity 3 mm" in " ".join(found["text"].split())
    assert "a plain ring that keeps infinity could be made, which nobody sells" in " ".join(found["text"].split())


@pytest.mark.parametrize(("say", "first"), [
    ("what else than CS lenses can focus far on a CS camera", "C: reaches infinity"),
    ("which bodies leave room for a helicoid with M lenses", "E-mount: reaches infinity (likely); M to E helicoid"),
    ("what 16mm cine mounts work on MFT", "C: reaches infinity"),
    ("mounts with a register within a tenth of m42", "K-mount: the same"),
])  # fmt: skip
def test_only_what_is_asked_for_is_listed(asked, say, first):
    found = asked(say)
    assert found["intent"] == "list-fits"
    assert found["text"].split("\n  - ")[1].startswith(first)


@pytest.mark.parametrize(
    "say", ["anything fit my K dslr with infinity apart from K", "what fits a K body apart from K"]
)
def test_the_own_mount_of_a_body_is_left_out_of_the_list_and_not_of_the_ways(asked, say):
    found = asked(say)
    assert found["intent"] == "list-fits"
    assert "M42: reaches infinity (likely); M42 to K flush bush" in flat(found)
    assert "K-mount: reaches" not in flat(found)


@pytest.mark.parametrize("text", ["which bodies take c lenses without a sunk adapter", "c lens bodies that need no cup",
                                  "which cameras take C lenses with a flat ring"])  # fmt: skip
def test_bodies_without_a_cup_are_those_whose_ring_is_no_thinner_than_nothing(asked, text):
    found = asked(text)
    rings = found["quantities"]["ring_thickness_mm"]
    assert {row["case"] for row in rings} >= {"z-mount", "cs", "q-mount"}
    assert all(row["least"] >= 0 for row in rings)
    assert not {row["case"] for row in rings} & {"e-mount", "mft-mount", "rf-mount", "l-mount", "x-mount"}


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("T2 scope: ring lengths for EF, F and K bodies please", "T2 on K-mount: T2 to K ring [10 to 25 dollars]"),
        ("class has EF, MFT and E cameras, one M42 lens. rings?", "M42 on EF-mount: M42 to EF ring [8 to 20 dollars]"),
        ("M42 lens on E and A bodies", "M42 on A-mount: M42 to A ring"),
        ("which medium format cameras take P6 lenses", "- P645: reaches infinity (likely); P6 to P645 ring"),
        ("name every mirrorless for C mount", "- Z-mount: reaches infinity (likely); C to Z ring"),
        ("list the 39 mm mounts and how deep each", "- M39x1 SLR: thread M39x1, pitch 1 mm; register 45.2 mm"),
        ("what cine mounts are 52 mm deep", "4 cine mounts of 52 mm from flange to image: - PL: breech lock"),
        ("which objective threads are there besides rms", "- M25 objective, infinity: thread M25x0.75"),
        ("which mounts have no aperture ring on the lens", "- DKL: bayonet; register 44.7 mm"),
    ],
)
def test_what_is_listed_is_what_was_asked_for(asked, text, says):
    assert says in flat(asked(text))


def test_bodies_of_one_kind_are_no_bodies_of_another(asked):
    assert "E-mount" not in flat(asked("which medium format cameras take P6 lenses")).split("Not, save")[0]
