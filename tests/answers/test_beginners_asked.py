"""What people ask who do not know the words of the trade."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat


@pytest.mark.parametrize("sort", ["newish", "basic", "fancy", "recent", "entry-level", "ancient", "analogue", "family"])
@pytest.mark.parametrize("text", ["i have an old lens and a {} camera, which adapter ring do i get",
                                  "i have a {} lens and a new camera, which ring do i need"])  # fmt: skip
def test_an_everyday_word_before_camera_or_lens_is_no_unknown_name(asked, text, sort):
    found = asked(text.format(sort))
    assert "Found" not in found["text"]
    assert "Which mount is on your" in flat(found)


def test_what_one_has_read_is_not_measured_and_a_film_camera_is_no_film(asked):
    found = asked("i read my 50mm from the film camera turns into a 75 on the new one (aps-c). does the lens change?")
    assert flat(found).startswith("50 mm on APS-C frames like 76 mm")
