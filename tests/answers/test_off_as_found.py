"""How far a lens comes where glass at the sensor was changed, a helicoid stays open, scale and tape differ."""

from __future__ import annotations

import pytest

from engine.render.record import record_of
from tests.answers.expects import fault

NAMES = {"far": "far_from_sensor_mm", "error": "register_error_mm", "mark": "scale_mark_mm", "shim": "shim_mm"}


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
        # on a ring of its two mounts, drawn out by so much
        ("my m42 to E helicoid ring is jammed 1.2 mm out, 50mm m42 on it. how far does it reach", "error", 1.2),
        ("helicoid adapter (LTM to E) seized about 0.5mm from closed. 28mm ltm lens. farthest focus?", "error", 0.5),
        ("the M to Z helicoid adapter doesnt screw in the last 0.3 mm. 50 m-mount lens, how far", "error", 0.3),
        # the mark's extension f f/(D - 2f) set against that of the tape
        ("my 35 set at 2m on the scale is really sharp at 1.8m. where does it end at infinity", "far", 17000),
        ("50 at its 3m mark focuses to 3.4 m measured. does infinity still come, and where", "mark", 23800),
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
        (("LTM-MFT focusing adapter seized at 1mm extension. 50mm LTM lens how far", "and my 90"), 1.0),
    ],
)
def test_what_was_measured_stays_in_the_talk(talked, lines, error):
    assert _lacks(talked(*lines), "error", error) is None
