"""A lens told by its mount alone: what such lenses light by their focal length, which decides."""

from __future__ import annotations

from tests.answers.picture import flat, numbers


def test_each_row_of_focal_lengths_is_told(talked):
    found = talked("does a D lens cover four thirds")
    assert (5.9, 8.0) in numbers(found, "image_circle_mm")
    assert "5.9 to 8 mm at 5.5 to 13 mm" in flat(found)


def test_none_is_told_beside_a_focal_length(talked):
    assert "by focal length" not in flat(talked("does a 13 mm D lens cover four thirds"))
