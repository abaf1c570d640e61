"""Lenses that look alike on different formats: what would, and how alike those are that are told."""

from __future__ import annotations

from math import hypot

import pytest

from engine.answers.picture.crop_factors import crop_of
from engine.answers.picture.matching import each_on_its_own, frame_of, to_match
from grammar.questions import Question, Thing
from tests.answers.picture import flat

FULL = hypot(36, 24)


def _lens(focal, form=None, stop=None, **more):
    return Thing(focal_length_mm=focal, format=form, f_number=stop, words=f"{focal} mm", **more)


def _crop(club, name):
    return FULL / club.catalogue.formats[name].diagonal_mm


def _on_mft(club, lens, at=None):
    crop = crop_of(club.catalogue.formats["four-thirds"])
    return to_match(Question("match it", "crop-equivalent", lenses=(lens,)), (lens.focal_length_mm,), at, [crop],
                    club.catalogue)  # fmt: skip


def test_a_full_frame_view_asks_a_shorter_lens_of_a_small_sensor(club):
    told = _on_mft(club, _lens(50.0))
    assert told.quantities[0].value.nominal == pytest.approx(50 / _crop(club, "four-thirds"), rel=1e-3)


def test_the_stop_for_the_same_depth_goes_by_the_same_ratio(club):
    told = _on_mft(club, _lens(50.0), at=2.8)
    stop = next(row.value.nominal for row in told.quantities if row.name == "f_number")
    assert stop == pytest.approx(2.8 / _crop(club, "four-thirds"), rel=1e-3)
    assert "exposure goes by the f-number" in told.lines[0].text


def _pair(club, *lenses):
    return each_on_its_own(Question("same look?", "compare", lenses=lenses), club.catalogue)


def test_the_same_view_and_depth_are_the_same_look(club):
    ratio = _crop(club, "four-thirds")
    told = _pair(club, _lens(25.0, "four-thirds", 1.4), _lens(25.0 * ratio, "35mm-full-frame", 1.4 * ratio))
    assert told.lines[0].text.startswith("The same look")
    views = [row.value.nominal for row in told.quantities if row.name == "equivalent_focal_mm"]
    assert views[0] == pytest.approx(views[1])


def test_the_same_view_with_another_stop_is_not_the_same_look(club):
    told = _pair(club, _lens(25.0, "four-thirds", 1.4), _lens(50.0, "35mm-full-frame", 1.4))
    assert "not the same depth of field" in told.lines[0].text


def test_another_view_is_told_as_such(club):
    told = _pair(club, _lens(25.0, "four-thirds", 1.4), _lens(25.0, "35mm-full-frame", 1.4))
    assert told.lines[0].text.startswith("Not the same view")


def test_without_stops_nothing_is_said_of_depth(club):
    assert "tell the f-numbers" in _pair(club, _lens(25.0, "four-thirds"), _lens(50.0, "35mm-full-frame")).lines[0].text


def test_two_lenses_on_one_format_are_not_matched(club):
    assert not _pair(club, _lens(25.0, "four-thirds"), _lens(50.0, "four-thirds")).lines


def test_a_lens_of_a_mount_that_has_one_format_has_that(club):
    lens = Thing("mount", ("mft-mount",), "MFT", focal_length_mm=25.0)
    form = frame_of(lens, Question("", "compare", lenses=(lens,)), club.catalogue)
    assert form is not None
    assert form.id == club.catalogue.mounts["mft-mount"].format


@pytest.mark.parametrize(
    ("text", "focal", "like"),
    [
        ("why is a 50mm on mft like a 100", 50, 100),
        ("a 50mm on mft like a 100?", 50, 100),
        ("why does my 25mm on mft look like a 50", 25, 50),
        ("does a 35 on X act as a 50", 35, 53),
    ],
)
def test_what_a_lens_on_a_body_is_likened_to_is_no_second_lens(asked, text, focal, like):
    found = asked(text)
    assert f"{focal} mm on" in flat(found)[:40]
    assert f"like {like} mm on full frame" in flat(found)
    assert "To frame like" not in flat(found)


@pytest.mark.parametrize(
    ("text", "view"),
    [
        ("75mm on the 44x33 body feels like what on normal full frame", 59),
        ("75mm on the 44x33 body feels like what on a regular full frame camera", 59),
        ("25mm on an MFT body feels like what on normal full frame", 50),
        ("12mm on a 1-mount body is like what on a standard full frame camera", 33),
    ],
)
def test_full_frame_that_a_larger_or_smaller_body_is_set_against_is_no_frame_of_it(asked, text, view):
    found = flat(asked(text))
    assert f"like {view} mm on full frame" in found
    assert found.startswith(f"To frame like {text.split('mm')[0]} mm on ")
    assert "full frame needs" in found[:60]


@pytest.mark.parametrize(
    ("text", "view"),
    [
        ("80mm 6x6 normal on 44x33 gives a view like what 35mm lens", 63),
        ("what 35mm lens has the view of 80mm on 44x33", 63),
        ("a 25mm C lens on MFT is like what 35mm lens", 50),
        ("12mm on 1 inch gives the angle of what 35mm lens", 33),
        ("which 35mm lens gives the same view as 16mm on aps-c", 24),
    ],
)
def test_the_film_that_a_view_is_set_against_is_no_focal_length(asked, text, view):
    found = flat(asked(text))
    assert f"like {view} mm on full frame" in found
    assert "35 mm on" not in found


@pytest.mark.parametrize(
    ("text", "view"),
    [
        ("8mm cine prime, 1/2.3 inch sensor, FF equivalent pls", 45),
        ("8mm cine lens on a 1/2.3 inch sensor, FF equivalent", 45),
        ("8mm movie lens on a 1 inch sensor equals what on full frame", 22),
    ],
)
def test_one_length_told_of_a_cine_lens_is_that_of_its_view(asked, text, view):
    assert f"like {view} mm on full frame" in flat(asked(text))
