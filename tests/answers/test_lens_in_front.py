"""What stands before the numbers of a lens, and what they are put on: its mount in a letter, a name, its thread."""

from __future__ import annotations

import pytest


def _pair(asked, text: str) -> tuple[str | None, float | None, float | None, str | None]:
    told = asked(text)["entities"]
    lens, body = told["lens"], told["body"]
    return lens.get("mount"), lens.get("focal_length_mm"), lens.get("f_number"), body["mount"]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("k 50 on e", ("k-mount", 50, None, "e-mount")),
        ("curlew r 90mm on an L mount", ("r-mount-slr", 90, None, "l-mount")),
        ("got a curlew 58 f2 cy, body is e", ("cy-mount", 58, 2, "e-mount")),
        ("35 2 lens md on e", ("sr-mount", 35, 2, "e-mount")),
        ("FD 200 1:4 lens ok on L", ("fd-mount", 200, 4, "l-mount")),
        ("135, 2.8 om on z", ("om-mount", 135, 2.8, "z-mount")),
        ("md, 135 on x-mount", ("sr-mount", 135, None, "x-mount")),
        ("does a 58 in K reach infinity on emount", ("k-mount", 58, None, "e-mount")),
        ("105 fd lens for e", ("fd-mount", 105, None, "e-mount")),
        ("will 85/1.8 k work on z", ("k-mount", 85, 1.8, "z-mount")),
        ("85mm f1.8, EF on k-mount?", ("ef-mount", 85, 1.8, "k-mount")),
        ("85mm f1.8, EF for k-mount?", ("ef-mount", 85, 1.8, "k-mount")),
        ("50 m42 lens / z", ("m42", 50, None, "z-mount")),
        ("50mm lens with m42x1 thread on e", ("m42", 50, None, "e-mount")),
        ("25mm lens with 1-32 thread on e mount", ("c", 25, None, "e-mount")),
        ("28mm lens m39x26tpi on z", ("ltm", 28, None, "z-mount")),
    ],
)
def test_lens_and_body_are_told_apart(asked, text, wanted):
    assert _pair(asked, text) == wanted


@pytest.mark.parametrize("text", ["at 5.6/8 or so", "1/50 at iso 400", "2/3 inch chip", "3/16 of an inch"])
def test_no_lens_is_made_of_other_pairs_of_numbers(asked, text):
    assert "focal_length_mm" not in (asked(text).get("entities", {}).get("lens") or {})
