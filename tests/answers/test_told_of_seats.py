"""One seat, one number: rings told in odd words, by what infinity was set, what a lens or body is told by."""

from __future__ import annotations

import pytest

from engine.render.record import record_of
from tests.answers.talks import flat, talk


def told(club, say):
    return record_of(talk(club, say)[-1], club.knowledge)


def error_mm(club, say):
    seat = told(club, say)["chains"][0]["register_error_mm"]
    return (seat["least"] + seat["greatest"]) / 2


@pytest.mark.parametrize(
    ("say", "error"),
    [
        ("ltm 50 on an EF dslr with a flat 1 mm thread ring, how far can I focus", 16.2),
        ("md 50 on F body with 1.2 mm flange ring, infinity?", 4.2),
        ("md 50 on a K body with a 1.5mm screw ring. how near is the farthest", 3.46),
        ("M42 135 on Z body: tubes 12+16 plus 1 mm flange ring, does that get to infinity", -0.46),
        ("M42 135 on Z via 12 and 16 mm M42 tubes and a 1mm M42-Z plate, infinity?", -0.46),
        ("AR 40 on a 17.7 camera with a 23 mm ring, infinity?", 0.2),
        ("P6 180 onto a 44 mm DSLR with a 30.2 ring, infinity ok?", 0.1),
        ("z m42 ring 29.4, infinity with a 35?", -0.06),
        ("my mft c adapter is 1.5 deep, 25mm lens, infinity?", 0.224),
        ("C to E cup measures -0.40, infinity with a 25?", 0.074),
        ("m42 50 on E with 27.3 m42 ring infinity", -0.16),
        ("om 28 on L, a 26.15 om adapter. far?", 0.15),
        ("my om 21 is never sharp on far hills, ring 28.05. infinity?", 0.05),
        ("m42 50 on E, ring was 27.5, i sanded it down to 27.38, infinity?", -0.08),
        ("m42 50 on E, lapped my ring from 27.6 down to 27.5, infinity?", 0.04),
        ("m42 50 on E, ring 27.5, took 0.1 off, infinity?", -0.06),
        ("m42 50 on E, ring 27.7 with 0.2 milled away, infinity?", 0.04),
    ],
)
def test_a_ring_told_by_its_length_is_as_thick_as_told(club, say, error):
    assert error_mm(club, say) == pytest.approx(error, abs=0.012)


@pytest.mark.parametrize(
    "say",
    [
        "fd 105 on EF no correction glass: reaches infinity?",
        "md 105 onto a K body, no corrector glass, does it get to infinity",
        "md 105 onto a K body minus the optic, does it get to infinity",
        "can an md 50 reach infinity on F with an empty ring",
        "FD 135 on EF ring, i pulled the element, infinity?",
        "does removing the glass from a fd-ef ring kill infinity",
    ],
)
def test_a_ring_without_its_glass_is_not_told_to_reach_infinity(club, say):
    assert told(club, say)["chains"][0]["verdict"] == "macro-only"


@pytest.mark.parametrize(
    ("say", "begins", "error"),
    [
        (
            "my t2 ring for E comes out 37.3 with the caliper, so 0.3 too much?",
            "Yes, 0.3 mm too thick: right is 37",
            0.3,
        ),
        ("my t-ring is 37.2 long so 0.2 too much?", "Yes, 0.2 mm too thick: right is 37", 0.2),
        ("my K to Z ring is 29.6 by caliper. 0.1 too thick?", "Yes, 0.14 mm too thick: right is 29.46", 0.14),
        ("m42-E adapter measured 27.3, .16 short right?", "Yes, 0.16 mm too thin: right is 27.46", -0.16),
    ],
)
def test_by_how_much_a_ring_is_off_is_answered_by_its_length(club, say, begins, error):
    assert flat(talk(club, say)[-1]).startswith(begins)
    assert error_mm(club, say) == pytest.approx(error, abs=0.012)


@pytest.mark.parametrize(
    ("say", "extension"),
    [
        ("if i set infinity of a 135 on a chimney 100 m off what error do I build in", 0.183),
        ("calibrated infinity of a 200 on roofs 250m away, what's the leftover error", 0.160),
        ("nailed the infinity of my 24 on a wall 15 m away, good enough?", 0.039),
        ("zeroed the 58 on a sign 70 yards off. how far out am i", 0.053),
    ],
)
def test_what_infinity_is_set_by_tells_the_error_built_in(club, say, extension):
    rows = told(club, say)["quantities"]["extension_mm"]
    assert rows[0]["least"] == pytest.approx(extension, abs=0.001)


@pytest.mark.parametrize(
    ("say", "shim"),
    [
        ("28 won't go past 6 m on this adapter, on its own film body it's fine: how much metal to remove", 0.132),
        ("on this adapter 35 falls short at 8 m, how much do i lap off", 0.154),
        ("20 just makes it to 2 m. ring too thick by?", 0.204),
    ],
)
def test_a_bare_number_that_goes_so_far_is_a_lens(club, say, shim):
    rows = told(club, say)["quantities"]["shim_mm"]
    rows = rows if isinstance(rows, list) else [rows]
    assert [row["least"] for row in rows] == [pytest.approx(shim, abs=0.001)]


@pytest.mark.parametrize(
    ("say", "mark"),
    [
        ("the 50 wants 6 m for infinity, after 2 layers of tape 0.05 each where will it be", 7823),
        ("28mm hits infinity at 4m. if I add 0.1 where does it land", 7992),
    ],
)
def test_where_infinity_falls_behind_a_shim(club, say, mark):
    row = told(club, say)["quantities"]["scale_mark_mm"]
    row = row[0] if isinstance(row, list) else row
    assert (row["least"] + row["greatest"]) / 2 == pytest.approx(mark, rel=0.02)


def test_two_lenses_that_end_somewhere_are_off_each_by_its_own(club):
    record = told(club, "28 stops at 3 m and 50 stops at 6 m on that adapter, how much off")
    rows = [row["least"] for row in record["quantities"]["register_error_mm"]]
    assert rows[:2] == [pytest.approx(0.266, abs=0.002), pytest.approx(0.424, abs=0.002)]


def test_a_nominal_ring_is_as_much_off_as_its_stop_tells(club):
    found = flat(talk(club, "50 stops at 9 m. if the adapter is meant to be 29.46 how thick must mine be")[-1])
    assert "is 29.74 mm thick where 29.46 mm is meant" in found


@pytest.mark.parametrize(
    "say", ["mir 37mm on the A mount body, 1mm ring, infinity", "gull 58 on Z, 13-25 helicoid + 4.5 adapter, infinity?"]
)
def test_a_ring_under_a_lens_of_no_mount_tells_no_distance(club, say):
    record = told(club, say)
    assert "It depends on the lens's mount" in record["text"]
    assert not record.get("chains")


def test_a_stack_that_has_infinity_by_its_lengths_has_it(club):
    record = told(club, "75 enlarger, 68 flange to focus; helicoid 25-55 with 10 mm of rings on Z; infinity?")
    assert record["quantities"]["helicoid_setting_mm"][0]["least"] == pytest.approx(42.0)
    assert record["chains"][0]["verdict"] == "infinity"


def test_what_a_lens_without_register_has_sharp_is_measured_off_it(club):
    record = told(club, "80 enlarger, window focus at 74.5, MFT; tube needed?")
    assert record["quantities"]["stack_mm"][0]["least"] == pytest.approx(55.25)


@pytest.mark.parametrize(
    ("say", "holds"),
    [
        ("old lenses zoom a bit when I rack focus, new ones dont. how come", "moves out as a whole"),
        ("why do i only get closeups with this thing", "too much spacing"),
        ("why's the helicoid needed on top of the lens's own focus", "adds its travel"),
        ("why does stopping down fix the infinity", "It hides the error"),
        ("why do medium format lenses fit on everything", "registers are long"),
        ("why do fast lenses show the error more", "f-number times"),
    ],
)
def test_why_in_everyday_words(club, say, holds):
    assert holds in flat(talk(club, say)[-1])[:500]
