"""Numbers said in a talk: each is taken for what the words beside it say, and what was established is used later."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.outside.running import asked, piped


def values(answer: dict[str, Any], name: str) -> list[float]:
    """What stands under a name among the quantities, once or in several cases."""
    found = (answer.get("quantities") or {}).get(name)
    rows = found if isinstance(found, list) else [found] if found else []
    return [row["least"] for row in rows]


def test_what_was_measured_over_several_turns_identifies_the_lens_together(tmp_path: Path) -> None:
    first, second, third = piped(
        tmp_path,
        ["a lens without a name, thread is 42mm. what is it", "10 threads are 7.5mm", "flange to image is 55mm"],
    )
    assert "thread 42 mm" in first["reading"]
    assert "42 mm unmarked" not in first["reading"]
    assert "pitch 0.75 mm" in second["reading"]
    assert "that is T2" in third["text"]


def test_a_mount_that_one_reading_speaks_against_is_told_with_it(tmp_path: Path) -> None:
    answer = piped(
        tmp_path,
        ["lens with no markings, thread is 42mm", "ten pitches are 10mm", "so m42?", "flange to image is 55mm"],
    )[-1]
    assert "not M42: its register is 45.46 mm, 9.54 mm from what was measured" in " ".join(answer["text"].split())
    assert "not T2: its pitch is 0.75 mm, ten of them 7.5 mm" in " ".join(answer["text"].split())


def test_the_register_is_that_of_the_lens_spoken_of(tmp_path: Path) -> None:
    talk = [
        "zorbex lens, 15.9mm thread, 32 tpi",
        "flange to image about 12.5mm",
        "what is the register?",
        "and on mft?",
    ]
    answers = piped(tmp_path, talk)
    assert 12.29 in values(answers[2], "register_mm")
    assert "a D-mount lens" in answers[3]["reading"]
    assert "on a Micro Four Thirds body" in answers[3]["reading"]


def test_a_word_asked_for_without_the_lens_is_only_explained(tmp_path: Path) -> None:
    answer = piped(tmp_path, ["m42 on e mount", "what is a register"])[-1]
    assert answer["reading"] == "what is flange focal distance"


@pytest.mark.parametrize(
    ("said", "error"),
    [
        ("the adapter is 1mm too thick i think", 1.0),
        ("ring is a mm thick too much", 1.0),
        ("ring is 2 tenths too thin", -0.2),
        ("it is too long by half a mm", 0.5),
        ("adapter is 10 thou too thick", 0.254),
    ],
)
def test_too_much_of_a_ring_is_an_error_of_the_seat(tmp_path: Path, said: str, error: float) -> None:
    _, off, shim = piped(tmp_path, ["c mount lens on mft wont reach infinity", said, "how thick a shim"])
    assert f"{abs(error):g} mm" in off["reading"]
    assert "too" in off["reading"]
    assert values(shim, "register_error_mm") == [pytest.approx(error)]


def test_what_to_shave_off_is_known_from_the_talk(tmp_path: Path) -> None:
    talk = ["c mount lens on mft wont reach infinity", "adapter is 1mm too thick", "how much do i have to shave off"]
    *_, shave, other, stopped = piped(tmp_path, [*talk, "and for a 12.5mm", "how much at f/8"])
    assert "take 1 mm off one seat of the ring" in shave["text"]
    assert "At which mark" not in shave["text"]
    assert "12.5 mm lens is sharp to 18 cm" in other["text"]
    assert "at f/8 on Four Thirds forgives 0.12 mm, 0.88 mm less than is needed" in stopped["text"]


def test_what_is_told_last_of_a_ring_holds(tmp_path: Path) -> None:
    talk = ["25mm f1.4 c mount on mft", "ring is 0.2 too thick", "no, it is 0.1 too thin", "what shim"]
    answer = piped(tmp_path, talk)[-1]
    assert "too thick" not in answer["reading"]
    assert "a shim of 0.1 mm" in answer["text"]


def test_a_measured_ring_tells_the_shim_too(tmp_path: Path) -> None:
    answer = piped(tmp_path, ["my C to MFT ring is 2.5mm thick, 25mm f1.4", "how much to take off"])[-1]
    assert "4.22 mm too far out: taking 4.22 mm off the ring is work for a lathe" in " ".join(answer["text"].split())


def test_a_subject_that_fills_the_frame_is_a_field(tmp_path: Path) -> None:
    talk = [
        "58mm f2 m42 on e-mount aps-c",
        "how close with a 20mm tube",
        "the flower must fill the frame, it is 3cm wide",
    ]
    *_, filled, light = piped(tmp_path, [*talk, "exposure?"])
    assert "30 mm of field" in filled["reading"]
    assert "thread" not in filled["reading"]
    wanted = 58 * 23.6 / 30  # f times the width of the frame over that of the flower
    assert f"20 mm comes nearest to the {wanted:.4g} mm that it wants" in " ".join(filled["text"].split())
    assert f"{wanted:.4g} mm of extension" in " ".join(light["text"].split())


def test_not_close_enough_tells_how_much_more_to_put_between(tmp_path: Path) -> None:
    talk = ["35mm f2.8 m42 on z, with a 10 mm tube", "how close", "thats not close enough, what can i do"]
    answer = piped(tmp_path, talk)[-1]
    assert answer["intent"] == "macro-distance"
    assert "for 1x: 35 mm of extension, 25 mm more" in " ".join(answer["text"].split())


def test_rings_at_hand_make_a_length(tmp_path: Path) -> None:
    exact = asked(tmp_path, "which spacers make 16.5 mm from 5, 10, 0.5 and 1 mm rings")
    assert "10 + 5 + 1 + 0.5 = 16.5 mm: just right" in exact["text"]
    short = asked(tmp_path, "which spacers make 20.3 mm from 5, 10, 0.5 and 1 mm rings")
    assert "16.5 mm, 3.8 mm short" in short["text"]
    assert "with several of each" in short["text"]


def test_a_row_of_bare_numbers_is_of_what_ends_it(tmp_path: Path) -> None:
    answer = asked(tmp_path, "10 + 16 + 21 tubes plus the 17-31 helicoid, how much is that, and how close with a 75")
    assert "a 75 mm lens focus with a 10 mm extension tube and a 16 mm" in answer["reading"]
    assert "= 64 mm to 78 mm" in answer["text"]


def test_a_spigot_is_no_part_of_the_seat(tmp_path: Path) -> None:
    answer = asked(tmp_path, "m42 to e ring measures 27.1 over all incl. 0.7 mm spigot, 50mm f2")
    assert "26.4 mm" in answer["text"]


def test_the_moon_sharp_at_a_mark_is_a_seat_too_close(tmp_path: Path) -> None:
    first, inches = piped(
        tmp_path, ["75mm c mount lens, moon is sharp at 15 ft on the ring", "how much is that in thou"]
    )
    assert first["intent"] == "shim-calibration"
    assert values(first, "register_error_mm")[0] < 0
    assert " thou." in inches["text"]


def test_a_reversed_lens_is_not_computed_as_if_it_were_not(tmp_path: Path) -> None:
    alone, on_body = piped(tmp_path, ["ring at 5.2 extension with 25mm lens reversed", "on e mount"])
    assert "not known without the body" in " ".join(alone["text"].split())
    assert not values(alone, "magnification")
    assert "assumed by construction" in " ".join(on_body["text"].split())
    assert asked(tmp_path, "25mm reversed on 75mm")["text"].startswith("25 mm reversed before 75 mm")


def test_each_lens_close_up_is_told_at_its_own_stop(tmp_path: Path) -> None:
    answer = asked(tmp_path, "m42 28 2.8 and m42 135 3.5 on e mount aps-c with a 20 mm tube, how close")
    lines = [line for line in answer["text"].splitlines() if "counts as" in line]
    assert ["f/2.8 counts" in line for line in lines] == [True, False]
    assert "f/3.5 counts" in lines[1]


def test_both_after_two_tubes_are_the_tubes(tmp_path: Path) -> None:
    talk = ["I have three m42 lenses: 28 2.8, 50 1.8 and 135 3.5, and an E mount apsc body"]
    talk += ["macro with the 50, i got tubes 10 and 20", "what is the magnification with both"]
    both = piped(tmp_path, talk)[-1]
    assert "how close does a 50 mm f/1.8 M42 lens focus" in " ".join(both["reading"].split())
    assert "0.6x (30 mm)" in both["text"]
