"""One figure of a mount or a thread, a screw put into a thread that is not its own, a pitch read from a gauge."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("FZ camera - what flange depth", "FZ: register 19 mm"),
        ("what flange distance has the vl camcorder mount", "VL camcorder: register 20 mm"),
        ("flange to film of a BNCR please", "BNCR: register 61.468 mm"),
        ("bore of a PL", "PL: 54 mm across inside"),
        ("inner diameter of LPL", "LPL: 62 mm across inside"),
        ("pitch of an M8 lens", "M8 board: thread M8x0.35"),
        ("what pitch has a 46mm filter", "Filter thread 46 mm: thread M46x0.75"),
        ("D mount thread pitch", "D: thread 5/8-32 UN, 15.875 mm wide, pitch 0.794 mm (32 to the inch)"),
        ("rms thread angle", "RMS 0.800 in x 36 (W 0.8 x 1/36): flanks of 55 degrees"),
        ("male diameter of rms thread", "RMS 0.800 in x 36 (W 0.8 x 1/36): male thread 20.2 to 20.27 mm"),
        ("turning a c mount male thread, what OD do i aim for", "C: male thread 25.22 to 25.37 mm"),
    ],
)
def test_the_figure_that_is_asked_heads_the_answer(asked, text, head):
    assert flat(asked(text)).startswith(head)


@pytest.mark.parametrize("text", ["kinor 16 flange focal distance", "tfl 2 register", "maxi pl flange depth pls"])
def test_a_register_that_is_not_established_is_said_to_be(asked, text):
    found = asked(text)
    assert "its register is not established" in flat(found)
    assert not numbers(found, "register_mm")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("m8 lens in an m12 holder", "M8x0.35 (8 mm) drops through M12x0.5"),
        ("rms objective in a m25 hole", "drops through M25x0.75"),
        ("D lens into a c socket, does it screw in", "drops through 1-32 UN"),
        ("72mm enlarger lens into a M72 line scan camera", "M72x1 starts in M72x0.75, then binds"),
        ("c lens in a sm1 tube", "1-32 UN drops through without catching in 1.035 in-40"),
        ("M42 lens into an M42x0.75 thread?", "M42x1 starts, then binds in M42x0.75"),
        ("does an M42 lens screw into M42x0.75 ring", "M42x1 starts, then binds in M42x0.75"),
    ],
)
def test_what_a_screw_does_in_another_thread_is_told_first(asked, text, said):
    assert said in flat(asked(text))[:420]


def test_a_screw_wider_than_the_hole_does_not_start(asked):
    said = flat(asked("is an M25.5x0.75 tap as good as the c mount thread"))
    assert "M25.5x0.75 does not start in 1-32 UN" in said


def test_a_board_lens_in_a_cs_camera_is_not_ruled_by_the_ring_of_a_c_lens(asked):
    said = flat(asked("m12 board lens screws straight into the cs camera?"))
    assert "not without the ring" not in said
    assert "do not stop by themselves" in said


@pytest.mark.parametrize(
    ("text", "pitch"),
    [
        ("the lens says M42, pitch on the gauge 0.75", "0.75 mm"),
        ("lens says M42, pitch gauge says 0.75", "0.75 mm"),
        ("caliper 25.3, pitch gauge says 32", "32 tpi"),
        ("25.3 across and the thread pitch gauge shows 0.8", "0.8 mm"),
        ("39mm screw, thread gauge fits 26", "26 tpi"),
        ("thread 20.2, my pitch gauge says 36", "36 tpi"),
    ],
)
def test_what_a_gauge_says_is_a_pitch(asked, text, pitch):
    found = asked(text)
    assert found["intent"] == "identify-mount"
    assert pitch in found["reading"]
