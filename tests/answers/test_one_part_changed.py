"""A turn that changes one part alone: the glass, the tube, the stop, the light; all else stays, and what was asked."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk
from tests.answers.test_swapped_in_turns import FIRST, asked_on

TUBED = FIRST["macro-distance"]
LIT = FIRST["exposure-nd"]


@pytest.mark.parametrize("asked", [key for key in FIRST if key != "macro-distance"])
@pytest.mark.parametrize(
    "said", ["with a 0.71 reducer", "what with a speed reducer 0.71", "put a focal reducer 0.71 in", "through a .71"]
)
def test_a_reducer_put_between_asks_the_same(club: Desk, asked: str, said: str) -> None:
    last = talk(club, FIRST[asked], said)[-1]
    assert last.question is not None
    assert [piece.factor for piece in last.question.adapters] == [0.71]
    assert last.intent == asked


@pytest.mark.parametrize("asked", ["coverage", "crop-equivalent", "depth-of-field", "macro-distance", "focus-verdict"])
@pytest.mark.parametrize("said", ["stopped down to f11", "stop down to 11", "what if i stop down to f/11"])
def test_a_stop_alone_asks_the_same(club: Desk, asked: str, said: str) -> None:
    last = talk(club, FIRST[asked], said)[-1]
    assert last.question is not None
    assert (last.intent, last.question.f_number) == (asked, 11)


@pytest.mark.parametrize(
    ("said", "lengths"),
    [
        ("and 10mm more", [20, 10]),
        ("with an extra 15mm", [20, 15]),
        ("8mm more extension", [20, 8]),
        ("and add a 12mm one", [20, 12]),
        ("add a 5 mm ring", [20, 5]),
        ("with 16mm of tube", [16]),
        ("take the tube off", []),
        ("lose the tube", []),
        ("leave out the tube", []),
    ],
)
def test_a_tube_more_or_less(club: Desk, said: str, lengths: list[float]) -> None:
    last = talk(club, TUBED, said)[-1]
    assert last.question is not None
    assert [piece.thickness_mm for piece in last.question.adapters] == [(one, one) for one in lengths]
    assert [lens.focal_length_mm for lens in last.question.lenses] == [50]


def test_glass_behind_a_tube_leaves_the_tube(club: Desk) -> None:
    last = talk(club, TUBED, "with a 1.4x converter")[-1]
    assert "1.4x glass makes 0.56x of the 0.4x" in flat(last)


@pytest.mark.parametrize(("said", "stop"), [("a 135 f2.8", 4.0), ("and a 300 5.6", 5.6), ("same with my 85", 4.0)])
def test_the_stop_that_was_set_holds_for_the_next_lens_as_far_as_it_opens(club: Desk, said: str, stop: float) -> None:
    last = talk(club, FIRST["depth-of-field"], said)[-1]
    assert last.question is not None
    assert last.question.f_number == stop
    assert f"f/{stop:g} at 3 m" in flat(last)


@pytest.mark.parametrize(
    ("said", "light"), [("and inside?", "room"), ("at night", "bright-street"), ("heavy overcast", "overcast")]
)
def test_other_light_alone_asks_the_same(club: Desk, said: str, light: str) -> None:
    last = talk(club, LIT, said)[-1]
    assert last.question is not None
    assert last.question.said("light") == light
    assert last.question.said("shutter") == "1/50 s"


def test_a_ring_of_a_told_length_joins_no_other_pair(club: Desk) -> None:
    last = talk(club, "50mm f/2 m42 on E aps-c with a 27.9mm ring, infinity?", "and on Z?")[-1]
    assert "29.46 mm" in flat(last)


def test_a_five_millimetre_ring_behind_another_lens_is_a_tube(club: Desk) -> None:
    (found,) = talk(club, "50mm f2 m42 on E with a 5 mm ring, how close")
    assert "with a 5 mm extension tube" in found.reading


def test_close_up_is_asked_in_two_words(club: Desk) -> None:
    last = talk(club, FIRST["chain"], "and close up with a 10mm tube?")[-1]
    assert last.intent == "macro-distance"


LISTED = "what lenses fit on E"
PLANNED = "which adapters for M42, OM and FD lenses on E and Z"


@pytest.mark.parametrize(
    ("said", "body"), [("on mft instead", "mft-mount"), ("ok and L mount", "l-mount"), ("for RF then", "rf-mount")]
)
def test_another_body_is_listed_for(club: Desk, said: str, body: str) -> None:
    last = talk(club, LISTED, said)[-1]
    assert last.question is not None
    assert (last.intent, last.question.lenses) == ("list-fits", ())
    assert body in last.question.bodies[0].ids


def test_a_list_is_kept_to_a_price_and_ordered_by_it(club: Desk) -> None:
    last = talk(club, LISTED, "cheapest first")[-1]
    prices = [line.text.split("[")[1].split(" ")[0] for line in last.lines if "[" in line.text]
    assert last.intent == "list-fits"
    assert [float(price) for price in prices] == sorted(float(price) for price in prices)


@pytest.mark.parametrize("said", ["without the Z", "i sold the Z", "forget the Z body", "not the Z", "leave out the Z"])
def test_a_body_goes_from_a_plan(club: Desk, said: str) -> None:
    last = talk(club, PLANNED, said)[-1]
    assert last.question is not None
    assert [body.ids[0] for body in last.question.bodies] == ["e-mount"]
    assert [lens.ids[0] for lens in last.question.lenses] == ["m42", "om-mount", "fd-mount"]


@pytest.mark.parametrize("said", ["plus a K lens", "i also have a K lens", "and K as well"])
def test_a_lens_comes_to_a_plan(club: Desk, said: str) -> None:
    last = talk(club, "M42 OM FD lenses, bodies E and Z, what rings to buy", said)[-1]
    assert last.question is not None
    assert [lens.ids[0] for lens in last.question.lenses] == ["m42", "om-mount", "fd-mount", "k-mount"]


@pytest.mark.parametrize("said", ["and M42?", "M42 as well", "what about M42"])
def test_a_third_lens_is_set_beside_two(club: Desk, said: str) -> None:
    last = talk(club, "compare FD and OM on E", said)[-1]
    assert last.question is not None
    assert [lens.ids[0] for lens in last.question.lenses] == ["fd-mount", "om-mount", "m42"]


@pytest.mark.parametrize("said", ["the ring measures 27.3", "i measured its register, 45.62", "ring came 27.3"])
def test_what_is_measured_on_the_way_is_judged(club: Desk, said: str) -> None:
    assert "0.16 mm too close" in flat(talk(club, "M42 50/1.8 on E", said)[-1])


def test_what_a_mount_is_known_by_is_told_in_parts(club: Desk) -> None:
    last = talk(club, "unknown bayonet lens, three lugs, 47.5 throat", "flange measures 45.5")[-1]
    assert last.intent == "identify-mount"
    assert "C/Y" in flat(last)


@pytest.mark.parametrize(("register", "told"), [("45.2", "0.26 mm too far out"), ("45.6", "0.14 mm too close")])
def test_a_register_measured_on_the_way_tells_the_shim(club: Desk, register: str, told: str) -> None:
    last = talk(club, "M42 50/1.8 on E", f"its register is really {register}", "so shim how much")[-1]
    assert told in last.lines[0].text


def test_a_whole_number_that_is_no_stop_is_how_far_away(club: Desk) -> None:
    last = talk(club, FIRST["depth-of-field"], "and at 5")[-1]
    assert last.question is not None
    assert (last.question.distance_mm, last.question.f_number) == (5000, 4)


def test_a_size_told_next_is_what_the_tubes_shall_give(club: Desk) -> None:
    assert "50 mm that it wants" in flat(talk(club, TUBED, "and with 1:1")[-1])


def test_what_only_tells_of_the_picture_warns_of_nothing(club: Desk) -> None:
    last = talk(club, "does a 50 1.8 FD cover mft", "is that safe")[-1]
    assert "a small disc" not in flat(last)
    assert "does not make it safe" in flat(last)


def test_two_formats_named_are_set_against_each_other(club: Desk) -> None:
    last = talk(club, "PL on E, which ring", "theyre S35, ff ok?")[-1]
    assert last.intent == "coverage"


@pytest.mark.parametrize("asked", FIRST)
@pytest.mark.parametrize(
    ("said", "focal", "body"),
    [
        ("actually a 35mm", 35, "e-mount"), ("make it my 135", 135, "e-mount"), ("if i use a 28", 28, "e-mount"),
        ("what would a Z body do", 50, "z-mount"), ("my x instead", 50, "x-mount"), ("make it a Z body", 50, "z-mount"),
    ],
)  # fmt: skip
def test_one_thing_alone_in_many_words(club: Desk, asked: str, said: str, focal: float, body: str) -> None:
    if asked == "macro-distance" and focal == 28:
        pytest.skip("may be a tube as well")
    last = talk(club, FIRST[asked], said)[-1]
    assert last.question is not None
    assert [lens.focal_length_mm for lens in last.question.lenses] == [focal]
    assert body in last.question.bodies[0].ids
    assert last.intent == asked_on(asked, body)


def test_a_lens_that_opens_wider_is_closed_so_far(club: Desk) -> None:
    last = talk(club, FIRST["coverage"], "what if its f8")[-1]
    assert last.question is not None
    assert (last.question.f_number, last.question.lenses[0].f_number) == (8, 2)


REDUCED = "FD 50 1.4 on mft with a 0.71 reducer, equivalent"
PLAIN_WAY = "M42 50/1.8 on E"


@pytest.mark.parametrize("said", ["take it off", "no reducer", "and without it"])
@pytest.mark.parametrize("then", ["put it back", "and back on", "with the reducer again"])
def test_what_was_taken_off_is_put_back(club: Desk, said: str, then: str) -> None:
    *_, off, on = talk(club, REDUCED, said, then)
    assert off.question is not None
    assert on.question is not None
    assert [piece.factor for piece in off.question.adapters] == []
    assert [piece.factor for piece in on.question.adapters] == [0.71]
    assert off.intent == on.intent == "crop-equivalent"


@pytest.mark.parametrize("said", ["the first body again", "and the old body", "never mind that", "back to E"])
def test_the_body_of_before_is_meant_again(club: Desk, said: str) -> None:
    last = talk(club, PLAIN_WAY, "and on Z?", said)[-1]
    assert last.question is not None
    assert [body.ids[0] for body in last.question.bodies] == ["e-mount"]
    assert last.question.number is None


@pytest.mark.parametrize("said", ["first or second", "which of the two"])
def test_two_ways_are_set_apart(club: Desk, said: str) -> None:
    last = talk(club, PLAIN_WAY, said)[-1]
    assert last.intent == "compare"
    assert "cost of the rings" in flat(last)


@pytest.mark.parametrize("said", ["lose the 10", "take the 10 off again", "only the 20"])
def test_one_of_two_tubes_goes(club: Desk, said: str) -> None:
    last = talk(club, TUBED, "10 mm more", said)[-1]
    assert last.question is not None
    assert [piece.thickness_mm for piece in last.question.adapters] == [(20, 20)]


def test_the_sun_again_is_no_danger(club: Desk) -> None:
    last = talk(club, LIT, "and in the shade", "back in the sun")[-1]
    assert last.intent == "exposure-nd"


def test_a_number_that_is_asked_why_is_no_ring(club: Desk) -> None:
    assert talk(club, PLAIN_WAY, "why 27.46")[-1].intent == "why"


def test_a_frame_that_no_body_of_the_mount_has_stands_alone(club: Desk) -> None:
    last = talk(club, "does a 50 1.8 FD cover mft", "on aps-c")[-1]
    assert last.question is not None
    assert (last.question.bodies, [one.id for one in last.question.frames]) == ((), ["aps-c-1.5"])
    assert "APS-C needs 28.35 mm" in flat(last)


@pytest.mark.parametrize("said", ["what if i use 2 of them", "two of them"])
def test_so_many_of_the_tube_spoken_of(club: Desk, said: str) -> None:
    last = talk(club, TUBED, said)[-1]
    assert last.question is not None
    assert [piece.thickness_mm for piece in last.question.adapters] == [(20, 20), (20, 20)]


@pytest.mark.parametrize("turn", ["make it 0.3", "0.3?", "and 0.3 mm", "say 0.3 instead"])
def test_a_thin_washer_takes_the_place_of_the_one_before(club, turn):
    found = talk(club, "25 1.4 cine lens, c mount, for my mft. ring?", "if i slip a 1mm washer under it", turn)[-1]
    assert [piece.thickness_mm for piece in found.question.adapters] == [(0.3, 0.3)]


@pytest.mark.parametrize(
    "first", ["16mm c lens screwed right into a cs camera, no ring", "16 C lens on CS without its ring, all mush"]
)
@pytest.mark.parametrize("turn", ["with the 5 mm one?", "put the 5mm one in", "and with the 5 one", "5 mm between?"])
def test_one_that_is_put_in_after_a_lens_without_a_ring_is_a_ring(club, first, turn):
    found = talk(club, first, turn)[-1]
    assert [lens.focal_length_mm for lens in found.question.lenses] == [16]
    assert "seat 5 mm: just right" in flat(found)


@pytest.mark.parametrize(
    "turn", ["and one more millimetre on top", "plus 1 mm", "add another 1 mm", "and a 1mm washer too"]
)
def test_what_comes_on_top_of_a_ring_sold_by_its_length_leaves_it_there(club, turn):
    found = talk(club, "16mm c lens on a cs camera", "with the 5 mm ring?", turn)[-1]
    assert "1 mm too far out" in flat(found)
    assert "4 mm too close" not in flat(found)


def test_the_ring_that_seats_a_lens_is_no_tube_beside_a_washer(club):
    (found,) = talk(club, "25 C on CS camera with the 5 mm ring and a 1 mm washer, how close?")
    assert "stops at 68 cm" in flat(found)
    assert "6 mm of tube" not in flat(found)


@pytest.mark.parametrize("said", ["and with two", "make that two", "if i stack two", "one more of those"])
@pytest.mark.parametrize("first", ["50mm with 20 mm of tube, how close", TUBED])
def test_a_tube_told_by_its_length_alone_is_doubled_too(club: Desk, first: str, said: str) -> None:
    last = talk(club, first, said)[-1]
    assert last.question is not None
    assert sum(piece.thickness_mm[0] for piece in last.question.adapters if piece.thickness_mm) == 40


@pytest.mark.parametrize("said", ["make that {}", "lets make that {} then", "change that to {}", "change it to {}"])
@pytest.mark.parametrize(
    ("first", "number", "shown"),
    [
        ("100mm lens with 25 mm of tube, how far is the flower", "40", "0.4x"),
        ("50mm f/1.8 on aps-c, equivalent?", "35", "35 mm on APS-C"),
        ("50mm f/2 at 3 m on aps-c, how deep is it sharp", "5", "f/2 at 5 m"),
        ("50mm f/2 at 3 m on aps-c, how deep is it sharp", "5.6", "f/5.6 at 3 m"),
        ("50mm f/2 at 3 m on aps-c, how deep is it sharp", "85", "85 mm f/2 at 3 m"),
        ("M42 to E ring came out 27.6, 50mm, infinity?", "27.5", "0.04 mm too far out"),
        ("my ring is 0.1 too thick with a 50mm, infinity?", "0.2", "13 m"),
        ("35mm hits infinity at 5m on the scale, shim?", "8", "0.15 mm too close"),
        ("full sun, iso 200, f/1.4, 1/60, how much nd", "400", "ISO 400"),
        ("60mm macro at 0.5x, how far from the sensor", "0.8", "60 mm at 0.8x"),
        ("does a 14mm circle cover mft", "18", "image circle 18 mm"),
    ],
)
def test_a_number_is_put_right_by_the_words_that_put_it_right(
    club: Desk, first: str, number: str, shown: str, said: str
) -> None:
    assert shown in flat(talk(club, first, said.format(number))[-1])


@pytest.mark.parametrize("turn", ["25mm of ring then", "with 25 mm of rings", "so with 25 mm of extension"])
def test_so_much_extension_takes_the_place_of_a_ring_behind_a_lens_alone(club, turn):
    *_, found, stop = talk(club, "c mount 50 with a 10mm ring behind at f4, how large", turn, "and the stop?")
    assert "25 mm of tube: sharp at 22 cm from the sensor, 0.5x" in flat(found)
    assert "f/4 counts as f/6" in flat(stop)


@pytest.mark.parametrize("turn", ["with a 1 mm washer under it how far", "and with a 1mm washer in between"])
def test_a_washer_after_the_view_of_a_lens_is_so_much_more_between(club, turn):
    found = talk(club, "ltm 50 on E", "like what on full frame", turn)[-1]
    assert "stops at 2.6" in flat(found)


@pytest.mark.parametrize("said", ["back to no tube", "no tube now", "tube gone", "minus the tube", "and no tubes?"])
@pytest.mark.parametrize(
    "first", ["50mm with 12 mm tube on E, depth of field at f4", "50mm with 12 mm tube on E, how close"]
)
def test_a_tube_taken_off_again_asks_the_same_without_it(club: Desk, first: str, said: str) -> None:
    before, last = talk(club, first, said)
    assert last.question is not None
    assert last.intent == before.intent
    assert last.question.adapters == ()


@pytest.mark.parametrize(
    "said", ["compared to full frame", "against full frame?", "vs full frame", "next to a full frame"]
)
def test_full_frame_beside_an_equivalent_is_no_other_body(club: Desk, said: str) -> None:
    last = talk(club, "25mm C lens on MFT, field of view", said)[-1]
    assert last.question is not None
    assert [body.id for body in last.question.bodies] == ["mft-mount"]
    assert "25 mm on Four Thirds frames like 50 mm" in flat(last)
