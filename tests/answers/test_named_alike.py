"""Mounts of one name or one bayonet, asked about side by side: which differ, and by how much."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import flat, numbers
from tests.answers.talks import flat as said
from tests.answers.talks import talk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


@pytest.mark.parametrize(
    ("asked", "registers"),
    [
        ("will R-mount (the 1964 slr) lens go on an RF body, R is R??", {"r-mount": 47, "rf-mount": 20}),
        ("will an X film slr lens go on an X body, X is X?", {"x-mount-slr": 43.5, "x-mount": 17.7}),
        ("is an X film slr lens the same as X", {"x-mount-slr": 43.5, "x-mount": 17.7}),
        ("C lens on a CS body, C is C no?", {"c": 17.526, "cs": 12.526}),
        ("C lens on CS camera, C is C?", {"c": 17.526, "cs": 12.526}),
        ("M bayonet and visoflex II bayonet, same thing surely", {"m-mount": 27.8, "visoflex-ii": 68.8}),
        ("lens says X mount, 1979ish. my mirrorless says X too. match made?", {"x-mount-slr": 43.5, "x-mount": 17.7}),
    ],
)
def test_both_mounts_are_told_with_what_sets_them_apart(desk, asked, registers):
    found = record_of(desk.ask(asked, Talk()), desk.knowledge)
    assert " are not the same" in flat(found)
    for mount, register in registers.items():
        assert (register, register) in numbers(found, "register_mm", mount)
    apart = round(max(registers.values()) - min(registers.values()), 3)
    assert apart in [round(least, 3) for least, _ in numbers(found, "register_difference_mm")]


@pytest.mark.parametrize(
    ("asked", "registers"),
    [
        ("are R lenses all one mount? shop lists an R to E ring", (47, 42, 20)),
        ("are all X lenses one mount", (17.7, 43.5, 18.14)),
        ("is S one mount or several", (34.85, 53)),
    ],
)
def test_a_name_of_several_mounts_is_said_to_be_one_of_several(desk, asked, registers):
    found = record_of(desk.ask(asked, Talk()), desk.knowledge)
    head = flat(found).split(" No one ring")[0]
    assert head.startswith("No: the name stands for 3 mounts")
    assert all(f"({register:g} mm)" in head for register in registers)


def test_what_is_told_of_the_body_does_not_change_the_lens(desk):
    text = "line scan camera has M42x1 and a 12mm flange. will photo M42 lenses just work"
    found = record_of(desk.ask(text, Talk()), desk.knowledge)
    assert numbers(found, "register_difference_mm") == [(pytest.approx(45.46 - 12), pytest.approx(45.46 - 12))]


@pytest.mark.parametrize(
    ("asked", "one", "other"),
    [
        ("L8 lens, is it just D", "D thread, short register (L8)", "D"),
        ("D thread lens from an 8mm reflex (L8), is it just D", "D", "D thread, short register (L8)"),
        ("T2 lens, is it the same as M42", "T2", "M42"),
        ("a T2 lens, is that M42?", "T2", "M42"),
        ("CS lens, is that just C mount", "CS", "C"),
        ("M39 SLR lens, is that LTM", "M39x1 SLR", "LTM"),
    ],
)
def test_a_lens_asked_whether_it_is_of_another_mount_is_set_beside_it(desk, asked, one, other):
    assert flat(record_of(desk.ask(asked, Talk()), desk.knowledge)).startswith(
        f"No, {one} and {other} are not the same"
    )


@pytest.mark.parametrize("asked", [
    "sr and x-mount old film slr, both 43.5, interchangeable right?", "is the old film x mount slr the same as sr",
    "is sr the same as x mount, both film slrs of the seventies",
])  # fmt: skip
def test_a_name_said_of_film_days_is_that_of_the_film_body_on_either_side(desk, asked):
    found = record_of(desk.ask(asked, Talk()), desk.knowledge)
    assert "SR-mount and X-mount (film SLR, 1979) are not the same: the bayonets differ." in flat(found)
    assert "the registers differ by" not in flat(found)


@pytest.mark.parametrize(
    "say", ["C lens or CS lens, can i swap them between cameras freely", "can C and CS be swapped freely"]
)
def test_lenses_to_be_swapped_about_are_asked_whether_they_are_the_same(desk, say):
    found = record_of(desk.ask(say, Talk()), desk.knowledge)
    assert found["intent"] == "look-alike"
    assert "the registers differ by 5 mm" in flat(found)


def rings(answer):
    return {row.case: row.value.nominal for row in answer.quantities or () if row.name == "ring_thickness_mm"}


@pytest.mark.parametrize("lens", ["67 medium format tele", "6x7 medium format 105", "medium format 67 lens"])
@pytest.mark.parametrize("asked", ["{} on an E body, whats the ring length", "which ring for {} to an E body"])
def test_a_lens_told_by_its_format_alone_has_a_ring_for_each_mount_of_it(desk, lens, asked):
    (found,) = talk(desk, asked.format(lens))
    assert rings(found)["p67"] == pytest.approx(66.95)
    assert rings(found)["gs-mount"] == pytest.approx(67)


@pytest.mark.parametrize("turn", ["28.8", "its 28.8 mm", "about 28.8"])
def test_a_number_alone_tells_which_mount_of_the_name_it_is(desk, turn):
    _, found = talk(desk, "M39 lens, will it go on my MFT", turn)
    assert found.question.lens.id == "ltm"
    assert "seat 9.55 mm" in said(found)


def test_another_of_the_name_at_another_register_is_off_in_the_ring_of_before(desk):
    *_, found = talk(desk, "M39 lens, will it go on my MFT", "28.8", "my mate has one at 45.2, same ring?")
    assert "In a ring for LTM an M39x1 SLR lens sits 16.4 mm too close" in said(found)
    *_, found = talk(desk, "M39 50 on E, ring?", "45.2", "and another is 28.8, same ring?")
    assert "16.4 mm too far out" in said(found)


def test_a_number_that_no_mount_of_the_name_has_is_no_register(desk):
    _, found = talk(desk, "M39 50 on E, ring?", "my ring is 10.6")
    assert found.question.lens.id == "ltm"
    assert found.question.said("flange_to_image") is None


@pytest.mark.parametrize(
    "say",
    ["M35 threaded line camera lens vs C mount, both 17.5 so same no?",
     "line scan lens with an M35 thread, 17.5 register. same as C?"],
)  # fmt: skip
def test_another_width_of_thread_is_another_thread(asked, say):
    found = flat(asked(say))
    assert found.startswith("No: the thread is 35 mm across and that of C 25.4 mm")
    assert "The thread is the same, the register need not be" not in found


@pytest.mark.parametrize(("say", "width"), [("lens with an M30.5 thread. which mount", "30.5"),
                                            ("m58 thread lens on E", "58"), ("M90 threaded lens", "90")])  # fmt: skip
def test_a_metric_thread_is_a_width_and_no_focal_length(asked, say, width):
    assert f"thread {width} mm" in asked(say)["reading"]
    assert f"{width} mm lens" not in asked(say)["reading"]


@pytest.mark.parametrize(
    "say",
    [
        "is LTM the same as M39 rangefinder?",
        "LTM and the other 39mm rangefinder screw, same or not?",
        "LTM and the 39mm rangefinder screw with 1 mm pitch, same or not?",
    ],
)
def test_a_name_of_two_screws_is_not_said_to_be_the_one(asked, say):
    found = asked(say)
    assert found["intent"] == "look-alike"
    assert found["text"].lstrip("> ").startswith("No")


@pytest.mark.parametrize(
    ("asked", "head"),
    [
        ("G mount: is the old film rangefinder one the same as the new 44x33 one?", "No: the name stands for 2 mounts"),
        ("FD and FL and R breech: one mount?", "Yes, FD-mount (42 mm), FL-mount (42 mm) and R breech-lock (42)"),
        ("X on film slr vs X on XCD medium format: same mount?", "No, not all of them are the same"),
        (
            "S mount rangefinder lens on the 45x30 S body, same letter so ok?",
            "No, S-mount (rangefinder) and S-mount (45",
        ),
    ],
)
def test_whether_they_are_one_is_told_first(desk, asked, head):
    assert desk.ask(asked, Talk()).lines[0].text.startswith(head)
