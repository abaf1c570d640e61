"""What small words change: which body is not meant, what a number is said of, what is asked and not told."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(("question", "own", "thickness"), [
    ("found a few OM lenses, what else but OM bodies takes them", "om-mount", 28),
    ("besides K cameras, what takes K lenses?", "k-mount", 27.46),
    ("which bodies other than FD take FD lenses", "fd-mount", 24),
    ("got AR lenses. what can i put them on that isnt an AR body", "ar-mount", 22.5),
])  # fmt: skip
def test_the_bodies_a_lens_was_made_for_are_not_meant_by_what_else(asked, question, own, thickness):
    found = asked(question)
    rings = {row["case"]: row["least"] for row in found["quantities"]["ring_thickness_mm"]}
    assert found["intent"] == "list-fits"
    assert own not in rings
    assert rings["e-mount"] == pytest.approx(thickness, abs=0.02)


@pytest.mark.parametrize(("question", "said"), [
    ("testing infinity at 500m with a 135, good enough?", "Yes, 500 m is far enough for 135 mm"),
    ("can i check infinity on a mast 120 m away, 50mm", "No, 120 m is too near for 50 mm"),
    ("is a hill 2 km off good to set infinity with 200mm", "Yes, 2000 m is far enough for 200 mm"),
])  # fmt: skip
def test_what_infinity_is_tested_on_is_no_mark_of_a_scale(asked, question, said):
    found = asked(question)
    assert found["text"].replace("\n", " ").startswith(said)
    assert "shim_mm" not in found["quantities"]


def test_a_mark_read_off_while_testing_still_tells_the_shim(asked):
    found = asked("my 50 infinity test on a tower 400m away is sharp at the 20m mark")
    assert found["quantities"]["shim_mm"]["least"] == pytest.approx(0.126, abs=0.002)


@pytest.mark.parametrize(("question", "made_for"), [
    ('12mm security lens says 1/2" on the side. does it cover MFT?', "v12"),
    ('machine vision 35mm with 2/3" printed on it, on MFT, dark corners?', "v23"),
    ('75mm c mount lens: 1 inch it says. does it cover mft', "1-inch-type"),
    ('cctv lens 1" 25mm on MFT, covers?', "1-inch-type"),
])  # fmt: skip
def test_what_stands_on_a_lens_is_the_format_it_is_made_for(club, question, made_for):
    assert club.ask(question).question.lens.format == made_for


@pytest.mark.parametrize(("question", "focal", "out", "near"), [
    ("M to Z adapter that stretches 4mm: 50mm lens quits at 0.7 m, how close", 50, 4, 0.7),
    ("LTM to E ring pulls out 5mm, 35mm lens, close limit 0.9. new minimum?", 35, 5, 0.9),
    ("helicoid 6mm M to E, 28mm which ends at 0.7: how near now", 28, 6, 0.7),
])  # fmt: skip
def test_how_far_a_ring_is_drawn_out_is_no_focal_length(asked, question, focal, out, near):
    sum_mm = near * 1000 - 2 * focal
    own = (sum_mm - (sum_mm**2 - 4 * focal**2) ** 0.5) / 2
    wanted = 2 * focal + focal**2 / (own + out) + own + out
    rows = asked(question)["quantities"]["near_from_sensor_mm"]
    assert any(row["least"] <= wanted <= row["greatest"] for row in (rows if isinstance(rows, list) else [rows]))


@pytest.mark.parametrize("question", [
    "39.1 mm screw, own focus ring, infinity lock. rangefinder? slr?", "slr or enlarger? 38.8 thread, focuses itself",
    "42mm screw with focus ring, infinity stop, T2 or M42?",
])  # fmt: skip
def test_a_lens_that_focuses_itself_is_asked_to_be_named(asked, question):
    found = asked(question)
    assert found["intent"] == "identify-mount"
    assert "flange to image" in found["text"].replace("\n", " ") or "pitch" in found["text"]


@pytest.mark.parametrize(("turns", "said"), [
    (("m42 50 on E", "and theres a little pin on the back, does it matter"), "A ring with a lip"),
    (("K lens on E", "little lever on the back does what"), "iris lever"),
    (("OM 50 on E", "f number shows 0"), "no contacts"),
])  # fmt: skip
def test_what_is_seen_in_a_talk_is_answered_and_not_the_same_again(talked, turns, said):
    assert said in talked(*turns)["text"].replace("\n", " ")


@pytest.mark.parametrize("question", [
    "L or RF for vintage lenses", "for old slr glass E or X? any difference", "which takes more old lenses, Z or E",
])  # fmt: skip
def test_mirrorless_mounts_are_set_apart_by_the_old_lenses_they_take(asked, question):
    found = asked(question)
    assert found["intent"] == "compare"
    assert found["text"].startswith("It hardly matters")
    assert len(found["quantities"]["register_mm"]) == 2
