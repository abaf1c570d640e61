"""What is kept and what is replaced where the turns of a talk differ in kind."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk


def seats(answer, name="ring_thickness_mm"):
    return [round(row.value.nominal, 3) for row in answer.quantities or () if row.name == name]


@pytest.mark.parametrize(
    ("first", "turn", "lens", "body", "intent"),
    [
        ("50mm M42 to E, ring?", "what if its an X body instead of E", "m42", "x-mount", "chain"),
        ("50mm M42 to E, ring?", "a Z rather than the E", "m42", "z-mount", "chain"),
        ("28 K, MFT, which ring", "and with an OM lens instead of K", "om-mount", "mft-mount", "chain"),
        ("28 K on MFT, which ring", "swap the MFT for an L", "k-mount", "l-mount", "chain"),
        (
            "50mm M42 on E, frames like what",
            "if it were a MFT body in place of E",
            "m42",
            "mft-mount",
            "crop-equivalent",
        ),
    ],
)
def test_one_mount_in_the_place_of_another(
    club: Desk, first: str, turn: str, lens: str, body: str, intent: str
) -> None:
    found = talk(club, first, turn)[-1]
    assert found.question is not None
    assert (found.question.lenses[0].id, found.question.bodies[0].id, found.intent) == (lens, body, intent)
    assert found.question.lenses[0].focal_length_mm is not None


@pytest.mark.parametrize("turn", ["suppose i get an L body", "and if it were an L", "my brother has an L"])
def test_another_body_after_an_exposure_by_the_way_wants_its_ring(club: Desk, turn: str) -> None:
    found = talk(club, "FD 85 on a Z, how thick", "f/2, 1/50, bright sun, iso 100, which nd", turn)[-1]
    assert (found.intent, 22.0 in seats(found)) == ("chain", True)


def test_glass_made_for_one_body_is_not_put_on_another(club: Desk) -> None:
    found = talk(
        club, "FD 50 1.8 on an EF slr, infinity?", "theres one with a lens in it, x1.25. what is my 50/1.8 then",
        "how much light is that", "and if i get an RF body",
    )[-1]  # fmt: skip
    assert "FD to RF ring" in flat(found)
    assert not found.question.adapters


@pytest.mark.parametrize(
    ("found_out", "turn", "error"),
    [
        ("45.2 on the paper", "i own an LTM to E ring, that works then?", -16.4),
        ("45.2 on the paper", "friend would lend me his LTM to L ring. any good with this lens", -16.4),
        ("45.2 mm", "an LTM to X adapter lies here, usable?", -16.4),
        ("45.2 mm", "got an m42-e ring plus a 39-42 ring of 1mm. good enough for 58mm?", 1.26),
    ],
)
def test_a_lens_that_was_found_out_is_tried_on_the_ring_of_another(
    club: Desk, found_out: str, turn: str, error: float
) -> None:
    found = talk(club, "brass lens with 39 mm thread, no name, rangefinder or SLR", found_out, turn)[-1]
    assert found.question is not None
    assert found.chains
    assert found.question.lenses[0].id == "m39-zenit"
    measured = found.chains[0].listed.judged.trace.value("register_error_mm")
    assert measured.shortest.nominal == pytest.approx(error, abs=0.01)


def test_what_it_is_found_to_be_outlasts_what_it_was_asked_to_be(club: Desk) -> None:
    found = talk(club, "M39 lens from the attic, is it SLR or rangefinder", "about 45 mm", "ring for E?")[-1]
    assert 27.2 in seats(found)


@pytest.mark.parametrize("turn", ["what can i put in between to make it right", "so what spacer goes under it"])
def test_what_goes_between_sets_it_right(club: Desk, turn: str) -> None:
    found = talk(club, "M39 SLR lens on E", "i own an LTM to E ring, that works then?", turn)[-1]
    assert found.lines[0].text.endswith("16.4 mm more between lens and ring would set it right.")


def test_rings_one_behind_the_other_are_vouched_for_with_their_sum(club: Desk) -> None:
    found = talk(
        club, "500mm T2 mirror lens for EF, ring", "i have T2-F (8.5) and F-EF (2.5), can i stack them",
        "are you sure? everybody tells me two rings never reach infinity",
    )[-1]  # fmt: skip
    assert found.chains is not None
    assert found.chains[0].listed.judged.verdict == "infinity"
    assert "55 - 46.5 = 8.5 mm and 46.5 - 44 = 2.5 mm" in flat(found)


@pytest.mark.parametrize(
    ("turns", "told"),
    [
        (("FD 50 on E, thickness", "on EF-M?", "again 24, is that a mistake"), "are both 18 mm deep"),
        (("M42 50 on E", "and a K lens?", "same thickness. how come"), "both sit 45.46 mm from the sensor"),
        (
            (
                "21mm M lens on my E, will it hit something",
                "12 mm behind its flange",
                "and an X body",
                "same? how come",
            ),
            "27.8 - 12 = 15.8 mm",
        ),
        (("OM 50 with 20 tube on E how close", "and on Z", "same distance? how come"), "the extension, and that is"),
    ],
)
def test_why_two_come_out_alike(club: Desk, turns: tuple[str, ...], told: str) -> None:
    found = talk(club, *turns)[-1]
    assert found.intent == "why"
    assert told in flat(found)


def test_one_ring_for_two_bodies_is_asked_of_both(club: Desk) -> None:
    found = talk(club, "FD 50 on E, thickness", "on EF-M?", "then one ring serves both?")[-1]
    assert found.lines[0].text == "No, one ring is not enough: it takes 2 pieces."


def test_rings_onto_a_mount_of_the_plan_leave_the_plan_as_it_is(club: Desk) -> None:
    _, rings, all_ = talk(
        club, "LTM, M and C/Y lens for an X body and an L body. how many adapters",
        "thickness of the two that go to M?", "all four, what will they cost me",
    )  # fmt: skip
    assert {1.0, 17.7} <= set(seats(rings))
    assert "57 to 630 dollars (through the hub)" in flat(all_)


@pytest.mark.parametrize(
    ("first", "turn", "told"),
    [
        ("35 at f/2.8, 2 m, X body: depth of field", "its an m42, ring?", "M42 to X ring"),
        ("50 f/2 full frame 3 m, dof", "its an OM lens, ring to E?", "A 50 mm f/2 OM-mount lens on an E-mount body"),
        ("SR 50 on E, infinity at the 10 m mark", "so how thick is my ring in truth", "25.25 mm (as it is)"),
        (
            "SR 50 on E, infinity at the 10 m mark",
            "have a Z ring as well, 27.5. ok that one?",
            "seat 27.5 mm: just right",
        ),
        ("M42 on E, one side of the picture is soft", "how even should the four points be", "parallel within 0.02 mm"),
    ],
)
def test_the_ring_after_another_matter(club: Desk, first: str, turn: str, told: str) -> None:
    assert told in flat(talk(club, first, turn)[-1])


@pytest.mark.parametrize(
    ("turn", "tubes"),
    [("ok back to the 50 and add a 14mm tube", [20, 14]), ("the 50 again, but 12 more of tube", [20, 12])],
)
def test_a_lens_that_is_gone_back_to_is_no_tube(club: Desk, turn: str, tubes: list[float]) -> None:
    question = talk(club, "50 M42 on E with a 20 tube, how close", "and a 135?", turn)[-1].question
    assert question is not None
    assert [lens.focal_length_mm for lens in question.lenses] == [50]
    assert [piece.thickness_mm for piece in question.adapters] == [(one, one) for one in tubes]


def test_that_tube_is_the_one_told_before_the_ring_was_asked_for(club: Desk) -> None:
    first, ring = "50 K with a 20mm tube, how big", "ring to get it on RF at all"
    found = talk(club, first, ring, "how far is the thing from the sensor with that tube in")[-1]
    assert "20 mm of tube: sharp at 24 cm from the sensor, 0.4x" in flat(found)


def test_what_drops_through_a_thread_is_of_a_narrower_one(club: Desk) -> None:
    first = "tiny cine lens just drops through the C thread of my camera?!"
    told, cup, flush, other = talk(
        club, first, "15.9, yes. then what ring onto the C camera with infinity",
        "seller has a flush one, would my 13mm do", "and on a Q body instead?",
    )  # fmt: skip
    assert "Most likely D, 15.88 mm wide and of the same pitch" in flat(told)
    assert -5.236 in seats(cup)
    assert "seat 0 mm: 5.24 mm too far out" in flat(flush)
    assert 3.09 in seats(other)


def test_a_width_told_back_is_no_question_of_the_word_thread(club: Desk) -> None:
    assert talk(club, "lens falls through the C thread, what is it", "about 15.9")[-1].intent == "identify-mount"


@pytest.mark.parametrize(
    ("first", "turn", "lens", "body"),
    [
        ("which bodies can take a D lens to infinity without a cup", "first of them, ring?", "d", "q-mount"),
        ("what old lenses go onto an EF dslr with a plain ring", "the first, thickness?", "m42", "ef-mount"),
    ],
)
def test_a_place_of_a_list_is_the_mount_there(club: Desk, first: str, turn: str, lens: str, body: str) -> None:
    found = talk(club, first, turn)[-1]
    assert found.chains
    setup = found.chains[0].listed.judged.setup
    assert (setup.lens_mount.id, setup.body_mount.id) == (lens, body)


def test_the_f_that_a_ring_ends_on_is_no_stop(club: Desk) -> None:
    found = talk(club, "T2 500 on EF. i own T2-F 8.5 and F-EF 2.5, do they do it")[-1]
    assert "your 8.5 mm ring + your 2.5 mm ring" in flat(found)


def test_what_reads_so_on_the_ring_is_its_nearest_mark_where_one_asks_how_near(club: Desk) -> None:
    last = talk(club, "28mm M42 on EF, want infinity", "whats the nearest if it reads 0.3 on the ring")[-1]
    assert last.intent == "macro-distance"
    assert "sharp at 30 cm from the sensor" in flat(last)


def test_a_stop_for_a_face_is_asked_of_how_deep_it_is_whatever_stood_before(club: Desk) -> None:
    last = talk(club, "50 om on z", "how close", "which stop for a face at 1 m")[-1]
    assert last.intent == "depth-of-field"
    assert "for a face" in flat(last)


TOLD_BEFORE = [
    (("50 M42 on E, my ring is 2 mm too thin, infinity?", "and with a 2 mm spacer under it?"), "seat 27.46 mm"),
    (("50 M42 on E, my ring is 10 mm too thin, infinity?",), "10 mm too close to the sensor"),
    (("50 M42 lens on E, does it reach infinity", "and with 11 mm of tube?"), "stops at 34 cm"),
    (
        ("45.2 from the M39 flange of my 50 to the sensor", "ring for E?", "i have 16.4 of M39 tube too"),
        "50 mm M39x1 SLR lens",
    ),
    (("16 mm C lens on my Q, ring?", "its a 2/3 inch type and the sensor 1/2. corners ok?"), "covers 1/2 in"),
    (("M42 28 and 135 on RF, ring is 25.36", "at which mark on the 28"), "infinity at its 7.9 m mark"),
    (("16 C on a CS camera with the 5 mm ring", "without it", "the 5 back in"), "A 16 mm C-mount lens on a CS-mount"),
    (("P6 180 on G 44x33", "no G, its an XCD"), "180 mm P6 lens on an XCD (44x33) body"),
    (
        ("grey barrel 25mm, screw 25.4 wide, cine or security?", "17.5 on the card"),
        "17.5 mm from flange to image: C or C-RX",
    ),
    (("lens falls right through my C to E ring", "caliper: 15.9", "cup for E how deep"), "seat -5.71 mm"),
    (
        ("16mm C lens straight on our CS camera", "ok ring is on. can i add another 2mm for close work?"),
        "2 mm of tube: sharp",
    ),
    (("50 OM on E", "and another 10 mm for macro?"), "50 mm lens, from the sensor"),
    (("d lens 13mm onto a CS camera", "my d-cs ring is flush. what do i lose?"), "stops at 74 cm"),
    (("OM 50 on E through M", "do i lose infinity with two rings stacked"), "reaches infinity"),
    (("om 50/1.4 and 0.71 on E aps-c, ff equivalent", "without it?", "and with it?"), "with 0.71x is 35.5 mm"),
    (("m39 lens off a reflex, onto MFT?", "shop sells me an LTM to MFT"), "the lens sits 16.4 mm too close"),
    (("K 50 and M42 135 on Z", "and FD instead of K"), "50 mm FD-mount: FD to Z ring"),
    (("screw lens 39 across", "far house is sharp 28.7 behind it", "MFT then", "or an X"), "seat 11.1 mm: just right"),
    (
        ("K 28 with 0.71 on MFT", "as full frame, what is it", "glass away", "with it again on E aps-c"),
        "0.71x is 19.9 mm",
    ),
    (("M39 SLR 58 on MFT", "i own an LTM to MFT ring, ok?", "what if i add a 16 mm tube"), "0.4 mm too close"),
    (("M39 SLR 58 on MFT", "i own an LTM to MFT ring, ok?", "and with 30 mm of tube, how close"), "stops at 38 cm"),
    (
        ("which 39 mm thread did the early reflexes use, how do i tell mine", "mine reads 45 and a bit"),
        "it is M39x1 SLR",
    ),
    (("have a 75 enlarger lens, E body, how do i start", "i get 72 mm"), "72 - 18 = 54 mm"),
    (("50/2 OM on E, 3 m, dof", "ring for it?", "and how deep on a Z"), "50 mm f/2 at 3 m"),
    (("15mm LTM on Z, rear sticks out 11 mm, touches?", "on L?", "ok. the rings for both?"), "infinity 8.8 mm"),
]


def test_a_number_or_a_no_is_of_what_was_told_before(club: Desk) -> None:
    for turns, told in TOLD_BEFORE:
        assert told in flat(talk(club, *turns)[-1]), turns


def test_the_stop_that_one_really_has_behind_glass_is_told_by_its_factor(club: Desk) -> None:
    last = talk(club, "my 135/2.8 om with a 2x on z, reach infinity?", "what stop do i really have")[-1]
    assert "f/2.8 x 2 = f/5.6" in flat(last)


def test_which_is_better_is_of_the_two_that_were_asked_the_same(club: Desk) -> None:
    turns = ("25/1.4 c mount on E", "corners?", "on the Q instead", "what ring", "which one is better")
    said = flat(talk(club, *turns)[-1])
    assert "E-mount body" in said
    assert "Better: a Q-mount body" in said


def test_a_number_by_itself_is_told_what_it_measures(club: Desk) -> None:
    found = talk(club, "50 om on z", "what does 45.46 mean")[-1]
    assert found.reading == "what is 45.46"
    assert "that of M42" in flat(found)
    assert "a register, from flange to image: that of C" in flat(talk(club, "what does 17.526 stand for")[-1])
    assert "the diagonal of Super 35" in flat(talk(club, "what's 31.11")[-1])


def test_two_densities_that_are_stacked_after_an_exposure_are_added(club: Desk) -> None:
    last = talk(club, "25/1.4 at 1/50 iso 800 full sun nd", "can i stack a 1.8 and a 1.2")[-1]
    assert "stack ND 1.8 and ND 1.2: 10 stops" in flat(last)


def test_what_stopping_down_would_save_is_no_drawing_to_keep(club: Desk) -> None:
    last = talk(club, "om 35 on E, ring is 28.3", "would stopping down save the 35")[-1]
    assert last.intent == "focus-verdict"
    assert "f/15" in flat(last)


def test_with_glass_or_without_asks_which_and_takes_no_glass(club: Desk) -> None:
    last = talk(club, "k 28 on x-mount", "ring with glass or without")[-1]
    assert flat(last).startswith("No, no glass is needed for infinity")
    assert "through glass" not in flat(last)


def test_whether_the_iris_is_ok_is_told_first(club: Desk) -> None:
    assert flat(talk(club, "dkl 50 on E", "does the aperture still work")[-1]).startswith("iris: by the ring")


def test_the_length_before_tubes_that_have_their_own_is_the_lens_s(club: Desk) -> None:
    last = talk(club, "58mm m42 tubes 12+20 on E")[-1]
    assert "A 58 mm lens" in flat(last)
    assert "12 + 20 = 32 mm" in flat(last)


def test_a_camera_of_ones_own_named_before_a_lone_mount_is_answered(desk: Desk) -> None:
    assert desk.ask("dory would ∞ L be any better").reading
