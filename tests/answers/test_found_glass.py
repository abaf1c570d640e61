"""Glass that was found: told by what is seen of it, by its thread, by how it turned in, and mounts listed by a size."""

from __future__ import annotations

import pytest

from engine.answers.found.unknown_name import with_unknown_name
from tests.answers.picture import flat, numbers
from tests.answers.talks import flat as said
from tests.answers.talks import talk


def _cases(record, name):
    rows = record["quantities"].get(name, [])
    return [row["case"] for row in (rows if isinstance(rows, list) else [rows])]


@pytest.mark.parametrize(
    ("text", "first", "never"),
    [
        ("three lugs, no aperture ring, a lever at the back, a bit over 44", "a-mount", "qbm"),
        ("lens with a loose ring that clamps round the body, 42ish register", "fd-mount", "alpa-35"),
        ("flange to image 74ish, medium format, bayonet", "slx-6000", "m42"),
        ("its a bayonet w/ contacts and an af slot, 46.5", "f-mount", "om-mount"),
    ],
)
def test_what_is_seen_beside_the_register_leaves_others_out(asked, text, first, never):
    found = _cases(asked(text), "register_mm")
    assert found[0] == first
    assert never not in found


def test_a_barrel_with_notches_is_told_by_its_width(asked):
    found = flat(asked("lens with a 41mm barrel, 2 notches, no thread"))
    assert "41 mm cine bayonet" in found
    assert "throat 41 mm" in found


def test_a_number_that_may_be_focal_length_or_register_is_told_as_such(asked):
    assert "If 42 mm is from flange to image" in flat(asked("the mount has a breech ring and 42mm"))


def test_a_thread_of_an_industrial_lens_is_not_overruled_by_what_such_lenses_mostly_have(asked):
    found = asked("industrial lens thread 58 x .75, 12mm flange")
    assert "CS" not in flat(found)
    assert _cases(found, "register_mm")[0] == "m58-12"


def test_the_fraction_beside_a_width_is_a_pitch(asked):
    assert "no mount in the facts has that thread" in flat(asked("unmarked tele, thread 47mm, 0.75"))


def test_two_mounts_to_be_told_apart_get_what_sets_them_apart_and_no_measure_that_does_not(asked):
    found = flat(asked("FD or FL how do i tell"))
    assert "Two levers" in found
    assert "flange to the image of a far window" not in found  # they share it
    assert "Ten pitches" not in found  # and have no thread


@pytest.mark.parametrize(
    ("text", "has", "lacks"),
    [
        ("which mounts share the 44 register", "ef-mount", "a-mount"),
        ("mounts shorter than 17", "z-mount", "cx-mount"),
        ("mounts with 42 x 0.75 thread", "t2", "m42"),
        ("all slr mounts with register above 46", "f-mount", "p6-mount"),
    ],
)
def test_mounts_are_listed_by_a_size(asked, text, has, lacks):
    found = asked(text)
    listed = {*_cases(found, "register_mm"), *_cases(found, "thread_diameter_mm")}
    assert has in listed
    assert lacks not in listed


def test_what_goes_in_and_never_focuses_is_listed_with_how_far_off(asked):
    found = asked("everything with a 39 screw that will go in my LTM ring and then not focus")
    assert numbers(found, "register_mm", "m39-zenit")[0][0] == pytest.approx(45.2)
    by = numbers(found, "register_difference_mm", "m39-zenit, ltm")[0]
    assert by[0] == pytest.approx(16.4, abs=0.01)
    assert "m39-soviet-rf" not in _cases(found, "register_mm")  # same register


def test_screws_alone_are_listed_where_screws_are_asked_for(asked, club):
    found = asked("which lenses go on nx to infinity, screw only")
    kinds = {club.catalogue.mounts[name].coupling for name in _cases(found, "ring_thickness_mm")}
    assert kinds == {"screw"}


def test_with_nothing_between_nothing_is_listed_that_needs_a_ring(asked):
    assert "ring for infinity 1.46" not in flat(asked("name mounts that go straight on without a ring on EF"))


@pytest.mark.parametrize("text", ["it goes in half a turn then gets tight, 39mm", "39 lens binds after half a turn"])
def test_what_gets_tight_too_soon_is_not_home(club, text):
    found = said(club.ask(text))
    assert "it is not home" in found
    assert "39 mm x 24 tpi (J screw (39 mm, 24 tpi)) in 39 mm x 26 tpi" in found


def test_what_gets_tight_after_its_own_turns_is_home(club):
    assert "mostly home" in said(club.ask("m42 lens tight after 3 turns, home?"))


def test_what_another_pitch_may_bind_at_too_is_not_said_to_be_home(club):
    found = said(club.ask("screwed it 3.5 turns and it's tight. m39 into LTM ring"))
    assert "it may be home" in found
    assert "do not force it" in found
    assert "M39x1 (M39x1 rangefinder, M39x1 (44, leaf-shutter rangefinder)) in 39 mm x 26 tpi" in found


def test_a_name_nobody_knows_is_said_to_be_none_and_its_number_is_no_length(club):
    answer = club.ask("frobnitz six 80 on my 44x33 body")
    assert "'frobnitz' is the name of no mount" in said(answer)
    assert answer.question.lens.focal_length_mm == 80


def test_a_mount_that_is_told_beside_a_strange_name_is_enough(club):
    answer = club.ask("zorbex 50mm M42 lens on E")
    assert "zorbex" not in said(with_unknown_name(answer, answer.question, club.knowledge))


def test_a_difference_that_is_asked_is_no_choice(asked):
    for text in ("whats the diff M and LTM", "exakta, whats the difference to RE"):
        assert asked(text)["intent"] == "look-alike"


def test_a_barrel_that_slides_in_is_a_plain_one(asked):
    assert "1.25 in sleeve" in flat(asked("lens slides in, 31.75 barrel"))


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("old slr lens with an arm on the side that has a button on it, bayonet", "is Exakta"),
        ("bayonet but turns the wrong way to lock compared with my others", "locks the other way round"),
        ("cine lens with a smooth sleeve and a little tab, 41 across", "plain sleeve of 41 mm"),
        ("tele with three grub screws round the mount, mount ring comes off", "is Adaptall"),
    ],
)
def test_what_is_told_of_such_looks_comes_first(asked, text, told):
    found = flat(asked(text))
    assert told in found
    assert "Measure: 1." not in found or found.index(told) < found.index("Measure: 1.")


def test_looks_that_speak_against_all_the_mounts_are_not_told_of(asked):
    assert "notch is QBM" not in flat(asked("no aperture ring, lever only, 3 lugs"))


def test_what_it_has_not_leaves_nothing_out(asked):
    assert "pl" in _cases(asked("cine lens with four lobes, no electronics, 52 mm flange to image"), "register_mm")


def test_the_number_asked_of_a_mount_comes_before_what_the_word_means(asked):
    found = flat(asked("register of om?"))
    assert found.index("46 mm") < found.index("From the mount face")


def test_of_two_mounts_the_distance_tells_or_does_not(asked):
    told = {
        "ok so flange is 45.5 and it has an aperture ring. C/Y or K?": "does not tell",
        "F or K? flange 46.4": "F-mount (46.5 mm), not K-mount",
        "measured 60 flange to image. F or K": "neither",
    }
    found = {text: flat(asked(text)) for text in told}
    assert all(words in found[text] for text, words in told.items())
    assert not any("reaches infinity" in text for text in found.values())


def test_a_mount_is_not_told_to_reach_infinity_on_itself_where_it_was_to_be_told(asked):
    found = flat(asked("C or CS, 12.6 from flange to image"))
    assert "it is CS" in found
    assert "reaches infinity" not in found


@pytest.mark.parametrize("text", ["L39 = LTM?", "SR = MD = MC?", "is K the same as PK"])
def test_two_names_of_one_mount_are_one(asked, text):
    assert "one and the same mount" in flat(asked(text))


def test_a_cam_is_no_camera_and_a_lens_has_its_own_ring(club):
    question = club.ask("lens has a focusing ring, no cam at the back, m39").question
    assert not question.bodies
    assert not question.adapters


def test_how_to_measure_is_answered_with_how(asked):
    assert flat(asked("how to measure thread pitch without a gauge")).startswith("Measuring a pitch")


def test_a_width_told_roughly_is_settled_by_pitch_and_distance(asked):
    found = asked("screw thread approx 25, 32 tpi or so, image lands 12.6 behind")
    assert _cases(found, "register_mm")[0] == "cs"
    assert "no mount in the facts" not in flat(found)


def test_a_number_behind_the_word_pitch_is_the_pitch_and_a_worded_number_no_distance(club):
    told = dict(club.ask("measured: dia 38.9 pitch .98 flange 28.7. what's that").question.values)
    assert (told["thread"], told["flange_to_image"]) == ("38.9 mm x 0.98 mm", "28.7 mm")
    told = dict(club.ask("bayonet, 52mm reg, 54 bore, four flanges").question.values)
    assert told["flange_to_image"] == "52 mm"


def test_a_bore_beside_a_register_leaves_out_what_is_narrower(asked):
    found = _cases(asked("bayonet, 52mm reg, 54 bore, four flanges"), "register_mm")
    assert found[0] == "pl"
    assert "bay41" not in found


def test_the_mount_that_was_named_is_meant_rather_than_one_that_shares_its_seat(asked):
    assert "it is M-mount." in flat(asked("flange 27.8 four claws tiny. M?"))


def test_the_width_of_a_thread_and_a_pitch_that_is_not_its_own_are_told_apart(asked):
    assert "No, T2 and M42 are not the same" in flat(asked("is a 42mm thread with 0.75 pitch m42?"))


@pytest.mark.parametrize(
    ("text", "first"),
    [("what has the shortest flange", "m42-656"), ("biggest throat mirrorless", "g-mount")],
)
def test_the_mounts_are_told_in_the_order_of_the_size_asked_for(asked, text, first):
    assert _cases(asked(text), "register_mm")[0] == first


def test_screw_mounts_alone_are_listed_by_their_register(asked, club):
    found = _cases(asked("screw mounts shorter than 30"), "register_mm")
    assert {club.catalogue.mounts[name].coupling for name in found} == {"screw"}


def test_a_lens_with_lugs_has_not_the_thread_that_its_kind_mostly_has(asked):
    found = asked("tv lens big bayonet 48 flange, three slots")
    assert _cases(found, "register_mm")[0] == "b4"
    assert "thread 1-32" not in flat(found)


def test_numbers_of_what_fools_the_hand_are_told_too(asked):
    assert numbers(asked("what looks like a 26 mm 36 tpi objective thread? M26x0.75"), "thread_pitch_mm")
    found = asked("what looks like M39x1 SLR")
    assert "ltm" in _cases(found, "register_mm")


def test_a_tube_of_a_projector_without_a_thread_is_its_barrel(asked):
    assert "Projection barrel 52.5" in flat(asked("smooth chrome tube, 52.4mm, no thread. from a school projector"))


def test_a_barrel_with_a_pitch_is_one_with_a_thread(asked):
    assert numbers(asked("little barrel, 20.2 mm across, 36 to the inch"), "thread_diameter_mm")[0][0] == 20.32


def test_mounts_between_two_registers_are_listed(asked):
    found = asked("list mounts with register between 40 and 42")
    told = [numbers(found, "register_mm", name)[0][0] for name in _cases(found, "register_mm")]
    assert told
    assert all(40 <= value <= 42 for value in told)


def test_a_width_that_no_mount_has_is_said_to_be_none(asked):
    assert "No mount in the facts has a thread of 61 mm" in flat(asked("61 mm thread?"))


@pytest.mark.parametrize("text", ["is an RMS thread the same as M20", "does M20 screw into RMS thread"])
def test_a_metric_thread_told_by_its_width_alone_is_set_against_the_other(asked, text):
    found = flat(asked(text))
    assert found.startswith("No, RMS")
    assert "20.32 mm wide with a pitch of 0.706 mm" in found


@pytest.mark.parametrize(
    "text", ["screwed an M42 onto a T2 ring and its jammed. wrench it?", "M42 lens stuck on a T2 ring"]
)
def test_a_lens_stuck_in_a_ring_of_another_thread_is_told_why(asked, text):
    found = flat(asked(text))
    assert "M42x1 and M42x0.75 are not the same" in found
    assert "mirror: The register is right" not in found  # no danger of a body that is not there


@pytest.mark.parametrize("rest", ["R slr, M and K lenses. how thick are they", "R slr and K lenses"])
def test_a_kind_of_film_camera_that_opens_a_list_of_lenses_is_one_of_them(asked, rest):
    found = asked(f"need rings for an L body: {rest}")
    assert next(value[0] for value in numbers(found, "ring_thickness_mm")) == 27
    assert "Together 3" in flat(found) or "Together 2" in flat(found)


def test_a_film_camera_with_its_article_stays_a_body(asked):
    found = flat(asked("i have a Z body, a K slr and OM lenses. how do i use the OM lenses on both"))
    assert "OM-mount on K-mount" in found


@pytest.mark.parametrize(
    "text", ["lens screws in a 1 inch hole, 32 tpi", "slips into a 25.4 hole, 32 threads per inch"]
)
def test_a_hole_told_by_the_name_of_its_thread_is_that_thread(club, text):
    (found,) = talk(club, text)
    assert "1-32 UN (25.4 mm, pitch 0.794 mm): C, CS" in said(found)
    assert "no lens mount" not in said(found)


@pytest.mark.parametrize(
    ("seen", "mount"), [("3 lug bayonet, register 45.5, what is it", "k-mount"), ("screw lens, register 45.5", "m42")]
)
def test_what_was_seen_of_a_lens_holds_when_it_is_to_go_on_a_body(club, seen, mount):
    _, found = talk(club, seen, "will that go on E")
    assert found.question.lens.ids[0] == mount


def test_where_an_unknown_lens_can_be_used_is_told_by_its_register(club):
    _, found = talk(club, "3 lug bayonet, register 45.5, what is it", "where can i use it")
    assert found.intent == "list-fits"
    assert "K-mount: a plain ring keeps infinity on" in said(found)
    assert "E-mount 27.46 mm" in said(found)
    assert "M42" not in said(found)


@pytest.mark.parametrize("turn", ["which cameras can take it", "what other bodies then"])
def test_which_cameras_take_a_lens_just_identified_is_a_list(club, turn):
    _, found = talk(club, "got an old lens, thread is 1 inch with 32 tpi, what is it", turn)
    assert found.intent == "list-fits"
    assert "Micro Four Thirds" in said(found)


@pytest.mark.parametrize("turn", ["register?", "flange distance?", "and flange to film?", "flange to sensor"])
def test_a_measure_by_its_name_alone_is_asked_of_what_was_spoken_of(club, turn):
    _, found = talk(club, "50mm M42 on E", turn)
    assert said(found).startswith("The registers differ by 27.46 mm: M42 45.46 mm, E-mount 18 mm")


def test_the_throat_of_what_was_spoken_of(club):
    _, found = talk(club, "50mm M42 on E", "throat?")
    assert "throat 46.1 mm" in said(found)


def test_a_width_in_whole_millimetres_is_rounded_where_the_pitch_tells_the_thread(club):
    asked, measured, again = talk(
        club, "i found a lens, thread 25 mm wide, 32 tpi", "12.5 mm from the paper when sharp far away", "c or cs?"
    )
    assert "1-32 UN (25.4 mm, pitch 0.794 mm): C, CS" in said(asked)
    for answer in (measured, again):
        assert answer.intent == "identify-mount"
        assert said(answer).startswith("25 mm across, pitch 0.794 mm and 12.5 mm from flange to image: that is CS.")


@pytest.mark.parametrize("text", [
    "FD 300 f4 with the 2x converter on MFT", "OM 200/4 with a 2x doubler on MFT", "M42 135/3.5 with a 2x doubler on Z",
])  # fmt: skip
def test_an_extender_told_by_its_factor_is_found_on_the_mount_of_the_lens(club, text):
    found = talk(club, text)[-1]
    assert "2x" in found.chains[0].title
    assert "Not with the pieces" not in said(found)


@pytest.mark.parametrize(("first", "turn", "words"), [
    ("FD 300 f4 with the 2x converter on MFT", "how much light would i win taking the converter out", "2x costs 2.0"),
    ("OM 200/4 with a 2x doubler on MFT, equivalent?", "and how much brighter without the doubler", "2x costs 2.0"),
    ("OM 28/2 with a 0.71 reducer on MFT, equivalent?", "how many stops darker with the plain ring", "0.71x gains 1.0"),
])  # fmt: skip
def test_the_light_of_glass_that_would_come_off_is_told(club, first, turn, words):
    assert words in said(talk(club, first, turn)[-1])


@pytest.mark.parametrize("turn", ["friend offers a 0.64 one. numbers for that?", "and what does a 0.64x give"])
def test_after_its_light_another_reducer_is_viewed_as_the_one_before(club, turn):
    found = talk(club, "om 28/2 with 0.71 reducer on MFT, becomes?", "light gained?", turn)[-1]
    assert found.intent == "crop-equivalent"
    assert "17.9 mm" in said(found)
