"""What to buy for several lenses: single rings against a hub, each piece counted once, one's own not bought again."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from tests.answers.picture import flat, numbers, one
from tests.desks import desk_of


@pytest.fixture(scope="module")
def plain() -> Desk:
    return desk_of()


def told(desk, text):
    return record_of(desk.ask(text), desk.knowledge)


def test_a_hub_is_set_against_the_pieces_that_single_rings_take(plain):
    found = told(
        plain, "what to buy for an M42 lens and a QBM lens and an OM-mount lens on a Z-mount and an E-mount body"
    )
    pieces = {piece["id"] for chain in found["chains"] for piece in chain["pieces"]}
    assert one(found, "adapter_count", "direct") == len(pieces)
    assert one(found, "adapter_count", "through the hub") == 5
    assert "Which camera to buy" not in found["text"]


def test_what_is_owned_of_a_hub_is_said_and_not_priced(plain, tmp_path):
    gear = tmp_path / "gear.yaml"
    gear.write_text(
        "adapters:\n  hub:\n    name: my M to E ring\n    front: m-mount\n    rear: e-mount\n    kind: plain\n"
        "    thickness: 9.8 mm\n    owned: 1\n",
        "utf-8",
    )
    question = "what to buy for an M42 lens and an OM-mount lens on an E-mount body"
    before, after = told(plain, question), told(Desk(gear=gear), question)
    assert "1 of them yours" not in flat(before)
    assert "3 in all, 1 of them yours" in flat(after)
    assert after["quantities"]["adapter_count"] != before["quantities"]["adapter_count"]


def test_one_shared_word_brings_no_advice_beside_the_pieces(plain):
    assert "Bodies are not ranked" not in flat(told(plain, "what do I need to buy to use a 25mm C-mount lens on m43"))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("is a 12 buck plain EF to E ring ok or do I need the 60 one with chips", "take the electronic one"),
        ("m42 to E rings: 12 or 60 dollars, whats the difference", "60 dollars is more than usual, 8 to 25 dollars"),
    ],
)
def test_two_prices_are_told_by_what_each_buys(asked, text, says):
    found = flat(asked(text))
    assert found.startswith("12 dollars is the price of ")
    assert says in found
    assert "60 mm" not in found
    assert "dollars do if you buy" not in found


def test_rings_for_any_slr_lens_are_listed_within_the_sum(asked):
    found = asked("cheapest way to put any SLR lens on MFT, budget 40")
    assert "M42 to MFT ring [8 to 25 dollars]" in flat(found)
    assert all(low <= 40 for low, _ in numbers(found, "price"))
    assert "flat ring" not in flat(found)


def test_singles_are_counted_beside_a_hub_that_they_are_set_against(asked):
    found = asked("FD OM and QBM lenses, bodies L and X. single rings or go through M?")
    cases = {row["case"]: row["least"] for row in found["quantities"]["adapter_count"]}
    assert cases["through the hub"] == 5
    assert cases["all pairs"] >= 6


@pytest.mark.parametrize(
    "text",
    [
        "one nd for lenses with 49, 55 and 62 filter threads, what do i buy",
        "one polariser for 49mm, 55mm and 62mm lenses, which rings",
    ],
)
def test_the_largest_of_the_filter_threads_is_the_size_to_buy(asked, text):
    found = asked(text)
    assert one(found, "adapter_count", "step-up rings") == 2


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("EXA and M42 lens on L, is one ring enough", "No, one ring is not enough: it takes 3 pieces."),
        ("FD 28 and FD 50 on E, one ring for both?", "Yes, one ring serves them all."),
    ],
)
def test_whether_one_ring_does_is_answered_first(asked, text, says):
    assert flat(asked(text)).startswith(says)


def test_a_size_to_be_reached_tells_the_tubes_to_buy(asked):
    with_mount, without = asked("wanna do 1:2 with 50mm c lens, shopping list"), asked("75 to 1:1, what do i buy")
    assert "25 mm of extension tube" in flat(with_mount)
    assert "tubes 0.5/1/2/5/10/20/40 mm" in flat(with_mount)
    assert "75 mm of extension tube" in flat(without)


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("want extension tubes for my M42 stuff, what does a set run me", 9, 30),
        ("how much do extension tubes for E cost", 24, 90),
        ("cost of K extension tubes", 30, 120),
    ],
)
def test_tubes_alone_are_told_by_the_sets_of_the_mount(asked, text, low, high):
    found = asked(text)
    assert (low, high) in numbers(found, "price")
    assert flat(found).startswith("Tubes of ")


@pytest.mark.parametrize(
    ("say", "way", "taken"),
    [
        ("16mm cine lenses on my E camera, 40 dollars. buy what", "C to E cup", "Taken for C"),
        ("16mm cine lenses on my E camera, which adapter", "C to E cup", "Taken for C"),
        ("8mm movie lens on my E camera, what do i buy", "D to E cup", "Taken for D"),
    ],
)
def test_a_lens_told_by_its_film_is_taken_for_what_most_are(asked, say, way, taken):
    found = asked(say)
    assert f"1. {way}" in flat(found)
    assert taken in flat(found)


@pytest.mark.parametrize("say", ["16mm cine lens with a bayonet on E", "16mm cine lens, 38 mm thread on E"])
def test_it_is_taken_for_nothing_where_something_else_is_told_of_its_mount(asked, say):
    assert "Taken for C," not in flat(asked(say))


def test_a_size_that_names_its_thread_is_one_more_of_the_row(asked):
    for say in ("nd for 49 52 55 and 72mm threads, cheapest way", "one ND for 49, 52, 55 and 72 mm thread"):
        assert "one 72 mm filter" in asked(say)["text"], say


@pytest.mark.parametrize(
    "text",
    [
        "x body, drawer with M42, K and EF lenses (the EF have no rings on them). shopping list",
        "my EF lenses have no rings on them, X body, what to buy",
        "EF lens without a ring on it to X body, what adapter", "my EF lens has no ring, X body, which adapter",
    ],
)  # fmt: skip
def test_a_lens_that_has_no_ring_on_it_is_not_held_flush(plain, text):
    found = flat(told(plain, text))
    assert "electronic" in found
    assert "held flush" not in found


def test_a_lens_with_no_ring_between_is_held_flush(plain):
    assert "held flush" in flat(told(plain, "M42 lens held on E without a ring"))


@pytest.mark.parametrize(
    "text",
    [
        "nx body: which of my screw lenses (M42, LTM, T2) work", "which of my lenses (M42, LTM, T2) work on nx",
        "which of my screw lenses work on nx: M42, LTM, T2",
    ],
)  # fmt: skip
def test_ones_lenses_named_in_brackets_are_those_asked_about(plain, text):
    found = flat(told(plain, text))
    for ring in ("19.96 mm", "3.3 mm", "29.5 mm"):
        assert f"ring for infinity {ring}" in found


@pytest.mark.parametrize(
    "text",
    [
        "CS varifocal (old dome camera) to E mount ring??", "CS zoom (from an old camera) to E mount ring",
        "CS varifocal (dead security camera) on my E body",
    ],
)  # fmt: skip
def test_a_camera_in_brackets_behind_a_lens_is_where_that_came_from(plain, text):
    assert flat(told(plain, text)).startswith("A CS-mount zoom lens on an E-mount body")


@pytest.mark.parametrize(
    "text",
    [
        "20 yrs of news work, want to put my old b4 zoom on an E body. which ring",
        "after 30 yrs my M42 lens on E, which ring",
        "shot 15 years with my M42 lens, want it on E", "my lens is 40 yrs old, M42, on E",
    ],
)  # fmt: skip
def test_so_many_years_are_no_focal_length(plain, text):
    assert flat(told(plain, text)).startswith(("A B4 lens on an E-mount body", "An M42 lens on an E-mount body"))


def test_a_focal_length_beside_years_is_kept(plain):
    assert flat(told(plain, "my 50 year old 135mm M42 on E")).startswith("A 135 mm M42 lens on an E-mount body")


@pytest.mark.parametrize(
    "text",
    [
        "ive borrowed a 645 kit from uni (M645 lenses) and my own camera is Z mount, what ring do i need",
        "borrowed a 645 kit, M645 lenses, on Z",
        "my 645 outfit has M645 lenses, Z body, ring?",
    ],
)
def test_the_film_of_a_kit_is_no_focal_length(plain, text):
    assert flat(told(plain, text)).startswith("An M645 lens on a Z-mount body")
