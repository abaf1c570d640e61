"""What is found is told in any order; each of several lenses is answered; the first answer is the one that helps."""

from __future__ import annotations

from itertools import product

import pytest

from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import flat

WIDTHS = ("42mm thread", "rear thread measures 41.9", "thread dia 42", "outer diameter 41.9, threaded")
PITCHES = ("1mm pitch", "pitch approx 1.0 mm", "ten crests 10 mm")
REGISTERS = ("ffd 45.5", "image forms 45.5mm behind the flange", "45.5 from flange to paper at infinity")


@pytest.fixture(scope="module")
def found(club):
    def ask(text):
        return record_of(club.ask(text, Talk()), club.knowledge)

    return ask


def test_width_pitch_and_register_are_read_in_any_order(found):
    amiss = []
    for width, pitch, register in product(WIDTHS, PITCHES, REGISTERS):
        for parts in ((width, pitch, register), (register, pitch, width), (pitch, width, register)):
            record = found(f"what mount is this: {', '.join(parts)}")
            cases = {row["case"] for row in record["quantities"].get("register_mm", [])}
            if record["intent"] != "identify-mount" or "m42" not in cases:
                amiss.append(record["question"])
    assert not amiss


def test_a_lens_without_a_mount_beside_another_is_told_of_too(found):
    record = found("one projector lens and a 58 m42 on L mount")
    assert record["chains"][0]["pieces"][0]["front"] == "m42"
    assert "It depends on the projector lens" in " ".join(record["text"].split())


def test_each_of_two_lenses_has_its_rings_where_no_body_is_told(found):
    cases = {row["case"] for row in found("my FD 50 and my OM 28")["quantities"]["ring_thickness_mm"]}
    assert {"fd-mount to e-mount", "om-mount to e-mount"} <= cases


def test_a_way_by_another_mount_takes_the_ring_between(found):
    record = found("C to CS to E")
    assert [piece["front"] for piece in record["chains"][0]["pieces"]] == ["c", "cs"]
    assert record["chains"][0]["verdict"] == "infinity"


def test_where_infinity_fails_a_whole_number_is_the_lens(found):
    record = found("no infinity at 35 on K-E ring")
    assert "35 mm K-mount lens" in record["reading"]
    assert "the lens sits too far out" in " ".join(record["text"].split())


def test_a_plate_of_glass_is_no_lens_and_a_hole_no_length(found):
    assert found("5mm plate glass behind 16mm lens")["reading"] == "can a 16 mm lens reach infinity, 5 mm of glass"
    assert "22 mm bore" in found("hole in adapter is 22mm")["reading"]


def test_a_ring_that_could_be_made_comes_before_pieces_that_stop_close_up(found):
    first, second = found("B4 on NX")["chains"][:2]
    assert (first["verdict"], second["verdict"]) == ("infinity", "macro-only")
    seat = first["pieces"][0]["thickness_mm"]
    assert seat["least"] < 48 - 25.5 < seat["greatest"]  # the two registers


def test_the_density_for_a_scene_is_told_by_every_usual_stop(found):
    rows = {row["case"]: row["least"] for row in found("least nd in full sun")["quantities"]["nd_stops"]}
    assert rows["f/1.4"] == pytest.approx(8.4, abs=0.1)
    assert rows["f/1.4"] - rows["f/2.8"] == pytest.approx(2, abs=0.01)


@pytest.mark.parametrize(
    ("told", "mount"),
    [
        ("25mm 1:1.9 lens, thread about 25 mm wide, on mft", "c"),
        ("12.5mm f1.4 with a 25mm thread on E", "c"),
        ("25mm f1.9 with roughly one inch thread on mft", "c"),
        ("a 13mm f1.9 lens with a 16 mm thread on mft", "d"),
        ("a 13mm f1.9 lens with a 15.8 mm thread on mft", "d"),
        ("58mm f2 lens with a 41.8 mm thread on E", "m42"),
        ("75mm enlarger lens with a 32.5mm thread on E", "enl325"),
    ],
)
def test_a_lens_told_by_the_width_of_its_screw_has_the_commonest_mount_of_that_width(found, told, mount):
    assert found(told)["entities"]["lens"]["mount"] == mount


def test_a_width_in_whole_millimetres_leaves_open_what_it_was_rounded_from(found):
    record = found("lens screws in, 25mm across, which mount")
    assert {row["case"] for row in record["quantities"]["register_mm"]} >= {"c", "cs"}
    assert "M25x0.5" in record["text"]


@pytest.mark.parametrize(
    "told",
    [
        "35mm enlarger lens 50 2.8 m39 on fuji x",
        "enlarger lens for 35mm film, 50mm 2.8, m39, on E",
        "35mm film enlarger lens 50mm f2.8 on E",
    ],
)
def test_the_film_that_an_enlarger_lens_is_for_is_no_second_lens(found, told):
    lens = found(told)["entities"]["lens"]
    assert (lens["focal_length_mm"], lens["f_number"]) == (50.0, 2.8)


@pytest.mark.parametrize("told", ["35mm enlarger lens f2.8 on E", "35mm enlarger lens on E with a 20mm tube"])
def test_an_enlarger_lens_of_35_mm_keeps_its_length_where_no_other_is_told(found, told):
    assert found(told)["entities"]["lens"]["focal_length_mm"] == 35.0


def test_an_enlarger_lens_is_reckoned_with_what_is_usual_and_says_so(found):
    record = found("50mm f2.8 enlarger lens on E with a 17-31 helicoid, infinity?")
    chain = record["chains"][0]
    assert (chain["verdict"], chain["certainty"]) == ("infinity", "unknown")
    text = " ".join(record["text"].split())
    assert "Reckoned with 47.5 mm from its flange to the image (42 to 52 mm is usual" in text
    assert "infinity with it at 28.5 mm" in text
    assert "Measure it first" in text


def test_a_stack_too_long_for_every_enlarger_lens_of_its_length_is_close_up_only(found):
    chain = found("50mm enlarger lens with a 60 mm tube on E, infinity?")["chains"][0]
    assert (chain["verdict"], chain["certainty"]) == ("macro-only", "likely")


def test_the_thread_told_of_an_enlarger_lens_is_that_of_its_kind(found):
    assert found("105mm enlarger lens, M42x1, on Z")["entities"]["lens"]["mount"] == "m42-none"


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("no writing on it, 39mm thread with 1mm pitch, has an iris but no focus ring", "Enlarger 39"),
        ("50mm thread 0.75 pitch, nothing to focus with, what is it", "Enlarger 50"),
        ("lens 42mm thread pitch 1, no focus ring, iris clicks", "Enlarger 42"),
    ],
)
def test_a_screw_lens_without_a_focus_ring_is_most_likely_of_an_apparatus(talked, text, name):
    found = flat(talked(text))
    assert found.startswith("Without a focus ring it is most likely")
    assert name in found[:200]


def test_a_focal_length_beside_a_thread_is_no_width(talked):
    found = flat(talked("42mm thread, 1mm pitch, 50mm f/2 lens, what mount"))
    assert found.startswith("42 mm across and pitch 1 mm")


def test_a_pitch_of_half_a_millimetre_is_not_asked_for_again(talked):
    found = flat(talked("12 mm dia, half mm pitch, from a dash cam"))
    assert "12 mm across and 0.5 mm of pitch" in found
    assert "What is the pitch?" not in found


def test_what_must_stand_behind_an_enlarger_lens_is_told_in_millimetres(found):
    text = " ".join(found("what length of tubes for infinity with a 105mm enlarger lens on E")["text"].split())
    assert text.startswith("For infinity usually 71.25 to 92.25 mm of rings and helicoid together")  # 0.85..1.05 f - 18


def test_the_room_for_a_helicoid_is_told_at_infinity_and_for_the_size(found):
    text = " ".join(found("which helicoid for a 75 enlarger on E, infinity to 1:2")["text"].split())
    assert "83.25 to 98.25 mm of tubes, helicoid or bellows; 45.75 to 60.75 mm at infinity" in text


@pytest.mark.parametrize(
    "said",
    [
        "heavy lens, 4 flange breech, register 52 on the bench",
        "four flange breech lens, 52 mm to the image. which mount",
    ],
)
def test_flanges_that_are_counted_are_no_register(found, said):
    record = found(said)
    assert "PL: breech lock; register 52 mm" in flat(record)
    assert "4 mm from flange" not in flat(record)


@pytest.mark.parametrize(
    ("said", "mount"),
    [
        ("focus to infinity at 45.4 from a 42mm screw, what mount", "M42"),
        ("which mount is it: infinity at 27.8, bayonet", "M-mount"),
    ],
)
def test_infinity_at_a_bare_number_is_the_register_where_the_mount_is_asked(found, said, mount):
    assert f"{mount}: " in flat(found(said))
    assert "from flange to image" in flat(found(said))


def test_a_thread_told_as_either_male_or_female_is_taken_as_measured_across(found):
    text = flat(found("female or male whatever, thread on lens 38.9mm wide, 10 threads = 9.8mm"))
    assert "LTM" in text
    assert "M40x1" not in text


@pytest.mark.parametrize(
    "said",
    [
        "bayonet lens, came with no camera, markings gone",
        "old bayonet lens without a camera, engraving worn off",
        "screw lens, no camera, lettering rubbed off",
        "lens only, camera sold years back, no marks left",
        "somebody gave me a lens but no camera, its a bayonet",
        "picked up a lens, the name plate is gone",
        "bayonet lens, seller doesnt know the camera",
    ],
)
def test_a_lens_without_camera_or_name_is_to_be_identified(found, said):
    record = found(said)
    assert record["intent"] == "identify-mount"
    assert "flange to the sharp image of a far window" in flat(record)


def test_four_flanges_and_a_bore_tell_the_mount_and_not_what_is_lit(found):
    record = found("lens has four flanges and 54 bore")
    assert record["intent"] == "identify-mount"
    assert "PL: breech lock; register 52 mm" in flat(record)


@pytest.mark.parametrize(
    "said", ["list every mount that can go on E by a plain ring", "which mounts go on E by a plain ring"]
)
def test_by_a_ring_is_how_it_is_done_and_names_no_mount(found, said):
    assert found(said)["reading"].startswith("what fits an E-mount body")


@pytest.mark.parametrize(
    "text",
    [
        "mini lenses no aperture ring from a camera taking cartridge film. what mount are they?",
        "miniature bayonet lenses for 110 film, what mount is it",
        "what mount do lenses of the little cartridge slr have",
    ],
)
def test_a_film_that_one_mount_is_of_tells_the_mount(found, text):
    record = found(text)
    assert "Auto 110: bayonet; register 27 mm" in flat(record)
    assert "EF-mount" not in flat(record)


@pytest.mark.parametrize(
    "text",
    ["one has a thread 42 mm wide at the back. what do i call it", "how do i name a lens whose rear thread is 42 wide"],
)
def test_how_wide_a_thread_is_is_no_width_of_a_barrel(found, text):
    told = flat(found(text))
    assert "M42" in told
    assert "T2" in told


def test_a_claw_on_the_iris_ring_is_that_of_one_mount(found):
    assert "46.5 mm" in flat(found("pronged claw on the aperture ring, three lugs. mount?"))


@pytest.mark.parametrize(
    "text",
    [
        "ten crests on this 1 inch thread measure 7.9mm. so which mount",
        "ten crests on a 1 inch thread measure 7.94 mm",
        "10 threads on this 1 inch thread take 7.94",
    ],
)
def test_crests_counted_on_a_thread_that_is_named_give_its_pitch(found, text):
    told = flat(found(text))
    assert told.startswith("A thread of 25.4 mm across and 0.79")
    assert "CS: thread 1-32 UN" in told


@pytest.mark.parametrize("first", ["screw lens 39mm from a box, goes on what", "what bodies take my 39mm screw lens"])
@pytest.mark.parametrize("turn", ["about 45", "about 45 and it has a focus ring", "i measure about 45"])
def test_a_screw_of_many_registers_is_asked_to_be_measured_and_told_by_that(talked, first, turn):
    assert "the name alone does not tell which it is" in flat(talked(first))
    found = talked(first, turn)
    assert "M39x1 SLR" in flat(found)
    assert "screwed straight into M39x1 rangefinder" not in flat(found)


@pytest.mark.parametrize(
    "text",
    [
        "8mm film lens drops straight through my C to MFT ring, whats up",
        "regular 8 lens drops through the C to MFT adapter",
        "lens made for 8mm film slides through my C to E adapter",
        "cine lens from an 8mm film camera falls right through my C to E ring",
    ],
)
def test_a_ring_that_a_lens_drops_through_does_not_tell_its_mount(found, text):
    told = flat(found(text))
    assert told.startswith("5/8-32 UN (15.88 mm) drops through 1-32 UN without catching")
    assert "Taken for D" in told
    assert "D to C cup + C to" in told


def test_a_ring_that_holds_the_lens_tells_its_mount(found):
    assert flat(found("8mm film lens on my C to MFT ring")).startswith("A C-mount lens on a Micro Four Thirds body")
    assert "D-mount" not in flat(found("C lens for 8mm film drops through my C to MFT ring"))[:80]


@pytest.mark.parametrize(
    ("say", "mount"),
    [
        ("25.3mm thread, ten turns measure 7.9", "1-32 UN"),
        ("thread 38.9, ten turns 9.8mm", "39 mm x 26 tpi"),
        ("15.8mm screw, 10 turns make 8 mm. mount?", "5/8-32 UN"),
        ("thread 41.8mm and it takes ten turns for 7.5 mm", "M42x0.75"),
        ("25.3 mm male thread, five turns measure 3.95", "1-32 UN"),
    ],
)
def test_so_many_turns_over_a_length_are_its_pitch_and_the_other_number_its_width(found, say, mount):
    record = found(say)
    assert record["intent"] == "identify-mount"
    assert mount in flat(record)
    assert "turns of its thread" not in flat(record)


@pytest.mark.parametrize(
    "say",
    [
        "lens from a leaf shutter slr of the sixties, bayonet, no aperture ring on it, three lugs. name of mount?",
        "60s leaf shutter slr lens, bayonet, no iris ring on the lens. what mount",
        "slr lens, leaf shutter camera, bayonet, rear 33 mm wide, no aperture ring",
    ],
)
def test_the_shutter_of_the_camera_tells_of_what_mount_its_lens_is(found, say):
    assert "most likely this one" in flat(found(say))
    assert "DKL: bayonet" in flat(found(say))


def test_a_lens_of_a_larger_leaf_shutter_reflex_is_of_its_own_mounts(found):
    text = flat(found("6x6 slr lens with leaf shutter inside, bayonet. mount?"))
    assert "V-mount (6x6)" in text
    assert "P6" not in text


@pytest.mark.parametrize(
    ("text", "mount"),
    [
        ("16mm cine prime with the one inch thread, on an X-mount body?", "c"),
        ("28mm lens with a 42x1 thread on Z", "m42"),
        ("lens with a 42x1 thread on Z", "m42"),
        ("50mm with 39 thread, rangefinder, on E", "ltm"),
    ],
)
def test_a_lens_told_by_its_thread_is_taken_for_the_mount_that_has_it(found, text: str, mount: str) -> None:
    assert found(text)["entities"]["lens"]["mount"] == mount


def test_what_is_clamped_is_of_no_mount_by_the_thread_of_its_barrel(found) -> None:
    assert "mount" not in found("old projector lens, one inch thread, 25mm. Z body ok?")["entities"].get("lens", {})


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("what f is one third below f2", "f/2.24"),
        ("allowed error for a ring under a 20/2.8 on full frame", "forgives 0.084 mm"),
        ("flush means what exactly, sorry", "level with the flange"),
        ("why does the 24 show the ring error and the 135 not", "square of the focal length"),
        ("my photos show no focal length or f stop afterwards, is the adapter defective", "contacts"),
    ],
)
def test_what_is_asked_in_passing_words_is_told(found, text: str, says: str) -> None:
    assert says in " ".join(found(text)["text"].split())


@pytest.mark.parametrize(
    "text", ["4mm cs lens on a Z body, any chance beyond close ups", "25mm c on Z, more than macro?"]
)
def test_more_than_close_ups_is_infinity(found, text: str) -> None:
    assert found(text)["intent"] == "focus-verdict"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("my microscope objective drops right through an M32 port", "- RMS objective, 160 mm tube: 20.32 mm across"),
        ("lens thread much too small for the C socket, goes through without touching", "- D: 15.88 mm across"),
        ("27 mm objective thread, fine pitch 0.75", "M27x0.75 (27 mm, pitch 0.75 mm)"),
        ("flange to picture 57 and a 50 mm opening, old cine lens", "- 1-SKL (Temp): register 57 mm"),
        ("screw about 39, window pic at 29mm, cam inside that moves when i focus", "- LTM: thread 39 mm x 26 tpi"),
        ("opening 54, flange to image 44, contacts", "- EF-mount: bayonet; register 44 mm"),
        (
            "lens without thread, a collar at the back turns to clamp it, flange to image 42.0",
            "- FD-mount: breech lock",
        ),
        ("do M48x0.75 and 2 inch filter threads mate", "No, M48x0.75 and M48x0.6 are not the same"),
        ("can an SM1 bench tube take my C lens directly", "1-32 UN drops through without catching in 1.035 in-40"),
    ],
)
def test_what_was_measured_or_fell_through_leads_to_its_mount(found, text: str, says: str) -> None:
    assert says in flat(found(text))


def test_a_filter_told_in_inches_is_as_wide_as_its_thread(found) -> None:
    assert "50.8 mm across" not in flat(found("do M48x0.75 and 2 inch filter threads mate"))


@pytest.mark.parametrize(
    "text",
    [
        "8mm movie lens, 12.5mm, flush ring up to C, on a C camera, how far",
        "13mm lens for 8mm film, flush D to C ring, C cam",
    ],
)
def test_a_ring_that_leads_to_the_body_s_mount_does_not_make_it_the_lens_s(found, text: str) -> None:
    record = found(text)
    assert "D-mount" in record["text"]
    assert record["chains"][0]["verdict"] == "macro-only"


@pytest.mark.parametrize(
    ("text", "sum_"),
    [
        ("m42 tubes of 5, 10 and 20: which give 25", "20 + 5 = 25 mm"),
        ("which tubes of 7 14 28 add up to 42", "28 + 14 = 42 mm"),
    ],
)
def test_which_tubes_make_a_length_is_told_by_their_sum(found, text: str, sum_: str) -> None:
    assert sum_ in found(text)["text"]


@pytest.mark.parametrize(
    ("text", "circle"),
    [
        ("cs lens marked 1/3 on a 1/2 inch camera, covers?", "6 to 7 mm"),
        ("16 mm C lens on mft, it says 1 inch on the barrel, does that cover", "16 to 18 mm"),
        ('16mm c lens with 2/3" written on it, does it cover mft', "11 to 12 mm"),
    ],
)
def test_a_size_of_sensor_that_stands_on_a_lens_is_what_it_was_made_for(found, text: str, circle: str) -> None:
    assert f"image circle {circle}" in " ".join(found(text)["text"].split())


def test_a_ring_that_turned_out_so_thick_is_measured_and_nothing_is_drawn_out(found) -> None:
    chain = found("om 35mm on EF with a ring that turned out 2.5 mm thick, far limit pls")["chains"][0]
    assert chain["pieces"][0]["thickness_mm"]["least"] == 2.5
    assert len(chain["pieces"]) == 1


def test_a_hole_in_black_card_is_no_card_to_print(found) -> None:
    assert "The hole: 13.4 mm" in found("no iris in my 75mm projector lens. hole in black card for f/5.6?")["text"]


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("OCT-18 prime to a PL camera, the ring is 9mm right?", "No: right is 5 mm (57 mm - 52 mm)"),
        ("C-MFT cup is 1.72 deep, 25mm, right?", "Yes: a cup 1.72 mm deep (19.25 mm - 17.53 mm) is right."),
        ("C-MFT cup is 1.5 deep, 25mm, right?", "No: right is a cup 1.72 mm deep (19.25 mm - 17.53 mm); yours"),
        ("m42 to E ring is 27.46 mm, is that right", "Yes: 27.46 mm (45.46 mm - 18 mm) is right"),
    ],
)
def test_whether_a_length_is_right_is_told_first(found, text: str, head: str) -> None:
    assert found(text)["text"].startswith(head)


@pytest.mark.parametrize(
    "text", ["25 C on mft, it sits 2mm high, how far", "25 C on mft with the cup, collar too wide, sits 2mm high"]
)
def test_a_lens_that_sits_so_high_is_so_much_too_far_out(found, text: str) -> None:
    record = found(text)
    assert record["chains"][0]["verdict"] == "macro-only"
    assert "stops at 36 cm" in record["text"]


def test_a_lens_for_tubes_is_no_frame_of_the_body(found) -> None:
    text = found("1 inch TV lens with 16mm circle on my X body. largest clean 3:2 frame")["text"]
    assert text.startswith("Largest clean 3:2 crop 13.3 x 8.9 mm")


@pytest.mark.parametrize("text", ["OM lens on an F body, can that ever do infinity?", "m42 on F, any ring?"])
def test_where_one_doubts_that_there_is_a_way_the_plain_one_is_told_first(found, text: str) -> None:
    record = found(text)
    assert record["chains"][0]["verdict"] == "macro-only"
    assert "infinity only through a ring with glass" in " ".join(record["text"].split())


def test_the_mount_of_a_lens_heads_no_ring_in_a_row_with_the_body_s(found) -> None:
    record = found("500mm mirror lens T2, the E ring is 36.8 thick. moon ok?")
    assert record["chains"][0]["verdict"] == "infinity"
    assert len(record["chains"][0]["pieces"]) == 1


def test_no_ring_for_the_stop_is_of_the_lens_and_leaves_the_adapter_there(found) -> None:
    record = found("DKL 50/2.8 to E mount, theres no ring for the f stop on the lens tho")
    assert record["chains"][0]["verdict"] == "infinity"


def test_what_a_camera_takes_is_its_own_mount(found) -> None:
    record = found("SR mount 200 mm for the heron roost, my camera takes Z lenses. what goes in between?")
    assert record["chains"][0]["verdict"] == "infinity"
    assert "200 mm SR-mount lens on a Z-mount body" in record["text"]


def test_a_lens_told_behind_a_measured_ring_is_no_length_that_it_should_have(found) -> None:
    record = found("k-e ring of mine is 27.30 thick, lens 28mm. still infinity?")
    assert record["text"].startswith("A 28 mm K-mount lens on an E-mount body: reaches infinity")


@pytest.mark.parametrize("text", ["0.9 plus 0.6 screwed together how many stops", "nd 0.9 and 0.6 together"])
def test_densities_that_are_put_together_add(found, text: str) -> None:
    assert found(text)["text"].startswith("Together 5 stops")


def test_without_any_optics_is_without_glass(found) -> None:
    assert found("EF 85 on an F body without any optics in the adapter")["chains"][0]["verdict"] == "macro-only"


@pytest.mark.parametrize(
    "text", ["5mm ring taken off, 8mm C lens on CS", "8mm C lens on CS with the 5mm ring removed, far?"]
)
def test_a_ring_that_was_taken_off_does_not_stand_there(found, text: str) -> None:
    assert found(text)["chains"][0]["verdict"] == "unusable"
