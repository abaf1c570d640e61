"""Tubes, lenses and a sensor that are told in a row, each with small words of its own; words near to the trade's."""

from __future__ import annotations

import pytest

from tests.answers.talks import talk


def pieces(answer):
    return [one.thickness_mm[0] for one in answer.question.adapters if one.thickness_mm]


@pytest.mark.parametrize(
    ("say", "lens", "tubes"),
    [
        ("my 50 f/1.8 alone gives 0.14x, what do I get with a tube of 10, of 16, or of 26 mm?", 50, [10, 16, 26]),
        ("a 100 mm lens that does 0.25x alone, add a tube of 25 or one of 50: magnification?", 100, [25, 50]),
        ("EF 50 with tubes of 12, of 20, and one of 36 mm. magnification each", 50, [12, 20, 36]),
        ("EF 50 with a tube of 10 or 26 mm: magnification", 50, [10, 26]),
    ],
)
def test_each_length_of_a_row_is_a_tube_of_its_own(club, say, lens, tubes):
    (answer,) = talk(club, say)
    assert [one.focal_length_mm for one in answer.question.lenses] == [lens]
    assert pieces(answer) == tubes


@pytest.mark.parametrize(
    ("say", "lenses"),
    [
        ("the 75 mm gets to infinity on this ring, whereas the 12 mm does not. how is that possible?", [75, 12]),
        ("5 mm helicoid M to E. my 35 and my 50 both stop at 0.7 m, how near now?", [35, 50]),
    ],
)
def test_a_lens_set_beside_another_is_one_too(club, say, lenses):
    (answer,) = talk(club, say)
    assert [one.focal_length_mm for one in answer.question.lenses] == lenses


@pytest.mark.parametrize(
    ("say", "frame"),
    [
        ("cine camera, MFT mount, Super-16 chip. does an F-mount zoom go on it?", "s16"),
        ("my cam, L mount and aps-c chip, M42 50mm", "aps-c-1.5"),
    ],
)
def test_a_sensor_told_in_a_row_is_that_of_the_body(club, say, frame):
    (answer,) = talk(club, say)
    assert [one.format for one in answer.question.bodies] == [frame]


@pytest.mark.parametrize(
    "say", ['does an APS-C ("crop") lens with 0.64x cover?', "a full frame (analog) lens with 0.64x, covered?"]
)
def test_a_word_in_brackets_before_a_lens_names_nothing(club, say):
    (answer,) = talk(club, say)
    assert answer.question.lens.format in ("aps-c-1.5", "35mm-full-frame")
    assert not answer.question.frames


def test_words_of_every_day_are_none_of_the_trade(club):
    (answer,) = talk(club, "two dealers offer a ring D to C, why are they different")
    assert not pieces(answer)
    (answer,) = talk(club, "my mother's OM 50 from a drawer on MFT, which ring")
    assert not answer.question.values


@pytest.mark.parametrize(
    "say",
    [
        "an E-mount camera and an M42 lens, which ring should I take?",
        "which M42 ring shall I take for an X-mount camera",
    ],
)
def test_what_i_take_is_asked_of_no_body(club, say):
    (answer,) = talk(club, say)
    assert answer.question.intent != "list-fits"


@pytest.mark.parametrize(
    ("say", "focal"),
    [
        ("my 8mm cctv lens on MFT is all blurry, never sharp at any distance", 8),
        ("16 mm C lens on an E body doesn't focus at all", 16),
    ],
)
def test_a_lens_sharp_nowhere_may_be_of_the_other_mount_of_its_thread(club, say, focal):
    told, settled = talk(club, say, "about 12.5 mm")
    assert "CS" in told.lines[0].text
    assert told.lines[1].wants == "flange_to_image"
    assert any(row.name == "far_from_sensor_mm" for row in told.quantities or ())
    assert (settled.question.lens.id, settled.question.lens.focal_length_mm) == ("cs", focal)


def test_a_lens_asked_whether_it_focuses_is_not_blurred(club):
    (answer,) = talk(club, "can a 12mm C lens on MFT focus at all?")
    assert "CS" not in answer.lines[0].text


def test_a_mark_told_in_a_talk_tells_the_shim(club):
    *_, answer = talk(
        club, "with the E ring every lens of mine focuses beyond infinity, why", "roughly at 12 metres on the scale"
    )
    assert answer.question.intent == "shim-calibration"
    assert any(row.name == "shim_mm" for row in answer.quantities or ())


@pytest.mark.parametrize(
    "say", ["50 mm with a tube of 10, 16 or 26 mm: magnification", "my 90 with a 20 or a 46 mm tube, magnification"]
)
def test_tubes_to_choose_from_are_told_each(club, say):
    (answer,) = talk(club, say)
    assert len(answer.question.lenses) == 1
    told = [row.case or "" for row in answer.quantities or () if row.name == "magnification"]
    assert all(any(f"{one:g} mm" in case for case in told) for one in pieces(answer))
