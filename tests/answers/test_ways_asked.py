"""Two ways set against each other, plans that grow, and lists under conditions: what decides stands first."""

from __future__ import annotations

from math import log2

import pytest

from engine.render.record import record_of
from tests.answers.picture import close, flat, numbers, one
from tests.answers.talks import flat as answered
from tests.answers.talks import talk


def first_line(record):
    return " ".join(record["text"].split("\n- ")[0].split())


def test_a_reducer_against_the_plain_ring_is_told_by_light_and_price(asked):
    found = asked("0.71 reducer vs plain ring for an OM 50/1.8 on MFT")
    assert found["intent"] == "compare"
    assert one(found, "light_difference_stops") == close(2 * log2(1 / 0.71))
    assert one(found, "focal_length_mm") == close(35.5)
    assert "gives 0.99 stops more light than plain ring" in first_line(found)
    assert "is the cheaper" in first_line(found)


def test_two_tubes_are_told_by_the_size_each_gives(asked):
    found = asked("10mm tube vs 20mm tube on 50mm M42, E")
    assert [one(found, "magnification", f"{tube}mm tube") for tube in (10, 20)] == [close(0.2), close(0.4)]


def test_only_the_way_that_keeps_infinity_is_said_to(asked):
    found = asked("close focus M ring or a 10mm tube for a 50 M lens on E, which")
    assert first_line(found).startswith("Only M ring reaches infinity.")


def test_a_close_up_lens_loses_no_stops_by_its_dioptres(asked):
    found = asked("12mm tube or a +4 diopter on a 50mm M42 on E, which")
    assert not numbers(found, "light_difference_stops", "4x")
    assert one(found, "magnification", "diopter") == close(0.2)


def test_one_lens_on_one_body_needs_no_hub(asked):
    found = asked("one FD 50 and an RF body, do i need an M hub")
    assert first_line(found).startswith("No hub is needed")
    assert one(found, "adapter_count", "direct") == 1
    assert one(found, "adapter_count", "hub") == 2


def test_how_many_rings_and_what_they_cost_stands_first(asked):
    found = asked("shopping list: FD and OM lenses for an L body")
    assert first_line(found).startswith("Together 2 adapters, ")


def test_a_plan_grows_by_what_is_added(club):
    *_, both, more = talk(
        club, "what do i buy for MD and CY lenses on L", "getting an RF body too", "and also an OM lens"
    )
    assert one(record_of(both, club.knowledge), "adapter_count", "all pairs") == 4
    assert one(record_of(more, club.knowledge), "adapter_count", "all pairs") == 6


def test_a_body_for_several_lenses_is_one_that_takes_all(asked):
    found = asked("got Exakta, M42 and FD. which body takes all of them")
    assert flat(found).startswith("All 3 reach infinity by rings on E-mount")
    assert one(found, "ring_thickness_mm", "M42 on e-mount") == close(27.46)


@pytest.mark.parametrize("text", ["body for Exakta, no glass, only infinity, list", "which digital bodies take Exakta"])
def test_what_it_was_made_for_does_not_head_the_list(asked, text):
    found = asked(text)
    assert found["intent"] == "list-fits"
    assert (close(26.7), close(26.7)) in numbers(found, "ring_thickness_mm", "e-mount")
    assert "Exakta: reaches infinity" not in "".join(found["text"].split("\n")[:2])


def test_a_list_of_bodies_that_are_filled_tells_what_is_lit(asked):
    assert "% lit" in flat(asked("on which bodies does a 25mm C-mount lens fill the frame"))


@pytest.mark.parametrize("say", ["R (47 register) 50mm on Z", "50mm lens, R (slr 47), on Z", "R (47) 50mm on Z"])
def test_the_register_in_brackets_behind_a_mount_is_no_focal_length(asked, say):
    found = asked(say)
    assert "A 50 mm R-mount (SLR 47) lens" in flat(found)
    assert found["chains"][0]["verdict"] == "infinity"


def test_what_stands_in_brackets_tells_of_the_lens(asked):
    found = asked("a Pen F lens (the half frame slr), which mirrorless bodies take it with infinity")
    assert one(found, "ring_thickness_mm", "e-mount") == close(10.95)


def test_what_would_work_then_asks_of_the_same_lens_and_body(talked):
    found = flat(talked("D mount 25mm, got a flush d-c ring and the C-E cup. infinity?", "what would work then"))
    assert found.startswith("A 25 mm D-mount lens on an E-mount body: reaches infinity, provided")


def test_advice_on_one_body_is_not_told_of_another(talked):
    found = flat(talked("doc crew here, set of PL primes, L mount bodies. what goes between"))
    assert "PL lens on an EF body" not in found
    assert "PL lens on an EF body" in flat(talked("PL prime on an EF body, deep rear, what ring"))


def test_the_name_of_a_mount_alone_is_no_complaint(talked):
    found = flat(talked("inherited three SR/MD bayonet lenses from my aunt (28, 50, 135), which ring for an RF body?"))
    assert "stays open" not in found


@pytest.mark.parametrize(
    ("text", "mounts", "body"),
    [
        ("which of my old slr mounts will NOT work on EF dslr: FD, K, OM, MD, M42, C/Y", 6, "ef-mount"),
        ("which of my lenses reach infinity on Z: K, F, C", 3, "z-mount"),
        ("what rings do i need for an X body: C/Y, OM, K", 3, "x-mount"),
    ],
)
def test_mounts_listed_behind_a_colon_are_those_of_the_lenses(club, text, mounts, body):
    found = club.ask(text)
    assert [len(found.question.lenses), found.question.bodies[0].id] == [mounts, body]
    assert f"Together {mounts} adapters" in " ".join(line.text for line in found.lines)


def test_an_aperture_ring_that_works_is_told_and_not_asked_about(asked):
    told = asked("85mm C/Y portrait lens for a Z body, all metal, aperture ring works. Is there a plain ring for it?")
    assert flat(told).startswith("An 85 mm C/Y lens on a Z-mount body: reaches infinity")
    assert flat(asked("85mm C/Y on Z, does the aperture ring work?")).startswith("Yes, the iris works")


def test_a_lens_without_an_aperture_ring_is_told_which_chain_works_its_iris(asked):
    found = flat(asked("F lens no aperture ring on E. what now"))
    assert "It works with chain 2, F to E ring with iris lever." in found


def test_autofocus_through_a_ring_without_contacts_is_lost(asked):
    assert flat(asked("do i lose AF w/ EF on Z dumb ring")).startswith("Autofocus: no.")


def test_bodies_that_take_most_old_lenses_are_set_apart(asked):
    found = asked("which of E, Z, MFT takes most old glass")
    assert found["intent"] == "compare"
    assert "SLR mounts by a plain ring" in flat(found)


def test_a_list_of_what_fits_is_put_in_the_order_asked_for(club):
    first, thin, cheap = talk(
        club, "which lenses can go on RF with just a ring and keep infinity", "which of those is the shortest ring",
        "and the cheapest",
    )  # fmt: skip
    assert "best first" in answered(first)
    assert "thinnest ring first: M-mount" in answered(thin)
    assert "cheapest first" in answered(cheap)
    assert "dollars" in answered(cheap)
    assert "thinnest ring first: " in answered(talk(club, "what fits on E without glass", "thinnest first")[-1])


@pytest.mark.parametrize(("focal", "lines"), [(35, "35/135"), (90, "28/90"), (50, "50/75")])
def test_of_alike_rings_the_one_with_the_frame_of_the_lens_is_told(asked, focal, lines):
    found = asked(f"screw {focal}/3.5 rangefinder lens onto my M body")
    assert f"LTM to M ring, frame lines {lines}, which shows the frame of {focal} mm" in flat(found)


@pytest.mark.parametrize(
    ("say", "length"),
    [("V bayonet 80 onto an M645 body with a plain ring: infinity?", 11.6), ("P6 120 on an M645 body, no glass", 10.8)],
)
def test_a_ring_to_be_made_keeps_the_limit_that_no_glass_is_in_it(asked, say, length):
    head = first_line(asked(say))
    assert f"one of {length} mm would keep infinity" in head
    assert "No way found" not in head


@pytest.mark.parametrize(
    "say",
    ["m42-ef with chip or without", "c/y to ef adapter, chipped vs unchipped", "OM-EF with af confirm chip or without"],
)
def test_a_chip_changes_neither_seat_nor_infinity(asked, say):
    found = asked(say)
    assert found["intent"] == "compare"
    assert "A chip without a motor only names a lens" in flat(found)
    assert "tube" not in flat(found).split("plain or electronic ring")[0]
    assert "Only" not in first_line(found)
