"""What stays and what is replaced from turn to turn, through the whole line."""

from __future__ import annotations

import pytest

from engine.render.record import record_of
from engine.talk import Talk
from tests.desks import desk_of

DESK = desk_of()


def last(*turns: str) -> dict[str, object]:
    talk = Talk()
    answers = [DESK.ask(text, talk) for text in turns]
    return dict(record_of(answers[-1], DESK.knowledge))


@pytest.mark.parametrize(
    ("turns", "reading"),
    [
        (("C lens on MFT", "other way round"), "how do I get a Micro Four Thirds lens on a C-mount body"),
        (("50 1.4 PK on apsc, equivalent?", "on mft"),
         "what is the full frame equivalent of a 50 mm f/1.4 K-mount lens on a Micro Four Thirds body"),
        (("45mm g lens on E", "no the rangefinder one"),
         "how do I get a 45 mm G-mount (35 mm AF rangefinder) lens on an E-mount body"),
        (("m39 screw lens on z", "no I meant the one with 1 mm pitch"),
         "how do I get an M39x1 rangefinder lens on a Z-mount body, pitch 1 mm"),
        (("which is better E or Z for FD",),
         "which is better for an FD-mount lens on an E-mount body and a Z-mount body"),
        (("AR 57 1.2 body E",), "how do I get a 57 mm f/1.2 AR-mount lens on an E-mount body"),
        (("helicoid m42 15-26 with M42 50mm on Z",),
         "how do I get a 50 mm M42 lens on a Z-mount body with a 15..26 mm helicoid"),
        (("projector lens 100 mm f2.8 on L mount", "how do i measure it", "it's about 72", "70.6 is the barrel"),
         "how do I get a 100 mm f/2.8 projector lens on an L-mount body, 72 mm flange to image, 70.6 mm barrel"),
    ],
)  # fmt: skip
def test_a_turn_is_read_with_what_stays(turns: tuple[str, ...], reading: str) -> None:
    assert last(*turns)["reading"] == reading


def test_how_far_a_ring_is_off_stays_with_the_lens_named_after_it() -> None:
    record = last("shim 0.3 too far out", "on E with OM 28")
    assert record["chains"][0]["verdict"] == "macro-only"  # type: ignore[index]
    assert "f/15" in str(record["text"])


def test_what_mark_and_what_stop_are_told_of_a_ring_that_is_off() -> None:
    assert "13 m" in str(last("my ring is 0.2 too thin on E with a 50", "what mark")["text"])
    assert "f/6.7" in str(last("my ring is 0.2 too thin on E with a 50", "at which stop is it ok")["text"])


def test_a_stop_after_a_ring_that_is_off_asks_whether_it_forgives() -> None:
    record = last("FD to E ring 24.1 measured", "with 20mm f2.8", "f4 enough?")
    assert record["intent"] == "focus-verdict"
    assert "infinity from f/5.1" in " ".join(str(record["text"]).split())


def test_how_to_measure_is_told_of_the_fact_that_was_asked_for() -> None:
    text = str(last("projector lens 100 mm f2.8 on L mount", "how do i measure it")["text"])
    assert "far window on paper" in text
    assert "lugs" not in text


def test_why_a_frame_is_dark_is_told_by_the_circle() -> None:
    text = str(last("will a 25mm c mount lens cover aps-c E", "why does it go black")["text"])
    assert "image circle 13 to 22 mm" in " ".join(text.split())
    assert "28.35" in text


def test_the_factor_of_the_reducer_told_stays() -> None:
    record = last("50mm 1.8 m42 on X mount apsc", "what do I gain with a focal reducer", "what focal length then")
    assert "36 mm" in str(record["text"])


def test_without_the_ring_named_nothing_stands_there() -> None:
    record = last("C lens 12.5mm f1.4, CS camera", "5mm ring?", "without")
    assert record["chains"][0]["verdict"] == "unusable"  # type: ignore[index]


def test_the_words_asked_before_still_ask_where_a_number_is_told() -> None:
    assert "1/1000 s" in str(last("500mm T2 on L", "f8. exposure at iso 400 sun", "200")["text"])


def test_what_it_is_like_in_full_frame_leaves_the_body_its_own_frame() -> None:
    record = last("8mm C lens on mft", "so what focal is that in full frame")
    assert "16 mm" in str(record["text"])
    assert "full frame body" not in str(record["reading"])


def test_where_a_lens_ends_tells_the_ring_for_the_next_lens() -> None:
    first = "28mm ltm wont go past 2m on my E ring"
    assert "6.3 m" in str(last(first, "what would a 50 do on it")["text"])
    assert "0.4 mm" in str(last(first, "what would a 50 do on it", "how much do I take off then")["text"])


def test_a_density_told_alone_is_that_of_the_filter_at_hand() -> None:
    assert last("which nd for f/1.3 24p iso 640 sun", "i only have a 3.0")["reading"].endswith("ND 3.0")  # type: ignore[attr-defined]


def test_wide_open_takes_the_stop_set_before_away() -> None:
    record = last("100mm f/2.8 Exakta on NX with a 19.31 ring at f/8, infinity?", "and wide open")
    assert "at f/8" not in str(record["reading"])


def test_that_ring_is_the_one_that_was_measured_whatever_lens_it_gets() -> None:
    record = last("90 f4 in K on my Z body, which ring", "it measured 29.9", "what about a 28 on that ring")
    assert record["chains"][0]["verdict"] == "macro-only"  # type: ignore[index]
    assert "0.44 mm" in str(last("28mm K on Z, ring is 29.9 mm", "so shave it by how much")["text"])


def test_the_same_word_is_asked_of_another_mount() -> None:
    record = last("whats the register of P6", "and M645")
    assert record["intent"] == "definition"
    assert "63.3" in str(record["text"])


def test_facts_for_a_nameless_thread_are_told_one_by_one() -> None:
    record = last("i have a lens with thread 42 and i dont know which", "1 mm pitch", "45.5 about")
    assert str(record["reading"]).endswith("thread 42 mm x 1 mm, 45.5 mm flange to image")


def test_a_draw_that_a_ring_makes_long_enough_is_not_called_too_short() -> None:
    turns = ("80mm enlarger on mft with helicoid 25-55", "77 flange to image", "nearest?")
    assert "focuses on nothing" not in str(last(*turns)["text"])
    assert "46 cm" in str(last(*turns)["text"])
