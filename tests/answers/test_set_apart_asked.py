"""Choices, settings and figures that disagree, as they are asked for."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers
from tests.answers.talks import talk


def test_two_reducers_are_told_by_the_light_of_each(asked):
    found = asked("0.64 or 0.71 booster, what does each gain in light")
    assert [round(low, 2) for low, _ in numbers(found, "light_difference_stops")[:3]] == [1.29, 0.99, 0.3]


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


def test_an_everyday_word_is_no_name_elsewhere(asked):
    assert asked("is there play between lens and ring harmful")["intent"] == "hazard"
    assert asked("can i put a tilt ring on a 50mm M42 lens for E")["intent"] != "definition"


def test_a_kind_asked_about_is_taken_from_the_mounts_of_the_lens_spoken_of(club):
    second = "couldnt it be one of those rangefinder ones, same screw isnt it"
    found = talk(club, "brass lens, 39 thread, there is no focus ring at all", second)[-1]
    assert 28.8 in [row.value.nominal for row in found.quantities or () if row.name == "register_mm"]


def test_the_same_mount_is_no_all_clear_where_its_pin_can_lock(asked):
    text = flat(asked('seller: "fits all K". i have an old dslr with K, is that the same'))
    assert "extra pin" in text


def test_the_reason_comes_before_coverage_where_no_frame_is_named(asked):
    assert flat(asked("why do the corners go pink with my old rangefinder 15")).startswith("coloured edges")


def test_that_none_gives_infinity_is_said_first(asked):
    assert flat(asked("can i put my M lenses on any slr")).startswith("None with infinity.")


def test_a_number_too_small_for_a_focal_length_is_the_factor_of_a_reducer(asked):
    assert numbers(asked("what mm in ibis for a 105 on .64"), "ibis_focal_mm")[0] == pytest.approx((67.2, 67.2))


def test_advice_on_the_mount_that_is_named_comes_first(club):
    found = talk(club, "my b4 zoom on mft", "edges are magenta green, why")[-1]
    assert "colour prism" in found.lines[0].text


def test_what_is_asked_about_comes_before_what_else_the_chain_warns_of(club):
    found = talk(club, "400 6.3 t2 preset, L body", "it is 1.1 kg, ok on the ring?")[-1]
    texts = [line.text for line in found.lines]
    heavy = next(n for n, text in enumerate(texts) if text.startswith("heavy lens"))
    assert heavy < next(n for n, text in enumerate(texts) if text.startswith("By T2"))


def test_a_shutter_angle_asked_as_a_setting_is_told_in_seconds(asked):
    found = asked("video shutter 180 rule setting for old lens at 25fps")
    assert numbers(found, "shutter_s")[0][0] == pytest.approx(1 / 50)


@pytest.mark.parametrize("text", ["where's the closest camera repair", "can you order me the ring"])
def test_what_a_shop_or_a_technician_does_is_not_answered_here(asked, text):
    assert asked(text)["intent"] == "out-of-scope"


def test_the_word_for_a_thing_described_is_told(asked):
    assert flat(asked("what's the word for the distance mount to film")).startswith(
        "That is register: From the mount face"
    )


@pytest.mark.parametrize(
    ("text", "lens", "bodies"),
    [
        ("E body or MFT for M42 lenses", ["m42"], ["e-mount", "mft-mount"]),
        ("an E body or Z for M42 lenses", ["m42"], ["e-mount", "z-mount"]),
        ("EF dslr or E for old M42 lenses", ["m42"], ["ef-mount", "e-mount"]),
        ("RF camera or L for FD glass", ["fd-mount"], ["rf-mount", "l-mount"]),
        ("MFT body vs E for D mount lenses", ["d"], ["mft-mount", "e-mount"]),
        ("CX body or MFT for little 16mm film lenses?? fit and coverage", ["c"], ["cx-mount", "mft-mount"]),
        ("E or MFT for lenses from a 16 mm camera", ["c"], ["e-mount", "mft-mount"]),
        ("full frame Z or MFT for regular 8 lenses", ["d"], ["z-mount", "mft-mount"]),
    ],
)
def test_a_mount_set_against_a_body_is_a_body_too(desk, text, lens, bodies):
    question = desk.ask(text).question
    assert question.intent == "compare"
    assert [one.id for one in question.lenses] == lens
    assert [one.id for one in question.bodies] == bodies


def test_lenses_of_a_film_are_taken_for_the_mount_that_most_of_them_have_and_that_is_said(asked):
    found = asked("CX or MFT body for 16mm film lenses")
    assert "Taken for C, as most lenses made for 16 mm film are" in flat(found)
    assert {(round(low, 2)) for low, _ in numbers(found, "ring_thickness_mm")} == {0.53, -1.72}


@pytest.mark.parametrize(
    ("text", "best"),
    [
        ("cs camera or c camera, I own a mix of both lens kinds", "CS serves them all best"),
        ("C or CS body for my mixed C and CS lenses", "CS serves them all best"),
        ("which is better for both M42 and T2 lenses, an EF or an F body", "EF-mount serves them all best"),
        ("M or LTM body, i have lenses of both", "M-mount serves them all best"),
    ],
)
def test_of_several_bodies_for_several_lenses_the_one_that_serves_all_comes_first(asked, text, best):
    found = asked(text)
    assert found["intent"] == "compare"
    assert flat(found).lstrip("> ").startswith(best)


@pytest.mark.parametrize("text", ["EF ring or PL ring for an L body", "K or FD adapter for my E body"])
def test_two_rings_for_one_body_are_set_apart(asked, text):
    assert asked(text)["intent"] == "compare"


@pytest.mark.parametrize(
    "text",
    [
        "old zoom vs old prime when the adapter is a touch thin, which suffers more",
        "does a zoom or a prime suffer more from a bad ring",
    ],
)
def test_a_zoom_suffers_more_than_a_prime_from_a_ring_that_is_off(asked, text):
    found = asked(text)
    assert found["intent"] == "compare"
    assert "The zoom suffers more" in flat(found)[:120]


@pytest.mark.parametrize("mount", ["E", "RF", "EF", "K"])
def test_a_body_works_the_iris_of_a_lens_of_its_own_mount(asked, mount):
    found = flat(asked(f"how do I get {mount} lens on {mount} body"))
    assert "iris: by the body" in found
    assert "stuck" not in found


@pytest.mark.parametrize(
    "text",
    [
        "For my tele I could get the F to M ring and then M to E that I already own, or simply a single F to E ring. "
        "Which would you take for a 300mm lens, and why?",
        "K to M plus M to Z or a straight K to Z ring, which is better for a 50mm",
    ],
)
def test_two_rings_or_one_are_set_apart(asked, text):
    found = asked(text)
    assert found["intent"] == "compare"
    assert "has fewer joints: less play" in flat(found)
    assert [len(chain["pieces"]) for chain in found["chains"]] == [2, 1]


def test_a_lens_of_the_smaller_frame_that_does_not_go_on_is_told_from_the_larger(asked):
    found = asked(
        "My cousin has a dslr of the crop kind and lent me its EF-S wide. I have a full frame EF body. It doesn't seem "
        "to go on, yet both are called EF. What's the difference?"
    )
    assert found["intent"] == "look-alike"
    assert "not EF-S on EF-mount" in flat(found)


@pytest.mark.parametrize(
    "text", ["T stop or f stop for video, which should I use", "should i trust t stops or f stops for exposure"]
)
def test_t_stops_are_set_against_f_numbers_and_are_no_mount(asked, text):
    found = asked(text)
    assert "For exposure the T-stop" in flat(found)
    assert "T2" not in found["reading"]


@pytest.mark.parametrize(
    "text", ["step up rings vs a filter for each lens", "step rings or a filter per lens, pros and cons"]
)
def test_one_filter_with_rings_is_set_against_a_filter_each(asked, text):
    found = asked(text)
    assert found["intent"] == "compare"
    assert flat(found).startswith("one large filter with step-up rings or a filter for each lens")


@pytest.mark.parametrize("said", ["is RF or EF better for adapting", "EF or RF for old lenses"])
def test_a_mirrorless_mount_takes_more_old_lenses_than_one_of_slrs(asked, said):
    text = flat(asked(said))
    assert "RF-mount takes the most SLR mounts by a plain ring" in text
    assert "EF-mount: takes 28 SLR mounts" in text


def test_two_lens_mounts_for_one_body_are_not_taken_for_bodies(asked):
    assert "takes the most SLR mounts" not in flat(asked("FD or OM for mft, which adapts better"))


@pytest.mark.parametrize(
    ("said", "starts"),
    [
        (
            "which lights more, MFT or E aps-c, for a B4 lens",
            "Four Thirds is lit the fuller: 42 to 46 %, APS-C 26 to 28 %.",
        ),
        (
            "which covers better for a C lens with a 13 mm circle, Q or 1-mount",
            "1/1.7-type is lit the fuller: 100 %, 1-type 90 %.",
        ),
    ],
)
def test_the_fuller_lit_of_two_bodies_is_told_first_where_that_is_asked(asked, said, starts):
    assert flat(asked(said)).startswith(starts)


@pytest.mark.parametrize(
    "text", ["M42 or M65 helicoid for a medium format lens", "is an M65 helicoid better than an M42 for big lenses"]
)
def test_helicoids_are_set_apart_by_their_bore(asked, text):
    assert "a clear bore of 60 mm against 38 to 40" in flat(asked(text))


@pytest.mark.parametrize("say", [
    "25-55 or 36-90 helicoid for a 75mm enlarger lens",
    "which helicoid for a 75 mm enlarger lens, 36-90 or 25-55",
    "is the 36-90 better than 25-55 for a 75mm enlarging lens",
    "for macro with 75mm enlarging lens: 25 to 55 or 36 to 90 mm helicoid",
])  # fmt: skip
def test_two_ranges_with_one_helicoid_are_two_helicoids(asked, say):
    found = asked(say)
    text = " ".join(found["text"].split())
    assert found["intent"] == "compare"
    assert text.index("36 to 90 mm helicoid, 54 mm of travel comes nearest") < text.index("25 to 55 mm helicoid")
    assert "the shut length together, 25 mm or 36 mm" in text


def test_a_zoom_beside_a_helicoid_stays_a_zoom(asked):
    pieces = asked("36-90 zoom or a 25-55 helicoid for close up")["reading"]
    assert "36..90 mm helicoid" not in pieces


@pytest.mark.parametrize("say", [
    "plain ring or .71 for my fd 50 on mft, filming indoors",
    ".71 or a plain ring for om 50 on mft",
    "a plain adapter vs 0.7 for k 28 on mft, night street",
])  # fmt: skip
def test_a_number_below_one_set_against_a_ring_is_a_reducer(asked, say):
    found = asked(say)
    assert found["intent"] == "compare"
    assert "stops more light than" in found["text"].splitlines()[0]


@pytest.mark.parametrize(("say", "head"), [
    ("25mm tube on my 50 or a 2x converter, which one eats more light", "2 stops, 25 mm of tube costs 1.17 stops"),
    ("25/1.4 c mount or 28/2.8 m42 on mft in a dark bar, how many stops apart", "lets in 2 stops more light"),
    ("50/1.2 fd vs 50/1.8 fd, how much brighter", "lets in 1.17 stops more light"),
    ("a 20 tube or two of 10 for my 50", "The same length, 20 mm. On 50 mm at infinity 0.4x either way."),
    ("three 12mm tubes or one 36mm on m42", "The same length, 36 mm."),
])  # fmt: skip
def test_what_sets_two_apart_is_told_in_its_own_measure(asked, say, head):
    assert head in " ".join(asked(say)["text"].split())[:200]


def test_a_lens_on_645_is_no_lens_of_645_mm(asked):
    found = asked("is a 40mm on 645 the same as 40mm m42 on my E full frame? view i mean")
    assert "645 mm" not in found["text"]


@pytest.mark.parametrize(("say", "said"), [
    ("preset m42 135 or auto m42 135 on a plain ring", "Preset: no pin or lever"),
    ("single coated or multi coated for backlight", "Several layers keep more contrast"),
    ("two 1.4x stacked vs one 2x", "Two of 1.4x make 1.96x"),
])  # fmt: skip
def test_kinds_of_lenses_are_set_apart(asked, say, said):
    found = asked(say)
    assert found["intent"] == "compare"
    assert said in " ".join(found["text"].split())


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("0.64 reducer against a plain ring for dark clubs", "0.64x gains 1.29 stops of light."),
        ("is a focal reducer or a plain ring better for low light", "0.71x gains 0.99 stops of light."),
        ("50 or 80 enlarger lens for slide copying on full frame, which is easier", "At 1x the 80 mm leaves"),
        ("60mm or 105mm enlarger glass for negs at 1:1, which leaves more room", "At 1x the 105 mm leaves"),
        ("M645 or C645 lens for an adapter without electronics", "For the iris rather M645."),
        ("which has the wider throat, Z or E", "Z-mount has the wider opening, 55 mm against 46.1 mm"),
    ],
)  # fmt: skip
def test_what_sets_them_apart_is_told_first(asked, text, head):
    assert asked(text)["text"].replace("\n", " ").startswith(head)


def test_the_longer_of_two_lengths_takes_the_longer_tube(asked):
    found = asked("50 or 80 enlarger lens for slide copying on full frame, which is easier")
    assert {row["case"]: row["least"] for row in found["quantities"]["extension_mm"]} == {"50 mm": 50, "80 mm": 80}
