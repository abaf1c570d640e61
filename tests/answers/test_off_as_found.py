"""How far a lens comes where glass at the sensor was changed, a helicoid stays open, scale and tape differ."""

from __future__ import annotations

import pytest

from engine.render.record import record_of
from tests.answers.expects import fault

NAMES = {
    "far": "far_from_sensor_mm",
    "error": "register_error_mm",
    "mark": "scale_mark_mm",
    "shim": "shim_mm",
    "more": "extension_mm",
}


def _lacks(record, name, value):
    """What is wrong with the number of that name, in mm; None where it is told."""
    return fault({"quantity": NAMES[name], "value": value, "abs_tol": max(0.02, abs(value) * 0.03)}, record)


@pytest.mark.parametrize(
    ("said", "name", "value"),
    [
        # t(1 - 1/n), n 1.5 to 1.54, is what the image comes nearer to the lens; far limit 2f + f f/x + x
        ("sensor stack of 2.5mm was taken out and not replaced. 50mm lens, where does focus end", "far", 3030),
        ("someone removed the 1.8 mm hot mirror from this E body. my 24mm c/y lens, infinity?", "error", 0.62),
        ("cover glass is gone on this cam, was 0.8mm. 12mm c mount lens, infinity?", "error", 0.27),
        ("2mm thick gel holder glass dropped in behind the 40mm lens, does infinity still come", "error", -0.68),
        ("the 3mm hot mirror went and a 1 mm IR pass glass came in. does my 50 still get infinity", "error", 0.68),
        ("replaced the 1 mm cover glass by a 2.5 mm clear one. 35mm lens: infinity?", "error", -0.51),
        ("1.5 mm window in place of the old 3 mm hot mirror, what does my 50 do at the far end", "error", 0.51),
        ("rear filter of 1 mm missing on my 300 tele, drop-in drawer empty. infinity?", "error", 0.34),
        # too much taken off leaves the ring too thin
        ("ring skimmed by 0.2 too far, 24mm. infinity?", "error", -0.2),
        ("FD 55 with an EF bayonet put on by a previous owner, far limit 3 m. error?", "error", 1.05),
        # on a ring of its two mounts, drawn out by so much
        ("my m42 to E helicoid ring is jammed 1.2 mm out, 50mm m42 on it. how far does it reach", "error", 1.2),
        ("helicoid adapter (LTM to E) seized about 0.5mm from closed. 28mm ltm lens. farthest focus?", "error", 0.5),
        ("the M to Z helicoid adapter doesnt screw in the last 0.3 mm. 50 m-mount lens, how far", "error", 0.3),
        # the mark's extension f f/(D - 2f) set against that of the tape
        ("my 35 set at 2m on the scale is really sharp at 1.8m. where does it end at infinity", "far", 17000),
        ("50 at its 3m mark focuses to 3.4 m measured. does infinity still come, and where", "mark", 23800),
        # f f/(D - 2f) at the nearer distance less that at the farther
        ("58 mm with min focus 0.5m, need 0.35 m, what tube", "more", 6.42),
        ("100mm focuses to 1 m. what extension gets it to 70 cm", "more", 8.17),
        # body register and tube less what was measured from flange to image
        ("slide lens 100 mm, shoulder to image 80 mm, on EF. fixed tube of 36.3 mm, does it reach", "error", 0.3),
        ("a MD 45 someone gave an EF bayonet stops at 5 m on EF. how far off", "error", 0.41),
        ("adapter 0.15 too thick, farthest sharp distance?", "far", 17000),
        # each distance belongs to the lens before it
        ("my 24 stops at 3 m and the 35 at 6.2m on the same adapter, how much too thick is it", "error", 0.2),
    ],
)
def test_what_is_off_tells_how_far_the_lens_comes(club, said, name, value):
    assert _lacks(record_of(club.ask(said), club.knowledge), name, value) is None


@pytest.mark.parametrize(
    ("lines", "error"),
    [
        (("K to M then M to Z for a 35mm, ok?", "calipers say 17.7 and 11.75"), -0.01),
        (("can i use LTM-M plus M-E for my 28 ltm", "they come out at 1.05 and 9.9"), 0.15),
        (("put a 2 mm ND between lens and sensor. 20mm lens. infinity?", "and with the 50"), -0.68),
        (("c/y to ef, ring 1.4 measured, 35mm. infinity?", "shim 0.1 under it"), 0.0),
        (("LTM-MFT focusing adapter seized at 1mm extension. 50mm LTM lens how far", "and my 90"), 1.0),
    ],
)
def test_what_was_measured_stays_in_the_talk(talked, lines, error):
    assert _lacks(talked(*lines), "error", error) is None


def test_a_tube_that_came_out_long_is_cut_by_what_it_is_over(talked):
    told = ("75mm enlarger lens 66 flange to image. what length on Z", "printed tube is 50.6", "what do I sand off")
    assert _lacks(talked(*told), "shim", 0.6) is None


def test_lenses_that_end_short_and_native_ones_too_blame_the_body(talked):
    told = ("my 28 stops at 4 m and the 50 at 13 m on this camera, error?", "my own AF lens does it as well")
    record = talked(*told)
    assert "body" in record["text"]
    assert "service" in record["text"]
    assert _lacks(talked(*told, "how much should i thin one adapter by for now"), "shim", 0.2) is None


@pytest.mark.parametrize(
    ("said", "begins"),
    [
        ("135mm and 10mm extension, subject at 2.5 m. does focus get there", "No"),
        ("200mm with a 5 mm tube on its own body, can i still get a bird at 8 m", "Yes"),
        ("adapter 0.06 proud, 135/2.8. horizon ok?", "No"),
        ("ring 0.05 thick, 50 f4, infinity still fine?", "Yes"),
        ("100 mm on a 12mm tube, cat on the sofa 1.5 m off, out of range?", "No"),
    ],
)
def test_whether_it_comes_so_far_is_said_first(club, said, begins):
    assert record_of(club.ask(said), club.knowledge)["text"].startswith(begins)


@pytest.mark.parametrize(
    "said",
    [
        "28 with floating group on an adapter 0.1 thin, corners soft at infinity, why",
        "my 21mm with close range correction, ring 0.2 too thin. does infinity suffer",
    ],
)
def test_a_floating_group_is_told_of_where_the_seat_is_off(club, said):
    assert "floating group is set for near" in " ".join(record_of(club.ask(said), club.knowledge)["text"].split())


def test_why_so_little_does_so_much_goes_by_the_focal_length(talked):
    told = (
        "om 24 to RF via OM-M and M-RF, works?",
        "mine measure 18.28 and 7.87",
        "both nearly fine, why so near then",
    )
    text = " ".join(talked(*told)["text"].split())
    assert "add up: 0.08 + 0.07" in text
    assert "square of the focal length" in text
