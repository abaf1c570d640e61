"""Several inherited lenses, a mirrorless body and a friend's DSLR: what was told is kept through the whole talk."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from grammar.questions import Question
from tests.answers.talks import flat, talk

_THREE = (
    "my dad left me three lenses, a 50 1.7 k mount, a 28mm 2.8 md and a 135 3.5 om",
    "on a full frame e mount body",
)
_TWO = ("i have a 55 f2 m42 and a 50 1.4 sr lens", "for a z full frame body")


def _last(club: Desk, *lines: str) -> Question:
    question = talk(club, *lines)[-1].question
    assert question is not None
    return question


def _focals(question: Question) -> list[float | None]:
    return [lens.focal_length_mm for lens in question.lenses]


@pytest.mark.parametrize(
    ("said", "focals"),
    [
        ("will they go on my friends ef dslr too", [50, 28, 135]),
        ("is anything dangerous with those", [50, 28, 135]),
        ("do they reach infinity", [50, 28, 135]),
        ("can i use these on a z too", [50, 28, 135]),
        ("is there no ring that does all three", [50, 28, 135]),
        ("and the second one?", [28]),
        ("how close does the 3.5 go", [135]),
    ],
)
def test_the_lenses_that_are_pointed_at_are_those_told(club: Desk, said: str, focals: list[float]) -> None:
    assert _focals(_last(club, *_THREE, "how close does the first one go", said)) == focals


@pytest.mark.parametrize(
    ("said", "focal"), [("does the screw one fit there", 55), ("and the bayonet one, how close does it get", 50)]
)
def test_a_lens_is_pointed_at_by_how_it_is_put_on(club: Desk, said: str, focal: float) -> None:
    assert _focals(_last(club, *_TWO, said)) == [focal]


def test_each_of_several_lenses_keeps_its_own_widest_stop(club: Desk) -> None:
    _, _, _, other, light = talk(
        club, *_THREE, "how much is sharp at 2 m", "and the 135?", "do i lose light with the ring"
    )
    assert "135 mm f/3.5 at 2 m" in flat(other)
    assert "f/3.5 stays f/3.5" in flat(light)
    _, _, _, other = talk(club, *_TWO, "with the 50, how deep is sharp at 1.5 m wide open", "and the other lens?")
    assert "55 mm f/2 at 1.5 m" in flat(other)


def test_a_tube_stays_behind_the_lens_it_was_put_behind(club: Desk) -> None:
    close = "how close does the 50 go with a 12 mm tube"
    film = "filming in the sun at 1/50, which filter"
    assert _last(club, *_THREE, close, film, "with the 28 at f5.6").adapters == ()
    assert _last(club, *_THREE, close, film, "with the 28 at f5.6", "does the om one fit an ef dslr").adapters == ()
    kept = _last(club, *_THREE, close, "and with the 28?")
    assert [one.piece for one in kept.adapters] == ["extension-tube"]


def test_which_of_several_blurs_most_is_told_by_the_opening(club: Desk) -> None:
    *_, answer = talk(club, *_THREE, "which of them gives the most blur in the background")
    assert flat(answer).split(".")[0] == "Most blur behind: the 135 mm f/3"
    assert [round(row.value.nominal) for row in answer.quantities if row.name == "opening_mm"] == [39, 29, 10]


def test_which_stop_makes_a_face_sharp_is_told(club: Desk) -> None:
    *_, answer = talk(club, "a 105 2.5 f mount on mft", "what stop for a whole face sharp at 2m")
    assert flat(answer).startswith("105 mm at 2 m on Four Thirds: f/16 for a face")


def test_stars_are_exposed_for_by_their_drift_and_not_as_the_moon_is(club: Desk) -> None:
    for said in (
        "how long can i expose the stars with it",
        "stars at night, how many seconds",
        "f2.8 iso 1600 stars, how long",
    ):
        *_, answer = talk(club, "a 50 1.8 om on mft", said)
        assert "4.1 s at most" in flat(answer), said


@pytest.mark.parametrize(
    ("said", "key", "value"),
    [
        ("video at 25 frames outside, shutter?", "frame_rate", "25"),
        ("50 frames, in the sun, which filter", "frame_rate", "50"),
        ("15-40 euros for the ring?", "price", "40"),
        ("15 to 40 euros each or more?", "price", "15, 40"),
    ],
)
def test_a_number_with_its_word_is_no_stop_and_no_lens(club: Desk, said: str, key: str, value: str) -> None:
    question = _last(club, "a 50 1.8 om on mft", said)
    assert question.said(key) == value
    assert question.f_number in (None, 1.8)
    assert _focals(question) == [50]


def test_frames_on_a_roll_are_counted(club: Desk) -> None:
    assert _last(club, "a 50 1.8 om on mft", "i have 24 frames left on the roll").said("frame_rate") is None


@pytest.mark.parametrize(
    "body", ["camera is a kestrel z fullframe", "my camera is a z full frame", "i have a z full frame"]
)
def test_a_letter_before_a_format_is_the_mount_of_the_body(club: Desk, body: str) -> None:
    question = _last(club, "a 55 2 m42 lens", body)
    assert [one.ids[:1] for one in question.bodies] == [("z-mount",)]


def test_who_made_a_lens_is_passed_over_before_its_mount(club: Desk) -> None:
    question = _last(club, "hi, i got a cannon fd 35-105 zoom and a fd 50 1.8 from my uncle")
    assert [one.ids[:1] for one in question.lenses] == [("fd-mount",), ("fd-mount",)]


def test_the_switch_of_a_lens_is_set_and_no_shim_is_put_in(club: Desk) -> None:
    *_, answer = talk(club, *_TWO, "the m42 has an a/m switch, which side")
    assert flat(answer).startswith("A/M switch of a lens: Set it to M")


def test_a_lens_for_portraits_is_one_by_how_it_frames(club: Desk) -> None:
    *_, answer = talk(club, "a 105 2.5 f mount on mft", "nice for portraits?")
    assert flat(answer).startswith("On Four Thirds 105 mm is a tele lens")


@pytest.mark.parametrize(
    ("said", "intent"),
    [
        ("does 50 stay 50 on that camera", "crop-equivalent"),
        ("i want to take pictures of rings and coins", "macro-distance"),
        ("what ring or tube would get me to life size", "macro-distance"),
        ("15 to 40 euros each or more?", "buy-plan"),
        ("the 28 doesnt stop at infinity it goes a bit over", "shim-calibration"),
        ("can the om one go close on a bee", "macro-distance"),
        ("the md is stiff and smells, is it oil", "hazard"),
        ("filming in the sun at 1/50, which filter", "exposure-nd"),
    ],
)
def test_a_turn_asks_what_its_words_ask(club: Desk, said: str, intent: str) -> None:
    *_, answer = talk(club, *_THREE, "how much is sharp at 2 m with the 50", said)
    assert answer.intent == intent
    assert answer.question is not None
    assert answer.question.follows


@pytest.mark.parametrize(
    "said", ["which of the two for that", "which is better for portraits", "which one should i take for the bee"]
)
def test_which_is_better_for_something_asks_of_the_lenses(club: Desk, said: str) -> None:
    assert _focals(_last(club, *_TWO, "how close does the screw one go", said)) == [55, 50]


def test_the_camera_of_a_friend_that_nobody_knows_is_not_the_one_told(club: Desk) -> None:
    question = _last(club, *_TWO, "will the m42 go on a kestrel alfa dslr")
    assert not any("z-mount" in body.ids for body in question.bodies)


def test_a_reducer_tried_on_one_lens_is_not_behind_another_mount(club: Desk) -> None:
    question = _last(club, *_TWO, "what would a reducer do with the 55", "how close does the sr one go")
    assert question.adapters == ()


@pytest.mark.parametrize(
    ("said", "lenses"),
    [
        (
            "got 3 old lenses at a flea market, 28 2.8, 50 1.7 and 135 2.8, all md",
            [("sr-mount", 28), ("sr-mount", 50), ("sr-mount", 135)],
        ),
        ("a friend gave me a kestrel 58 2 m42 and an avocet 28 3.5, m42 also", [("m42", 58), ("m42", 28)]),
        ("a 58 2 m42 and a 28 3.5, also m42", [("m42", 58), ("m42", 28)]),
        (
            "three kestrel lenses, a qbm 50 1.8, a m42 135 2.8 and a 28 2.8 om",
            [("qbm", 50), ("m42", 135), ("om-mount", 28)],
        ),
    ],
)
def test_lenses_are_told_one_by_one_with_the_mount_of_all(
    club: Desk, said: str, lenses: list[tuple[str, float]]
) -> None:
    question = _last(club, said)
    assert [(lens.ids[0], lens.focal_length_mm) for lens in question.lenses] == lenses
    assert question.bodies == ()


@pytest.mark.parametrize(
    ("said", "mount"),
    [
        ("i own a kestrel k30, e mount full frame", "e-mount"),
        ("i own a kestrel k30, e-mount", "e-mount"),
        ("camera is a kestrel x-t something, aps-c", None),
    ],
)
def test_a_named_camera_has_the_mount_behind_its_name(club: Desk, said: str, mount: str | None) -> None:
    question = _last(club, "a 58 2 m42 lens", said)
    assert [lens.ids[:1] for lens in question.lenses] == [("m42",)]
    assert [body.ids[0] for body in question.bodies if body.ids] == ([mount] if mount else [])


def test_how_far_to_stand_is_told_by_how_tall_somebody_is(club: Desk) -> None:
    *_, far, other = talk(
        club,
        *_THREE,
        "how far do i have to stand to get her whole body in with the 135",
        "she is 1.2 m tall",
        "and the 50",
    )
    assert far.question is not None
    assert far.question.said("field") == "1200 mm"
    assert "sharp at" in flat(far)
    assert _focals(other.question or Question("", "")) == [50]


def test_a_ring_put_behind_for_a_close_up_takes_light_there_and_not_on_the_street(club: Desk) -> None:
    close = "would a 20 mm ring behind the 50 do for a stamp"
    *_, light, street, iso = talk(
        club,
        *_THREE,
        close,
        "do i lose light by that",
        "night street, the 50 at 1.8 iso 3200, shutter?",
        "what iso for 1/60 then",
    )
    assert "20 mm of extension" in flat(light)
    assert "extension" not in flat(street)
    assert flat(iso).startswith("ISO ")


@pytest.mark.parametrize(
    ("said", "intent"),
    [
        ("best for portraits?", "compare"),
        ("does the ring cost me sharpness", "why"),
        ("the 50 is milky, is that normal", "why"),
    ],
)
def test_what_is_asked_of_the_picture_is_no_purchase(club: Desk, said: str, intent: str) -> None:
    assert talk(club, *_THREE, "how much is sharp at 2 m", said)[-1].intent == intent


@pytest.mark.parametrize(
    ("lines", "focals"),
    [
        (["found a om 50 1.8", "and a exakta lens, 58mm f2", "camera is mft"], [50, 58]),
        (["found a om 50 1.8", "i also have a md 28 2.8", "camera is mft"], [50, 28]),
        (["two lenses, 58 2 m42 and 28 3.5 m42", "and a nfd 70-210 f4", "i have a z full frame"], [58, 28, None]),
        (["50 1.8 om on mft", "and a exakta 58 2"], [58]),
        (["a om 50 1.8 lens", "how deep is sharp at 2 m", "and a exakta 58 2"], [58]),
    ],
)
def test_what_there_is_may_be_told_one_after_the_other(club: Desk, lines: list[str], focals: list[float]) -> None:
    assert _focals(_last(club, *lines)) == focals


@pytest.mark.parametrize(
    "said", ["the 28 is sharp at 3 m but not at the horizon", "the 28 is sharp at 3 m but not far away"]
)
def test_sharp_near_and_not_far_tells_where_it_ends(club: Desk, said: str) -> None:
    *_, answer = talk(club, *_THREE, said)
    assert flat(answer).startswith("A 28 mm lens that stops at 3 m sits 0.27 mm too far out")


def test_a_distance_is_no_focal_length(club: Desk) -> None:
    question = _last(club, "a nfd 70-210 f4 zoom on e mount", "at 210 how close can it go", "it says 1.2 m")
    assert 1200.0 not in _focals(question)


def test_how_fungus_is_seen_is_told(club: Desk) -> None:
    *_, answer = talk(club, *_TWO, "how do i see if its fungus")
    assert flat(answer).startswith("Shine a torch through it")


_MIXED = ("my uncle left a md 45 f2, a om 28 3.5 and a m42 200 f4", "camera is a kestrel r mirrorless, full frame, RF")


def test_a_mount_told_twice_of_the_camera_is_no_lens(club: Desk) -> None:
    question = _last(club, *_MIXED)
    assert _focals(question) == [45, 28, 200]
    assert [body.ids[:1] for body in question.bodies] == [("rf-mount",)]


@pytest.mark.parametrize(
    ("said", "intent", "begins"),
    [
        ("which one is the fastest", "compare", "28 mm f/3.5 OM-mount lens: widest. 45 mm f/2 SR-mount lens: fastest"),
        ("the long one, can i hold it by hand at 1/125", "exposure-nd", "1/200 s or shorter by hand for 200 mm"),
        ("the om ring is loose, turns a bit when i focus", "hazard", "Not to be trusted"),
    ],
)
def test_what_is_asked_of_one_of_them_is_told_first(club: Desk, said: str, intent: str, begins: str) -> None:
    *_, answer = talk(club, *_MIXED, said)
    assert answer.intent == intent
    assert flat(answer).startswith(begins)


def test_a_portrait_with_another_lens_is_taken_without_the_tube(club: Desk) -> None:
    close = ("what about close ups with the om, it goes to 30 cm", "a 10 mm ring behind it?")
    *_, dark, portrait = talk(
        club, *_MIXED, *close, "does that darken it", "and now a portrait with the 45, 1.5 m, wide open, what is sharp"
    )
    assert "10 mm of extension" in flat(dark)
    assert flat(portrait).startswith("45 mm f/2 at 1.5 m")
