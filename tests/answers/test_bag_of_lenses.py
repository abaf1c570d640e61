"""What people with a bag of inherited lenses ask: worth, bags, a clack in the finder, rings off their number."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


@pytest.mark.parametrize(
    "say", ["which of granddads 9 lenses is worth the most money", "which backpack for two bodies"]
)
def test_worth_and_bags_are_out_of_scope(club, say):
    (answer,) = talk(club, say)
    assert answer.intent == "out-of-scope"


@pytest.mark.parametrize(
    "say",
    [
        "dkl lens on my full frame EF with the thin ring. at infinity i hear a clack and finder stays black",
        "C/Y 50 on EF, i press the release, a clunk, and then the viewfinder stays dark",
    ],
)
def test_a_clack_and_a_black_finder_is_the_mirror(club, say):
    (answer,) = talk(club, say)
    assert answer.intent == "hazard"
    assert "rear meets the mirror" in flat(answer)


@pytest.mark.parametrize(
    ("say", "error"),
    [
        ("exakta 58 on EF, my ring was made thick to save the mirror, 1.6 instead of 0.7. what do i lose", 0.9),
        ("K 50 on EF, ring 2.2 instead of 1.46. infinity?", 0.74),
    ],
)
def test_a_ring_is_what_it_is_instead_of_what_it_should_be(club, say, error):
    (answer,) = talk(club, say)
    assert f"{error:g} mm too far out" in flat(answer)
    assert answer.chains[0].listed.judged.verdict == "macro-only"


def test_what_came_out_of_the_printer_is_the_ring(club):
    _, answer = talk(
        club, "printing an exakta to X ring, how thick", "it came out of the printer at 27.25. far limit with a 50?"
    )
    assert "0.25 mm too far out" in flat(answer)


def test_the_same_lens_on_two_frames_is_likened_on_the_smaller(club):
    (answer,) = talk(
        club, "one full frame body, one 1.6 crop, same 50 on both. which two focal lengths is that in effect"
    )
    told = [row.value.nominal for row in answer.quantities if row.name == "equivalent_focal_mm"]
    assert any(one == pytest.approx(80, abs=1.5) for one in told)


@pytest.mark.parametrize(
    ("say", "tilt"),
    [
        ("M42 ring is 0.1 thicker on one side, 50mm on E. infinity?", 0.1),
        ("my FD to E ring is 0.08 higher at the top than at the bottom, matters? 28mm", 0.08),
    ],
)
def test_a_ring_thicker_on_one_side_is_tilted_and_not_so_thick(club, say, tilt):
    (answer,) = talk(club, say)
    assert next(row.value.nominal for row in answer.quantities if row.name == "tilt_mm") == pytest.approx(tilt)
    assert answer.chains[0].listed.judged.verdict == "infinity"


@pytest.mark.parametrize(
    "say",
    [
        "80mm enlarger lens flange to image 77, E, m42 helicoid 36-90 and a 1mm ring at each end. infinity where?",
        "80mm enlarger lens flange to image 77, E, m42 helicoid 36-90 plus 1 mm rings on both sides, infinity?",
    ],
)
def test_a_ring_at_each_end_counts_twice(club, say):
    (answer,) = talk(club, say)
    assert "Infinity at 57 mm" in flat(answer)


@pytest.mark.parametrize(
    ("say", "size"),
    [
        ("35mm LTM lens, NX camera, the sole M39 ring I own is a flat one of 1 mm. infinity?", 1.0),
        ("Glassless FD-EF adapter with a 1.5 mm seat, on it an FD 28mm, on an EF dslr. How far?", 1.5),
    ],
)
def test_a_size_behind_the_name_of_a_ring_is_its_own(club, say, size):
    (answer,) = talk(club, say)
    assert answer.chains[0].title.startswith(f"your {size:g} mm ring")


@pytest.mark.parametrize(
    ("say", "mean"),
    [
        ("M42 to E ring varies 27.41 to 27.55 around, 50mm. infinity?", 27.48),
        ("my FD E ring measures between 23.95 and 24.1, 28mm, infinity?", 24.025),
    ],
)
def test_a_ring_that_varies_is_told_by_its_mean_and_its_tilt(club, say, mean):
    (answer,) = talk(club, say)
    assert next(row.value.nominal for row in answer.quantities if row.name == "ring_thickness_mm") == pytest.approx(
        mean
    )
    assert "so it is tilted" in flat(answer)


def test_a_rear_filter_that_is_gone_leaves_the_lens_too_far_out(club):
    (answer,) = talk(club, "the rear filter, 1.5 mm, is missing on my 20mm, infinity?")
    assert answer.chains[0].listed.judged.verdict == "macro-only"


@pytest.mark.parametrize(
    ("say", "off"),
    [
        ("K 28mm with a ring that measures 1.60 on EF full frame. from which stop is it ok", "0.14 mm too far out"),
        ("25mm C on E, my ring isnt a cup, its flat 1mm thick. infinity?", "1.47 mm too far out"),
    ],
)
def test_a_ring_measured_or_denied_to_be_a_cup_is_as_thick_as_told(club, say, off):
    (answer,) = talk(club, say)
    assert off in flat(answer)
    assert answer.chains[0].listed.judged.verdict == "macro-only"


@pytest.mark.parametrize(
    ("say", "lens", "body"),
    [
        ("my E mount aps-c and the 18mm from an auto 110, dark corners?", "auto-110", "e-mount"),
        ("Z full frame and a 38mm off a pen F, does it cover", "pen-f", "z-mount"),
        ("an X bayonet lens off a film SLR on my X mirrorless body", "x-mount-slr", "x-mount"),
    ],
)
def test_what_comes_off_another_camera_is_the_lens(club, say, lens, body):
    (answer,) = talk(club, say)
    assert [one.ids[0] for one in answer.question.lenses] == [lens]
    assert [one.ids[0] for one in answer.question.bodies] == [body]


@pytest.mark.parametrize(
    "say", ["how do i get my old exacta 50 on a E body", "my exakra 50 on a Z, how far does it focus"]
)
def test_a_misspelled_mount_before_a_length_is_offered_its_nearest(club, say):
    first, answer = talk(club, say, "1")
    assert "Nearest: Exakta" in flat(first)
    assert [(one.ids[0], one.focal_length_mm) for one in answer.question.lenses] == [("exakta-mount", 50.0)]


def test_a_scale_against_the_tape_tells_the_end_of_focus_once(club):
    (answer,) = talk(club, "28mm, set to the 2 m mark its actually sharp at 2.4 m")
    assert flat(answer).count("Infinity is reached") == 1


def test_a_filter_lost_from_behind_a_lens_is_not_put_in(club):
    (answer,) = talk(club, "lost the 1 mm rear filter of my 300. what changes")
    assert "too far out" in flat(answer)
