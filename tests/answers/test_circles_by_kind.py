"""The circle of a lens that is told by what it was made for, beside the kind of lens it is."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat


@pytest.mark.parametrize("asked", ["28mm projector lens from super 8, does it light a 1 inch sensor",
                                   "8mm projector lens 25mm cover mft?"])  # fmt: skip
def test_a_projector_lens_for_narrow_film_is_no_slide_projector_s(club: Desk, asked: str) -> None:
    assert "does not cover" in flat(club.ask(asked))


def test_a_slide_projector_s_lens_covers_what_a_slide_does(club: Desk) -> None:
    assert "covers full frame: image circle 43 to 60 mm" in flat(club.ask("slide projector 85 covers ff"))


def test_medium_format_said_of_a_lens_tells_its_circle(club: Desk) -> None:
    assert "covers full frame: image circle 70 to 115 mm" in flat(
        club.ask("medium format 80 on full frame, any vignette possible")
    )


@pytest.mark.parametrize("asked", ["4x microscope objective on ff, only middle bright?",
                                   "RMS objective on full frame, does it cover"])  # fmt: skip
def test_a_microscope_objective_lights_its_own_field(club: Desk, asked: str) -> None:
    assert "does not cover full frame: image circle 18 to 22 mm" in flat(club.ask(asked))
