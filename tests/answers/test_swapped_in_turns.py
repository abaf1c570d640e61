"""A turn that only swaps a lens, a mount or a body: the rest stays, and what was asked."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import talk

FIRST = {
    "chain": "50mm f/2 m42 on E aps-c",
    "focus-verdict": "does a 50mm f/2 m42 lens reach infinity on E aps-c",
    "coverage": "does a 50mm f/2 m42 lens cover E aps-c",
    "crop-equivalent": "50mm f/2 m42 on E aps-c ff equivalent",
    "macro-distance": "50mm f/2 m42 on E aps-c with a 20mm tube, how close",
    "depth-of-field": "dof 50mm f/2 m42 on E aps-c at f4, 3m",
    "exposure-nd": "nd for 50mm f/2 m42 on E aps-c, full sun, 1/50, iso 100",
}
SWAPS = [
    ("and C/Y?", 50, "cy-mount", "e-mount"),
    ("same for FD", 50, "fd-mount", "e-mount"),
    ("QBM instead", 50, "qbm", "e-mount"),
    ("and an OM lens?", 50, "om-mount", "e-mount"),
    ("and on Z?", 50, "m42", "z-mount"),
    ("how about an X body", 50, "m42", "x-mount"),
    ("mft then?", 50, "m42", "mft-mount"),
    ("28 instead of 50", 28, "m42", "e-mount"),
    ("and a 35?", 35, "m42", "e-mount"),
    ("same with my 28", 28, "m42", "e-mount"),
]


@pytest.mark.parametrize("asked", FIRST)
@pytest.mark.parametrize(("said", "focal", "mount", "body"), SWAPS, ids=[row[0] for row in SWAPS])
def test_what_is_swapped_is_swapped_alone(
    club: Desk, asked: str, said: str, focal: float, mount: str, body: str
) -> None:
    last = talk(club, FIRST[asked], said)[-1]
    assert last.question is not None
    assert [(one.focal_length_mm, mount in one.ids) for one in last.question.lenses] == [(focal, True)]
    assert any(body in id_ for id_ in last.question.bodies[0].ids)
    assert last.intent == asked
