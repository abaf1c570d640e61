"""What is drawn out, told by its length shut and how far it goes from there: both ends of it are known."""

from __future__ import annotations

import pytest

from tests.answers.talks import talk


@pytest.mark.parametrize(
    ("say", "ends"),
    [
        ("M 90mm on L body with a close focus ring, 7.8 closed, extends by 6. infinity?", (7.8, 13.8)),
        (
            "M 75mm lens on Z via a close focus adapter, 11.8 mm closed, plus 5 mm when drawn out. infinity?",
            (11.8, 16.8),
        ),
        ("LTM 50mm on E, close focus adapter 10.8 mm collapsed, moves 4 mm. do I keep infinity", (10.8, 14.8)),
        ("M 50 on E: macro adapter is 9.8 mm shut and opens another 4. how near fully out", (9.8, 13.8)),
        ("m42 50mm on E with a helicoid closed 17 mm, travel 14. infinity?", (17, 31)),
        ("m42 50mm on E helicoid 17 mm shut, 31 mm fully out. infinity?", (17, 31)),
    ],
)
def test_the_travel_begins_where_it_is_shut(club, say, ends):
    (answer,) = talk(club, say)
    drawn = [one for one in answer.question.adapters if one.piece == "helicoid"]
    assert [one.thickness_mm for one in drawn] == [ends]
    assert answer.chains[0].listed.judged.verdict == "infinity"


def test_a_length_that_is_of_another_piece_is_no_travel(club):
    (answer,) = talk(club, "50mm M42 on E, helicoid shut at 17 mm and a 1 mm ring, plus 10 mm tube. infinity?")
    assert [one.thickness_mm for one in answer.question.adapters if one.piece == "extension-tube"] == [(10, 10)]
