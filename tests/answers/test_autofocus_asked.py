"""Whether the body can focus the lens by itself is said first where it is asked."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat


@pytest.mark.parametrize("asked", ["does autofocus work with an OM to E ring", "m42 on E, af?"])
def test_a_plain_ring_passes_nothing(club: Desk, asked: str) -> None:
    assert flat(club.ask(asked)).startswith("Autofocus: no.")


def test_a_ring_with_contacts_may_and_a_plain_one_points_to_it(club: Desk) -> None:
    assert flat(club.ask("EF on RF with ring, keep AF?")).startswith("Autofocus: perhaps.")
    assert "EF to E ring, electronic, passes them" in flat(club.ask("does af still work EF on E"))


def test_nothing_is_said_of_it_where_it_is_not_asked(club: Desk) -> None:
    assert "Autofocus" not in flat(club.ask("OM lens on E"))


def test_of_a_ring_told_by_its_length_alone_it_is_not_known(club: Desk) -> None:
    text = flat(club.ask("does autofocus work with my 26mm EF to E ring"))
    assert text.startswith("Autofocus: not known. Of your 26 mm ring only its length is told")
