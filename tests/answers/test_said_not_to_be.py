"""What a lens is said not to be, a ring said to hold no glass, and a factor that a lens is said to be multiplied by."""

from __future__ import annotations

import pytest

from tests.answers.talks import talk


def values(answer, name):
    return [row.value.nominal for row in answer.quantities or () if row.name == name]


@pytest.mark.parametrize(
    "say",
    [
        "M39 lens, it's not of the rangefinder type, on an LTM to E adapter",
        "M39 lens off an old reflex, isn't a rangefinder one. LTM to E ring, will it go",
        "the M39 lens is no rangefinder lens; LTM to E ring",
    ],
)
def test_a_screw_lens_that_is_none_of_rangefinders_is_no_use_on_their_ring(club, say):
    (answer,) = talk(club, say)
    assert answer.question.lens.id == "m39-zenit"
    assert answer.chains[0].listed.judged.verdict == "unusable"


@pytest.mark.parametrize(
    "say",
    [
        "M42 lens to an F-mount dslr with an adapter lacking the glass element: can I shoot people?",
        "M42 on F-mount, the adapter doesn't contain any glass. how far can I focus with an 85",
        "M42 on F-mount dslr if I knock out the glass of the ring: portraits?",
        "M42 85 mm on F-mount. In my adapter the glass was removed already, what is the far limit?",
    ],
)
def test_a_ring_that_holds_no_glass_in_whatever_words_loses_infinity(club, say):
    (answer,) = talk(club, say)
    assert answer.chains[0].listed.judged.verdict == "macro-only"


@pytest.mark.parametrize(
    ("say", "lens", "like"),
    [
        ("my 35mm lens on MFT is multiplied by 2, so it works like a 70?", 35, 70),
        ("do i have to multiply my 50 by 1.5 on my aps-c", 50, 76.5),
        ("I use an APS-C camera. Should I multiply the 28mm by 1.5?", 28, 42.9),
        ("a 25mm C lens on 1 inch sensor, everything gets multiplied by 2.7, so 68?", 25, 68.2),
    ],
)
def test_what_a_lens_is_said_to_be_multiplied_by_is_no_glass(club, say, lens, like):
    (answer,) = talk(club, say)
    assert answer.question.lens.focal_length_mm == lens
    assert not answer.question.adapters
    assert values(answer, "equivalent_focal_mm")[0] == pytest.approx(like, rel=0.01)


@pytest.mark.parametrize(
    "say", ["does the crop factor go on the iris number squared or plain", "does crop factor apply to aperture too"]
)
def test_what_of_a_stop_is_multiplied_comes_first(club, say):
    (answer,) = talk(club, say)
    assert answer.lines[0].text.startswith("Times the crop factor for depth of field")
    assert values(answer, "equivalent_f_number")


@pytest.mark.parametrize(
    "say", ["why is there no adapter from RF to EF-M", "why are no rings sold for EF-M lenses on X"]
)
def test_where_no_ring_can_be_made_nothing_reaches(club, say):
    (answer,) = talk(club, say)
    assert answer.chains[0].listed.judged.verdict == "unusable"
