"""Numbers and names in a row: sizes of fronts, bodies asked for, what is printed, what binds, whose name it is."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


@pytest.mark.parametrize(
    "text",
    [
        "one ND for 49 55 62 67 mm lenses. which size and what rings",
        "a polarizer to buy for 49, 55, 62 and 67mm lenses, which size",
        "i own 49 / 55 / 62 / 67 lenses and want one nd",
    ],
)
def test_the_last_of_a_row_of_sizes_is_one_of_them_and_no_focal_length(club, text):
    (answer,) = talk(club, text)
    assert "one 67 mm filter" in flat(answer)
    assert not any(one.focal_length_mm for one in answer.question.lenses)


@pytest.mark.parametrize(
    ("text", "mounts"),
    [
        ("which bodies can take an Exakta and a PL and a D", ["exakta-mount", "pl", "d"]),
        ("which cameras take both an FD and a PL", ["fd-mount", "pl"]),
    ],
)
def test_behind_the_bodies_that_are_asked_for_stand_lenses(club, text, mounts):
    (answer,) = talk(club, text)
    assert [one.ids[0] for one in answer.question.lenses] == mounts
    assert not any(one.ids for one in answer.question.bodies)


def test_which_of_two_bodies_takes_it_is_still_asked_of_bodies(club):
    (answer,) = talk(club, "which body takes C lenses, E or X")
    assert [one.ids[0] for one in answer.question.bodies] == ["e-mount", "x-mount"]


@pytest.mark.parametrize(
    ("text", "drawn"),
    [
        ("print shrink 0.4 percent on a 27.46 ring, what do I dial in", "27.57 mm"),
        ("petg shrinkage 0.5 %, M42 to E ring, size to model", "27.6 mm"),
    ],
)
def test_a_print_is_drawn_larger_by_what_it_shrinks(club, text, drawn):
    (answer,) = talk(club, text)
    assert f"Draw it {drawn} thick" in flat(answer)


@pytest.mark.parametrize(
    "text",
    [
        "two astro filters both say 28.5, one won't go in more than half a turn",
        "the 28.5 filter jams in the nosepiece after a turn",
    ],
)
def test_filters_of_one_width_that_bind_are_told_by_their_pitches(club, text):
    (answer,) = talk(club, text)
    assert "pitches of 0.5 and 0.6 mm" in flat(answer)


@pytest.mark.parametrize(
    "text",
    [
        "42mm screw, and window image lands 54.9 behind the shoulder. not M42 then?",
        "42 mm thread, register about 55. M42 or T2",
    ],
)
def test_two_mounts_set_apart_by_register_are_told_by_their_threads_too(club, text):
    (answer,) = talk(club, text)
    assert "T2 (55 mm), not M42" in flat(answer)
    assert {(row.case, row.value.nominal) for row in answer.quantities if row.name == "ten_pitches_mm"} == {
        ("t2", 7.5),
        ("m42", 10.0),
    }


def test_a_fraction_of_an_inch_written_on_a_lens_is_what_it_is_made_for(club):
    (answer,) = talk(
        club, "zoom off a studio camera: bayonet, three lugs, ring on the camera side, 2/3 inch written on it"
    )
    assert answer.question.lenses[0].focal_length_mm is None
    assert "B4: bayonet; register 48 mm" in flat(answer)


@pytest.mark.parametrize("text", ["M42 50 on zorf, which ring", "M42 50 on a zorf body, which ring and how thick"])
def test_of_a_body_whose_name_nobody_knows_the_mount_is_asked_for(club, text):
    (answer,) = talk(club, text)
    assert "Which lens mount is on your zorf" in flat(answer)
    assert "Micro Four Thirds 26.21 mm" in flat(answer)


def test_a_body_that_is_nearly_a_known_one_is_asked_about_and_nothing_else(club):
    (answer,) = talk(club, "M42 50 on a qbn body, which ring and how thick")
    assert "Nearest: QBM" in flat(answer)


@pytest.mark.parametrize(
    ("text", "tubes"),
    [
        ("150mm enlarger lens, M65 helicoid 25-55, 44x33 G body: what length is still missing", "46 to 106 mm"),
    ],
)
def test_beside_a_helicoid_stand_the_tubes_that_bring_infinity_into_its_travel(club, text, tubes):
    (answer,) = talk(club, text)
    assert f"Tubes and rings of {tubes} beside it" in flat(answer)


@pytest.mark.parametrize(
    ("text", "rest"),
    [
        # 71.25 mm from its flange to the image, less 19.25 of the body and 26.21 of the ring, is in the travel
        ("75mm enlarger, M42 helicoid 17-31, on MFT. what spacers", "infinity with it at 25.79 mm"),
        # 85.5 mm, less 18 of the body and 27.46 of the ring, is beyond it
        ("90mm enlarger lens, helicoid 17-31 and E-mount: which tubes do I need besides", "9.04 mm to 23.04 mm more"),
    ],
)
def test_with_the_usual_ring_it_is_told_what_the_helicoid_lacks(club, text, rest):
    (answer,) = talk(club, text)
    assert rest in flat(answer)


def test_two_rings_are_set_against_one(club):
    for text in (
        "two rings instead of one, M42 to K and K to E, same result as a single M42-E?",
        "is stacking M42-EF + EF-E as good as one M42-E",
    ):
        (answer,) = talk(club, text)
        assert "The same length either way, 27.46 mm" in flat(answer)
        assert "M42-E has fewer joints" in flat(answer)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("how many turns does a 1mm pitch ring need for 5.24", "5.24 turns"),
        ("to move it 1.72 how many turns of a C thread", "2.167 turns"),
        ("what turn is 0.05 mm on a 0.75 pitch", "24 degrees"),
    ],
)
def test_a_bare_length_is_what_the_turns_move(club, text, told):
    (answer,) = talk(club, text)
    assert told in flat(answer)


def test_throats_of_several_are_told_widest_first(club):
    (answer,) = talk(club, "E vs Z vs X throat sizes")
    assert "Z-mount 55 mm, E-mount 46.1 mm and X-mount 44 mm" in flat(answer)


def test_mounts_are_listed_by_what_holds_them(club):
    (answer,) = talk(club, "which mounts use a breech lock")
    listed = {row.case for row in answer.quantities if row.name == "register_mm"}
    assert {"fd-mount", "pl"} <= listed
    assert not listed & {"e-mount", "m42"}


@pytest.mark.parametrize(
    "text",
    [
        "adapter is 27.30 not 27.46, 24mm lens: infinity?",
        "adapter measures 27.30 instead 27.46, 24mm lens. what happens with infinity",
    ],
)
def test_of_two_lengths_so_near_each_other_one_is_what_it_should_be(club, text):
    (answer,) = talk(club, text)
    assert answer.question.said("nominal") == "27.46 mm"
    assert [one.focal_length_mm for one in answer.question.lenses] == [24.0]
    assert "0.16 mm too close" in flat(answer)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("cup inner diameter 27mm, my C lens has a 29.5 barrel. fits?", "2.5 mm too wide"),
        ("will a 31 mm barrel go in a 30 mm cup", "1 mm too wide"),
        ("the lens collar is 36 wide, throat 38, enter?", "2 mm to spare"),
    ],
)
def test_what_is_so_wide_goes_through_or_not(club, text, told):
    (answer,) = talk(club, text)
    assert told in flat(answer)


def test_rings_that_lead_on_are_rings_though_no_word_heads_them(club):
    (answer,) = talk(club, "can I go LTM to M and then M to Z")
    assert [(one.front[0], one.rear[0]) for one in answer.question.adapters] == [
        ("ltm", "m-mount"),
        ("m-mount", "z-mount"),
    ]
    (answer,) = talk(club, "M39 SLR to M42 step ring then M42-E: infinity?")
    assert [one.ids[0] for one in (*answer.question.lenses, *answer.question.bodies)] == ["m39-zenit", "e-mount"]


def test_a_ring_that_would_have_to_lie_inside_is_told_as_such(club):
    (answer,) = talk(club, "DKL to M42 then M42-EF, still infinity?")
    assert "it would have to be -0.76 mm from seat to seat" in flat(answer)
    assert "nothing leads on" not in flat(answer)


def test_a_stop_engraved_as_a_ratio_wants_no_close_ups(club):
    (answer,) = talk(club, "the lens says 1:2/58 and has a M42 thread. my body E full frame. what do i buy")
    assert answer.question.lenses[0].f_number == 2.0
    assert "close-ups" not in answer.lines[0].text


@pytest.mark.parametrize(
    "text", ["got a 42mm screw lens, no idea whether T2 or M42", "not sure if it's C or CS, how do i check"]
)
def test_who_is_not_sure_which_of_two_it_is_wants_it_told_apart(club, text):
    (answer,) = talk(club, text)
    assert answer.intent == "identify-mount"


def test_where_a_lens_was_made_parts_nothing_from_it(club):
    (answer,) = talk(club, "my lens says made in Zorland 135 2.8 with a M42 screw. I'm on an E body. which ring")
    assert (answer.question.lenses[0].ids[0], answer.question.lenses[0].focal_length_mm) == ("m42", 135.0)


def test_what_filters_are_put_on_is_a_lens(club):
    (answer,) = talk(club, "lens hood thread 52 step to 58 filter on 28mm: vignette?")
    assert [one.focal_length_mm for one in answer.question.lenses] == [28.0]


def test_whether_a_zone_is_sharp_is_told_as_it_is_focused(club):
    (answer,) = talk(club, "35mm at 5.6 on aps-c, group stands at 3 m. will 2.5m to 4m be sharp?")
    near = [row.value.nominal for row in answer.quantities if row.name == "dof_near_mm"]
    far = [row.value.nominal for row in answer.quantities if row.name == "dof_far_mm"]
    assert near == [pytest.approx(2369, abs=25)]
    assert far == [pytest.approx(4090, abs=60)]


def test_what_tubes_are_like_parts_no_length_from_them(club):
    (answer,) = talk(club, "31 + 13 electronic tubes together behind a 100mm: magnification")
    assert [one.thickness_mm[0] for one in answer.question.adapters] == [31.0, 13.0]
    assert [one.focal_length_mm for one in answer.question.lenses] == [100.0]


def test_half_an_inch_beside_another_size_is_what_the_lens_is_made_for(club):
    (answer,) = talk(club, 'lens says 1/2" and my industrial cam is 1/1.8"')
    assert answer.intent == "coverage"
    assert "image circle 8 to 9 mm" in flat(answer)


def test_the_stop_that_glass_may_make_is_not_that_of_the_lens(club):
    _, made, after = talk(club, "exakta 58 f2 on E", "does a 0.71 reducer turn it into f/1.4", "and on MFT")
    assert made.lines[0].text.startswith("Yes: f/2 x 0.71 = f/1.42")
    assert not any(line.text.startswith("No") for line in made.lines)
    assert (after.question.lenses[0].f_number, after.question.f_number) == (2.0, None)


def test_step_rings_for_fronts_do_not_go_behind_the_lens_spoken_of(club):
    *_, answer = talk(club, "exakta 58 on E", "which filter step ring for 49 and 58 mm lenses")
    assert answer.lines[0].text.startswith("Step up to one 58 mm filter")
    pieces = {piece.kind for chain in answer.chains or () for piece in chain.listed.judged.chain.adapters}
    assert "step-ring" not in pieces


def test_a_body_taken_from_the_length_of_its_ring_is_told_as_taken(club):
    (answer,) = talk(club, "my OM 21 on this camera, ring 28.05, infinity?")
    assert "No body is told: taken for E-mount by the length of the ring" in flat(answer)


def test_the_sensor_is_sought_among_those_of_mirrorless_mounts(club):
    (answer,) = talk(club, "a 68 mm tube behind a 100 shows 53 mm across, which sensor is it")
    assert "36 mm on the sensor, as wide as full frame" in flat(answer)
