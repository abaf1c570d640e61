"""One exposure in its many spellings: stop, shutter, speed and light stay what they are in every order."""

from __future__ import annotations

from itertools import cycle, permutations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon

STOPS = (
    "f/1.8", "f1.8", "f 1.8", "f=1.8", "f1:1.8", "1:1.8", "stop 1.8", "aperture 1.8", "iris stuck at f1.8", "1.8 lens",
    "1.8 lens with no iris", "1.8 wide open", "at 1.8",
)  # fmt: skip
TIMES = (
    "1/50", "shutter 1/50", "shutter speed 50", "shutter 50", "a 50th of a second", "video at 25", "25p", "25 fps",
    "rolling at 25", "25p 180 degrees",
)  # fmt: skip
SPEEDS = ("iso 400", "ISO400", "400 iso", "iso locked at 400", "base iso 400", "asa 400", "ei 400", "iso is 400")
LIGHTS = {"EV 12": "EV 12", "LV 12": "EV 12", "12 EV": "EV 12", "open shade": "open-shade", "on the beach": "beach"}
ASKED = ("which nd", "how much nd", "how strong an nd", "nd?")


def exposures() -> list[tuple[str, str, str, str]]:
    stops, times, speeds, lights = cycle(STOPS), cycle(TIMES), cycle(SPEEDS), cycle(LIGHTS)
    out = []
    for n, order in zip(range(180), cycle(permutations(range(4))), strict=False):
        stop, time, speed, light = next(stops), next(times), next(speeds), next(lights)
        said = [(stop, time, speed, light)[at] for at in order]
        out.append((f"{', '.join(said)}, {ASKED[n % 4]}", stop, time, light))
    return out


def wrongly_read(asked: str, time: str, light: str) -> str:
    got = read(asked, lexicon())
    if not isinstance(got, Question) or got.intent != "exposure-nd":
        return "intent"
    filmed = "25" in time
    told = got.said("frame_rate") == "25" if filmed else got.said("shutter") == "1/50 s"
    rest = (got.f_number == 1.8, told, got.said("iso") == "400", got.said("light") == LIGHTS[light])
    names = ("stop", "time", "speed", "light")
    return ", ".join(name for name, right in zip(names, rest, strict=True) if not right)


def test_an_exposure_is_read_alike_in_every_spelling_and_order() -> None:
    wrong = {asked: why for asked, _, time, light in exposures() if (why := wrongly_read(asked, time, light))}
    assert not wrong


@pytest.mark.parametrize(
    ("text", "key", "value"),
    [
        ("want the shutter at 180 degrees, 24p, f/2, sun, which nd", "angle", "180"),
        ("video at 50 mm f/2 full sun 1/50 nd?", "frame_rate", None),
        ("the 50th of a mm is too much for a 50mm lens, infinity?", "shutter", None),
        ("nd 1.8 on f/2, sun, iso 100, what shutter", "factor", "ND 1.8"),
        ("f/2, iso 800 EV 12, 1/50, nd", "light", "EV 12"),
    ],
)
def test_what_only_looks_like_a_setting_is_none(text: str, key: str, value: str | None) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert got.said(key) == value
