"""Sizes of frames, filters on fronts, shutters of a rate, flash and stars, holes of card, what brings a lens closer."""

from __future__ import annotations

import pytest

from engine.render.record import record_of
from engine.talk import Talk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk():
    return desk_of()


@pytest.fixture
def said(desk):
    def answer(*texts):
        talk, record = Talk(), {}
        for text in texts:
            record = record_of(desk.ask(text, talk), desk.knowledge)
        return record

    return answer


def head(record):
    return " ".join(record["text"].split("\n")[:2])


@pytest.mark.parametrize("text", ["is aps-c bigger than mft", "mft vs aps-c sensor size", "size of mft against aps-c"])
def test_two_frames_are_set_apart_by_size(said, text):
    assert "1.31 times by diagonal" in head(said(text))


@pytest.mark.parametrize("text", ["how wide is aps-c", "aps-c diagonal", "dimensions of aps-c"])
def test_a_frame_alone_is_told_by_its_sides(said, text):
    assert "23.6 x 15.7 mm" in head(said(text))


def test_a_mount_is_told_of_and_not_its_frame(said):
    assert "register 19.25 mm" in head(said("how big is the mft mount"))


@pytest.mark.parametrize(
    "text", ["52 filter on a 49 lens", "uv filter 52, lens 49 does it fit", "52mm filter, lens takes 49"]
)
def test_a_larger_filter_is_stepped_up_to(said, text):
    assert "49 to 52 mm, 1 ring" in head(said(text))


def test_a_smaller_filter_shades_the_corners(said):
    assert "smaller than the 52 mm thread" in head(said("49 filter on a 52 lens ok?"))


def test_a_focal_length_is_no_front(said):
    assert "before a 50 mm on full frame" in head(said("52 filter on a 50 lens vignette?"))


def test_no_mount_tells_the_filter_of_a_lens(said):
    record = said("filter size of a 50mm f2 m42")
    assert "Neither mount nor focal length" in head(record)
    assert "wider than 25 mm" in record["text"]


@pytest.mark.parametrize("lens", ["50 f2 m42", "50mm 2.0 m42", "m42 50 f2", "m42 50mm f2"])
@pytest.mark.parametrize("rest", ["ring 0.04 too thick does it matter", "E ring", "tube 10mm how close on E"])
def test_a_lens_before_a_piece_keeps_its_length(desk, lens, rest):
    question = desk.ask(f"{lens} {rest}", Talk()).question
    assert [(one.ids, one.focal_length_mm, one.f_number) for one in question.lenses] == [(("m42",), 50.0, 2.0)]


def test_the_mount_told_first_is_the_lens_s_where_the_other_is_a_body_s(desk):
    question = desk.ask("need ring OM, 24 f2.8 E", Talk()).question
    assert (question.lenses[0].ids, question.bodies[0].ids) == (("om-mount",), ("e-mount",))


def test_the_shutter_of_a_rate_comes_first_and_the_old_one_goes(said):
    told = "25 f1.4 c mount on mft, full sun 1/50 iso 200, which nd"
    assert said(told, "whats the shutter for 60 fps")["text"].startswith("1/120 s")


@pytest.mark.parametrize("text", ["28 mm instead", "28 instead", "with a 28 instead of the 50", "make it 28 mm"])
def test_another_length_is_another_lens(desk, text):
    talk = Talk()
    desk.ask("50 f1.8 m42 on curlew e", talk)
    question = desk.ask(text, talk).question
    assert (question.lenses[0].ids, question.lenses[0].focal_length_mm) == (("m42",), 28.0)


def test_a_hole_of_card_is_no_card_to_be_drawn(said):
    for text in ("hole for a stop made of card f11 100mm", "card disc to get f11 from a 100 mm"):
        assert "The hole: 9.1 mm for f/11" in head(said(text))


def test_a_guide_number_gives_the_stop_or_the_distance(said):
    assert "f/8 at 3.5 m" in head(said("guide number 28 at 3.5 m what stop"))
    assert "5 m from the flash at f/4" in head(said("gn 20 how far at f4"))


def test_stars_drift_over_the_allowed_blur(said):
    assert "17 s at most for 24 mm on full frame" in head(said("500 rule 24mm full frame"))


def test_ways_closer_come_before_the_chain(said):
    assert said("50 f1.8 m42 on E", "and if I want it closer")["text"].startswith("Ways closer")


def test_lengths_are_told_in_inches_where_they_are_asked_for(said):
    assert said("register of m42", "in inches")["text"].startswith("In inches: register 1.790 in")


def test_what_was_measured_of_a_lens_stays_with_its_drawings_and_its_card(said):
    told = "100mm f2.8 projector lens, 70 mm flange to image, on aps-c E with m42 helicoid 36-90 and m42 to E ring"
    card = said(told, "draw the section", "draw the frame", "a card for it")
    assert "Reaches infinity" in card["text"]


def test_an_f_number_that_turns_to_another_turns_no_screw(said):
    found = said("my 500 mirror on MFT, people say 1000mm. f8 turns to f16 then??")
    assert found["intent"] == "crop-equivalent"
    assert "f/8 exposes as f/8 on any sensor" in head(found)
