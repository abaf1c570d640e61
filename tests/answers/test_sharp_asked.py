"""The sharp zone as it is asked for and told, the numbers worked by hand."""

from __future__ import annotations

from math import hypot

import pytest

from tests.answers.picture import close, flat, numbers, one


def limits(f, n, c, subject, hiatus, p):
    """Near and far from the sensor, from the beam: written apart from the product's formulas."""
    spread = subject - 2 * f - hiatus
    x = (spread - (spread * spread - 4 * f * f) ** 0.5) / 2
    out = []
    for sign in (1, -1):
        # the image at x' where the cone from the pupil, p*f/N wide and p*f + x' away, is c wide at x
        pupil = p * f / n
        image = (x * pupil + sign * c * p * f) / (pupil - sign * c)
        out.append(2 * f + hiatus + f * f / image + image - (image - x) if image > 0 else float("inf"))
    return out


@pytest.mark.parametrize(
    ("blur_words", "blur"),
    [("", hypot(36, 24) / 1442), (", two pixels of blur", 2 * 36 / 7200), (", 0.02 mm circle of confusion", 0.02)],
)
def test_depth_of_field_by_the_lens_own_planes_and_the_blur_asked_for(asked, blur_words, blur):
    found = asked(f"depth of field of the godwit at f/8 at 3 m on the punt{blur_words}")
    near, far = limits(50, 8, blur, 3000, 2, 1.1)
    assert one(found, "dof_near_mm", "at 3 m") == close(near)
    assert one(found, "dof_far_mm", "at 3 m") == close(far)
    assert one(found, "hyperfocal_mm") == close(2500 / (8 * blur) + 50)


def test_feet_are_answered_in_feet(asked):
    found = asked("depth of field of the godwit at f/8 at 10 feet on the punt")
    assert " ft" in found["text"]
    assert " m " not in found["text"]
    assert one(found, "dof_near_mm", "at 10 ft") == close(limits(50, 8, hypot(36, 24) / 1442, 3048, 2, 1.1)[0])


def test_with_tubes_between_the_close_up_depth_is_told(asked):
    found = asked("depth of field of the godwit with 20 mm of tube at f/8 on the punt")
    m, c = 0.4, hypot(36, 24) / 1442
    wanted = 2 * 8 * c * (1 + m / 1.1) / (m * m - (8 * c / 50) ** 2)
    assert one(found, "dof_mm") == close(wanted)


@pytest.mark.parametrize(
    "text",
    [
        "re-mark the scale of the godwit on the punt with a ring 0.2 mm too thin",
        "what do the marks mean on the godwit on the punt with a ring 0.2 mm too thin",
        "where is infinity now on the godwit on the punt with a ring 0.2 mm too thin",
    ],
)
def test_the_scale_is_re_marked_for_a_thin_ring(asked, text):
    found = asked(text)
    f, gap, d = 50, 2, -0.2
    assert one(found, "scale_mark_mm") == close(2 * f + gap + f * f / 0.2 + 0.2)
    for mark in (1000, 3000):
        spread = mark - 2 * f - gap
        x = (spread - (spread**2 - 4 * f * f) ** 0.5) / 2 + d
        assert one(found, "remarked_mm", f"{mark // 1000} m mark") == close(2 * f + gap + f * f / x + x)
    assert "past infinity" in found["text"]


def test_marks_in_feet_direction_and_throw(asked):
    found = asked("focus marks in feet for the avocet on the skiff")
    assert "3 ft ->" in found["text"]
    assert "clockwise" in found["text"]
    assert "degrees from infinity" in found["text"]


def test_an_error_that_is_not_told_is_asked_for(asked):
    assert "By how much" in asked("re-mark the scale of the avocet")["text"]


def test_a_subject_nearer_than_the_lens_can_focus_is_said_to_be(asked):
    assert "nearer than 50 mm can focus" in flat(asked("depth of field of the godwit at f/8 at 10 cm on the punt"))


def test_close_up_diffraction_goes_by_the_effective_f_number(asked):
    text = flat(asked("diffraction at f/16 with the godwit at 1:1 on the punt"))
    assert "f/16 counts as f/32" in text
    assert "43 microns" in text


def test_a_stop_and_a_distance_alone_are_told_for_usual_lenses_and_not_close_up(asked):
    found = asked("how much is sharp at f2 when i photograph my kid from 2 metres")
    told = flat(found)
    assert "50 mm f/2 at 2 m, full frame: sharp from 1.92 m to 2.09 m" in told
    assert "0.1x" not in told
    assert "Of what focal length is your lens?" in told


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("does closing down the aperture make more of my group photo sharp", "A higher f-number makes more sharp"),
        ("how do i get everybody sharp in a group picture", "A higher f-number makes more sharp"),
        ("how can i make the background blurry with an old lens", "Open the iris to its lowest f-number"),
        ("i want the background soft and the face sharp", "Open the iris to its lowest f-number"),
    ],
)
def test_what_is_sharp_is_told_in_plain_words_where_no_number_is(asked, text, says):
    found = asked(text)
    assert found["intent"] == "depth-of-field"
    assert says in flat(found)


@pytest.mark.parametrize(
    ("text", "focal", "stop", "frame"),
    [
        (
            "I teach a street photography course, APS-C cameras, and adapt an 18mm at f/8. To what distance do my "
            "students set the ring so that everything to infinity is sharp?",
            18, 8, hypot(23.5, 15.7),
        ),
        ("which mark do i set a 35 f/8 to, to have everything out to infinity in focus, MFT", 35, 8, hypot(17.3, 13)),
        ("24mm f/8 on full frame: focus distance that keeps it sharp right out to infinity?", 24, 8, hypot(36, 24)),
    ],
)  # fmt: skip
def test_everything_to_infinity_asks_for_the_hyperfocal(asked, text, focal, stop, frame):
    found = asked(text)
    assert found["intent"] == "depth-of-field"
    assert one(found, "hyperfocal_mm") == pytest.approx(focal**2 / (stop * frame / 1442) + focal, rel=0.03)


@pytest.mark.parametrize(
    ("text", "wide"),
    [
        ("lamp 10 m away behind someone at 2 m, 85 1.4. how big is the blur disc", 2.28),
        ("85 f/2 at 3 m, wall 4 m behind, how blurred is the wall", 0.739),
        ("75 mm f/1.8 MFT at 2 m, fairy lights at 5 m, how wide the blur circles", 1.031),
    ],
)
def test_how_wide_a_point_behind_comes_out(asked, text, wide):
    """f * f * |u - v| / (N * (u - f) * v) by hand, at the nearer distance."""
    low, high = numbers(asked(text), "far_blur_mm")[0]
    assert (low + high) / 2 == pytest.approx(wide, rel=0.07)


@pytest.mark.parametrize(
    "text",
    [
        "50 at f/4 or 100 at f/4 from twice as far, which is deeper",
        "same framing with 40 and 80 mm at f/5.6, which is shallower",
    ],
)
def test_lenses_that_show_a_thing_as_large_are_about_as_deep(asked, text):
    assert "nearly the same is sharp whatever the focal length" in flat(asked(text))


def test_near_and_far_limits_at_a_stop_are_depth_of_field(asked):
    found = asked("16 mm vision lens f/4, 2/3 sensor, conveyor 500 mm away. near/far limits")
    assert found["intent"] == "depth-of-field"
    assert numbers(found, "dof_near_mm")[0][0] == pytest.approx(472.7, rel=0.02)
