"""Close up in turns: which of two coupled lenses is another now, what a close-up lens costs and what is sharp."""

from __future__ import annotations

import pytest

from engine.answers.parts.answer import Answer
from engine.ask import Desk
from engine.render.record import record_of
from tests.answers.picture import numbers
from tests.answers.talks import talk


def value(club: Desk, found: Answer, name: str) -> float:
    low, high = numbers(record_of(found, club.knowledge), name)[0]
    return (low + high) / 2


def head(found: Answer) -> str:
    return found.lines[0].text


@pytest.mark.parametrize(
    ("turns", "front", "rear"),
    [
        (("28mm reversed in front of a 135mm, full frame", "and a 50 there instead of the 28"), 50, 135),
        (("24mm reversed on a 200mm, magnification", "swap the 24 for a 35"), 35, 200),
        (("24mm reversed on a 200mm, magnification", "and a 100 instead of the 200"), 24, 100),
        (("couple a reversed 35 to a 135, how big", "with a 28 in front instead"), 28, 135),
        (("50 reversed before a 100, scale", "and a 28?"), 28, 100),
        (("50 reversed before a 100, scale", "200 instead of 100"), 50, 200),
        (("28mm reversed in front of a 135mm", "what about a 100 on the camera"), 28, 100),
    ],
)
def test_of_two_coupled_lenses_one_is_another_now(club: Desk, turns: tuple[str, ...], front: int, rear: int) -> None:
    last = talk(club, *turns)[-1]
    assert [lens.focal_length_mm for lens in last.question.lenses] == [front, rear]
    assert value(club, last, "magnification") == pytest.approx(rear / front, rel=0.01)


def test_the_depth_before_coupled_lenses_comes_first_where_it_is_asked(club: Desk) -> None:
    last = talk(club, "28mm reversed in front of a 135mm, full frame", "how much stays in focus at f8")[-1]
    assert head(last).startswith("0.02")


@pytest.mark.parametrize("said", ["with a 50 on it instead", "a 50 on the same bellows", "put a 50 on it"])
def test_what_is_put_on_the_bellows_is_a_lens(club: Desk, said: str) -> None:
    last = talk(club, "bellows 40 to 140mm with an 80mm enlarger lens, magnification range", said)[-1]
    assert [lens.focal_length_mm for lens in last.question.lenses] == [50]
    assert [piece.thickness_mm for piece in last.question.adapters] == [(40, 140)]


@pytest.mark.parametrize("said", ["light lost?", "does it cost light", "does that eat light like the tubes do"])
def test_a_close_up_lens_costs_no_light(club: Desk, said: str) -> None:
    last = talk(club, "+4 on a 135mm how big", said)[-1]
    assert "No light is lost by a close-up lens" in head(last)


def test_what_is_sharp_behind_a_close_up_lens_is_no_hyperfocal_distance(club: Desk) -> None:
    last = talk(club, "+4 on a 135mm f2.8", "and depth at f8 on full frame")[-1]
    assert value(club, last, "dof_mm") == pytest.approx(2 * 8 * 0.03 / 0.54**2, rel=0.01)
    assert "hyperfocal" not in "\n".join(line.text for line in last.lines)


def test_a_tube_that_would_do_the_same_takes_no_place(club: Desk) -> None:
    last = talk(club, "+2 on a 135mm how big", "so how long a tube would match it")[-1]
    assert value(club, last, "extension_mm") == pytest.approx(49.93, abs=0.01)


def test_a_tube_as_well_leaves_the_close_up_lens_on(club: Desk) -> None:
    last = talk(club, "+3 on a 50mm f2", "with a 12mm tube as well")[-1]
    assert "+3 dioptre and 12 mm of tube" in head(last)


def test_the_travel_of_a_helicoid_costs_light(club: Desk) -> None:
    last = talk(club, "35mm ltm lens on helicoid m to e ring with 4mm travel, how close", "what does it cost in light")[
        -1
    ]
    assert value(club, last, "light_difference_stops") == pytest.approx(0.33, abs=0.05)


@pytest.mark.parametrize("between", ["what about exposure, sunny iso 100, shutter?", "whats the equivalent"])
def test_the_subject_is_as_far_as_before_after_another_matter(club: Desk, between: str) -> None:
    last = talk(club, "50mm lens f2 at 3m dof full frame", between, "and the depth at f8")[-1]
    assert last.question.distance_mm == 3000


@pytest.mark.parametrize(
    "said", ["and infinity?", "what do i set it to for the mountains", "where do i focus to get the horizon in"]
)
def test_infinity_after_what_is_sharp_asks_of_that(club: Desk, said: str) -> None:
    last = talk(club, "35mm f8 full frame at 2m what is sharp", said)[-1]
    assert last.intent == "depth-of-field"
    assert head(last).startswith("Infinity is not sharp with it set to 2 m: it ends at 3.19 m. Set it to 5.14 m")


@pytest.mark.parametrize("said", ["so whats the nearest sharp thing if i set that", "and the farthest?", "near limit?"])
def test_the_ends_of_what_is_sharp_are_asked_of_that(club: Desk, said: str) -> None:
    last = talk(club, "hyperfocal of a 24mm at f8 on full frame?", said)[-1]
    assert last.intent == "depth-of-field"
    assert "sharp from 1.21 m" in head(last)


def test_whether_a_lens_reaches_infinity_on_a_body_is_asked_of_the_two(club: Desk) -> None:
    first = "50mm om lens on e mount, f5.6 focused at 5m, what range is sharp"
    assert talk(club, first, "does it reach infinity at all")[-1].intent == "focus-verdict"


def test_the_view_is_asked_after_the_light(club: Desk) -> None:
    last = talk(club, "2x tc behind a 200mm f4, what do i get", "light lost", "and on apsc what view")[-1]
    assert last.intent == "crop-equivalent"


def test_an_iso_told_bare_beside_the_word_is_made_up_for(club: Desk) -> None:
    last = talk(club, "from f2 to f8 how many stops", "keep 1/500, which iso then? was 100")[-1]
    assert "ISO 1600" in head(last)


@pytest.mark.parametrize("said", ["how dark does that get", "how dark will it be", "how much darker is it"])
def test_how_dark_it_gets_behind_a_tube_is_what_is_lost(club: Desk, said: str) -> None:
    last = talk(club, "50mm plus 14mm tube, how close", said)[-1]
    assert last.intent == "exposure-nd"
    assert value(club, last, "light_difference_stops") == pytest.approx(0.7, abs=0.1)


def test_dark_corners_behind_a_tube_are_of_the_circle(club: Desk) -> None:
    assert talk(club, "50mm plus 14mm tube, how close", "how dark are the corners")[-1].intent == "coverage"


def test_how_wide_it_is_close_up_is_the_field_there(club: Desk) -> None:
    last = talk(club, "50mm plus 14mm tube, how close", "how wide is the patch i see on full frame")[-1]
    assert value(club, last, "field_width_mm") == pytest.approx(36 * 50 / 14, rel=0.01)


@pytest.mark.parametrize("between", ["are the corners dark", "which focal for the stabiliser"])
def test_a_tube_stays_on_past_another_matter(club: Desk, between: str) -> None:
    last = talk(club, "50mm plus 14mm tube on mft, how close", between, "and depth at f8")[-1]
    assert [piece.thickness_mm for piece in last.question.adapters] == [(14, 14)]
    assert "hyperfocal" not in "\n".join(line.text for line in last.lines)


@pytest.mark.parametrize("said", ["swap the 21 for the 10", "10 instead of the 21", "10 instead of 21mm"])
def test_of_several_tubes_one_is_swapped(club: Desk, said: str) -> None:
    last = talk(club, "16 and 21mm tubes behind a 58mm lens, how close", said)[-1]
    assert [piece.thickness_mm for piece in last.question.adapters] == [(16, 16), (10, 10)]


def test_the_light_of_a_lens_turned_round_is_no_loss_by_its_tube(club: Desk) -> None:
    last = talk(club, "50 1.8 reversed on e mount full frame how big", "add 10mm", "light")[-1]
    assert "the lens turned round, by its magnification" in head(last)
    assert "10 mm of extension" not in "\n".join(line.text for line in last.lines)


def test_without_after_another_tube_is_without_any(club: Desk) -> None:
    last = talk(club, "60mm with a 30mm tube, how close", "40 rather", "what about without")[-1]
    assert not last.question.adapters


def test_a_tube_put_back_is_no_lens(club: Desk) -> None:
    last = talk(club, "tubes 12 20 36 on a 50, closest?", "just the 20", "put the 36 back")[-1]
    assert [piece.thickness_mm for piece in last.question.adapters] == [(20, 20), (36, 36)]


def test_half_of_two_tubes_is_half_of_both(club: Desk) -> None:
    last = talk(club, "85mm with 25 and 36mm tubes, how big", "half of that")[-1]
    assert value(club, last, "magnification") == pytest.approx(30.5 / 85, rel=0.01)


@pytest.mark.parametrize(("said", "away"), [("focus at 4", 4000), ("focused at 6", 6000)])
def test_a_number_that_it_is_focused_at_is_a_distance(club: Desk, said: str, away: float) -> None:
    last = talk(club, "35mm at f8 focused at 3m, full frame, what is sharp", said)[-1]
    assert (last.question.distance_mm, last.question.f_number) == (away, 8)


@pytest.mark.parametrize(("said", "m"), [("1:1", 1.0), ("at half life size?", 0.5)])
def test_another_size_is_asked_of_depth_still(club: Desk, said: str, m: float) -> None:
    last = talk(club, "100mm macro at 1:4 f8, depth on full frame", said)[-1]
    assert last.intent == "depth-of-field"
    assert value(club, last, "dof_mm") == pytest.approx(2 * 8 * 0.03 * (1 + m) / m**2, rel=0.01)
    assert "hyperfocal" not in "\n".join(line.text for line in last.lines)


def test_another_close_up_lens_is_asked_of_depth_still(club: Desk) -> None:
    last = talk(club, "+3 on an 85 f1.8 at f8 how deep is it full frame", "+1 instead")[-1]
    assert value(club, last, "dof_mm") == pytest.approx(2 * 8 * 0.03 / 0.085**2, rel=0.01)


@pytest.mark.parametrize(("turns", "long"), [(("two of those",), 10), (("two of those", "three"), 15)])
def test_a_tube_known_by_name_is_counted(club: Desk, turns: tuple[str, ...], long: int) -> None:
    last = talk(club, "25mm with 5mm c tube on mft, how close", *turns)[-1]
    assert value(club, last, "magnification") == pytest.approx(long / 25, rel=0.01)


@pytest.mark.parametrize("said", ["lens says 0.45 m", "the lens is marked 0.45 m", "it says .45", "45 cm it says"])
def test_the_nearest_mark_that_was_asked_for_is_told_in_many_ways(club: Desk, said: str) -> None:
    last = talk(club, "m42 50 on E, how near does it focus", said)[-1]
    assert last.question is not None
    assert last.question.said("close_focus") == "450 mm"


def test_how_near_on_a_ring_that_is_off_asks_for_the_nearest_mark_first(club: Desk) -> None:
    last = talk(club, "m42 50 on E, ring measures 27.6", "what about flowers, how close can i go")[-1]
    assert last.intent == "macro-distance"
    assert head(last).startswith("By its own ring it comes nearer than the nearest mark of its scale")


def test_what_fills_the_frame_is_told_before_how_the_helicoid_seats_the_lens(club: Desk) -> None:
    turns = ("80mm enlarger lens m39 on mft with an m42 helicoid 25-55", "how far is the slide from the lens")
    last = talk(club, *turns)[-1]
    assert head(last).startswith("A 35 mm slide or negative, 36 x 24 mm on Four Thirds")


@pytest.mark.parametrize(
    ("first", "turn", "front", "rear"),
    [
        ("85/1.8 + 36mm tube, near limit marked 0.85 m. from where to where", "reversing a 35 on its front", 35, 85),
        ("135 on Z with a 20 mm tube, how close", "and a 28 reversed on the front of it?", 28, 135),
        ("200/4 K on E, magnification with 30mm of tubes", "or with a reversed 50 on its nose", 50, 200),
        ("85 C/Y + 16mm tube on E, how near", "instead a 24 turned round on the front thread", 24, 85),
        ("100 macro at 1:1", "stack a 35 reversed onto the filter thread", 35, 100),
        ("85mm on E + 36 tube", "reverse a 35 onto it", 35, 85),
    ],
)
def test_a_lens_turned_round_on_the_front_of_the_one_spoken_of_is_coupled_to_it(
    club: Desk, first: str, turn: str, front: int, rear: int
) -> None:
    last = talk(club, first, turn)[-1]
    assert value(club, last, "magnification") == pytest.approx(rear / front, rel=0.01)


@pytest.mark.parametrize(
    ("turn", "ring"),
    [
        ("fronts are 52 and 49, joined with what", "52 to 52 mm, with a step ring of 49 to 52 mm"),
        ("how do i join them, 52 and 58 fronts", "52 to 58 mm"),
        ("filter threads 49 and 58, what joins them", "49 to 58 mm"),
    ],
)
def test_two_fronts_face_to_face_are_joined_by_a_coupling_ring(club: Desk, turn: str, ring: str) -> None:
    last = talk(club, "50 reversed before a 100, scale", turn)[-1]
    assert head(last).startswith(f"A coupling ring, male to male, {ring}")


@pytest.mark.parametrize(
    ("say", "stops"),
    [
        ("100mm lens at 160mm of bellows draw, how much more light must i give", 1.36),
        ("150mm lens, bellows draw 225 mm, extra exposure?", 1.17),
        ("210mm lens racked out to a 300 mm draw, bellows factor?", 1.03),
        ("bellows draw 250mm with a 150, stops?", 1.47),
        ("135mm lens bellows draw 200, how many stops do i lose", 1.13),
    ],
)
def test_a_bellows_draw_longer_than_the_lens_is_from_lens_to_film(club: Desk, say: str, stops: float) -> None:
    (found,) = talk(club, say)
    assert f"{stops:.1f} stop" in head(found)
    assert "drawn beyond infinity" in found.lines[1].text


def test_a_draw_told_anew_takes_the_place_of_the_one_before(club: Desk) -> None:
    first = "100mm lens at 160mm of bellows draw, how much more light must i give"
    _, longer, away, nearer = talk(club, first, "1/30 becomes?", "film to subject then?", "130 draw?")
    assert value(club, longer, "shutter_s") == pytest.approx(2.56 / 30, rel=0.01)
    assert value(club, away, "magnification") == pytest.approx(0.6)
    assert value(club, nearer, "magnification") == pytest.approx(0.3)


def test_how_near_it_comes_with_its_own_focusing_is_said_first(club):
    _, found = talk(club, "dkl 50 on MFT please", "it only goes to 1m. with a 7mm tube how near")
    assert head(found).startswith("Nearest, at its 1 m mark: 37 cm from the sensor, 0.2x; farthest")


def test_the_depth_of_a_lens_turned_round_goes_by_what_it_draws_so(club):
    said, found = talk(club, "enlarger 50/2.8 reversed on my OM tubes, 40mm", "depth?")
    sizes = numbers(record_of(said, club.knowledge), "magnification")
    assert found.intent == "depth-of-field"
    assert sizes[0] in numbers(record_of(found, club.knowledge), "magnification")
    m = sizes[0][0]
    deep = 2 * 2.8 * 43.27 / 1442 * (1 + m) / m**2
    rows = [(low + high) / 2 for low, high in numbers(record_of(found, club.knowledge), "dof_mm")]
    assert rows[0] == pytest.approx(deep, rel=0.02)


def test_a_lens_turned_round_draws_by_its_image_distance(club: Desk) -> None:
    got = talk(club, "35mm reversed on a bellows, 140 from sensor to its rear principal plane. ratio", "and at 105",
               "a 50 there")  # fmt: skip
    assert [value(club, one, "magnification") for one in got] == [pytest.approx(size) for size in (3, 2, 1.1)]
