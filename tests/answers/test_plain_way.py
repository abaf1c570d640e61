"""The plain way told first where it is asked whether a lens is fine, and a register or a ring that was measured."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat as text_of
from tests.answers.talks import talk


@pytest.mark.parametrize("question", ["M42 on F, fine?", "md 50 on EF, infinity?", "is a C/Y 85 on F camera ok?"])
def test_where_glass_alone_gives_infinity_the_way_without_is_told_first(asked, question):
    found = asked(question)
    assert found["chains"][0]["verdict"] == "macro-only"
    assert "infinity only through a ring with glass" in text_of(found)


def test_a_glass_ring_that_is_asked_for_is_told_first(club):
    *_, found = talk(club, "is my M42 lens fine on F camera", "ring is 1mm, 135mm lens then?", "with a glass one?")
    assert found.chains[0].listed.judged.verdict == "infinity"


@pytest.mark.parametrize(("question", "error"), [
    ("my OM to Z ring is 30.3 by the calipers.. 28/2.8, infinity?", 0.3),
    ("SR-E ring calipers 25.7, 24/2.8, infinity?", 0.2),
    ("ring is 1mm, 135mm M42 lens on F, how far?", 2.04),
])  # fmt: skip
def test_a_ring_that_was_measured_is_judged_by_its_length(asked, question, error):
    assert asked(question)["chains"][0]["register_error_mm"]["least"] == pytest.approx(error)


def test_a_register_told_of_the_lens_that_is_talked_about_moves_the_verdict(club):
    first, then = talk(club, "my M42 50mm on E, infinity?", "its register is really 45.2")
    before, after = (answer.chains[0].listed.judged for answer in (first, then))
    assert (before.verdict, after.verdict) == ("infinity", "macro-only")
    assert before.chain.adapters == after.chain.adapters
