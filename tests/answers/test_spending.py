"""Beside what to buy: what a sum leaves, what is not worth its money, what brings a lens close up and at what price."""

from __future__ import annotations

import pytest

from engine.answers.parts.answer import ANSWERED, Answer, Quantity
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.spending import bodies_by_plain_rings, close_up_kit, left_of_sum, not_to_buy
from engine.base.interval import Interval
from grammar.questions import Question, Thing
from grammar.words.mentioned import Mention
from tests.answers.picture import flat, numbers


def _lens(club, name, focal=None):
    side = lens_side(Thing("mount", (name,), focal_length_mm=focal), club.catalogue)
    assert isinstance(side, LensSide)
    return side


def _body(club, name):
    side = body_side(Thing("mount", (name,)), club.catalogue)
    assert isinstance(side, BodySide)
    return side


def _left(budget, price):
    question = Question("what is left", "buy-plan", values=(("price", str(budget)),))
    row = Quantity("price", Interval.between(*price), "all pairs")
    return left_of_sum(question, Answer("", "buy-plan", ANSWERED, (), quantities=(row,)))


def test_a_sum_that_does_leaves_its_difference():
    told = _left(100, (30, 60))
    assert (told.quantities[0].value.least, told.quantities[0].value.greatest) == (40, 70)


def test_a_sum_that_does_not_lacks_the_least():
    assert "at least 20 are lacking" in _left(50, (70, 120)).lines[0].text


def test_a_sum_between_does_at_the_lower_end():
    told = _left(50, (40, 80))
    assert "lower end" in told.lines[0].text
    assert not told.quantities


def test_no_sum_leaves_nothing():
    assert not left_of_sum(Question("what to buy", "buy-plan"), None).lines


@pytest.mark.parametrize(
    ("lens", "body", "text"),
    [
        ("m42", "e-mount", "rings with glass in them"),
        ("c", "e-mount", "flat rings"),
        ("fd-mount", "f-mount", "without glass that promises infinity"),
    ],
)
def test_what_does_not_serve_hangs_on_the_ring_that_is_needed(club, lens, body, text):
    question = Question("what should I avoid", "buy-plan", mentioned=(Mention("avoid-buying", 0, 1),))
    assert text in not_to_buy(question, [_lens(club, lens)], [_body(club, body)], club.knowledge).lines[0].text


def test_nothing_is_kept_off_unasked(club):
    question = Question("what to buy", "buy-plan")
    assert not not_to_buy(question, [_lens(club, "m42")], [_body(club, "e-mount")], club.knowledge).lines


def test_a_kit_for_close_ups_goes_by_price_and_tells_what_it_magnifies_to(club):
    question = Question("and for close ups", "buy-plan", mentioned=(Mention("close-up-wanted", 0, 1),))
    told = close_up_kit(question, [_lens(club, "m42", 50.0)], [_body(club, "e-mount")], club.knowledge)
    prices = [row.value.least for row in told.quantities if row.name == "price"]
    assert prices == sorted(prices)
    assert len(prices) > 1
    grown = {row.case: row.value.nominal for row in told.quantities if row.name == "magnification"}
    tubes = next(name for name in grown if name is not None and name.startswith("tubes "))
    lengths = [float(one) for one in tubes.removeprefix("tubes ").removesuffix(" mm").split("/")]
    assert grown[tubes] == pytest.approx(sum(lengths) / 50)


def test_bodies_that_take_a_lens_by_a_plain_ring_are_told_cheapest_first(club):
    told = bodies_by_plain_rings(Question("which body", "buy-plan"), [_lens(club, "m42")], club.knowledge)
    prices = [row.value.least for row in told.quantities if row.name == "price"]
    assert prices == sorted(prices)
    rings = {row.case: row.value.nominal for row in told.quantities if row.name == "ring_thickness_mm"}
    for body, ring in rings.items():
        assert ring == pytest.approx(45.46 - club.catalogue.mounts[body or ""].register_mm.nominal)


def test_lenses_of_two_mounts_have_no_one_ring(club):
    both = [_lens(club, "m42"), _lens(club, "k-mount")]
    assert not bodies_by_plain_rings(Question("which body", "buy-plan"), both, club.knowledge).lines


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("is 15 dollars enough to put m42 on a Z", "Yes, 15 dollars do if you buy at the lower end"),
        ("5 bucks enough to put m42 on a Z?", "No, 5 dollars are not enough"),
        ("will $30 get me an FD to E ring", "Yes, 30 dollars are enough"),
    ],
)
def test_whether_a_sum_will_do_is_answered_first(asked, text, told):
    assert flat(asked(text)).startswith(told)


@pytest.mark.parametrize(
    ("text", "band"),
    [
        ("c extension tubes 1+2+5 price total", (12, 45)),
        ("what do MFT tubes 10 and 16 cost together", (24, 90)),
        ("cost of an M42 helicoid 25-55", (18, 40)),
    ],
)
def test_pieces_named_by_mount_and_length_have_their_prices(asked, text, band):
    found = asked(text)
    assert found["intent"] == "buy-plan"
    assert numbers(found, "price")[0] == band
    assert len(found["text"].splitlines()[0]) < 60


@pytest.mark.parametrize(
    ("said", "starts"),
    [
        ("is it worth getting a ring for a 50mm FD on mft", "Yes, as far as mount and frame go: to infinity for 10"),
        (
            "M42 for sale, i have an F dslr. buy or pass?",
            "Only for close-ups, or to infinity through a ring with glass",
        ),
        ("8mm C lens made for 1/2 inch, worth buying for MFT?", "Not for everything: it goes to infinity for 8 to 25"),
        ("does it make sense to buy OM lenses for EF", "Yes, as far as mount and frame go"),
        (
            "would you buy EF lenses for E?",
            "Not for everything: it goes to infinity for 10 to 25 dollars, but its iris",
        ),
    ],
)
def test_whether_a_lens_is_worth_its_ring_is_told_first(asked, said, starts):
    found = asked(said)
    assert found["intent"] == "buy-plan"
    assert flat(found).startswith(starts)


def test_part_of_a_frame_that_stays_dark_speaks_against(asked):
    assert "lights only 22 to 29 % of the frame" in flat(asked("8mm C lens made for 1/2 inch, worth buying for MFT?"))


@pytest.mark.parametrize(
    ("said", "starts"),
    [
        ("is 40 too much for a M42 to E ring", "40 dollars is more than usual, 8 to 25 dollars."),
        ("is 15 a fair price for a M42 to E ring", "15 dollars is the price of M42 to E ring"),
        ("P6 to F 70 dollars, is that a lot", "70 dollars is more than usual, 20 to 60 dollars."),
        ("seller asks 60 for an OM to X ring, too much?", "60 dollars is more than usual, 10 to 30 dollars."),
    ],
)
def test_a_price_told_is_set_against_what_such_rings_cost(asked, said, starts):
    found = asked(said)
    assert found["intent"] == "buy-plan"
    assert flat(found).startswith(starts)


@pytest.mark.parametrize(
    "said",
    [
        "AR and an L body, cheapest route in",
        "most affordable way to use an Exakta lens on RF",
        "which ring would u buy first: 25mm C onto E apsc?",
        "what would be the first piece to order for a 50mm FD on mft?",
        "my wishlist: M42 on E. what do i need",
        "bill of materials for EF on E mount",
        "how expensive is it to use my OM 28 on X",
        "worth it to adapt P6 to F?",
        "a D mount 13mm going cheap at a car boot, i use Q. grab it or leave it?",
        "how do i do a 50mm FD on mft for next to nothing",
        "with 25 quid can i run PL on RF",
        "what goes into the cart for K mount 135 with X",
    ],
)
def test_what_is_to_be_bought_or_spent_is_a_plan(asked, said):
    assert asked(said)["intent"] == "buy-plan"


@pytest.mark.parametrize(
    ("said", "ring"),
    [
        ("telescope to RF, what all do i need to buy", 35),
        ("adapter for telescope to NX?", 29.5),
        ("telescope 1.25 inch focuser, E body, what adapter", 37),
    ],
)
def test_a_telescope_takes_the_t2_ring_of_the_body_and_a_nosepiece(asked, said, ring):
    found = asked(said)
    assert numbers(found, "ring_thickness_mm")[0] == (ring, ring)
    assert "iris: none" in flat(found)
    assert flat(found).casefold().count("camera on a telescope:") == 1
    assert "nosepiece" in flat(found)


def test_tubes_beside_a_helicoid_are_bought_beside_and_not_put_into_every_way(asked):
    found = asked("budget 100 for a helicoid and a tube set, M42 on E, doable?")
    text = flat(found)
    assert "M42 to E helicoid, 10 mm travel [30 to 70 dollars]" in text
    assert text.split("Tubes of M42")[0].count("reaches infinity") > 0
    assert "Tubes and way 1 together: 39 to 100 dollars." in text
    assert text.startswith("Yes, 100 dollars are enough")


@pytest.mark.parametrize(
    ("said", "starts"),
    [
        ("electronic or dumb ring for EF on E", "The electronic one [60 to 400 dollars]: without contacts the iris"),
        ("smart adapter or dumb one, EF lenses on RF", "The electronic one [30 to 400 dollars]"),
        ("dumb or smart ring for my F lenses with aperture ring on Z", "The plain one [15 to 40 dollars]: the iris is"),
        ("M42 on E: ring with contacts or a plain one", "The plain one [8 to 25 dollars]"),
    ],
)
def test_a_ring_with_contacts_is_for_an_iris_that_needs_power(asked, said, starts):
    assert flat(asked(said)).startswith(starts)


@pytest.mark.parametrize(("say", "length", "band"), [
    ("c tubes 5 + 10 + 20 for a little macro rig, total price and length", 35, (16, 60)),
    ("m42 tubes 7, 14 and 28: cost and length in total", 49, (9, 30)),
])  # fmt: skip
def test_tubes_that_are_priced_are_added_up_where_their_length_is_asked(asked, say, length, band):
    found = asked(say)
    assert numbers(found, "stack_mm") == [(length, length)]
    assert band in numbers(found, "price")


def test_tubes_that_nobody_sells_are_added_up_all_the_same(asked):
    found = asked("12 + 20 + 36 tubes on E, length and price?")
    assert numbers(found, "stack_mm") == [(68, 68)]
    assert "is not in the facts" in flat(found)
