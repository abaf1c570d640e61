"""What a figure of a mount rests on, where it is doubted or a rival of it is told; threads by the name of the bench."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat
from tests.answers.talks import flat as words
from tests.answers.talks import talk


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


@pytest.mark.parametrize(
    ("first", "turn", "head"),
    [
        ("contarex 50/2, ring to Z measures 30.06", "sure? other list says 45.5", "Contarex: register 46 mm"),
        ("contarex 50 on Z", "sure? another table says 45.5", "Contarex: register 46 mm"),
        ("M42 50 on E, ring thickness?", "are you sure? some sites give 45.7", "M42: register 45.46 mm"),
        ("K 50 to RF", "a forum says 45.5", "K-mount: register 45.46 mm"),
        ("AR 50 on E, how thick the ring", "the chart i have says 40.6 for AR", "AR-mount: register 40.5 mm"),
        ("FD 50 on E ring?", "someone wrote 42.1", "FD-mount: register 42 mm"),
    ],
)
def test_a_register_printed_otherwise_elsewhere_is_weighed_and_no_tube_is_put(club, first, turn, head):
    *_, found = talk(club, first, turn)
    assert head in words(found)[:80]
    assert "mm the ring would be" in words(found)
    assert not any(one.piece == "extension-tube" for one in found.question.adapters)


@pytest.mark.parametrize(
    ("first", "turn"),
    [
        ("which of these take PL with infinity: E, Z, MFT, EF dslr", "8mm is plenty?? why not"),
        ("PL on EF dslr?", "but 8 mm is a lot of room?"),
        ("T2 on EF", "11 mm is plenty right?"),
        ("C on X", "isnt 0.17 nothing?"),
    ],
)
def test_a_ring_that_was_told_is_no_focal_length_where_it_is_judged(club, first, turn):
    *_, found = talk(club, first, turn)
    assert all(lens.focal_length_mm is None for lens in found.question.lenses)
    assert not found.question.between


@pytest.mark.parametrize("say", ["PL on EF dslr?", "50mm PL on an F body", "does PL go on a K dslr"])
def test_a_ring_behind_which_most_lenses_meet_the_mirror_does_not_keep_infinity(asked, say):
    assert "would keep infinity" not in flat(asked(say))
    assert ": no use: most lenses of this mount reach far enough" in flat(asked(say))[:140]
