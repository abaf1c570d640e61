"""A turn that changes one part alone: the glass, the tube, the stop, the light; all else stays, and what was asked."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk
from tests.answers.test_swapped_in_turns import FIRST

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
