"""A measure asked alone after another of the mount; other bodies than that of before; pieces priced by their kind."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


@pytest.mark.parametrize(
    ("first", "then", "head"),
    [
        ("flange distance of Z", "and throat?", "Z-mount: 55 mm across inside"),
        ("register of E", "and its throat?", "E-mount: 46.1 mm across inside"),
        ("register of P67", "throat too?", "P67: 72 mm across inside"),
        ("thread of LTM?", "and pitch", "LTM: thread 39 mm x 26 tpi (Whitworth form), 39 mm wide, pitch 0.977 mm"),
        ("throat of K", "and the register?", "K-mount: register 45.46 mm, flange to image"),
        (
            "what is the throat of MFT",
            "and the flange distance",
            "Micro Four Thirds: register 19.25 mm, flange to image",
        ),
    ],
)
def test_a_measure_alone_is_that_of_the_mount_of_before(talked, first, then, head):
    assert flat(talked(first, then)).startswith(head)


def test_a_word_of_the_trade_after_another_is_still_explained(talked):
    assert "folding tunnel" in flat(talked("what is a helicoid", "and a bellows?"))


@pytest.mark.parametrize(
    ("first", "then"),
    [
        ("does a C lens fit E", "and besides E?"),
        ("can my FD go on EF", "other than EF?"),
        ("DKL on MFT", "and aside from MFT"),
        ("Exakta 50 on EF", "what else besides EF"),
        ("M42 on E ring?", "apart from E, where can it go"),
    ],
)
def test_other_bodies_than_that_of_before_are_listed(talked, first, then):
    found = talked(first, then)
    assert found["intent"] == "list-fits"
    assert "fit with one or two rings" in flat(found)


@pytest.mark.parametrize(
    ("say", "head"),
    [
        ("widest throat full frame mirrorless?", "Z-mount, 55 mm"),
        ("longest register of 6x6 mounts", "SL66, 102.8 mm"),
        ("shortest register slr full frame", "Alpa (35 mm SLR), 37.8 mm"),
        ("widest throat of all mirrorless", "G-mount (44x33), 65 mm"),
    ],
)
def test_the_most_of_a_size_is_told_of_the_format_asked(asked, say, head):
    assert flat(asked(say)).startswith(head)


@pytest.mark.parametrize(
    ("say", "low", "high"),
    [
        ("reversing ring 58 for F, what price", 4, 15),
        ("how much is a reversing ring", 4, 15),
        ("tilt adapter cost?", 25, 250),
        ("how much for a 17-31 helicoid", 18, 70),
        ("price of an m42 bellows", 20, 60),
        ("coupling ring 52-52 cost?", 4, 12),
        ("1.4x converter for K price", 40, 350),
        ("what does a bellows for V 6x6 cost", 100, 400),
    ],
)
def test_a_piece_told_by_its_kind_has_its_price(asked, say, low, high):
    assert numbers(asked(say), "price")[0] == (low, high)


def test_a_crop_lens_on_a_mirrorless_body_is_not_warned_of_the_mirror(asked):
    assert "Not safe" not in flat(asked("ef-s zoom on E body with ef adapter works right?"))


@pytest.mark.parametrize("then", ["what do i pay for that", "what would i pay", "what must i pay for such a ring"])
def test_what_is_paid_is_the_price_of_the_ring(talked, then):
    assert flat(talked("P6 lens on E, ring?", then)).startswith("Price: 25 to 70 dollars")


@pytest.mark.parametrize(
    "then", ["do i need to set anything in the camera", "anything to set on the body for this", "must i set something"]
)
def test_what_is_to_be_set_is_that_of_the_pair(talked, then):
    found = talked("C lens on Z", then)
    assert found["intent"] == "gear-setting"
    assert "Allow release without a lens" in flat(found)
