"""Pieces as they are named: what they do to that very lens comes first, and never a way that nobody asked about."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, flat, numbers


def first(record):
    return record["chains"][0]


def error_mm(record):
    told = first(record)["register_error_mm"]
    return (told["least"] + told["greatest"]) / 2


@pytest.mark.parametrize(
    "text",
    [
        "a 135 head for the reflex housing, M bayonet (68.8), on a plain M to E ring, does it focus",
        "400mm off a mirror housing, M bayonet, clicks right onto the M-L ring. infinity?",
    ],
)
def test_a_head_of_a_reflex_housing_is_no_m_lens(asked, text):
    found = asked(text)
    assert first(found)["verdict"] == "unusable"
    assert error_mm(found) == close(-41.0)
    assert close(41.0) in [least for least, _ in numbers(found, "ring_thickness_mm", "added between")]


def test_a_number_tells_the_register_of_a_mate_of_the_mount_named(asked):
    found = asked("M39 lens (45.2) on an LTM to Z ring, infinity?")
    assert error_mm(found) == close(-16.4)


def test_a_ring_for_another_mount_holds_no_lens(asked):
    found = asked("my only adapter is F to E. OM 50 - will it seat and reach infinity")
    assert first(found)["verdict"] == "unusable"
    assert error_mm(found) == pytest.approx(0.5, abs=0.05)
    assert "takes another mount" in " ".join(found["text"].split())


def test_how_to_get_there_is_told_the_ring_that_would_do(asked):
    found = asked("SA zoom to L body, EF ring will do? same flange")
    assert found["text"].splitlines()[0 if not found["text"].startswith(">") else 1].startswith("Not that way")
    assert first(found)["verdict"] == "infinity"


def test_a_lens_held_bare_is_told_for_each_of_several(asked):
    found = asked("OM lens bare on the F flange, no ring at all: how far do a 24 and a 100 see")
    assert {chain["verdict"] for chain in found["chains"]} == {"macro-only"}


def test_a_macro_ring_of_two_mounts_is_a_ring(asked):
    found = asked("2mm MD-EF macro ring + EF-MFT ring, a 50mm lens on top. how far does it see")
    assert first(found)["verdict"] == "macro-only"
    assert error_mm(found) == pytest.approx(2.5, abs=0.05)


def test_with_its_glass_taken_out_a_ring_brings_no_infinity(asked):
    found = asked("sr 50 on an F dslr without the glass, how far will it see")
    assert first(found)["verdict"] == "macro-only"
    assert error_mm(found) == pytest.approx(3.0, abs=0.05)


def test_beside_glass_it_is_told_what_comes_without(asked):
    found = asked("can an SR 50 reach infinity on K")
    assert [chain["verdict"] for chain in found["chains"]][:1] == ["infinity"]
    assert found["chains"][-1]["verdict"] == "macro-only"
    assert "without glass" in found["text"]


def test_a_ring_that_the_facts_do_not_hold_is_reckoned(asked):
    found = asked("oct-18 35mm, PL to MFT ring i have. what piece is missing")
    assert first(found)["pieces"][0]["thickness_mm"]["least"] == pytest.approx(5.0, abs=0.1)
    assert first(found)["verdict"] == "infinity"


def test_a_wide_ring_does_not_enter_a_cup(asked):
    found = asked("how do I get an OM lens on an NX body")
    assert all(piece["kind"] != "recessed" for chain in found["chains"] for piece in chain["pieces"])
    assert "20.5 mm" in found["text"]


def test_each_of_several_rings_serves_its_own_lens(asked):
    text = asked("have 3 rings: M42-E, K-E, LTM-E. what of my QBM 50, LTM 35 and M42 135")["text"]
    assert text.count("none of the rings you named takes it") == 1


def test_rings_to_make_are_listed_for_a_body_that_little_is_sold_for(asked):
    found = asked("what can sit on a four thirds dslr and still get infinity")
    told = {row["case"]: row["least"] for row in found["quantities"]["ring_thickness_mm"]}
    assert told["om-mount"] == close(7.33)
    assert told["m42"] == close(6.79)


def test_which_of_several_bodies_takes_a_lens(asked):
    found = asked("which of E, X and MFT takes a C mount with least trouble")
    told = {row["case"]: row["least"] for row in found["quantities"]["ring_thickness_mm"]}
    assert told["mft-mount"] == pytest.approx(-1.724, abs=0.01)


def test_a_sensor_that_few_bodies_have_tells_the_body(asked):
    found = asked("p67 165 to 44x33")
    assert first(found)["verdict"] == "infinity"
    assert (58.25, 58.25) in numbers(found, "ring_thickness_mm")


@pytest.mark.parametrize(
    ("text", "far"),
    [
        ("C 75 on RF body using a flat 2 mm plate instead of a cup", "1.41 m"),
        ("C 25 on MFT with a flat 1 mm ring instead of the cup. how far", "28 cm"),
        ("C 50 on E, flat ring 1 mm instead of a recessed one", "1.8 m"),
        ("C 25mm on E with a plain ring 1.5 mm rather than the cup, infinity?", "37 cm"),
    ],
)
def test_a_ring_told_by_its_length_stands_in_the_place_of_the_cup_that_it_is_told_for(asked, text, far):
    found = asked(text)
    assert first(found)["verdict"] == "macro-only"
    assert f"stops at {far}" in flat(found)


@pytest.mark.parametrize("by", ["through a ring", "via an adapter", "with a ring"])
def test_through_a_ring_asks_for_no_ring_of_the_facts(asked, by):
    found = asked(f"P6 180mm lens on a M645 body {by}, distant things?")
    assert first(found)["verdict"] == "infinity"
    assert "within the limits" not in flat(found)


@pytest.mark.parametrize(("say", "off_mm"), [
    ("25mm c lens with the 1mm and the 0.5mm ring under it, in a proper E cup. how far away can it focus", 1.5),
    ("i put the 1 mm c ring under my 25mm c-mount on the C-E adapter, does it still get infinity", 1.0),
    ("a 35mm C lens with 0.5 + 1 + 2 mm rings in an E cup, what is the farthest", 3.5),
    ("16mm c lens in a proper MFT cup with half a millimetre ring beneath, how far away can it focus", 0.5),
    ("25 mm c-mount, the 1mm ring under it, cup on Z body. focus range?", 1.0),
    ("m42 50mm with the 10mm and 20mm tubes on an m42 to E ring, furthest distance", 30.0),
])  # fmt: skip
def test_rings_beneath_a_lens_add_to_the_ring_that_seats_it(asked, say, off_mm):
    assert error_mm(asked(say)) == pytest.approx(off_mm, abs=0.06)


def test_a_length_behind_a_ring_is_that_of_the_ring(asked):
    assert error_mm(asked("a 50 mm c lens on a C to MFT ring, flat 1 mm, does it reach infinity")) == close(2.724)


@pytest.mark.parametrize("say", [
    "customers come with E, Z and L bodies, our primes are all PL. which rings do we stock",
    "clients have E, Z and L bodies, we only own PL lenses, which adapters to buy",
])  # fmt: skip
def test_one_word_for_bodies_heads_all_of_its_list(asked, say):
    rows = asked(say)["quantities"]["ring_thickness_mm"]
    told = {row["case"]: round((row["least"] + row["greatest"]) / 2, 2) for row in rows}
    assert told == {"e-mount": 34, "z-mount": 36, "l-mount": 32}


def test_a_reducer_that_is_flat_and_has_no_factor_adds_nothing(asked):
    say = "flat d reducer in a CS cctv camera, 13mm cine lens. does it get to infinity or just nearly"
    assert error_mm(asked(say)) == close(0.236)


@pytest.mark.parametrize(("say", "lens", "body"), [
    ("58mm lens with an E ring", "58 mm lens", "E-mount body"),
    ("50/1.8 Z adapter", "50 mm f/1.8 lens", "Z-mount body"),
    ("135 manual lens mft plain ring", "135 mm manual lens", "Micro Four Thirds body"),
])  # fmt: skip
def test_a_ring_of_a_modern_body_beside_a_lens_without_a_mount_is_that_of_the_body(asked, say, lens, body):
    assert f"{lens} on a" in asked(say)["reading"]
    assert body in asked(say)["reading"]


@pytest.mark.parametrize(("say", "ring"), [
    ("my E ring for K is 27.4, k 50", "50 mm K-mount lens on an E-mount body with a 27.4 mm K-mount to E-mount"),
    ("MFT ring for OM, 26.6 mm, 28mm lens", "with a 26.6 mm OM-mount to Micro Four Thirds adapter"),
    ("Z ring for F lenses is 30.4, 35mm. infinity?", "with a 30.4 mm F-mount to Z-mount adapter"),
])  # fmt: skip
def test_a_ring_told_by_its_body_for_a_mount_is_as_long_as_it_is_told(asked, say, ring):
    assert ring in asked(say)["reading"]
    assert "straight on" not in flat(asked(say))


@pytest.mark.parametrize(
    ("text", "off", "verdict"),
    [
        (
            "16mm c lens left half a turn unscrewed so the marks face up. does it cost infinity?",
            0.397,
            "macro-only",
        ),
        ("35mm m42 in its E ring, backed off one whole turn so the index is on top. infinity?", 1.0, "macro-only"),
        ("OM 50 in the F to E ring, filed it until it fitted. infinity?", 0.5, "macro-only"),
        ("MD 135 through an M42-E ring, 27.46 thick. horizon?", 1.96, "unusable"),
        ("LTM 50 in a 39 to 42 bush on M42-E ring", 16.66, "macro-only"),
        ("two washers, 0.1 and 0.25, under my 50. how far can it see now", 0.35, "macro-only"),
        ("theres a 0.3 gap all round between my OM ring and the E body, it doesn't close. 28mm", 0.3, "macro-only"),
        ("M42 35 on E, the flange stands 0.15 off the ring all round. horizon?", 0.15, "macro-only"),
        ("K 28 on Z won't seat flush, 0.25 mm daylight under it. far stuff?", 0.25, "macro-only"),
        ("two stacked adapters each 0.06 too long, 24mm lens, furthest?", 0.12, "macro-only"),
    ],
)
def test_what_is_left_open_or_put_between_is_what_the_lens_is_off_by(asked, text, off, verdict):
    found = asked(text)
    assert first(found)["verdict"] == verdict
    assert error_mm(found) == pytest.approx(off, abs=0.02)


@pytest.mark.parametrize(
    ("text", "ring", "verdict"),
    [
        ("only 2 mm between E and Z, can an E lens really hold infinity on it?", 2.0, "infinity"),
        ("E and Z are 2 mm apart. will an E 24 reach the horizon on a Z body", 2.0, "infinity"),
        ("a mere 0.54 between OM and K. so can OM lenses do infinity there or not", 0.54, "unusable"),
        ("gap between A and EF is half a mm, A 50 on EF infinity?", 0.5, "unusable"),
        ("C/Y 35 on EF, 1.5 gap left by the registers. infinity?", 1.5, "infinity"),
        ("only half a mm between A and EF, does my A 50 get infinity there", 0.5, "unusable"),
        ("E-Z ring measured 1.93, E 20mm. ok?", 2.0, "infinity"),
    ],
)
def test_what_two_mounts_differ_by_is_no_ring_the_wrong_way_round(asked, text, ring, verdict):
    found = asked(text)
    assert first(found)["verdict"] == verdict
    assert close(ring) in [least for least, _ in numbers(found, "ring_thickness_mm")]


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("it sits 0.1 deep, which way does focus go", "Past infinity: the lens sits 0.1 mm too close"),
        (
            "ring is 0.05 too thick, which side of infinity am i on",
            "Short of infinity: the lens sits 0.05 mm too",
        ),
        ("if sensor sits 0.1 too far back what does that do to focus", "Short of infinity: the lens sits 0.1 mm"),
        ("two shims .003 and .005 inch together", "Together 0.2 mm: 0.0762 + 0.127 mm"),
        ("12 thou of shim is how many mm", "12 thou is 0.305 mm"),
        ("shim of .1 left out, 35mm, do i still hit infinity", "Infinity is there"),
        (
            "ring 0.2 too thin, put a 0.15 shim under it. 35mm infinity?",
            "Left so, a 35 mm lens has infinity at its 25 m",
        ),
        ("the .3 shim overshoots by .08, what's right", "A shim of 0.22 mm"),
        ("why do the registers of FD and EF rule out a plain ring", "FD-mount lenses sit 42 mm from the sensor"),
        ("0.1 + 0.1 + 0.05 washers under the lens and its on the mark. total?", "Together 0.25 mm: 2 x 0.1 + 0.05 mm"),
        (
            "needed 3 of the 0.1 washers plus a 0.05. what one shim instead",
            "Together 0.35 mm: 3 x 0.1 + 0.05 mm",
        ),
    ],
)
def test_which_way_it_goes_and_what_sheets_come_to_is_told_first(asked, text, head):
    assert flat(asked(text)).startswith(head)
