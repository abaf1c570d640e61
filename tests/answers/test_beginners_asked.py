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
    assert flat(found).startswith("Which ring an old lens needs")


def test_what_one_has_read_is_not_measured_and_a_film_camera_is_no_film(asked):
    found = asked("i read my 50mm from the film camera turns into a 75 on the new one (aps-c). does the lens change?")
    assert flat(found).startswith("50 mm on APS-C frames like 76 mm")


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (
            "can i put a lens from a film camera directly on my digital camera or do i need something between",
            "No one ring",
        ),
        ("is there a ring that fits every lens", "No one ring fits all"),
        (
            "my dad left me a box of lenses with a screw thread on the back, can i use them on my new camera",
            "No one ring",
        ),
        ("is it dangerous to put an old lens on my camera", "Safe in itself."),
        ("do old lenses focus by themselves", "an old lens has no motor: it is focused by hand"),
        ("i got a metal ring with the lens, what is it for", "A ring that takes one mount in front"),
        ("what does the mm on a lens mean", "focal length: From the rear principal plane"),
        ("what is the sideways eight on my lens", "infinity focus:"),
        ("what is a mount", "How a lens is held on a camera"),
        ("what is a sensor", "The chip that takes the picture"),
        ("what are the lugs everybody writes about", "lug: One of the wings"),
        ("why do the pictures look so zoomed in compared to my phone", "takes only the middle of it"),
        ("my lens says 50mm, how much will it zoom on a small sensor", "50 mm on APS-C frames like 76 mm"),
        ("the picture is all white in the sun with my old lens, it has no settings", "Close its aperture ring"),
        ("can i use a lens from a slide projector", "no focusing of their own"),
        ("i want to photograph bees with an old lens, what is the cheapest trick", "Ways to come closer"),
        ("why does my adapter cost 20 and the other one 300", "cheap and dear rings"),
    ],
)
def test_a_plain_question_gets_its_plain_answer_first(asked, text, says):
    found = flat(asked(text))
    assert says in found[:700]


@pytest.mark.parametrize("text", ["what is A mount", "what is a-mount", "what is an m mount", "what is x mount"])
def test_a_mount_that_is_named_is_no_mount_in_general(asked, text):
    assert "How a lens is held" not in flat(asked(text))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("which way round do i put the lens on the adapter", "Ring on the lens first."),
        ("how do i take the adapter off the lens again", "press or pull the ring's catch"),
        ("the lens does not click in, is it the wrong one", "No force."),
        ("there is dust in my old lens, does it show in pictures", "do not show in the picture"),
        ("there are tiny bubbles in the glass, is the lens ruined", "Not ruined"),
        ("the lens has scratches on the front, will i see them", "Not ruined"),
        ("does the adapter make the picture worse", "takes nothing from the picture"),
        ("do i lose quality with an adapter", "takes nothing from the picture"),
        ("what does 1:1.8 on the lens mean", "its widest stop"),
        ("what do the letters M and A on the lens mean", "blades that close by themselves"),
        ("what does 58mm with the circle symbol on the front mean", "the width of the filter thread"),
        ("my lens has a red dot, what is that for", "A dot on the lens meets a dot on the body"),
        ("the adapter has a screw on the side, what is it for", "grub screws"),
        ("how do i focus without autofocus", "Enlarge the spot"),
        ("what shutter speed do i need so it isn't shaky with a 135", "1/135 s or shorter by hand"),
        ("can i make videos with old lenses", "Every lens that takes pictures on the camera films as well"),
        ("where do i find out the mount of my camera", "The camera's manual names it"),
        ("do all screw lenses fit the same ring", "Screw lenses are of several kinds"),
        ("i found a screw lens in a drawer, around 42 mm", "A thread of 42 mm across may be"),
    ],
)
def test_parts_and_marks_of_a_lens_are_told_to_who_has_never_seen_one(asked, text, says):
    assert says in flat(asked(text))[:700]
