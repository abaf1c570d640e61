"""What is set by hand, told by the numbers and the pieces that are named: the stabiliser, focus, the kind of ring."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


@pytest.mark.parametrize(
    ("text", "focal"),
    [
        ("adapted 85 plain ring, which number in the stabiliser menu", 85),
        ("135 on a dumb ring, what do i enter in ibis", 135),
    ],
)
def test_a_length_beside_a_ring_is_what_the_stabiliser_is_told(asked, text, focal):
    assert (focal, focal) in numbers(asked(text), "ibis_focal_mm")


@pytest.mark.parametrize(
    "text", ["how to hit focus by hand with a fast lens", "always missing focus by hand at f1.4, tips"]
)
def test_focus_by_hand_wants_the_picture_enlarged(asked, text):
    assert "nlarge" in flat(asked(text))


@pytest.mark.parametrize(
    "text",
    ["adapter with the aperture lever or a plain one for K glass", "F lenses: aperture control ring or plain ring"],
)
def test_a_ring_with_a_lever_is_for_lenses_without_a_ring_of_their_own(asked, text):
    assert "for every lens that has its own aperture ring" in flat(asked(text))


def test_a_lens_that_went_too_deep_is_warned_of_by_its_missing_ring(asked):
    found = flat(asked("put a C lens into my CS camera and it bumped into the glass, any damage?"))
    assert "5 mm too deep" in found
    assert "radium" not in found


@pytest.mark.parametrize(("say", "said"), [
    ("steady shot on or off on a tripod with the 500 mirror", "stabiliser on a tripod: Off"),
    ("white balance with that yellow thorium 50", "grey or white card"),
    ("which af mode for a manual lens, MF or leave it", "Set it to MF"),
    ("lens corrections: leave on or off with a stranger lens", "Turn them off"),
    ("evf gets darker when i close the ring, can i switch that off", "Turn off the exposure preview"),
    ("what do i set as slowest shutter in auto iso for a manual 85", "Set it yourself"),
])  # fmt: skip
def test_the_setting_that_is_asked_about_comes_first(asked, say, said):
    found = asked(say)
    assert found["intent"] == "gear-setting"
    assert said in " ".join(found["text"].split())[:300]


@pytest.mark.parametrize("turn", ["must i redo it at every lens change", "every time i swap lenses?",
                                  "does it remember it", "and if i leave the old number in",
                                  "what if i leave it at 135"])  # fmt: skip
def test_the_number_of_the_stabiliser_is_set_anew_for_each_lens(talked, turn):
    found = talked("manual 85 on mft, what do i type in for ibis", turn)
    assert found["intent"] == "gear-setting"
    assert "Set it anew at each change of lens" in flat(found)[:110]


@pytest.mark.parametrize("text", ["adapter has no chip, how will i know later which lens took what",
                                  "dumb ring, how can i tell later what lens a clip was shot with"])  # fmt: skip
def test_which_lens_was_used_is_written_down_by_hand(asked, text):
    found = asked(text)
    assert found["intent"] == "gear-setting"
    assert flat(found).startswith("remembering stops: No contacts, no record")


@pytest.mark.parametrize(("text", "focal"), [("135 manual lens mft plain ring, what to enter for ibis", 135),
                                             ("200 legacy lens mft dumb ring, what number for ibis", 200),
                                             ("58mm manual lens E ring, stabiliser number?", 58)])  # fmt: skip
def test_a_lens_told_before_the_ring_of_the_body_is_what_the_stabiliser_is_told(asked, text, focal):
    assert (focal, focal) in numbers(asked(text), "ibis_focal_mm")


@pytest.mark.parametrize("text", ["stabiliser number for 50 mm with 1.4x or 2x", "a 50 with 1.4x and with 2x, ibis?"])
def test_either_of_two_kinds_of_glass_has_a_number_of_its_own(asked, text):
    told = {row["case"]: row["least"] for row in asked(text)["quantities"]["ibis_focal_mm"]}
    assert (told["with 1.4x"], told["with 2x"]) == (70, 100)


def test_either_of_two_reducers_covers_by_itself(asked):
    told = asked("image circle of a 50 with 0.71 or with 0.64 reducer, will it cover aps-c")["text"]
    assert "With 0.71x:" in told
    assert "With 0.64x:" in told
    assert "0.4544x" not in told
