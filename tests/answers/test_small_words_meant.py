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
