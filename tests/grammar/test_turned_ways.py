"""What turns move a lens by, turns that are asked for, and marks that a ring stands on, in their spellings."""

from __future__ import annotations

from itertools import product

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon

PITCHES = ("pitch 0.75", "0.75 pitch", "0.75 mm pitch", "pitch of 0.75 mm")
TURNS = {"2 turns": ("turns", "2"), "half a turn": ("turns", "0.5"), "60 degrees": ("angle", "60")}
ASKED = ("{p}, {t}: travel?", "{t} with {p} is how many mm", "{p}: {t}, how far does it move", "{p} {t}, travel in mm")


def test_turns_of_a_pitch_are_a_way_and_no_thread_to_be_named() -> None:
    wrong = {}
    for form, pitch, turns in product(ASKED, PITCHES, TURNS):
        asked = form.format(p=pitch, t=turns)
        got = read(asked, lexicon())
        key, value = TURNS[turns]
        if not isinstance(got, Question) or (got.intent, got.said("pitch"), got.said(key)) != (
            "shim-calibration",
            "0.75 mm",
            value,
        ):
            wrong[asked] = got
    assert not wrong


@pytest.mark.parametrize(
    "text",
    [
        "how many turns for 1.2 mm at c mount",
        "1.2mm on a c mount thread is how many turns",
        "to move 1.2 mm, c mount, turns?",
    ],
)
def test_the_way_that_turns_are_asked_for_is_no_focal_length(text: str) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert got.intent == "shim-calibration"
    assert got.said("travel") == "1.2 mm"
    assert all(lens.focal_length_mm is None for lens in got.lenses)


@pytest.mark.parametrize(
    ("text", "mark"),
    [
        ("50mm, horizon sharp with the ring on 20, adapter too thin by?", "20000 mm"),
        ("stars sharp with the ring at 7 m on my 50, shim?", "7000 mm"),
        ("far hills sharp at 8 on my 35, what shim", "8000 mm"),
        ("35mm on MFT, 7.75 ring but measured 7.9. infinity?", None),
    ],
)
def test_a_ring_that_stands_on_a_number_is_that_of_the_lens(text: str, mark: str | None) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert got.said("mark") == mark
