"""Several cases asked at once are each told: glass put on glass, one shape dark and another clean, two frames."""

from __future__ import annotations

import pytest

from engine.answers.parts.answer import Answer
from engine.talk import Talk
from tests.desks import desk_of

DESK = desk_of()


def nominals(answer: Answer, name: str) -> list[float]:
    return [row.value.nominal for row in answer.quantities or () if row.name == name]


@pytest.mark.parametrize(("question", "rooms"), [
    ("+3 close up filter on a 50 at infinity, how near, and with a +2 on top?", [1000 / 3, 200]),
    ("+4 on my 85, how close. and if i add a +1 to it?", [250, 200]),
    ("135mm with +2 close-up: distance? then both +2 and +1 together?", [500, 1000 / 3]),
    ("+2 or +4 on a 100mm or both on it, working distance of each", [500, 250, 1000 / 6]),
    ("+1 and +3 one on top of the other on a 100mm, how close", [250]),
])  # fmt: skip
def test_a_close_up_lens_is_told_alone_and_with_the_next_on_it(question: str, rooms: list[float]) -> None:
    assert nominals(DESK.ask(question), "working_distance_mm") == pytest.approx(rooms)


def test_on_in_a_talk_the_one_told_before_is_not_told_again() -> None:
    talk = Talk()
    DESK.ask("50mm with a +3 closeup lens", talk)
    assert nominals(DESK.ask("and a +2 on top", talk), "working_distance_mm") == pytest.approx([200])


@pytest.mark.parametrize(("question", "least", "greatest"), [
    ("dark corners in 4:3, none in 16:9 on mft with my 25mm c mount, why?", 19.85, 21.64),
    ("why do the corners go dark in 3:2 but not when i film 16:9 on aps-c", 27.08, 28.35),
    ("vignettes in 4:3 on m43 but is clean in 16:9 and 1:1. how big is the circle", 19.85, 21.64),
    ("corners black in photo mode, fine in 4k video, full frame. why", 41.30, 43.27),
])  # fmt: skip
def test_one_shape_dark_and_another_clean_tells_between_which_circles(
    question: str, least: float, greatest: float
) -> None:
    (circle,) = [
        row for row in DESK.ask(question).quantities or () if row.name == "image_circle_mm" and "dark in" in row.case
    ]
    assert (circle.value.least, circle.value.greatest) == pytest.approx((least, greatest), abs=0.01)


@pytest.mark.parametrize("question", [
    "mft or aps-c for a 2/3 inch lens, which wastes less of the sensor", "does a 2/3 inch lens cover mft or aps-c",
    "2/3 inch lens: aps-c or mft sensor, where do i lose less",
])  # fmt: skip
def test_a_mount_or_a_frame_are_two_frames(question: str) -> None:
    text = " ".join(line.text for line in DESK.ask(question).lines)
    missing = [one for one in ("APS-C", "Four Thirds", "42 to 50 %", "26 to 31 %") if one not in text]
    assert not missing


def test_two_frames_that_an_equivalent_is_asked_on_are_told_before_what_matches() -> None:
    found = DESK.ask("18mm equiv on mft or 1 inch")
    assert nominals(found, "equivalent_focal_mm")[::2] == pytest.approx([36.0, 49.1], abs=0.1)
    assert found.lines[0].text.startswith("18 mm on Four Thirds")


@pytest.mark.parametrize(("question", "lengths"), [
    ("enlarger 105mm how much draw for 1:1 and for 2:1", [105, 210]),
    ("how much extension for 1:2 and 1:1 with a 60", [30, 60]),
    ("90mm macro goes to 1:2, tube for 1:1", [45, 45]),
])  # fmt: skip
def test_each_of_two_sizes_has_its_draw_but_where_one_is_the_lenss_own(question: str, lengths: list[float]) -> None:
    assert nominals(DESK.ask(question), "extension_mm")[:2] == pytest.approx(lengths)


@pytest.mark.parametrize(("question", "entered"), [
    ("ibis for a 58 with 0.71x and for a 50 without", [41.18, 50]),
    ("stabiliser number: 135 plain, and 85 with 2x converter?", [135, 170]),
])  # fmt: skip
def test_of_two_lenses_each_is_entered_with_the_glass_it_wears(question: str, entered: list[float]) -> None:
    heads = [line.text for line in DESK.ask(question).lines if line.text.startswith("enter ") and line.kind == "head"]
    assert [float(text.split()[1]) for text in heads] == pytest.approx(entered, abs=0.1)


@pytest.mark.parametrize(("question", "stops"), [
    ("how many stops total light between mft and ff", 2.0), ("does aps-c get less noise than ff, how many stops", 1.22),
    ("pinhole f/180 vs f16 how much longer", 6.98), ("nd filters 2 4 8 16 stacked total", 10),
])  # fmt: skip
def test_what_is_set_against_each_other_is_told_in_stops(question: str, stops: float) -> None:
    told = DESK.ask(question)
    rows = nominals(told, "light_difference_stops") + nominals(told, "nd_stops")
    assert rows[0] == pytest.approx(stops, abs=0.01)


@pytest.mark.parametrize(("question", "first"), [
    ("is a 75/1.4 on mft same exposure as 75/1.4 on ff", "No crop changes the exposure: f/1.4 stays f/1.4"),
    ("polariser loses 1.5, metered 1/60, becomes", "1.5 stops less light: 1/60 s becomes 1/21 s"),
    ("metered 1/8, nd1000, time?", "ND1000, 10 stops: 1/8 s becomes"),
    ("how wide in mm must a lens throw for 16:9 on 1\"", "16:9 on 1-type: 13.2 x 7.4 mm"),
    ("what tube makes a 40mm f2.8 do 1:3", "40 mm at 0.33x: 13.33 mm of extension"),
])  # fmt: skip
def test_the_number_asked_for_comes_first(question: str, first: str) -> None:
    assert DESK.ask(question).lines[0].text.startswith(first)


@pytest.mark.parametrize(("question", "stops"), [
    ("is a 50/1.8 or 50/1.4 better adapted to mft", 0.73), ("28 f2.8 vs 28 f2 worth it", 0.97),
])  # fmt: skip
def test_of_two_lenses_told_by_their_stops_it_is_told_how_much_more_light_the_faster_lets_in(
    question: str, stops: float
) -> None:
    assert nominals(DESK.ask(question), "light_difference_stops")[0] == pytest.approx(stops, abs=0.01)


@pytest.mark.parametrize(("question", "first"), [
    ("150mm on 4x5 in 35mm speak", "150 mm on 4x5 in sheet frames like 40 mm"),
    ("1:1 with 2 x 25mm tubes on 50?", "Of what you have, 25 + 25 mm comes nearest"),
    ("does a 1/3in cctv 5mm light the q body's 1/2.3 chip", "Lens made for 1/3 in tube: does not cover"),
])  # fmt: skip
def test_numbers_and_names_stay_in_their_parts(question: str, first: str) -> None:
    assert DESK.ask(question).lines[0].text.startswith(first)


@pytest.mark.parametrize(("question", "first"), [
    ("f1.8 1/50 800iso bright overcast, what nd", "8.7 stops of ND to hold back"),
    ("meter f/5.6 1/30, tubes make 0.5x, what exposure by hand meter", "1/30 s becomes 1/13 s: 0.5x costs 1.2 stops"),
])  # fmt: skip
def test_speeds_and_sizes_are_read_as_they_are_typed(question: str, first: str) -> None:
    assert DESK.ask(question).lines[0].text.startswith(first)


@pytest.mark.parametrize("question", [
    "my c-mount 50 covers? 44x33 sensor in 35mm crop mode", "does my c-mount 50 cover 44x33 in 35mm crop mode",
])  # fmt: skip
def test_what_a_lens_shall_cover_is_not_what_it_is_made_for(question: str) -> None:
    text = " ".join(line.text for line in DESK.ask(question).lines)
    assert "50 mm C lens: does not cover" in text
    assert "yes, it covers" not in text


@pytest.mark.parametrize(("question", "first"), [
    ("16 stops too bright, nd3.0 + nd1.8 enough?", "Yes, ND 3.0 and ND 1.8: 16 stops of ND for 16 stops too many"),
    ("9 stops over, have nd64 and nd4, enough?", "No, ND64 and ND4: 8 stops of ND for 9 stops too many"),
    ("2 stops too bright with nd8 on, what now", "2 stops over with ND8 on: 5 stops of ND in all"),
    ("stabiliser focal for 25 in .71 speed thing", "enter 17.8 mm with 0.71x"),
    ("bellows 150 out w/ 80 f4, size & real f", "80 mm, 150 mm from lens to image: f/4 counts as f/7.5"),
])  # fmt: skip
def test_filters_at_hand_and_glass_around_a_lens_are_read(question: str, first: str) -> None:
    assert DESK.ask(question).lines[0].text.startswith(first)


@pytest.mark.parametrize("question", [
    "0.71 + aps-c lens on mft, corners?", "0.71 and an aps-c lens on mft, corners", "a 0.71x + aps-c lens on mft",
])  # fmt: skip
def test_a_factor_joined_to_a_lens_is_glass_behind_it(question: str) -> None:
    (circle,) = {row.value.least for row in DESK.ask(question).quantities or () if row.name == "image_circle_mm"}
    assert circle == pytest.approx(20.1, abs=0.1)


def test_what_a_circle_is_asked_for_is_not_what_the_lens_is_made_for() -> None:
    told = DESK.ask("38mm enlarging lens image circle for aps-c?")
    assert not any("it covers" in line.text for line in told.lines)


def test_inches_set_against_a_mount_are_a_frame() -> None:
    found = DESK.ask("crop for 1 inch vs mft and what a 25 does on each")
    assert nominals(found, "equivalent_focal_mm")[:2] == pytest.approx([50.0, 68.2], abs=0.2)
