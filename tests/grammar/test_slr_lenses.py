"""Lenses told by the camera they are from, by a sensor's figure or by their number, and rings told by two widths."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon


def _lens(text):
    question = read(text, lexicon())
    assert isinstance(question, Question), text
    assert len(question.lenses) == 1
    return question.lenses[0]


@pytest.mark.parametrize(
    ("say", "focal"),
    [
        ("will normal SLR 50s cover micro four thirds", 50),
        ("slr 28 on mft cover?", 28),
        ("my old slr 35/2.8 on Z", 35),
        ("a 135 off an old slr, fills full frame?", 135),
    ],
)
def test_the_lens_of_an_slr(say, focal):
    assert _lens(say).focal_length_mm == focal
    assert "slr" in _lens(say).traits


@pytest.mark.parametrize(
    ("say", "made_for"),
    [
        ("security cam lens for 2/3 inch used on a one inch type sensor, vignette?", "2-3-type"),
        ("c mount lens for 1/2 inch on a 2/3 sensor, corners?", "1-2-type"),
    ],
)
def test_the_figure_a_lens_is_for(say, made_for):
    assert _lens(say).format == made_for
    assert _lens(say).focal_length_mm is None


@pytest.mark.parametrize(
    "say",
    [
        "ltm 50 screwed into the lipped 39-42 ring (1mm) then m42 to E. sharp at 15 m?",
        "50 ltm, 39 to 42 ring and M42-E ring, infinity",
        "ltm 50, m39-42 ring then m42-E",
        "a 39/42 bush and m42-E ring, LTM 50",
        "LTM 50mm, 1mm 39-to-42 step ring, then the M42 to E tube (27.46), infinity?",
        "ltm 50 with a bush 39 to 42 and the M42 to E ring",
        "LTM 50, reducer ring 39-42, then M42 to E",
    ],
)
def test_a_ring_told_by_two_widths_leads_from_the_lens(say):
    question = read(say, lexicon())
    assert isinstance(question, Question)
    assert question.lenses[0].focal_length_mm == 50
    assert (question.adapters[0].front[:1], question.adapters[0].rear[:1]) == (("ltm",), ("m42",))


def test_a_ring_told_by_two_widths_goes_on_the_body_that_has_the_second():
    question = read("my 50mm M39 SLR lens with a 39 to 42 bush on an M42 body, infinity?", lexicon())
    assert isinstance(question, Question)
    assert len(question.lenses) == 1
    assert (question.adapters[0].rear[:1], question.adapters[0].thickness_mm) == (("m42",), None)


@pytest.mark.parametrize("say", ["step ring 55-67 in front of a 35mm", "can i use a 55-to-67 step up ring on my 35mm"])
def test_two_filter_threads_of_a_step_ring(say):
    question = read(say, lexicon())
    assert isinstance(question, Question)
    assert question.adapters[0].steps == (55, 67)


def test_so_many_kinds_of_lens_are_counted():
    question = read("3 kinds of slr lens, 3 bodies. rings each or go through M?", lexicon())
    assert isinstance(question, Question)
    assert (question.lenses[0].count, question.bodies[0].count) == (3, 3)


@pytest.mark.parametrize(
    ("say", "mount", "focal"),
    [
        ("screw 35/3.5 rangefinder lens onto my M body", "ltm", 35),
        ("rangefinder 50mm f2, screw mount, on Z", "ltm", 50),
        ("rangefinder lens 90/4 with screw mount to X", "ltm", 90),
        ("threaded 50/2 rangefinder lens on E", "ltm", 50),
        ("m39 slr 50/3.5 in a flush m39-m42 bush then m42-Z, far hills?", "m39-zenit", 50),
        ("35/3.5 m39 slr via flush m39-m42 bush and m42-L, far hills sharp?", "m39-zenit", 35),
    ],
)
def test_a_kind_with_its_screw_or_the_name_of_its_camera_tells_the_mount(say, mount, focal):
    assert (_lens(say).ids[:1], _lens(say).focal_length_mm) == ((mount,), focal)


@pytest.mark.parametrize("say", ["rangefinder lens 50/2, no screw, on E", "rangefinder 50 with a 40.5 thread on E"])
def test_a_screw_that_is_denied_or_in_front_tells_no_mount(say):
    assert _lens(say).ids == ()


@pytest.mark.parametrize(
    "say",
    [
        "brass magic lantern lens, about 150mm, smooth tube no thread. want it on an RF",
        "85mm projector lens with a smooth tube, which adapter for E",
        "150mm brass lens, tube no thread. get it on an RF",
    ],
)
def test_the_tube_of_a_lens_without_thread_is_no_piece(say):
    assert _lens(say).focal_length_mm in (85, 150)
    assert all(piece.piece != "extension-tube" for piece in read(say, lexicon()).adapters)


@pytest.mark.parametrize(
    "say",
    [
        "normal 35mm slr lens on a 44x33 sensor, dark corners or not",
        "ordinary 35mm slr lenses on 44x33, do they cover",
        "lens from a 35mm slr on 44x33, corners?",
        "any 35mm slr lens on 44x33 ok in the corners?",
    ],
)
def test_the_film_of_an_slr_is_no_focal_length(say):
    assert _lens(say).focal_length_mm is None
    assert "slr" in _lens(say).traits
