"""What a number decides: two stops that differ as a crop does, a tube or a close-up lens by the focal length."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers
from tests.answers.talks import flat as lines_of
from tests.answers.talks import talk


@pytest.mark.parametrize(
    ("text", "equal"),
    [
        ("why does f2.8 on mft look like f5.6", 2.8 * 43.267 / 21.64),
        ("is f1.8 on aps-c really f2.7, do i meter for that", 1.8 * 43.267 / 28.35),
    ],
)
def test_stops_that_differ_by_the_crop_are_alike_in_depth_and_not_in_light(asked, text, equal):
    found = asked(text)
    assert numbers(found, "equivalent_f_number")[0][0] == pytest.approx(equal, rel=0.01)
    assert "no stop is lost" in flat(found)


def test_stops_that_are_not_likened_are_told_by_their_light(asked):
    found = asked("exposure at f2 against f4 on mft, how many stops")
    assert found["intent"] == "exposure-nd"
    assert not numbers(found, "equivalent_f_number")


@pytest.mark.parametrize(("focal", "part"), [(200, "rather a close-up lens"), (28, "rather a tube")])
def test_the_focal_length_decides_between_tube_and_close_up_lens(asked, focal, part):
    found = asked(f"tube or a close-up lens for my {focal}mm, which is better")
    assert part in flat(found)
    sizes = [low for low, _ in numbers(found, "magnification")]
    for size in (25 / focal, focal / 1000, 2 * focal / 1000, 4 * focal / 1000):
        assert any(one == pytest.approx(size) for one in sizes)


def test_what_is_set_against_the_piece_of_before_is_told_with_it_and_for_its_distance(club):
    found = talk(
        club, "75mm lens, i want it to focus at 1 m from the front, how long a tube", "or a closeup lens, which"
    )
    assert "6.1 mm of tube, or a close-up lens of +1 dioptre" in lines_of(found[1])  # 75 * 75 / 925


def test_advice_on_the_very_choice_comes_first(asked):
    assert flat(asked("helicoid or tubes for m42 macro, which")).startswith("helicoid or tubes:")


def test_the_equivalent_is_not_what_the_stabiliser_is_told(club):
    found = talk(club, "what is a 58mm M42 lens on an X-mount body in full frame terms", "so the stabiliser gets 89")[1]
    assert "enter 89" not in lines_of(found)
    assert next(row.value.nominal for row in found.quantities if row.name == "ibis_focal_mm") == 58


def test_why_a_lens_goes_on_every_camera_is_told_by_its_register(asked):
    found = asked("how come T2 lenses can go on every camera")
    assert numbers(found, "register_mm")[0] == (55, 55)
    assert "longer way than" in flat(found)
