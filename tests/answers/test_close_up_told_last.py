"""What is put before a lens, or done to it, told behind the body."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("135/2.8 T2 on MFT, +3 diopter", "with a +3 dioptre close-up lens"),
        ("75mm f4 enlarger on X, +3 dioptre", "with a +3 dioptre close-up lens"),
        ("135/2.8 T2 on G 44x33 reversed, magnification", "135 mm f/2.8 reversed T2 lens"),
        ("50/1.8 M42 on Z reversed, magnification", "50 mm f/1.8 reversed M42 lens"),
        ('12.5mm 1" C on a full frame E, half life size, what extension', "magnification 0.5:1"),
    ],
)
def test_it_is_asked_how_close_that_comes(asked, text, told):
    reading = asked(text)["reading"]
    assert reading.startswith("how close does")
    assert told in reading
