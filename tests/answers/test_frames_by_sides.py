"""A frame told by its sides is the format that is named by them, rounded as those are."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("full frame lens on 44 by 33, will it black out the edges", "44x33 needs 54.78 mm"),
        ("does a 40 mm circle light 24 by 36", "full frame needs 43.27 mm"),
        ("will a 14 mm circle cover a 12 x 9 mm sensor", "needs 15 mm"),
    ],
)
def test_sides_name_the_format(asked, text, named):
    assert named in flat(asked(text))
