"""Odd turns that once ended badly: they are answered, or asked back."""

import pytest

from engine.ask import Desk
from tests.answers.talks import talk


@pytest.mark.parametrize(
    "turns",
    [
        ("and after flipping that doubler SR,", "how deep would i have 'M to the make cup"),
        ("f2, overcast, 1/50, iso 0 400, how strong a nd filter",),
        ("full frame lens + -1 reducer on m43, any vignette",),
        ("lens at life size, marked f8, see F0",),
        ("it has the 1 inch thread and 17.5 behind till the picture. so they are?", "which threads that"),
        ("how much 1e309 0.71' money in total to try a D lens 1958 on the", "m43 42.5 f1.2 same thing"),
        ("screw 42 lens, mm across, 0 pitch 1 mm",),
        ("is a focal 0 reducer better than a plain adapter for m42 on mft",),
        ("0x adapter for m42 on mft",),
        ("is a converter, -1 focal reducer better than a plain adapter for m42 on mft",),
        ("25mm c mount on mft, does it cover", "fisheye 8 0 on mft still fisheye? whats eq"),
        ("B4 9mm end with the doubler on m43, equivalent to what", "saw 0 an 40 cheap, my dslr is EF. should i"),
    ],
)
def test_what_makes_little_sense_is_answered_or_asked_back(club: Desk, turns: tuple[str, ...]) -> None:
    last = talk(club, *turns)[-1]
    assert last.lines
    assert last.status in (0, 1, 2)
