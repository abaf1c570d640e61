"""What is noted of a mount or a ring is told where a question is about that, by whatever kind it is read as."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat


@pytest.mark.parametrize(
    ("say", "told"),
    [
        ("h-mount lens without power on a dumb ring, does it even open", "Shutter and iris need power"),
        ("nikonos lens used out of the water, sharp?", "corrected for water are soft in air"),
        ("do DKL lenses of different families cross over, i heard of keys", "keyed so that they do not cross"),
        ("contarex lens iris on an adapter, who drives it", "wheel of the body"),
        ("v lens: how do i keep the leaf shutter open on a digital", "cock it, so that it stays open"),
        ("etr lens leaf shutter latch", "latch it open"),
        ("slx lens always wide open when adapted", "without power it stays wide open"),
        ("why do alpa lenses fit no other slr", "its lenses go plain on no other SLR"),
        ("will a pen-f lens cover full frame", "APS-C at best"),
        ("n-mount af slr lenses usable without electronics?", "works only with electronics"),
        ("salyut or P6 mount on my late body, how do i tell", "carry the P6 mount instead"),
    ],
)
def test_the_note_of_the_mount_answers(asked, say, told):
    assert told in flat(asked(say))


@pytest.mark.parametrize(
    ("say", "told"),
    [
        ("p67 to EF ring, body gives an error until the lens is turned a few degrees", "notch of the lens lock"),
        ("exakta 58mm on EF, my ring is 1.5 thick because of the mirror", "Many are made thicker"),
        ("LTM to M ring thickness and which frame lines come up", "Brings up the 28 and 90 frame lines"),
        ("m42 ring for x, lip or no lip", "With a lip inside it holds the auto pin in"),
        ("c mount 50mm on Z, is it a cup or a spacer", "A spacer, not a cup"),
    ],
)
def test_the_note_of_the_ring_is_told(asked, say, told):
    assert told in flat(asked(say))


@pytest.mark.parametrize(
    ("say", "told"),
    [
        ("RB67 glass on an RZ67 body", "RB lenses go on RZ bodies"),
        ("ZE lens on an NC body", "Forced on an NC body it sticks"),
        ("is an MD lens the same as A mount", "does not mate"),
        ("SQ lens on GS-1", "with other lugs"),
        ("P6 lens on V 6x6", "0.8 mm short of V"),
    ],
)
def test_what_is_noted_of_a_pair_stands_behind_the_verdict(asked, say, told):
    lines = asked(say)["text"].splitlines()
    assert told in " ".join(" ".join(lines[:9]).split())


def test_what_is_stuck_is_not_told_of_cups(asked):
    assert "The collar is what must enter a cup" not in flat(asked("my C lens is stuck in the C to MFT cup"))[:300]


def test_a_list_of_bodies_is_headed_by_the_bodies(asked):
    assert flat(asked("which bodies can take C lenses without a cup")).split(" ")[0].isdigit()


@pytest.mark.parametrize(
    ("say", "told"),
    [
        ("DKL from one brand on DKL camera of other brand", "each family of cameras keyed it"),
        ("the ring of my ar 50 sits on AE and wont move", "lock their iris ring in the EE setting"),
        ("R cams: 1 cam 2 cam 3 cam ROM what do they mean for me on mirrorless", "cams and contacts do nothing"),
        ("soviet tele on my ltm rangefinder focuses wrong close up, fine at infinity", "52.4 mm against 51.6"),
        ("h mount lens dead on a dumb adapter", "a plain ring gives it no power"),
        ("rb67 lens on my digital via plain tube has no focusing", "Such lenses have no helicoid"),
        ("why is there no plain ring A to EF when it's only half a mm", "it is the width that decides"),
        ("why are there three versions of the LTM-M ring", "They differ in one lug"),
    ],
)
def test_what_is_peculiar_to_an_old_mount_comes_first(asked, say, told):
    assert told in flat(asked(say))[:700]


@pytest.mark.parametrize(
    ("say", "ring"),
    [
        ("LTM 50 on M, which ring", "frame lines 50/75"),
        ("35 LTM lens on my M body", "frame lines 35/135"),
        ("ltm-m ring 28-90 for a 90mm ltm lens, infinity?", "frame lines 28/90"),
    ],
)
def test_the_ring_of_the_lens_in_the_finder_is_named(asked, say, ring):
    found = asked(say)
    assert ring in found["chains"][0]["title"] if "title" in found["chains"][0] else ring in flat(found)[:200]


@pytest.mark.parametrize("ring", ["28-90", "50-75", "35-135", "28/90"])
def test_the_frames_of_a_ring_are_no_length(asked, ring):
    assert "settable" not in flat(asked(f"my ltm to M ring is the {ring} one, 35mm ltm lens, infinity?"))[:400]
