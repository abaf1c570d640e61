"""Advice comes first where the words are about it, whatever kind of question they were taken for."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


@pytest.mark.parametrize(("question", "first"), [
    ("the lens goes in but wont click", "Bayonet that does not turn home"),
    ("why wont it lock on the body", "Bayonet that does not turn home"),
    ("what happens if i screw a c mount lens with very long thread into my camera", "Over-long thread"),
    ("how to know if its 26 tpi or 1mm", "39 mm by 26 tpi"),
    ("26 tpi vs 1mm pitch at 39, whats the difference per turn and will it jam", "39 mm by 26 tpi"),
    ("stopped down pin on the back of my m42 lens, what's it for", "Pin at the back"),
    ("is it okay to clean haze with vinegar inside the lens", "No: not by dripping it in."),
    ("metal dust came off the thread into the body", "Not harmless."),
    ("lens was in a flooded basement", "Not safe to use before it is looked at."),
    ("kid put a sticker on the rear glass", "Do not scrape it."),
    ("why do some m39 lenses say 26tpi and others 1mm, how can i feel the difference", "39 mm by 26 tpi"),
    ("rear element bigger than the hole in the body", "Not safe before both are measured."),
])  # fmt: skip
def test_it_is_told_first(club, question, first):
    assert flat(talk(club, question)[0]).startswith(first)


def test_what_differs_is_asked_by_its_short_word_too(club):
    found = talk(club, "diff between m42 and t2")[0]
    assert found.intent == "look-alike"
    assert "registers differ by 9.54 mm" in flat(found)


def test_both_39_mm_screws_are_told_with_what_parts_them(club):
    told = flat(talk(club, "both have 39mm screw, one from a rangefinder, one off an old slr, can i swap them")[0])
    assert all(number in told for number in ("28.8", "45.2", "16.4"))
