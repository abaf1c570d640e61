"""Threads told by their size, choices, settings and figures that disagree, as they are asked for."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("is M26x0.75 the same as 26 mm 36 tpi", "No, M26x0.75 and 26 mm x 36 tpi (0.706) are not the same"),
        ("M39x1 into the 26tpi hole goes ok, can i trust", "No, M39x1 and 39 mm x 26 tpi"),
        ("is 39x26 the same as 39x1", "No, 39 mm x 26 tpi (Whitworth form) and M39x1"),
        ("twins? un 1-32 and 25.5x0.5", "No, 1-32 UN and M25.5x0.5 are not the same"),
    ],
)
def test_threads_told_by_their_size_are_set_against_each_other(asked, text, head):
    assert flat(asked(text)).startswith(head)


def test_two_reducers_are_told_by_the_light_of_each(asked):
    found = asked("0.64 or 0.71 booster, what does each gain in light")
    assert [round(low, 2) for low, _ in numbers(found, "light_difference_stops")] == [1.29, 0.99, 0.3]


def test_a_lens_is_not_set_against_the_body_that_it_goes_on(asked):
    text = flat(asked("ring with glass inside or the plain one for FD on EF, which is less bad"))
    assert "an EF-mount lens on an FD-mount body" not in text
    assert "Without glass" in text


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("which letter on the dial with a chipless ring, A or M", "aperture"),
        ("iso or auto iso in M with a manual lens", "aperture priority"),
        ("must i set the crop mode myself for a small c lens", "by hand"),
        ("stop-down live view setting, screen too dark to focus", "Open it to focus"),
    ],
)
def test_a_setting_is_answered_by_settings_and_by_no_danger(asked, text, part):
    found = flat(asked(text))
    assert part in found
    assert "DANGER" not in found


def test_what_cannot_be_made_is_not_called_room_for_a_ring(asked):
    text = flat(asked("why cant an F lens be used on an m42 body"))
    assert "room for a ring" not in text
    assert "too little for a ring" in text


def test_figures_that_disagree_are_told_with_the_register_of_the_body_named(asked):
    found = asked("half the tables say 20 for m43 and the other half 19.25, why")
    assert (19.25, 19.25) in [(low, high) for low, high in numbers(found, "register_mm")]
    assert "rounded" in flat(found)


@pytest.mark.parametrize("text", ["must i worry", "this must be strange, my cam fell on the washer"])
def test_words_of_another_meaning_find_no_fungus_or_veil(text):
    from tests.answers.test_about import nearest_ids

    assert not {"fungus", "veil", "fungus-mask"} & set(nearest_ids(text)[:2])
