"""Numbers measured of threads, seats and rings, told as people tell them: each goes to what it is of."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.talk import Talk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def _values(desk: Desk, *turns: str) -> dict[str, str]:
    talk = Talk()
    for turn in turns:
        desk.ask(turn, talk)
    assert talk.question is not None
    return dict(talk.question.values)


@pytest.mark.parametrize(
    ("text", "thread"),
    [
        ("small brass screw, mic says 20.2, abt 36 to the inch. no idea", "20.2 mm x 36 tpi"),
        ("what mount is this, screw about 39-ish, 26 to the inch", "39 mm x 26 tpi"),
        ("10 ridges span 7.5mm, 42 across. what is it", "42 mm x 0.75 mm"),
        ("twenty crests make 15, thread is 42 wide", "42 mm x 0.75 mm"),
        ("male thread 25.3 over the crests, ten of em make 7.9", "25.3 mm x 0.79 mm"),
        ("thread is 42, ten in 7.5 mm", "42 mm x 0.75 mm"),
        ("my 39 thread: 24 crests to the inch", "39 mm x 24 tpi"),
    ],
)
def test_width_and_pitch_of_a_thread(desk: Desk, text: str, thread: str) -> None:
    assert _values(desk, text)["thread"] == thread


def test_a_pitch_that_is_told_next_goes_with_the_width_of_before(desk: Desk) -> None:
    told = _values(desk, "screw lens, 42ish. what have i bought", "ten come to 7.5")
    assert (told["thread"], told["pitch"]) == ("42 mm", "0.75 mm")


@pytest.mark.parametrize(
    ("text", "far"),
    [
        ("box for a barrel lens, 88 from its shoulder to a sharp far image, on a G 44x33 body, how long", "88 mm"),
        ("enlarger lens on E, shoulder to a clear picture is 71.3, infinity?", "71.3 mm"),
        ("projector lens on E, 70 from the rim to the image, infinity?", "70 mm"),
        ("from lens flange to the tracing paper i measured 62.5 mm, enlarger lens, E body", "62.5 mm"),
    ],
)
def test_from_seat_to_image(desk: Desk, text: str, far: str) -> None:
    assert _values(desk, text)["flange_to_image"] == far


def test_what_a_ring_takes_is_no_mount_of_the_lens_that_it_stands_for(desk: Desk) -> None:
    talk = Talk()
    for turn in ("T2 lens on MFT", "its a 300, already turned it a bit into the m42-mft ring, carry on?"):
        desk.ask(turn, talk)
    assert talk.question is not None
    assert talk.question.lens is not None
    assert (talk.question.lens.ids[0], talk.question.lens.focal_length_mm) == ("t2", 300)


@pytest.mark.parametrize(
    ("text", "mark"),
    [
        ("my 35 has infinity at 7, shim?", "7000 mm"),
        ("infinity sits at 7 on the scale of my 35. shim", "7000 mm"),
        ("the moon is sharp at 7 on the metre scale of my 35, what do i put under it", "7000 mm"),
    ],
)
def test_a_bare_mark_of_the_scale_counts_metres(desk: Desk, text: str, mark: str) -> None:
    assert _values(desk, text)["mark"] == mark


def test_a_lens_on_a_mount_named_as_a_stop_is_not_stopped(desk: Desk) -> None:
    assert "aperture" not in _values(desk, "500mm f8 mirror on T2, ring is .15 too thick. does it matter")


def test_what_stands_past_the_thread_is_the_rear_and_no_lens(desk: Desk) -> None:
    assert _values(desk, "c lens rear goes 11mm past its thread, mirrorless body. safe?")["rear_reach"] == "11 mm"


def test_a_number_and_an_article_before_a_ring_describe_no_ring(desk: Desk) -> None:
    talk = Talk()
    desk.ask("why is the scale of my 35 wrong since the new adapter", talk)
    assert talk.question is not None
    assert talk.question.lens is not None
    assert talk.question.lens.focal_length_mm == 35


def test_racked_out_tells_the_extension(desk: Desk) -> None:
    answer = desk.ask("80mm racked out 40 beyond infinity, how much more exposure", Talk())
    assert answer.question is not None
    assert answer.question.said("extension") == "40 mm"
