"""What a drawing measures, held against the numbers that were computed."""

from __future__ import annotations

from math import inf, isfinite

import pytest

from engine.base.compact import replace
from engine.base.interval import Interval, Measure, is_known
from engine.base.span import Span
from engine.judging.judge import Judged
from engine.physics.coverage import largest_crop_mm
from engine.physics.focus import from_sensor_mm, travel_to_mark_mm
from engine.render.distances import distances
from engine.render.frame import frame
from engine.render.reach import mark_text
from engine.render.section import section
from tests.render.paper import Paper
from tests.render.setups import (
    ALL,
    MARKS,
    barely_known,
    cine,
    dark,
    enlarger,
    knowledge,
    long_slr,
    names,
    nearly_right,
    too_close,
)  # fmt: skip

DRAWN_WHOLE = {"cine": cine, "long-slr": long_slr, "enlarger": enlarger, "nearly-right": nearly_right}
ALONG = (
    "seat_mm", "body_register_mm", "lens_register_mm", "focal_length_mm", "overhang_mm", "clear_depth_mm",
    "rear_reach_mm", "used_width_mm", "throat_mm", "collar_mm", "rear_diameter_mm",
)  # fmt: skip


def likeliest(judged: Judged, name: str) -> float | None:
    value = judged.trace.value(name)
    if isinstance(value, Span):
        value = value.shortest
    return value.nominal if isinstance(value, Interval) else None


@pytest.mark.parametrize("name", DRAWN_WHOLE)
def test_every_length_of_a_section_is_the_computed_one(name: str) -> None:
    judged = DRAWN_WHOLE[name]()
    paper = Paper(section(judged, names()))
    for quantity in ALONG:
        computed = likeliest(judged, quantity)
        if computed is None or not computed:
            assert not paper.has(quantity), quantity
            continue
        drawn = paper.one(quantity)
        assert drawn.paper / drawn.scale == pytest.approx(abs(computed), abs=2e-3 / drawn.scale), quantity


@pytest.mark.parametrize("name", DRAWN_WHOLE)
def test_every_piece_is_as_thick_as_its_seat(name: str) -> None:
    judged = DRAWN_WHOLE[name]()
    paper = Paper(section(judged, names()))
    for link, seat in zip(judged.chain.ids, judged.seats, strict=True):
        assert is_known(seat.thickness_mm.shortest)
        drawn = paper.one("thickness_mm", link)
        assert drawn.paper / drawn.scale == pytest.approx(abs(seat.thickness_mm.shortest.nominal), abs=2e-3)


def test_the_settable_way_of_a_helicoid_is_drawn() -> None:
    drawn = Paper(section(enlarger(), names())).one("settable_mm")
    assert drawn.paper / drawn.scale == pytest.approx(5.0)


def test_the_beam_is_as_wide_as_the_focal_length_over_the_stop() -> None:
    drawn = Paper(section(long_slr(), names())).one("beam_mm")
    assert drawn.paper / drawn.scale == pytest.approx(300 / 4)


def test_an_error_that_shows_is_drawn_in_place_and_one_that_does_not_is_magnified() -> None:
    wide = Paper(section(enlarger(), names()))
    assert wide.one("register_error_mm").of == ""
    assert wide.one("register_error_mm").mm == pytest.approx(37.7)
    assert wide.one("register_error_mm").scale == wide.one("seat_mm").scale
    small = Paper(section(nearly_right(), names()))
    drawn = small.one("register_error_mm")
    assert drawn.of == "magnified"
    assert drawn.mm == pytest.approx(0.3)
    assert drawn.scale > small.one("seat_mm").scale
    assert drawn.paper >= 1.0


def test_a_lens_too_close_has_its_image_drawn_behind_the_sensor() -> None:
    judged = too_close()
    paper = Paper(section(judged, names()))
    error = likeliest(judged, "register_error_mm")
    assert error is not None
    assert error < 0
    assert paper.one("register_error_mm").mm == pytest.approx(-error)
    assert any("behind the sensor" in words for words in paper.words())


def test_what_is_not_known_has_no_length_and_says_so() -> None:
    paper = Paper(section(barely_known(), names()))
    for quantity in ("lens_register_mm", "focal_length_mm", "rear_reach_mm", "clear_depth_mm", "overhang_mm",
                     "register_error_mm", "front_vertex_mm", "used_width_mm", "collar_mm"):  # fmt: skip
        assert not paper.has(quantity), quantity
    words = " / ".join(paper.words())
    assert words.count("not known") >= 5
    assert paper.words().count("?") >= 3


@pytest.mark.parametrize("name", [name for name in ALL if name != "barely-known"])
def test_frame_and_circle_are_the_computed_ones(name: str) -> None:
    judged = ALL[name]()
    paper = Paper(frame(judged))
    form, circle = judged.setup.format, judged.trace.value("image_circle_at_far_mm")
    assert form is not None
    assert isinstance(circle, Interval)
    for quantity, side in (("used_width_mm", form.width_mm), ("used_height_mm", form.height_mm)):
        drawn = paper.one(quantity)
        assert drawn.paper / drawn.scale == pytest.approx(side, abs=1e-3)
    drawn = paper.one("image_circle_at_far_mm", "")
    assert drawn.paper / drawn.scale == pytest.approx(circle.nominal, abs=1e-3)


def test_the_smaller_frame_that_a_body_may_have_is_drawn_with_what_is_lit_of_it() -> None:
    form = knowledge().catalogue.formats["1-inch-type"]
    either = dark()
    either = replace(either, setup=replace(either.setup, judged_format=form))
    paper = Paper(frame(either))
    drawn = paper.one("smaller_frame_mm")
    assert drawn.wide_paper is not None
    assert (drawn.wide_paper / drawn.scale, drawn.paper / drawn.scale) == pytest.approx(
        (form.width_mm, form.height_mm), abs=1e-3
    )
    assert f"if the body is {form.name}" in " ".join(paper.words())
    assert "if the body is" not in " ".join(Paper(frame(dark())).words())


@pytest.mark.parametrize("aspect", [None, 1.0, 16 / 9])
def test_the_crop_is_the_largest_that_is_lit_for_sure(aspect: float | None) -> None:
    judged = dark()
    form, circle = judged.setup.format, judged.trace.value("image_circle_at_far_mm")
    assert form is not None
    assert isinstance(circle, Interval)
    wide, high = largest_crop_mm(circle, form.width_mm, form.height_mm, aspect or form.width_mm / form.height_mm)
    assert is_known(wide)
    assert is_known(high)
    drawn = Paper(frame(judged, aspect)).one("crop_mm")
    assert drawn.wide_paper is not None
    assert drawn.wide_paper / drawn.scale == pytest.approx(wide.least, abs=1e-3)
    assert drawn.paper / drawn.scale == pytest.approx(high.least, abs=1e-3)


@pytest.mark.parametrize("name", ["enlarger", "nearly-right"])
def test_the_ruler_ends_where_the_sharp_planes_are(name: str) -> None:
    judged = ALL[name]()
    paper = Paper(distances(judged, MARKS.get(name, ())))
    for quantity, end in (("low_from_sensor_mm", "near_from_sensor_mm"), ("high_from_sensor_mm", "far_from_sensor_mm")):
        drawn, computed = paper.one(quantity), likeliest(judged, end)
        assert drawn.paper / drawn.scale == pytest.approx(computed, rel=1e-4)


def advance(judged: Judged, mark: float) -> float:
    """Where the lens's own scale has a mark, worked out from the formula alone."""
    focal, hiatus = (Interval.exact(likeliest(judged, name) or 0.0) for name in ("focal_length_mm", "hiatus_mm"))
    found: Measure = Interval.exact(0.0) if mark == inf else travel_to_mark_mm(Interval.exact(mark), focal, hiatus)
    assert is_known(found)
    return found.nominal


@pytest.mark.parametrize("name", MARKS)
def test_marks_stand_where_the_ring_has_them_and_move_by_the_register_error(name: str) -> None:
    judged = ALL[name]()
    paper = Paper(distances(judged, MARKS[name]))
    error, travel = likeliest(judged, "register_error_mm"), likeliest(judged, "travel_mm")
    assert error is not None
    assert travel is not None
    for mark in MARKS[name]:
        own = advance(judged, mark)
        drawn = paper.one("ring_advance_mm", f"as engraved {mark_text(mark)}")
        assert drawn.paper / drawn.scale == pytest.approx(own, abs=1e-4)
        anew = [row for row in paper.drawn() if row.of == f"marked anew {mark_text(mark)}"]
        if -1e-7 <= own - error <= travel:
            assert anew[0].paper / anew[0].scale == pytest.approx(max(own - error, 0.0), abs=1e-4)
        else:
            assert not anew


def test_what_the_ring_says_is_told_with_what_is_sharp_there() -> None:
    judged = nearly_right()
    words = Paper(distances(judged, MARKS["nearly-right"])).words()
    focal, hiatus = (Interval.exact(likeliest(judged, name) or 0.0) for name in ("focal_length_mm", "hiatus_mm"))
    for mark in MARKS["nearly-right"]:
        sharp = from_sensor_mm(focal, hiatus, Interval.exact(advance(judged, mark) + 0.3))
        assert is_known(sharp)
        assert isfinite(sharp.nominal)
        assert f"{mark_text(mark)} → {mark_text(float(f'{sharp.nominal:.3g}'))}" in words


def test_close_up_the_ring_is_marked_by_the_size_of_the_image() -> None:
    judged = enlarger()
    paper = Paper(distances(judged))
    marks = [row for row in paper.drawn() if row.of.startswith("image to thing ")]
    shortest, focal = likeliest(judged, "extension_mm"), likeliest(judged, "focal_length_mm")
    assert shortest is not None
    assert focal is not None
    for row in marks:
        size = row.of.removeprefix("image to thing ").removesuffix("x")
        if row.quantity == "ring_advance_mm":
            assert (shortest + row.paper / row.scale) / focal == pytest.approx(float(size), abs=1e-4)
    assert len(marks) >= 4
