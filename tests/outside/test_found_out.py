"""A lens told by its thread alone: what is asked next is answered for the mounts which that thread allows."""

from __future__ import annotations

from pathlib import Path

from tests.outside.running import piped


def test_a_thread_of_an_inch_is_taken_for_c_or_cs_in_what_follows(tmp_path: Path) -> None:
    talk = ["wee lens of an old cctv, says 12.5mm 1.4, thread about an inch", "goes on my mft?", "how much is black"]
    first, seated, lit = piped(tmp_path, talk)
    assert first["intent"] == "identify-mount"
    assert "thread 25.4 mm" in first["reading"]
    assert seated["chains"][0]["verdict"] == "infinity"
    assert "C-mount" in seated["text"]
    assert "typical of such lenses" in lit["text"]
    assert "made for APS-C" not in lit["text"]


def test_what_the_thread_was_found_to_be_is_not_what_was_asked(tmp_path: Path) -> None:
    first, second = piped(tmp_path, ["tiny lens, 13mm f/1.9, thread is 5/8 inch. what is it?", "infinity on mft?"])
    assert "D-mount" not in first["reading"]
    assert "D-mount lens" in second["reading"]
    assert "Measure flange to image" in second["text"]


def test_the_pitch_told_later_settles_which_of_them_it_is(tmp_path: Path) -> None:
    asked = ["old lens, 42mm thread, what mount is it", "on e mount?"]
    *_, seated, settled = piped(tmp_path, [*asked, "the pitch is 0.75"])
    assert "an M42 lens" in seated["reading"]
    assert "a T2 lens" in settled["reading"]


def test_inches_of_a_thread_are_no_feet_of_a_distance(tmp_path: Path) -> None:
    talk = ["12.5mm lens, thread is 1 inch, what is it", "what shim if infinity comes at the 3 m mark"]
    assert "at the 3 m mark" in piped(tmp_path, talk)[-1]["text"]
