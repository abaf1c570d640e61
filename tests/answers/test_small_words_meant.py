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


@pytest.mark.parametrize(
    "question",
    [
        "how do i beat the vendor down to 15",
        "how many calories in 2 bananas",
        "what time is sunset on the 3rd",
        "where is the darkest sky this weekend",
    ],
)
def test_a_bare_number_makes_nothing_of_the_trade(asked, question):
    assert asked(question)["intent"] == "out-of-scope"


def test_why_a_view_is_tight_tells_the_crop_factor(asked):
    found = asked("why is the picture so tight with the 35mm OM on E aps-c")
    assert found["intent"] == "why"
    assert {round(row["least"], 2) for row in found["quantities"]["crop_factor"]} == {1.53}


@pytest.mark.parametrize(("question", "focal", "limit"), [
    ("m42 28mm on E: everything over 4 metres is mush", 28, 4), ("FD 24mm on E, anything past 3 m is soft", 24, 3),
    ("OM 50 on Z nothing sharp over 12 metres", 50, 12), ("sharp only to 8m with the 35mm K on E", 35, 8),
])  # fmt: skip
def test_beyond_what_all_is_soft_tells_how_thick_the_ring_is(asked, question, focal, limit):
    best, far = asked(question)["chains"][0], limit * 1000 - 2 * focal
    assert best["verdict"] == "macro-only"
    assert best["register_error_mm"]["least"] == pytest.approx((far - (far**2 - 4 * focal**2) ** 0.5) / 2, abs=0.001)


@pytest.mark.parametrize(("question", "focal"), [
    ("closest focus of a 28mm on a 10mm tube", 28), ("min focus of my 35 with a 10mm tube", 35),
    ("mfd of a 135 with 25 mm tube", 135), ("close focus of my 58 on a 16mm tube?", 58),
])  # fmt: skip
def test_the_lens_of_which_the_nearest_is_asked_is_no_distance(club, question, focal):
    found = club.ask(question).question
    assert (found.lens.focal_length_mm, found.said("close_focus")) == (focal, None)


@pytest.mark.parametrize("question", ["tstop 3.1 vs f2.8, same light?", "is a t-stop of 2.2 slower than f/2"])
def test_a_t_stop_is_read_in_words(club, question):
    assert club.ask(question).question.said("aperture") in ("T3.1", "T2.2")


def test_a_way_through_glass_that_nobody_named_is_no_nearer(asked):
    pieces = asked("m42 50mm on E, helicoid drawn to 20mm, infinity?")["chains"][0]["pieces"]
    assert [piece["id"] for piece in pieces] == ["described-1", "m42-e"]


@pytest.mark.parametrize(("question", "needed"), [
    ("what lens on MFT looks like 35mm on full frame", 17.5),
    ("which lens on aps-c gives the look of a 50 on full frame", 32.8),
])  # fmt: skip
def test_a_lens_asked_for_is_that_of_the_other_frame(asked, question, needed):
    assert f"needs {needed} mm" in asked(question)["text"]


def test_what_a_zoom_is_set_to_may_stand_behind_its_glass(club):
    assert (
        club.ask("18-35 with 0.71 booster at 24mm, which number for the stabiliser").question.lens.focal_length_mm == 24
    )


@pytest.mark.parametrize("question", ["where can i get my exakta lens serviced", "cla for my old rangefinder lens?"])
def test_servicing_is_not_answered(asked, question):
    assert asked(question)["intent"] == "out-of-scope"


@pytest.mark.parametrize(("question", "lens", "focal"), [
    ("old 50mm 1.8, screw mount roughly 42 across, goes on E?", "m42", 50),
    ("35mm 2.8 that screws on, maybe 42 mm. E body", "m42", 35),
    ("screw-in lens, 39 wide, 50mm 3.5, can it go on E", "ltm", 50),
    ("lens with a screw of 42 or so, 28mm 2.8. ring for X?", "m42", 28),
])  # fmt: skip
def test_a_screw_told_by_its_width_alone_is_the_mount_that_goes_by_it(asked, question, lens, focal):
    found = asked(question)
    assert (found["entities"]["lens"]["mount"], found["entities"]["lens"]["focal_length_mm"]) == (lens, focal)
    assert "Taken for" in found["text"]


@pytest.mark.parametrize(("question", "focal", "near", "wanted"), [
    ("get from 0.9 m to 0.5 m with a 50, how much extension", 50, 0.9, 0.5),
    ("how long a ring for a 35 from 0.7 m down to 0.3", 35, 0.7, 0.3),
    ("tube needed to bring an 85 from 1 m to 60 cm", 85, 1.0, 0.6),
])  # fmt: skip
def test_what_a_lens_does_by_itself_is_no_part_of_the_tube(asked, question, focal, near, wanted):
    def drawn(at):
        far = at * 1000 - 2 * focal
        return (far - (far**2 - 4 * focal**2) ** 0.5) / 2

    rows = asked(question)["quantities"]["extension_mm"]
    left = [row for row in rows if row.get("case", "").endswith("mark")]
    assert left[0]["least"] == pytest.approx(drawn(wanted) - drawn(near), abs=0.02)


@pytest.mark.parametrize(("question", "needed"), [
    ("s35 25mm equals what on full frame", "full frame needs 34.8 mm"),
    ("full frame 24mm is what on super 16", "Super 16 needs 8.1 mm"),
    ("mft 12mm = what on aps-c", "APS-C needs 15.7 mm"),
])  # fmt: skip
def test_a_format_told_with_the_lens_is_its_own(asked, question, needed):
    assert needed in asked(question)["text"].replace("\n", " ")


@pytest.mark.parametrize(("question", "said"), [
    ("vnd 2-5", "2 to 5 stops"), ("variable nd 1-5.5", "1 to 5.5 stops"), ("vnd 2-400", "1 to 8.64 stops"),
])  # fmt: skip
def test_small_ends_of_a_variable_filter_are_stops(asked, question, said):
    assert said in asked(question)["text"]


@pytest.mark.parametrize(("question", "focal", "error"), [
    ("M42-E 50mm, ring is 27.6, infinity?", 50, 0.14), ("MD-E 24/2.8, ring 25.6 infinity?", 24, 0.1),
    ("LTM-E 28mm f2.8, ring 10.86, far limit", 28, 0.06),
])  # fmt: skip
def test_a_length_behind_two_mounts_is_the_lens_and_no_ring(asked, question, focal, error):
    found = asked(question)
    assert found["entities"]["lens"]["focal_length_mm"] == focal
    assert found["chains"][0]["register_error_mm"]["least"] == pytest.approx(error, abs=0.001)


def test_lenses_listed_behind_a_colon_with_words_before_it(club):
    found = club.ask("lenses so far: one OM, one FD, one K. one X body. shopping list").question
    assert [lens.id for lens in found.lenses] == ["om-mount", "fd-mount", "k-mount"]


@pytest.mark.parametrize(("question", "focal", "shim"), [
    ("what does a 0.1 shim do to a 35mm", 35, 0.1), ("how much does 0.3mm shim change infinity on 135", 135, 0.3),
    ("a 0.05 paper under the ring, 24mm lens, do i see it", 24, 0.05),
    ("0.3mm shim under the ring, 135mm, what changes", 135, 0.3),
])  # fmt: skip
def test_what_a_shim_does_is_told_where_that_is_asked(asked, question, focal, shim):
    rows, wanted = asked(question)["quantities"]["far_from_sensor_mm"], 2 * focal + focal**2 / shim + shim
    assert any(row["least"] <= wanted <= row["greatest"] for row in rows)
