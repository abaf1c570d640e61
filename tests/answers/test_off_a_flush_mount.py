"""Metal taken off a mount that lies flush without it, and pieces told with the mount they are for."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat


@pytest.mark.parametrize(
    ("text", "verdict", "error_mm"),
    [
        ("turned 1mm off the back of my FD 50, on EF, does it reach", "macro-only", 1.0),
        ("skimmed 1.5 mm off the FD mount of my 50 for EF, how much more to infinity", "macro-only", 0.5),
        ("milled 2mm off the K mount, goes on an F body, infinity?", "infinity", -0.96),
        ("took 0.9 off the K mount of my 28, F body, does it focus far", "macro-only", 0.14),
    ],
)
def test_metal_off_a_mount_counts_from_where_it_lay_flush(asked, text, verdict, error_mm):
    first = asked(text)["chains"][0]
    assert first["verdict"] == verdict
    assert first["register_error_mm"]["least"] == pytest.approx(error_mm, abs=0.005)
    assert "off its mount" in flat(asked(text))


def test_what_was_taken_off_is_no_focal_length(asked):
    assert "2 mm K-mount" not in asked("milled 2mm off the K mount, goes on an F body, infinity?")["reading"]


@pytest.mark.parametrize(
    ("text", "piece"),
    [
        ("135 enlarger lens, no mount, helicoid 17-31 for M42 and it goes on a Z body", "17..31 mm M42 helicoid"),
        ("105mm enl lens M39, bellows for M42 on EF, infinity?", "an M42 bellows"),
        ("enlarger lens 80mm, tubes for M42, on EF, infinity?", "M42 extension tube"),
    ],
)
def test_a_mount_that_a_piece_is_for_is_no_second_body(asked, text, piece):
    reading = asked(text)["reading"]
    assert piece in reading
    assert "M42 body" not in reading


def test_a_designation_told_the_other_way_round(asked):
    assert "C/Y lens" in asked("my Y/C 50mm lens on E")["reading"]
