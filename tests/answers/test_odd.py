"""Odd turns that once ended badly: they are answered, or asked back."""

from pathlib import Path

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk


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
        ("2/3 inch lens and a",),
        ("is a converter, -1 focal reducer better than a plain adapter for m42 on mft",),
        ("25mm c mount on mft, does it cover", "fisheye 8 0 on mft still fisheye? whats eq"),
        ("B4 9mm end with the doubler on m43, equivalent to what", "saw 0 an 40 cheap, my dslr is EF. should i"),
        ("i counted 26 ridges on one inch, 39 across. name it 0mm",),
        ("i have the c ring set 2 + 5 + 10 and a 35mm 1.5 cctv. all three together", "ibis on or off with a 00mm"),
        ("meter says f0 at 1/125. lens is stuck at f/2.9. keep the shutter, how many stops of grey",),
        ("c mount 25, 1/0 sec, base iso 640, bright beach at noon. how many stops of grey filter to stay f/4?",),
        ("dull day lowest iso 800 fixed f1.6 1/30 sec which filter", "1/0.0 sec which filter"),
        ("super 8 lens 0.0..36, what would that be on ff",),
        ("what focal length fills 4m at 12 m on mft", "what focal length fills 4m at 0 m on mft"),
        ("0mm lens to sensor 200mm, what magnification",),
        ("P6 80 infinity falls at 15m on my adapter", "twins or not: 5/0 32 and 16x0.8"),
        ("biggest clean 16:999999999",),
        ("12.5 with the short D register (0.0) in a normal D camera. focus?",),
        ("c mount on e", "compare #1 and #999999999"),
    ],
)
def test_what_makes_little_sense_is_answered_or_asked_back(club: Desk, turns: tuple[str, ...]) -> None:
    last = talk(club, *turns)[-1]
    assert last.lines
    assert last.status in (0, 1, 2)


def test_a_mark_beside_another_number_is_told_against_the_stops_it_is_taken_for(club: Desk) -> None:
    answer = talk(club, "is ND64 six stops", "999999999 is mm ND64 six stops")
    assert [flat(one).startswith("Yes, 6 stops.") for one in answer] == [True, True]


PLATE = """\
adapters:
  plate: {name: C to MFT plate, front: c, rear: mft-mount, kind: recessed, thickness: -1.72 mm, owned: 1}
  disc: {name: C to MFT disc, front: c, rear: mft-mount, kind: plain, thickness: 1 mm, owned: 1}
"""


def test_whether_a_ring_alone_gives_infinity_is_told_by_its_seat(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text(PLATE, encoding="utf-8")
    answer = talk(Desk(gear=gear), "which of my c adapters", "the ones that reach infinity")[-1]
    assert flat(answer).startswith("1 of 2 adapters: 1. C to MFT plate:")
