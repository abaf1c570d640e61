"""The plain way told first where it is asked whether a lens is fine, and a register or a ring that was measured."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat as text_of
from tests.answers.talks import flat, talk


@pytest.mark.parametrize("question", ["M42 on F, fine?", "md 50 on EF, ok?", "is a C/Y 85 on F camera ok?",
                                      "fd 200 for 30 on EF, good idea?", "md 35 for EF, worth getting?"])  # fmt: skip
def test_where_glass_alone_gives_infinity_the_way_without_is_told_first(asked, question):
    found = asked(question)
    assert found["chains"][0]["verdict"] == "macro-only"
    assert "infinity only through a ring with glass" in text_of(found)


@pytest.mark.parametrize("question", [
    "13mm D lens on CS cam with a flush ring, infinity?", "C 16 on MFT with a flat metal adapter, will i get the hills",
])  # fmt: skip
def test_a_ring_said_to_be_flush_is_no_cup(asked, question):
    best = asked(question)["chains"][0]
    assert (best["verdict"], best["pieces"][0]["thickness_mm"]["least"]) == ("macro-only", 0)


def test_a_flush_bush_that_gives_infinity_needs_no_glass(asked):
    assert "only through a ring with glass" not in text_of(asked("m42 50mm on pk body with the flush ring: infinity?"))


def test_a_glass_ring_that_is_asked_for_is_told_first(club):
    *_, found = talk(club, "is my M42 lens fine on F camera", "ring is 1mm, 135mm lens then?", "with a glass one?")
    assert found.chains[0].listed.judged.verdict == "infinity"


@pytest.mark.parametrize(("question", "error"), [
    ("my OM to Z ring is 30.3 by the calipers.. 28/2.8, infinity?", 0.3),
    ("SR-E ring calipers 25.7, 24/2.8, infinity?", 0.2),
    ("ring is 1mm, 135mm M42 lens on F, how far?", 2.04),
])  # fmt: skip
def test_a_ring_that_was_measured_is_judged_by_its_length(asked, question, error):
    assert asked(question)["chains"][0]["register_error_mm"]["least"] == pytest.approx(error)


def test_a_register_told_of_the_lens_that_is_talked_about_moves_the_verdict(club):
    first, then = talk(club, "my M42 50mm on E, infinity?", "its register is really 45.2")
    before, after = (answer.chains[0].listed.judged for answer in (first, then))
    assert (before.verdict, after.verdict) == ("infinity", "macro-only")
    assert before.chain.adapters == after.chain.adapters


@pytest.mark.parametrize(("question", "verdict"), [
    ("barrel 46mm, C 25mm on E cup, ok?", "macro-only"), ("44 mm barrel C 25 on X, infinity?", "macro-only"),
    ("C lens 16mm with 30 mm barrel on MFT, infinity?", "infinity"),
])  # fmt: skip
def test_a_barrel_as_wide_as_the_throat_enters_no_cup(asked, question, verdict):
    assert asked(question)["chains"][0]["verdict"] == verdict


@pytest.mark.parametrize(("question", "lenses", "bodies"), [
    ("2 bodies E and Z, 1 FD lens. rings?", ["fd-mount"], ["e-mount", "z-mount"]),
    ("forget EF, just Z. M42 lens", ["m42"], ["z-mount"]),
    ("no EF, only Z. FD lens 50", ["fd-mount"], ["z-mount"]),
])  # fmt: skip
def test_what_is_put_off_is_no_lens_and_what_bodies_are_told_is_none_either(club, question, lenses, bodies):
    (found,) = talk(club, question)
    assert [one.id for one in found.question.lenses] == lenses
    assert [one.id for one in found.question.bodies] == bodies


@pytest.mark.parametrize(("question", "said"), [
    ("my M42-EF of 1.0 is too thin right? 50mm", "Yes, 0.46 mm too thin: right is 1.46 mm"),
    ("M42-E ring of 27.7 is too thin? 35mm", "No, 0.24 mm too thick: right is 27.46 mm"),
])  # fmt: skip
def test_whether_a_ring_is_too_thin_is_told_first(asked, question, said):
    assert text_of(asked(question)).startswith(said)


@pytest.mark.parametrize(("question", "error"), [
    ("C-MFT cup is 1.5 deep instead of 1.72, 16mm lens, infinity?", 0.22),
    ("OM 28mm whose flange is 46.3 not 46.0, on E, infinity?", -0.3),
])  # fmt: skip
def test_what_was_measured_counts_and_not_what_it_should_be(asked, question, error):
    assert asked(question)["chains"][0]["register_error_mm"]["least"] == pytest.approx(error, abs=0.06)


def test_what_a_rear_is_told_by_is_how_far_it_reaches(asked):
    assert "9 mm behind the flange" in asked("its rear is 9 mm, LTM 35mm on E, ok to mount?")["reading"]
    assert "11 mm behind the flange" in asked("M lens with rear 11 mm out on L-mount, ok?")["reading"]


def test_mounts_are_listed_by_their_register(asked):
    assert "58 have a register above 45 mm" in text_of(asked("list mounts longer than 45mm"))


def test_one_ring_is_enough_for_several_lenses_of_a_mount(asked):
    assert text_of(asked("5 EF lenses, one E body: one adapter or five")).startswith("One adapter is enough for all 5")


def test_a_whole_length_behind_a_ring_of_no_lens_is_the_lens(asked):
    found = asked("why does infinity land at the 5 m mark with my OM ring, 50mm")
    assert "50 mm 0.51 mm" in text_of(found)


@pytest.mark.parametrize(("question", "lens", "body", "error"), [
    ("c mount 35 on a CS cam, 5mm ring AND a half mm ring by mistake", "c", "cs", (0.5, 0.5)),
    ("already own a dkl to M ring. do i just add M to E behind it?", "dkl", "e-mount", (0, 0)),
    ("12-17 helicoid + 10mm tube + 1mm flat ring on mft, 50mm M42 lens. infinity?", "m42", "mft-mount", (-3.21, 1.79)),
    ("m42 lens with the 15-26 helicoid + 1mm thin E ring. infinity?", "m42", "e-mount", (-11.46, -0.46)),
])  # fmt: skip
def test_pieces_that_are_named_together_stand_together(club, question, lens, body, error):
    (found,) = talk(club, question)
    assert (found.question.lens.id, found.question.body.id) == (lens, body)
    seat = found.chains[0].listed.judged.measured_trace.value("register_error_mm")
    assert (seat.shortest.nominal, seat.longest.nominal) == pytest.approx(error, abs=0.005)


@pytest.mark.parametrize("question", [
    "c mount thread on this one is nearly 5mm long, screw it in anyhow?",
    "the thread on this c lens looks like 5 mm, can i wind it all the way in my camera?",
])  # fmt: skip
def test_a_thread_told_by_its_length_is_set_against_what_is_made(asked, question):
    found = asked(question)
    assert "3.8 to 4 mm long" in text_of(found)
    assert "DANGER" in found["text"]


@pytest.mark.parametrize(("question", "said"), [
    ("md 50/1.7 on EF, plain 2 mm one (no glass). head and shoulders ok?", "2.5 mm too far out"),
    ("K autofocus era 28-80, no ring on the barrel at all. goes on RF?", "reaches infinity"),
    ("45mm off an old leaf shutter rangefinder, M39, 44.0 flange. will LTM to X do?", "15.2 mm too close"),
    ("10mm cine lens (16mm film) on aps-c gives a round picture", "image circle 12.7 to 14.5 mm"),
    ("want 2x with a 50mm enlarger lens on mft what do i buy", "magnification 2:1"),
    ("cs lens bodies besides cctv cams?", "which bodies take a CS-mount lens"),
])  # fmt: skip
def test_small_words_are_told_apart(asked, question, said):
    found = asked(question)
    assert said in f"{found['reading']} {text_of(found)}"


def test_where_a_lens_stops_tells_how_thick_its_ring_is(asked):
    found = asked("M42 to E with lip.. 28mm f2.8 stops at 6 m, ring too thick?")
    assert text_of(found).startswith("Yes, 0.13 mm too thick")
    assert found["chains"][0]["verdict"] == "macro-only"


@pytest.mark.parametrize("question", [
    "my M42-E ring is too thick. 28mm, infinity?", "could my OM-E ring be too long",
    "my ring is too thick, OM 50 on E, will it focus at 5 m?",
])  # fmt: skip
def test_a_ring_that_is_off_by_nobody_knows_how_much_is_not_said_to_be_right(asked, question):
    found = asked(question)
    assert text_of(found).startswith("By how much is not told") or "may sit up to" in text_of(found)
    assert "How thick is your ring" in text_of(found)


def test_old_mounts_go_on_the_new_ones_in_whatever_order_they_are_told(club):
    (found,) = talk(club, "i want MFT and L both, have K, OM, C/Y: buy list")
    assert [one.id for one in found.question.bodies] == ["mft-mount", "l-mount"]


@pytest.mark.parametrize(("question", "first"), [
    ("a ring without any glass puts sr lenses on an F body, 1.5 mm thick, does that work for my 50?", "No, not to inf"),
    ("can i put sr lenses on an F body without any glass", "No, not to infinity"),
    ("fd on e without any glass, does that work", "Yes, no glass is needed"),
    ("do i need glass for fd on ef", "Yes, for infinity: without glass"),
])  # fmt: skip
def test_a_way_without_glass_is_answered_by_yes_where_it_works(asked, question, first):
    assert first in text_of(asked(question))


@pytest.mark.parametrize("turns", [
    ("can I mount SR lenses on EF without that glass thing", "and the one with glass what does it do to focal length"),
    ("what does the glass in an sr to ef ring do to the focal length",),
])  # fmt: skip
def test_glass_that_gives_infinity_back_makes_the_lens_longer_by_the_factor_of_its_ring(club, turns):
    found = talk(club, *turns)[-1]
    assert found.intent == "crop-equivalent"
    assert "1.2x makes a 50 mm lens one of 60 mm" in flat(found)


def test_a_ring_with_glass_takes_back_that_there_is_none(club):
    found = talk(club, "sr 50 on f without glass", "and with the glass ring, how long does it become")[-1]
    assert "50 mm with 1.4x is 70 mm" in flat(found)
    assert not found.question.limits.without_glass


@pytest.mark.parametrize("ring", ["glassless 1.5 ring", "glassless 1.2 ring", "no glass, 1.5 ring"])
def test_a_number_behind_a_word_for_no_glass_is_how_thick_the_ring_is(asked, ring):
    best = asked(f"om 135 on k dslr, {ring}, infinity?")["chains"][0]
    assert best["pieces"][0]["thickness_mm"]["least"] == float(ring.split()[-2])


@pytest.mark.parametrize("turn", ["what does that glass do to the picture", "what does the glass do to image quality",
                                  "does the glass hurt sharpness"])  # fmt: skip
def test_what_the_glass_of_a_ring_does_to_the_picture_is_told_first(club, turn):
    found = talk(club, "fd 50 on ef, infinity?", turn)[-1]
    assert flat(found).startswith("corrective glass in a ring: ")
