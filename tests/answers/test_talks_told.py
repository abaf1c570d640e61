"""Turns that lean on what was said: a stop that becomes another, sheet at hand, what a seller says, a ring gauged."""

import pytest

from tests.answers.talks import talk

RING = ("m42 to E ring, my calipers say 26.9. 50mm 1.8 m42 goes on it, infinity ok?",)
TUBE = ("75mm f1.9 c mount cine lens on mft with a 10 mm tube. how near does it get",)
REDUCED = ("80mm f2.8 645 glass with a 0.7x reducer on a full frame E body, depth of field at 3 m?",)
SUNNY = ("1/50, f4, iso 400, overcast. which nd",)


def number(answer, name):
    """The nominal values of a quantity of the answer, in order."""
    return [row.value.nominal for row in answer.quantities or () if row.name == name and hasattr(row.value, "nominal")]


@pytest.mark.parametrize(
    ("said", "stop"),
    [
        ("what f stop does its 1.9 become", 2.15),
        ("what does 1.9 turn into", 2.15),
        ("the 1.9 is then what really", 2.15),
        ("what does its 5.6 come to", 6.35),
        ("what stop does the 8 become", 9.07),
        ("what is my 5.6 worth with it", 6.35),
    ],
)
def test_a_bare_number_is_the_stop_that_becomes_another(club, said, stop):
    found = talk(club, *TUBE, said)[-1]
    assert number(found, "effective_f_number")[0] == pytest.approx(stop, rel=0.01)


@pytest.mark.parametrize(
    "said", ["whats it worth like that", "what could i get for it", "does that knock off its value"]
)
def test_what_a_lens_is_worth_is_not_told_and_its_ring_holds(club, said):
    worth, again = talk(club, *RING, said, "and a 28 on it?")[1:]
    assert worth.intent == "out-of-scope"
    assert [one.thickness_mm for one in again.question.adapters] == [(26.9, 26.9)]


@pytest.mark.parametrize(
    ("said", "layers"),
    [("I only have 0.1 brass sheet", "6 x 0.1 mm"), ("all i've got is 0.05 foil", "11 x 0.05 mm"),
     ("got 0.15 mm shim stock here, will that do", "4 x 0.15 mm")],
)  # fmt: skip
def test_sheet_at_hand_asks_how_many_layers(club, said, layers):
    found = talk(club, *RING, said)[-1]
    assert layers in found.lines[0].text
    assert [one.thickness_mm for one in found.question.adapters] == [(26.9, 26.9)]


@pytest.mark.parametrize(
    "said",
    ["seller says it is the same as everybody elses", "seller says its 27.46", "he swears it is spot on"],
)
def test_a_measured_ring_holds_whatever_a_seller_says(club, said):
    found = talk(club, *RING, said)[-1]
    assert [one.thickness_mm for one in found.question.adapters] == [(26.9, 26.9)]
    assert number(found, "shim_mm")[0] == pytest.approx(0.56, abs=0.01)


def test_a_measured_circle_holds_whatever_a_seller_says(club):
    asked = "25mm f1.4 c mount lens, disc on paper measures 17.5 mm, cover mft?"
    found = talk(club, asked, "the seller told me it covers m43 fully")[-1]
    assert found.intent == "coverage"
    assert number(found, "lit_share")[0] == pytest.approx(0.915, abs=0.01)


@pytest.mark.parametrize("said", ["lose the reducer", "and with the reducer taken off", "and with that pulled off"])
def test_a_reducer_taken_off_is_gone(club, said):
    found = talk(club, *REDUCED, said)[-1]
    assert found.intent == "depth-of-field"
    assert found.lines[0].text.startswith("80 mm f/2.8 at 3 m, full frame")


@pytest.mark.parametrize(
    ("asked", "off"),
    [
        ("50mm enlarger lens, infinity at 43.5 mm from its flange, F-mount body, rings totalling 22 mm. how far", 25.0),
        ("75mm enlarger lens, 62 mm flange to film, E mount, 70 mm of tubes, where is it sharp", 26.0),
        ("75mm enlarger lens, 62 mm flange to film, E body with a 30 mm ring, infinity?", -14.0),
    ],
)
def test_rings_behind_bare_glass_count_by_their_length(club, asked, off):
    (found,) = talk(club, asked)
    assert number(found, "register_error_mm")[0] == pytest.approx(off)


def test_rings_beside_a_helicoid_take_their_length_off_its_setting(club):
    asked = "75 mm f4 enlarger lens on E mount, flange to film is 62 mm at infinity"
    near, size = talk(club, asked, "I have the 36-90 helicoid, rings add up to 3.0: infinity where, how near at 90",
                      "what ratio is that at the near end")[1:]  # fmt: skip
    assert number(near, "helicoid_setting_mm") == [41.0]
    assert number(size, "magnification")[0] == pytest.approx(49 / 75, abs=0.01)


def test_a_5_mm_ring_behind_a_c_lens_elsewhere_is_a_tube(club):
    (found,) = talk(club, "75mm f1.9 c mount lens on mft with a 5 mm ring added. infinity?")
    assert found.chains[0].listed.judged.verdict == "macro-only"


@pytest.mark.parametrize(
    ("said", "stops"),
    [("clouds broke, full sun now", 7.4), ("sun came out, full sun", 7.4), ("then dusk, sun gone now", -0.1)],
)
def test_light_that_changed_is_no_danger(club, said, stops):
    found = talk(club, *SUNNY, said)[-1]
    assert found.intent == "exposure-nd"
    assert stops < 0 or number(found, "nd_stops")[0] == pytest.approx(stops, abs=0.1)


def test_a_caliper_reads_the_ring_that_was_bought(club):
    found = talk(
        club, "md 35 2.8 to an rf apsc body, how long the ring", "crop makes it", "i bought one, caliper 23.7"
    )[-1]
    assert [one.thickness_mm for one in found.question.adapters] == [(23.7, 23.7)]
    assert found.chains[0].listed.judged.verdict == "macro-only"


def test_what_is_asked_how_to_do_is_not_done(club):
    found = talk(club, "om 50 on z, ring came at 30.2", "how do i take 0.2 off")[-1]
    assert [one.thickness_mm for one in found.question.adapters] == [(30.2, 30.2)]


def test_the_format_that_stands_on_a_lens_is_no_mark(club):
    found = talk(club, '25mm 1.4 c mount made for 1/2" on a 2/3 c camera, cover?', "it's marked 1\" actually")[-1]
    assert found.question.said("mark") is None
    assert found.question.lens.format_too == "1-inch-type" or "1-type" in found.reading


@pytest.mark.parametrize(
    ("asked", "said", "far_mm"),
    [
        (TUBE[0], "swap the 10 for a 20", 75 * 2 + 75**2 / 20 + 20),
        (TUBE[0], "15 instead of the 10", 75 * 2 + 75**2 / 15 + 15),
        (TUBE[0], "trade the 75 for a 50", 50 * 2 + 50**2 / 10 + 10),
        ("om 50 1.8 on z, ring came at 30.2. infinity?", "swap the 50 for a 28", 28 * 2 + 28**2 / 0.2 + 0.2),
    ],
)
def test_a_number_swapped_for_another_is_of_what_that_was(club, asked, said, far_mm):
    found = talk(club, asked, said)[-1]
    shown = number(found, "far_from_sensor_mm") or [row.listed.judged for row in found.chains or ()]
    assert len(found.question.lenses) == 1
    assert not isinstance(shown[0], float) or shown[0] == pytest.approx(far_mm, rel=0.02)
