"""What a figure of a mount rests on, where it is doubted or a rival of it is told; threads by the name of the bench."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat


@pytest.mark.parametrize(
    ("say", "head"),
    [
        ("how sure are you about 112 mm for the RB", "RB67: register 112 mm, 110 to 112"),
        ("can i trust 63.3 for M645", "M645: register 63.3 mm, by the trade's memory alone"),
        ("which is right for FD, 42 or 42.14", "FD-mount: register 42 mm, two sources or more agree. 42.14"),
        ("AR register 40.5 or 40.7?", "AR-mount: register 40.5 mm, two sources or more agree. 40.7"),
        ("how reliable is the register of the kowa six", "Kowa Six: register 79 mm, by the trade's memory"),
        ("throat of an exakta body 38 or 33.8", "Exakta: throat 33.8 mm, two sources or more agree. Throat 33.8"),
        ("is the flange distance of the 40 mm screw SLR known for sure?", "M40x1 (1939 SLR): register 44 mm, 44 to"),
        ("nikonos register: sure about 31?", "Nikonos (underwater): register 31 mm, by the trade's memory"),
    ],
)
def test_how_sure_a_figure_is_is_told(asked, say, head):
    assert flat(asked(say)).startswith(head)


@pytest.mark.parametrize(
    "say", ["OM 50 on E, 28 or 27.9 mm ring?", "sure my FD 50 works on E?", "85 or 135 K lens for portraits on E"]
)
def test_no_figure_is_weighed_where_none_is_doubted(asked, say):
    assert "sources or more agree" not in flat(asked(say))[:160]


@pytest.mark.parametrize(
    ("say", "told"),
    [
        ("what is SM1 thread in mm", "1.035 in-40: 26.289 mm across, pitch 0.635 mm"),
        ("SM2 thread?", "2.035 in-40: 51.689 mm across"),
        ("how wide is SM1", "26.289 mm across"),
        ("RMS thread in mm?", "20.32 mm across"),
    ],
)
def test_a_thread_named_alone_is_told(asked, say, told):
    assert told in flat(asked(say))[:200]


@pytest.mark.parametrize(
    ("say", "head"),
    [
        ("caliper says 25.3 on my C thread, not 25.4. bad lens?", "A male thread of 1-32 UN is 25.22 to 25.37 mm"),
        ("my C lens measures 25.3 across the thread, worn?", "A male thread of 1-32 UN is 25.22 to 25.37 mm"),
        ("thread of my M42 lens calipers at 41.85, too small?", "A male thread of M42x1 is 41.79 to 41.97 mm"),
        ("my m42 thread reads 41.7", "A male thread of M42x1 is 41.79 to 41.97 mm"),
    ],
)
def test_a_male_thread_is_smaller_than_its_name(asked, say, head):
    assert flat(asked(say)).startswith(head)


@pytest.mark.parametrize("say", ["is the 1000F screw the same as the salyut one", "salyut vs 1600F, interchangeable?"])
def test_screws_whose_threads_are_not_known_are_not_said_to_go_together(asked, say):
    assert flat(asked(say)).startswith("Not proved: ")
