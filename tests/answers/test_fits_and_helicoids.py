"""What a lens of before fits; helicoids told by their ends; plates in rings; what the box says; several readings."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


@pytest.mark.parametrize(
    "before", ["does a 35mm M42 cover MFT", "50/1.8 M42 on E at f8, dof at 3 m", "is M42 the same as T2"]
)
@pytest.mark.parametrize("turn", ["will it fit a Z as well", "would it mount on a Z", "fits my Z too?"])
def test_what_it_fits_is_a_body_and_no_lens(club, before, turn):
    _, answer = talk(club, before, turn)
    assert answer.intent == "chain"
    assert answer.question.lenses[0].id == "m42"
    assert [body.id for body in answer.question.bodies] == ["z-mount"]


@pytest.mark.parametrize(
    "say",
    [
        "K 50 on E with a 27.5-37.5 helicoid",
        "50mm LTM on MFT, 9.55-14.55 focusing adapter",
        "M 50 on E with a 10-15 mm helicoid adapter",
        "FD 50 on MFT, my helicoid goes from 22.8 to 32 mm",
    ],
)
def test_a_helicoid_that_is_as_long_as_the_ring_joins_the_two(club, say):
    (answer,) = talk(club, say)
    assert answer.chains[0].listed.judged.verdict == "infinity"


def test_ends_told_by_a_round_number_are_known_no_closer(club):
    (answer,) = talk(club, "K 50 on E with a 27.5-37.5 helicoid")
    assert answer.chains[0].title.startswith("your 27.5 to 37.5 mm helicoid")
    assert "reaches infinity (certain)" not in flat(answer)


def test_a_helicoid_of_another_length_is_screwed_between(club):
    (answer,) = talk(club, "M42 50 on E with a 17-31 helicoid")
    assert "M42 helicoid 17..31 mm + " in flat(answer)


@pytest.mark.parametrize(
    "say",
    [
        "a 3 mm ir cut filter glass goes inside my home made tube, how much longer does it get",
        "3 mm hot mirror glued into the ring behind the lens. make the ring how much longer",
    ],
)
def test_a_plate_in_a_ring_makes_it_longer(club, say):
    (answer,) = talk(club, say)
    shift = next(row.value.nominal for row in answer.quantities if row.name == "glass_shift_mm")
    assert shift == pytest.approx(3 * (1 - 1 / 1.52), abs=0.02)


@pytest.mark.parametrize("says", ["box says", "sold as", "the listing says"])
def test_what_the_box_says_is_what_it_is_made_for(club, says):
    (answer,) = talk(club, f'8mm C lens, {says} 1/2", chip is 2/3. does it cover')
    assert answer.question.lenses[0].format == "v12"


def test_readings_that_differ_are_a_tilt_also_where_why_is_asked(club):
    (answer,) = talk(club, "measured one ring in 3 places - 27.41, 27.46, 27.52. why different")
    assert "so it is tilted" in flat(answer)
