"""One lens, one body and one thing asked, each in its many spellings: the reading stays the same."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import cycle

import pytest

from grammar.questions import Question, Unread
from grammar.reader import read
from tests.grammar.names import lexicon

LENSES = (
    "{f}mm f/{n} {m}", "{m} {f}mm f{n}", "{f}/{n} {m}", "{m} {f}/{n}", "{f} {n} {m}", "{m} {f} {n}", "{f}mm {n} {m}",
    "f{n} {f} {m}", "{f} f{n} {m}", "{m} {f} f/{n}", "{f}mm f {n} {m}", "{m}, {f}mm, f/{n}", "{f}mm, f/{n}, {m}",
    "{f} mm {m} 1:{n}", "{n}/{f} {m}", "{m} {n}/{f} mm",
    "curlew {m} {f} f{n}", "my curlew {f} f/{n} {m}", "{m} {f} 1:{n}",
    "a {f} 1:{n} {m} lens", "{f}mm f/{n} in {m}", "{m} mount {f} f{n}",
)  # fmt: skip
UNSTOPPED = (
    "{f} {m}", "{m} {f}", "{f}mm {m}", "{f}mm ({m})", "{m} lens {f}mm", "{f}mm lens in {m}", "{m}, {f} mm",
    "{f}mm, {m} lens", "{m} lens, {f}mm", "{f} mm {m} lens", "{m} prime {f}mm", "old {m} {f}",
)  # fmt: skip
BODIES = (
    "{b}", "{b} body", "{b} camera", "my {b}", "my {b} body", "an {b} body", "{b} aps-c", "full frame {b}",
    "{b} mirrorless", "{b} full frame body", "my {b} cam", "apsc {b}", "{b} (aps-c)", "the {b}",
)  # fmt: skip
MOUNTS = (
    ("M42", "m42"),
    ("C/Y", "cy-mount"),
    ("md", "sr-mount"),
    ("FD", "fd-mount"),
    ("om", "om-mount"),
    ("PK", "k-mount"),
    ("k", "k-mount"),
)
HOSTS = (("E", "e-mount"), ("x-mount", "x-mount"), ("mft", "mft-mount"), ("Z mount", "z-mount"), ("RF", "rf-mount"))
ASKED = (
    ("{lens} on {body}", "chain"), ("how do i get {lens} on {body}", "chain"), ("{body}, {lens}, which ring", "chain"),
    ("{lens} on {body}, infinity?", "focus-verdict"), ("does {lens} reach infinity on {body}", "focus-verdict"),
    ("why does {lens} not reach infinity on {body}", "why"), ("why no infinity with {lens} on {body}", "why"),
    ("{lens} on {body}, vignetting?", "coverage"), ("will {lens} fill the frame on {body}", "coverage"),
    ("{lens} on {body} equivalent?", "crop-equivalent"), ("{lens} on {body}, what does it act like", "crop-equivalent"),
    ("{lens} on {body} with 20mm of tubes, magnification?", "macro-distance"),
    ("depth of field {lens} on {body} at 3m", "depth-of-field"),
    ("what nd do i need: {lens} on {body}, bright sun, 1/60 iso 200", "exposure-nd"),
    ("{lens} on {body} reaches infinity at the 5m mark, how much shim", "shim-calibration"),
    ("{lens} on {body}, which menu settings", "gear-setting"), ("camera settings for {lens} on {body}", "gear-setting"),
)  # fmt: skip
FOCALS, STOPS = (28, 35, 50, 85, 135), ("1.4", "1.8", "2", "2.8")


def questions(
    lenses: Iterable[str], bodies: Iterable[str], asked: Iterable[tuple[str, str]]
) -> Iterator[tuple[str, ...]]:
    """The longest of the rows once through, the others as often as it takes: text, intent, lens, mount, stop, body."""
    rows = [list(lenses), list(bodies), list(asked)]
    longest = max(len(row) for row in rows)
    turned = [cycle(row) for row in (*rows, MOUNTS, HOSTS, FOCALS, STOPS)]
    for _ in range(2 * longest):
        lens, body, (ask, intent), (m, mount), (b, host), f, n = (next(row) for row in turned)
        text = ask.format(lens=lens.format(m=m, f=f, n=n), body=body.format(b=b))
        yield text, intent, str(f), mount, n if "{n}" in lens else "", host


def misread(rows: Iterable[tuple[str, ...]]) -> list[str]:
    """What was read otherwise, each with how."""
    out = []
    for text, intent, f, mount, n, host in rows:
        got = read(text, lexicon())
        assert isinstance(got, Question), f"{text}: {got}"
        lens = got.lens
        told = lens is not None and lens.focal_length_mm == float(f) and mount in lens.ids and len(got.lenses) == 1
        stop = not n or (lens is not None and lens.f_number == float(n))
        body = bool(got.bodies) and any(host in id_ for id_ in got.bodies[0].ids)
        if not (got.intent == intent and told and stop and body):
            out.append(f"{text}: {got.intent}, {lens}, {[one.ids for one in got.bodies]}")
    return out


@pytest.mark.parametrize("lenses", [LENSES, UNSTOPPED], ids=["with a stop", "without"])
def test_the_lens_is_the_same_in_each_spelling(lenses: tuple[str, ...]) -> None:
    for ask in (("{lens} on {body}", "chain"), ("{lens} on {body}, infinity?", "focus-verdict")):
        assert misread(questions(lenses, ("{b}",), (ask,))) == []


def test_the_body_is_the_same_in_each_spelling() -> None:
    assert misread(questions(("{f}mm f/{n} {m}", "{m} {f}"), BODIES, (("{lens} on {body}", "chain"),))) == []


def test_what_is_asked_is_the_same_for_each_lens_and_body() -> None:
    assert misread(questions(("{f}mm f/{n} {m}", "{m} {f}mm", "{f}/{n} {m}"), ("{b}", "my {b} body"), ASKED)) == []


@pytest.mark.parametrize("ring", ["{m} to E ring", "{m}-E ring", "{m}->E adapter", "{m}/E ring", "adapter {m} -> E"])
@pytest.mark.parametrize("lens", ["{f}", "{f}mm", "my {f}", "a {f}", "the {f}mm", "{f}mm f/2"])
@pytest.mark.parametrize(
    "asked",
    ["{ring}, {lens} has infinity at the 6m mark", "{ring}: {lens} reaches infinity at 6 m",
     "{lens} on the {ring} is at infinity when the scale says 6m", "on my {ring} the {lens} shows infinity at 6m"],
)  # fmt: skip
def test_a_lens_beside_a_ring_is_not_its_thickness(ring: str, lens: str, asked: str) -> None:
    got = read(asked.format(ring=ring.format(m="FD"), lens=lens.format(f=28)), lexicon())
    assert not isinstance(got, Unread)
    assert (got.intent, [one.focal_length_mm for one in got.lenses]) == ("shim-calibration", [28])
    assert got.said("mark") == "6000 mm"
    assert [one.thickness_mm for one in got.adapters] == [None]


@pytest.mark.parametrize("lens", ["50mm", "my 50", "50/2", "50 f2", "om 50mm"])
@pytest.mark.parametrize("tube", ["12mm tube", "a 12mm tube", "12 tube", "12mm tubes", "tubes 12mm"])
@pytest.mark.parametrize(
    "asked", ["{lens} + {tube}, how close", "{lens}, {tube} magnification?", "{tube} on {lens}: how big"]
)
def test_a_lens_and_a_tube_are_told_apart(lens: str, tube: str, asked: str) -> None:
    got = read(asked.format(lens=lens, tube=tube), lexicon())
    assert not isinstance(got, Unread)
    assert (got.intent, [one.focal_length_mm for one in got.lenses]) == ("macro-distance", [50])
    assert [one.thickness_mm for one in got.adapters] == [(12, 12)]


@pytest.mark.parametrize("lens", ["85mm f/2", "85/2", "my 85", "om 85mm", "85 om"])
@pytest.mark.parametrize(
    ("glass", "factor"), [("0.71 reducer", 0.71), (".64x reducer", 0.64), ("2x tc", 2), ("a 1.4x teleconverter", 1.4)]
)
@pytest.mark.parametrize(
    "asked",
    ["{lens} with {glass} on E equivalent?", "{lens} {glass} E ff equivalent", "E, {lens} and {glass} equivalent?"],
)
def test_a_lens_and_glass_behind_it_are_told_apart(lens: str, glass: str, factor: float, asked: str) -> None:
    got = read(asked.format(lens=lens, glass=glass), lexicon())
    assert not isinstance(got, Unread)
    assert (got.intent, [one.focal_length_mm for one in got.lenses]) == ("crop-equivalent", [85])
    assert [one.factor for one in got.adapters] == [factor]
    assert [one.ids[0] for one in got.bodies] == ["e-mount"]


@pytest.mark.parametrize(
    ("text", "made_for"),
    [
        ("half frame 38 on a full frame body - corners?", "half-frame"),
        ("FF 50 on an APS-C E body, dark edges?", "35mm-full-frame"),
        ("a 6x6 80 on full frame, covers?", "6x6"),
        ("s16 25 on mft - vignette?", "s16"),
    ],
)
def test_a_format_before_a_number_is_what_the_lens_was_made_for(text: str, made_for: str) -> None:
    got = read(text, lexicon())
    assert not isinstance(got, Unread)
    assert got.lens is not None
    assert (got.intent, got.lens.format) == ("coverage", made_for)
    assert got.lens.focal_length_mm is not None


@pytest.mark.parametrize("frame", ["full frame", "aps-c", "m43", "super 16", "44x33", "medium format 44x33"])
@pytest.mark.parametrize("stop", ["f8", "at f/8", "@f8", "stopped down to f8"])
@pytest.mark.parametrize(
    "asked",
    ["dof 50mm f/2 {stop} 2 m on {frame}", "50/2 on {frame} {stop} at 2m, how much is in focus",
     "{frame}, my 50, {stop}, 2m away: dof"],
)  # fmt: skip
def test_what_a_lens_is_set_to_is_no_other_lens(frame: str, stop: str, asked: str) -> None:
    got = read(asked.format(frame=frame, stop=stop), lexicon())
    assert not isinstance(got, Unread)
    assert [one.focal_length_mm for one in got.lenses] == [50]
    assert (got.intent, got.distance_mm) == ("depth-of-field", 2000)
    assert 8 in (got.f_number, *got.stops, got.lenses[0].f_number)


@pytest.mark.parametrize(
    "asked", ["field width 50mm + 20mm tube X", "50mm + 20mm tube mft how big", "extension for 0.5x with a 50mm"]
)
def test_a_tube_before_the_body_is_no_piece_of_that_mount(asked: str) -> None:
    got = read(asked, lexicon())
    assert not isinstance(got, Unread)
    assert [(one.focal_length_mm, one.ids) for one in got.lenses] == [(50, ())]
    assert all(one.front == () and one.piece != "focal-reducer" for one in got.adapters)
