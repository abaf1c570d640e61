"""Every drawing at very different set-ups: legible, on the page, to scale, safe to open."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval
from engine.chains.setup import Setup
from engine.facts.records import Body
from engine.judging.judge import Judged
from engine.render.distances import distances
from engine.render.drawing import Page, scale_for, scale_text
from engine.render.frame import frame
from engine.render.section import section
from tests.examples import examples
from tests.render import setups
from tests.render.paper import Paper, faults
from tests.render.setups import MEASURED, knowledge, lens_of, names

DRAWINGS: dict[str, Callable[[Judged, tuple[float, ...]], str]] = {
    "section": lambda judged, marks: section(judged, names()),
    "frame": lambda judged, marks: frame(judged, None),
    "crop": lambda judged, marks: frame(judged, 16 / 9),
    "distances": distances,
}


@pytest.mark.parametrize("drawing", DRAWINGS)
@pytest.mark.parametrize("name", setups.ALL)
def test_nothing_overlaps_and_all_is_on_the_page_and_as_long_as_it_says(name: str, drawing: str) -> None:
    assert faults(DRAWINGS[drawing](setups.ALL[name](), setups.MARKS.get(name, ()))) == []


def test_a_scale_is_round_and_the_largest_that_fits() -> None:
    assert scale_for(20, 100) == 5
    assert scale_for(300, 155) == 0.5
    assert scale_for(30_000_000, 150) * 30_000_000 <= 150
    assert [scale_text(scale) for scale in (2, 1, 1 / 50, 1.5)] == ["2:1", "1:1", "1:50", "1.5:1"]


def test_a_place_that_is_not_finite_is_never_drawn() -> None:
    with pytest.raises(ValueError, match="not finite"):
        Page("a", "b").line("edge", [(0.0, float("inf")), (0.0, 1.0)])


NASTY = 'the <script>alert("x")</script> & \x07\u202e' + "very " * 60 + "long"


@pytest.mark.parametrize("drawing", DRAWINGS)
def test_names_are_escaped_and_cut(drawing: str) -> None:
    found = setups.cine()
    setup = found.setup
    named = replace(setup, lens=replace(setup.lens, name=NASTY), body=replace(setup.body, name=NASTY))
    adapter = replace(found.seats[0].link, name=NASTY)  # type: ignore[type-var]
    seats = (replace(found.seats[0], link=adapter), *found.seats[1:])
    document = DRAWINGS[drawing](replace(found, setup=named, seats=seats), ())
    assert faults(document.replace("&lt;script", "").replace("&lt;/script", "")) == []
    assert "<script" not in document
    assert "\x07" not in document
    assert "\u202e" not in document


def test_a_drawing_uses_hatches_and_dashes_not_colour_alone() -> None:
    document = section(setups.enlarger(), names())
    assert "stroke-dasharray" in document
    assert {"url(#rise)", "url(#fall)", "url(#upright)", "url(#flat)", "url(#dark)"} <= {
        f"url(#{part.split(')')[0]})" for part in document.split("url(#")[1:]
    }


def some(strategy: st.SearchStrategy[float]) -> st.SearchStrategy[object]:
    """Exact, open within a share, or unknown."""
    return st.one_of(
        st.just(UNKNOWN),
        strategy.map(Interval.exact),
        strategy.map(lambda value: Interval(value, value + value / 9, value)),
    )


LENSES = ("c", "d", "m42", "enl39", "p6-mount", "f-mount")


@st.composite
def any_chain(draw: st.DrawFn) -> Judged:
    known = knowledge()
    mount = draw(st.sampled_from(LENSES))
    lens = lens_of(
        mount,
        focal_length_mm=draw(some(st.sampled_from((3.5, 8.0, 25.0, 85.0, 300.0, 1000.0)))),
        f_number=draw(some(st.sampled_from((0.95, 2.0, 8.0, 22.0)))),
        travel_mm=draw(some(st.floats(0, 40))),
        rear_reach_mm=draw(some(st.floats(0, 40))),
        rear_diameter_mm=draw(some(st.floats(3, 60))),
        collar_mm=draw(some(st.floats(10, 110))),
        front_vertex_mm=draw(some(st.floats(2, 400))),
        image_circle_mm=draw(some(st.floats(3, 120))),
        register_mm=draw(some(st.floats(8, 90))),
        name=draw(st.text(max_size=60)) or "a lens",
        focusing=draw(st.sampled_from(("unit", "none", "unknown", "internal"))),
    )
    links: list[str] = []
    at = mount
    for _ in range(draw(st.integers(0, 4))):
        onward = [row.id for row in known.catalogue.adapters.values() if row.front == at]
        onward += [f"{row.front}>{row.rear}" for row in known.joints.onward(at)]
        if not onward:
            break
        links.append(draw(st.sampled_from(sorted(onward))))
        at = links[-1].split(">")[1] if ">" in links[-1] else known.catalogue.adapters[links[-1]].rear
    form = draw(st.sampled_from(("", "v16", "16mm", "aps-c-1.5", "35mm-full-frame", "6x9", "6x17")))
    depth = draw(some(st.floats(0.5, 40)))
    body = Body("boat", draw(st.text(max_size=40)) or "a boat", at, form, MEASURED, pixels=(6000, 4000))
    return setups.judged(lens, replace(body, clear_depth_mm=depth), tuple(links), draw(st.sampled_from((None, 16.0))))


@settings(max_examples=examples(60), deadline=None, derandomize=True)
@given(any_chain(), st.sampled_from((None, 1.0, 16 / 9, 2.39)), st.lists(st.floats(20, 1e6), max_size=14))
def test_whatever_the_chain_nothing_overlaps_and_all_is_on_the_page(
    found: Judged, aspect: float | None, marks: list[float]
) -> None:
    for document in (section(found, names()), frame(found, aspect), distances(found, (float("inf"), *marks))):
        assert faults(document) == []


def test_a_page_reads_without_its_picture() -> None:
    paper = Paper(section(setups.nearly_right(), names()))
    told = paper.root.findtext("{http://www.w3.org/2000/svg}desc") or ""
    assert "0.3 mm ahead of the sensor" in told
    assert "C to CS ring, 5 mm (5 mm)" in told
    assert isinstance(setups.nearly_right().setup, Setup)
