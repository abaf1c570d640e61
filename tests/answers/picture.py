"""Gear of the tests on the picture a lens makes, and how their numbers are read from a record."""

from __future__ import annotations

import pytest

LENSES = """\
lenses:
  avocet:
    mount: c
    focal_length: 25 mm
    f_number: f/1.4
    made_for: 16mm
    image_circle: 14 mm
    close_focus: 0.5 m
    collar: 30.5 mm
    rear_reach: 3.9 mm
    front_thread: f40.5x0.5
    near_turn: clockwise
    throw: 200 deg
  godwit:
    mount: m42
    focal_length: 50 mm
    f_number: f/1.8
    made_for: 35mm-full-frame
    close_focus: 0.45 m
    focusing: unit
    hiatus: 2 mm
    front_focal_offset: 30 mm
    pupil_magnification: 1.1
  dunlin:
    mount: d
    focal_length: 12.5 mm
    f_number: f/1.9
    made_for: 8mm
    iris: fixed
bodies:
  skiff:
    mount: e-mount
    format: aps-c-1.5
    pixels: 6000 x 4000
  dory:
    mount: mft-mount
    format: four-thirds
  punt:
    mount: e-mount
    format: 35mm-full-frame
    crops: [aps-c-1.5]
    pixels: 7200 x 4800
"""
FILTERS = """\
filters:
  pale:
    mark: ND8
  deep:
    mark: ND 1.8
"""


def numbers(record, name, case=""):
    """(least, greatest) of each number under this name whose case holds the words."""
    rows = record.get("quantities", {}).get(name, [])
    rows = rows if isinstance(rows, list) else [rows]
    out = []
    for row in rows:
        told, value = (row.get("case", ""), row) if isinstance(row, dict) else ("", {"least": row, "greatest": row})
        if case in told:
            out.append((value["least"], value["greatest"]))
    return out


def flat(record):
    """The text of an answer on one line."""
    return " ".join(record["text"].split())


def one(record, name, case=""):
    found = numbers(record, name, case)
    assert found, (name, case, record["quantities"].get(name))
    least, greatest = found[0]
    assert least == pytest.approx(greatest)
    return least


def close(*wanted, rel=1e-3):
    return pytest.approx(wanted if len(wanted) > 1 else wanted[0], rel=rel)
