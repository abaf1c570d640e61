"""A stop, a shutter, a speed, a filter or a piece told anew in a talk takes the place of the one it is set against."""

from __future__ import annotations

import pytest

from engine.answers.parts.answer import Answer
from engine.ask import Desk
from engine.render.record import record_of
from tests.answers.picture import numbers
from tests.answers.talks import flat, talk


def value(club: Desk, found: Answer, name: str) -> float:
    low, high = numbers(record_of(found, club.knowledge), name)[0]
    return (low + high) / 2


@pytest.mark.parametrize(
    ("first", "said", "stop"),
    [
        ("hyperfocal of a 24mm at f8 on full frame?", "f11", 11),
        ("hyperfocal of a 24mm at f8 on full frame?", "f/16 then", 16),
        ("hyperfocal 24mm f8 full frame", "f5.6?", 5.6),
        ("24mm f/8 hyperfocal on full frame", "and at f4", 4),
    ],
)
def test_a_stop_alone_is_what_it_is_set_to_now(club: Desk, first: str, said: str, stop: float) -> None:
    last = talk(club, first, said)[-1]
    assert value(club, last, "hyperfocal_mm") == pytest.approx(24 * 24 / (stop * 0.03) + 24, rel=0.02)


def test_a_stop_wider_than_a_fast_lens_opens_is_answered_beside_the_widest(club: Desk) -> None:
    last = talk(club, "50mm f2.8, dof at 2m full frame", "f1.4?")[-1]
    text = "\n".join(line.text for line in last.lines)
    assert "f/2.8 at 2 m" in text
    assert "f/1.4 at 2 m" in text


@pytest.mark.parametrize(
    ("turns", "stops"),
    [
        (("from f2 to f5.6 how many stops", "and to f8"), 4),
        (("how many stops between f2.8 and f11", "f22"), 5.95),
        (("how many stops from 1/60 to 1/500", "and to 1/1000"), 4.06),
        (("how many stops between 1/60 and 1/500", "from 1/30"), 4.06),
        (("1/125 at f4, i want f11, shutter?", "and f16"), 4),
        (("1/250 at f8 iso 100 metered. f16?", "and f4", "iso 400 as well"), 4),
        (("i metered f8 at 1/60 iso 100, now f11 iso 400, shutter?", "iso 800"), 2.08),
    ],
)
def test_of_two_settings_the_first_stays(club: Desk, turns: tuple[str, ...], stops: float) -> None:
    assert value(club, talk(club, *turns)[-1], "light_difference_stops") == pytest.approx(stops, abs=0.01)


def test_the_stop_right_before_metered_is_the_metered_one(club: Desk) -> None:
    found = club.ask("1/250 at f8 iso 100 metered. f16?")
    assert value(club, found, "shutter_s") == pytest.approx(4 / 250, rel=0.02)


@pytest.mark.parametrize("both", ["stack them both", "both together?", "with both"])
def test_both_filters_are_the_one_now_and_the_one_before(club: Desk, both: str) -> None:
    last = talk(club, "nd8 on, 1/60 without. shutter?", "nd64 then", both)[-1]
    assert value(club, last, "shutter_s") == pytest.approx(2**9 / 60, rel=0.01)


@pytest.mark.parametrize(("said", "stops"), [("what if i open up two stops", 4), ("and close down one stop", 7)])
def test_a_lens_opened_behind_a_filter_counts_with_it(club: Desk, said: str, stops: int) -> None:
    last = talk(club, "meter says 1/60, nd64 on, shutter now?", said)[-1]
    assert value(club, last, "shutter_s") == pytest.approx(2**stops / 60, rel=0.01)


@pytest.mark.parametrize("said", ["make that 25", "make it 25", "make that 25mm", "make this 25"])
def test_a_number_put_in_place_is_that_of_the_tube(club: Desk, said: str) -> None:
    last = talk(club, "50mm with a 12mm tube, how big does stuff get", said)[-1]
    assert value(club, last, "magnification") == pytest.approx(0.5, rel=0.01)


def test_a_number_put_in_place_is_of_what_was_told_last(club: Desk) -> None:
    last = talk(club, "50mm with a 12mm tube, how big", "and on a 35", "make that 60")[-1]
    assert value(club, last, "magnification") == pytest.approx(12 / 60, rel=0.01)


def test_both_tubes_are_meant_after_a_turn_between(club: Desk) -> None:
    *_, last = talk(club, "50mm with a 12mm tube, how big", "make that 20mm", "light lost?", "and with both")
    assert value(club, last, "light_difference_stops") == pytest.approx(1.4, abs=0.1)


@pytest.mark.parametrize("said", ["the +4 rather", "+4 instead", "make that +4", "and the +4"])
def test_another_close_up_lens_takes_the_place_of_the_first(club: Desk, said: str) -> None:
    last = talk(club, "+2 dioptre on a 135mm, magnification and distance?", said)[-1]
    assert value(club, last, "magnification") == pytest.approx(0.54, rel=0.01)


@pytest.mark.parametrize("said", ["and both", "plus the +2", "and +2 with it"])
def test_close_up_lenses_are_added_where_that_is_said(club: Desk, said: str) -> None:
    last = talk(club, "+2 dioptre on a 135mm, magnification?", "the +4 rather", said)[-1]
    assert value(club, last, "magnification") == pytest.approx(0.81, rel=0.01)


@pytest.mark.parametrize(
    ("off", "on"),
    [("tube off", "back on but a 5mm"), ("without the tube", "put a 5mm on instead"), ("no tube", "with the 5mm one")],
)
def test_a_length_after_the_tube_is_off_is_that_of_another_tube(club: Desk, off: str, on: str) -> None:
    last = talk(club, "50mm om lens on e with a 20mm tube, how close", off, on)[-1]
    assert [lens.focal_length_mm for lens in last.question.lenses] == [50]
    assert [piece.thickness_mm for piece in last.question.adapters] == [(5, 5)]


def test_a_factor_alone_is_that_of_the_glass_and_no_magnification(club: Desk) -> None:
    first = "100mm macro at 1:1 with a 2x tc behind, how big"
    last = talk(club, first, "how much light gone altogether", "1.4 instead")[-1]
    assert [piece.factor for piece in last.question.adapters] == [1.4]
    assert last.question.said("magnification") == "1"


@pytest.mark.parametrize("said", ["same with my crop camera", "same thing with my crop camera", "on the crop body"])
def test_a_crop_camera_told_in_a_talk_has_the_usual_smaller_frame(club: Desk, said: str) -> None:
    last = talk(club, "35mm f4 at 4m full frame dof", said)[-1]
    assert last.intent == "depth-of-field"
    assert "APS-C: sharp from 3.2 m" in last.lines[0].text


def test_what_hands_allow_is_told_past_a_change_of_frame(club: Desk) -> None:
    last = talk(club, "slowest shutter by hand with a 90mm on apsc", "on full frame?", "and a 200")[-1]
    assert value(club, last, "shutter_s") == pytest.approx(1 / 200, rel=0.01)


def test_a_stop_wanted_after_a_metered_one_makes_another_shutter(club: Desk) -> None:
    last = talk(club, "1/60 f5.6 iso 100 metered", "i want f2.8, shutter", "and iso 50")[-1]
    assert value(club, last, "shutter_s") == pytest.approx(1 / 120, rel=0.02)


def test_a_filter_asked_for_after_what_hands_allow_is_told(club: Desk) -> None:
    last = talk(club, "300mm f5.6 on mft, slowest shutter", "and nd needed for 1/50 in sun iso 200")[-1]
    assert value(club, last, "nd_stops") == pytest.approx(5.4, abs=0.1)


@pytest.mark.parametrize(("filters", "stops"), [(("with nd1000",), 10), (("with nd1000", "nd64 instead"), 6)])
def test_which_shutter_is_asked_still_behind_a_filter(club: Desk, filters: tuple[str, ...], stops: int) -> None:
    last = talk(club, "what shutter for f8 iso 100 sun", *filters)[-1]
    assert value(club, last, "shutter_s") == pytest.approx(2**stops / 512, rel=0.03)


def test_the_depth_that_is_equivalent_is_a_stop(club: Desk) -> None:
    last = talk(club, "35mm f2 on apsc, equivalent", "and depth equivalent")[-1]
    assert any("f/3.1" in line.text for line in last.lines)


@pytest.mark.parametrize(("turns", "stops"), [(("two of them",), 4), (("two of them", "three of them"), 6)])
def test_filters_are_counted(club: Desk, turns: tuple[str, ...], stops: int) -> None:
    last = talk(club, "nd4 on 1/100 at f8", *turns)[-1]
    assert value(club, last, "shutter_s") == pytest.approx(2**stops / 100, rel=0.02)


def test_without_the_filters_none_is_on(club: Desk) -> None:
    last = talk(club, "nd4 on 1/100 at f8", "without the filters")[-1]
    assert last.question.said("factor") is None


@pytest.mark.parametrize("turn", ["shutter without any", "what shutter without one", "shutter without them"])
def test_the_shutter_without_filters_is_told(club: Desk, turn: str) -> None:
    last = talk(club, "f2 1/50 iso 100 sun, which nd", "i have a 0.9 and a 1.8", turn)[-1]
    assert value(club, last, "shutter_s") == pytest.approx(1 / 8192, rel=0.03)


@pytest.mark.parametrize("turn", ["does the ring give clicks", "what f stop is it at then", "how do i know the stop"])
@pytest.mark.parametrize(
    ("opening", "said"),
    [("dkl 90 on E", "lever ring without marks"), ("50 m42 on E", "f-number shown as 0 or dashes")],
)
def test_which_stop_is_set_is_told_by_who_works_the_iris(club, opening, said, turn):
    _, found = talk(club, opening, turn)
    assert found.intent == "gear-setting"
    assert flat(found).startswith(said)


@pytest.mark.parametrize("turn", ["why no ring on the lens", "why is there no f stop ring"])
def test_a_lens_without_a_ring_had_its_stop_set_by_its_body(club, turn):
    _, found = talk(club, "dkl 90 on E", turn)
    assert found.intent == "why"
    assert flat(found).startswith("no aperture ring on the lens: Its own camera set the stop")
