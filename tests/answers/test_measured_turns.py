"""Numbers told alone in a talk: of which thing each is, by what was asked before it; worked by hand."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


def test_the_same_tubes_with_another_lens_are_as_long_as_they_were(club):
    _, other, alone = talk(
        club, "50/1.8 FD on RF with 12 and 20 mm tubes, how near", "same tubes, 100mm lens", "only the 12"
    )
    assert [piece.thickness_mm for piece in other.question.adapters] == [(12, 12), (20, 20)]
    assert [piece.thickness_mm for piece in alone.question.adapters] == [(12, 12)]
    assert alone.question.lens.focal_length_mm == 100


@pytest.mark.parametrize("turn", ["12.75 it is", "and if it was 12.75", "mine came out at 12.75"])
def test_a_decimal_after_a_lens_on_a_body_is_the_ring_between(club, turn):
    _, found = talk(club, "LTM 50/1.5 onto Z, is infinity ok", turn)
    assert [piece.thickness_mm for piece in found.question.adapters] == [(12.75, 12.75)]
    assert "0.05 mm too close" in flat(found)


def test_a_stop_alone_is_no_ring(club):
    _, found = talk(club, "K 50 on E", "1.4")
    assert not found.question.adapters


def test_a_number_after_the_range_of_a_helicoid_is_the_lens_s_own_distance(club):
    _, told, drawn = talk(
        club, "63 enlarger lens, 36-90 helicoid, 1mm flat ring to MFT. range?", "58.6", "and all the way out?"
    )
    assert told.question.said("flange_to_image") == "58.6 mm"
    assert "0.82x" in flat(drawn)  # (19.25 + 1 + 90 - 58.6) / 63


def test_in_a_talk_of_exposure_a_limit_is_the_least_iso_and_an_angle_takes_the_place_of_the_time(club):
    _, least, turned = talk(club, "f2 in full sun, 1/100, iso 100, which nd", "log wont go under 640", "at 24p, 180")
    assert least.question.said("iso") == "640"
    assert least.question.limits.price_usd is None
    assert turned.question.said("shutter") is None
    assert "1/48 s" in flat(turned)


def test_a_distance_as_near_as_a_ruler_tells_keeps_the_mount_that_was_named(club):
    _, found = talk(club, "m42 58/2 on an X-mount body", "flange to image 45.6 mm btw")
    assert found.question.lens.ids == ("m42",)


@pytest.mark.parametrize("turn", ["sorry, 6 m it is", "no, i meant 6 m", "wait, it's 6 m", "its 6m sorry", "oops 6m"])
def test_metres_told_anew_after_a_mark_are_another_mark(club, turn):
    _, again, layers = talk(
        club, "my 35mm says infinity at the 4m mark, what shim", turn, "how many foil layers is that"
    )
    assert again.question.said("mark") == "6000 mm"
    assert "0.21 mm too close" in flat(again)
    assert "11 to 19 of household foil" in flat(layers)


def test_a_ring_named_by_its_ends_is_of_one_pair_of_a_plan(club):
    _, ring, measured, shim = talk(
        club, "lenses OM, SR and R (slr), bodies L and X. how many rings", "how thick is the OM to X one",
        "mine came out 28.2", "can i put a shim in for that",
    )  # fmt: skip
    assert (ring.question.lens.id, ring.question.body.id) == ("om-mount", "x-mount")
    assert len(ring.question.lenses) == len(ring.question.bodies) == 1
    assert "0.1 mm too close" in flat(measured)
    assert "add a shim of 0.1 mm" in flat(shim)


@pytest.mark.parametrize(
    "turn",
    [
        "the K one came out 29.6, 28 mm lens. far limit?",
        "mine came out 29.6, 28 mm lens. far limit?",
        "mine came out 29.6. far limit with a 28?",
        "it came out 29.6, 28 mm lens. far limit?",
    ],
)
def test_a_ring_that_was_made_and_came_out_so_long_is_judged_with_the_lens_told_beside_it(club, turn):
    *_, found = talk(club, "ring to make for K lens on Z body, thickness", "same for pl", "and for K", turn)
    assert found.intent == "focus-verdict"
    assert "28 mm K-mount lens on a Z-mount body: stops at 5.66 m" in flat(found)


BAYONET = "a lens with no name, bayonet three lugs, flange distance about 44, lever on the back"


@pytest.mark.parametrize(
    ("first", "again", "key", "value"),
    [
        (BAYONET, "46.5 i measured again", "flange_to_image", "46.5 mm"),
        (BAYONET, "remeasured, its 46.5 mm", "flange_to_image", "46.5 mm"),
        (BAYONET, "make that 45.4", "flange_to_image", "45.4 mm"),
        ("unmarked lens, screw thread 42 mm across", "it's 41.7 really", "thread", "41.7 mm"),
        ("little cine lens, thread is 25 something", "measured it properly: 25.3 mm", "thread", "25.3 mm"),
        ("a projector lens with no thread, barrel 42.5 mm", "52.5 sorry", "barrel", "52.5 mm"),
    ],
)
def test_a_number_measured_again_is_the_measure_that_it_is_near(club, first, again, key, value):
    _, found = talk(club, first, again)
    assert found.question.intent == "identify-mount"
    assert found.question.said(key) == value
    assert len(found.question.values) == 1


@pytest.mark.parametrize("turn", ["focal length about 85", "the focal is 85", "its focal length is 85 mm"])
def test_a_focal_length_told_by_its_name_is_no_distance_of_the_flange(club, turn):
    _, found = talk(club, "unmarked lens, screw thread 42 mm across", turn)
    assert found.question.lens.focal_length_mm == 85
    assert found.question.said("flange_to_image") is None


@pytest.mark.parametrize(
    "turn", ["the aperture ring is on the lens", "so whats it called", "it says 1:1.8 f=50mm", "could it be C/Y or QBM"]
)
def test_what_is_told_more_of_an_unmarked_lens_identifies_it_still_by_all_that_was_seen(club, turn):
    _, found = talk(club, BAYONET, turn)
    assert found.question.intent == "identify-mount"
    assert "EF-mount" not in flat(found)  # whose lenses have no lever


def test_a_width_told_roughly_leaves_the_mount_that_the_distance_tells(club):
    _, found = talk(club, "little cine lens, thread is 25 something", "image comes sharp 12.6 behind the shoulder")
    assert "by these it is CS" in flat(found)


def test_how_sure_it_is_which_mount_a_lens_has_goes_by_what_is_left(club):
    _, several, one, again = talk(club, BAYONET, "are you sure?", "45.4 measured again", "so which is it")
    assert flat(several).startswith("Not sure yet: by 44 mm from flange to image it may be any of 8")
    assert one.question.said("flange_to_image") == again.question.said("flange_to_image") == "45.4 mm"
    _, _, sure = talk(club, "unmarked lens, screw thread 42 mm across", "13 threads in 10 mm", "are you sure")
    assert "only T2 fits" in flat(sure)


@pytest.mark.parametrize(
    ("asked_first", "turn", "right"),
    [
        ("f/1.6 in full sun at 1/50 which nd", "it is 1.2 stops too dark", 8 - 1.2),
        ("f/1.6 in full sun at 1/50 which nd", "its 1 ev too dark", 8 - 1),
        ("how much nd for f2 at iso 400 1/50 in sun", "still a stop too bright with that", 9 + 1),
        ("nd for f4 1/60 iso 800 bright cloud", "two thirds of a stop underexposed", 6 - 2 / 3),
        ("f/1.6 in full sun at 1/50 which nd", "with an nd64 it was 1.5 stops over", 6 + 1.5),
    ],
)
def test_a_picture_too_dark_behind_the_filter_takes_so_much_off_it(club, asked_first, turn, right):
    _, found, then = talk(club, asked_first, turn, "which filter then")
    stops = next(row.value.nominal for row in found.quantities if row.name == "nd_stops")
    assert stops == pytest.approx(right, abs=0.01)
    assert f"{right:.1f}" in flat(then)


def test_what_a_filter_showed_of_the_light_holds_for_other_settings_and_not_for_other_light(club):
    _, _, closed, cloudy = talk(
        club, "f/1.6 in full sun at 1/50 which nd", "it is 1.2 stops too dark", "stop down to f/3.2", "now it's cloudy"
    )
    assert flat(closed).startswith("4.8 stops of ND")
    assert flat(cloudy).startswith("4.0 stops of ND")


@pytest.mark.parametrize(
    ("first", "way"),
    [
        ("my c to e adapter measures 0.15 short, what does that do with a 25mm f1.4", "Too close, by 0.15 mm"),
        ("35mm lens on my mft, infinity comes at the 8 m mark", "Too close, by 0.15 mm"),
        ("50mm lens stops at 30 m, how much off", "Too far out, by 0.084 mm"),
    ],
)
@pytest.mark.parametrize(
    "turn",
    ["which way is it off", "is the ring too thick or too thin then", "too long or short?", "in which direction"],
)
def test_which_way_it_is_off_is_said_first_and_asking_changes_nothing(club, first, way, turn):
    _, found, again = talk(club, first, turn, "which way is it off")
    assert flat(found).startswith(way)
    assert flat(again).startswith(way)


@pytest.mark.parametrize(
    ("first", "turn", "said"),
    [
        ("50mm lens stops at 30 m, how much off", "is the ring too thin", "No: too far out, by 0.084 mm"),
        ("50mm lens stops at 30 m, how much off", "is it too close to the sensor", "No: too far out, by 0.084 mm"),
        ("50mm lens stops at 30 m, how much off", "so the ring is too thick?", "Yes: too far out, by 0.084 mm"),
        ("35mm lens on my mft, infinity comes at the 8 m mark", "is the ring too thick then", "No: too close"),
        ("35mm lens on my mft, infinity comes at the 8 m mark", "does it sit too far out", "No: too close"),
        ("35mm lens on my mft, infinity comes at the 8 m mark", "does the lens stop short", "No: too close"),
        ("35mm lens on my mft, infinity comes at the 8 m mark", "does it go past infinity", "Yes: too close"),
        ("my c to e adapter measures 0.15 short, ok for a 25mm f1.4?", "is it too thick", "No: too close, by 0.15 mm"),
    ],
)
def test_whether_it_is_off_one_way_is_a_question_and_tells_nothing_anew(club, first, turn, said):
    _, found, again = talk(club, first, turn, "which way is it off")
    assert flat(found).startswith(said)
    assert said.split(":")[1].split(",")[0].strip() in flat(again)[:40].casefold()


@pytest.mark.parametrize(
    ("turn", "ends"),
    [
        ("my helicoid measures 16.4 closed", (16.4, 31)),
        ("the helicoid is 16.4 mm when closed", (16.4, 31)),
        ("mine is 17.3 collapsed", (17.3, 31)),
        ("fully out its 30.2", (17, 30.2)),
    ],
)
def test_an_end_of_the_helicoid_is_told_anew_and_what_was_asked_stays(club, turn, ends):
    first, found = talk(club, "50 2.8 enlarger lens on E with a 17-31 helicoid", turn)
    assert [piece.thickness_mm for piece in found.question.adapters] == [ends]
    assert found.question.intent == first.question.intent
    assert found.question.lens.focal_length_mm == 50


def test_a_length_far_from_either_end_is_none_of_them(club):
    _, found = talk(club, "50 2.8 enlarger lens on E with a 17-31 helicoid", "closed it is 55")
    assert (55, 31) not in [piece.thickness_mm for piece in found.question.adapters]
    assert (17, 31) in [piece.thickness_mm for piece in found.question.adapters]


@pytest.mark.parametrize(
    "turn", ["and 10 mm more tube, how close", "plus a 10 mm spacer, how near", "add 10 mm of tube, how close"]
)
def test_a_tube_put_to_a_ring_that_was_cut_stands_behind_that_ring(club, turn):
    _, found = talk(club, "50mm M42 on E with my 27.6 ring, infinity?", turn)
    assert "stops at 36 cm" in flat(found)  # 10.14 mm out, and not 37.6


def test_the_ring_that_seats_a_lens_is_no_tube_beside_one(club):
    (found,) = talk(club, "how close does a 50 mm M42 lens on E with a 27.6 mm ring and a 10 mm tube")
    assert "stops at 36 cm" in flat(found)
    assert "37.6 mm of tube" not in flat(found)


def test_what_is_put_behind_it_is_no_distance_of_its_image(club):
    _, found = talk(club, "50mm M42 on E, infinity?", "with 10 mm extra behind it?")
    assert found.question.said("extension") == "10 mm"
    assert found.question.said("flange_to_image") is None


ENLARGER = "75mm enlarger lens on an m42 helicoid 17-31, e mount, 45 mm flange to image, how close"


@pytest.mark.parametrize(
    ("turn", "length"),
    [
        ("i set it to 20", 20), ("set to 25", 25), ("at 20", 20), ("helicoid at 20", 20), ("turned out to 25", 25),
        ("and fully out", 31), ("all the way in", 17), ("5 mm out", 22), ("reset it to 17", 17),
    ],
)  # fmt: skip
def test_a_helicoid_that_is_set_in_a_talk_is_so_long_and_nothing_else_is(club, turn, length):
    _, found, again = talk(club, ENLARGER, turn, "set it to 29 now")
    assert [piece.thickness_mm for piece in found.question.adapters] == [(length, length)]
    assert [piece.thickness_mm for piece in again.question.adapters] == [(29, 29)]
    for answer in (found, again):
        assert answer.question.said("flange_to_image") == "45 mm"
        assert answer.question.f_number is None
        assert answer.question.lens.focal_length_mm == 75
    assert "0.027x" in flat(again)  # (18 + 29 - 45) / 75


def test_a_helicoid_set_shorter_than_infinity_wants_focuses_on_nothing(club):
    _, found, again = talk(club, ENLARGER, "i set it to 20", "no it is 22")
    assert flat(found).startswith("At 20 mm the helicoid is 7 mm short of infinity")
    assert flat(again).startswith("At 22 mm the helicoid is 5 mm short of infinity")


def test_a_helicoid_that_is_set_leaves_the_lens_as_it_was(club):
    _, found, closed = talk(
        club, "50mm m42 on my e mount with a helicoid 25-55, what do i get", "i set it to 30", "wind it in"
    )
    assert found.question.lens.focal_length_mm == 50
    assert [piece.thickness_mm for piece in found.question.adapters] == [(30, 30)]
    assert [piece.thickness_mm for piece in closed.question.adapters] == [(25, 25)]


def test_a_tube_that_is_put_on_comes_to_those_that_stand_there(club):
    _, more, less = talk(club, "50mm f1.8 with a 28 mm tube, how close", "now put the 14 on", "take the 28 off")
    assert [piece.thickness_mm for piece in more.question.adapters] == [(28, 28), (14, 14)]
    assert [piece.thickness_mm for piece in less.question.adapters] == [(14, 14)]
    assert less.question.lens.focal_length_mm == 50


@pytest.mark.parametrize(
    ("turn", "sum_told"),
    [
        ("without the 14", "For 35 mm: 28 + 7 = 35 mm"),
        ("i lost the 7", "For 35 mm: 28 = 28 mm, 7 mm short"),
        ("only the 14 and the 28", "For 35 mm: 28 = 28 mm, 7 mm short"),
        ("and for 42", "For 42 mm: 28 + 14 = 42 mm"),
        ("no i need 21", "For 21 mm: 14 + 7 = 21 mm"),
        ("i also have a 10, and for 45", None),
    ],
)
def test_a_stack_is_asked_again_with_other_pieces_or_for_another_length(club, turn, sum_told):
    _, found = talk(club, "i have tubes 7, 14 and 28 and want 35 mm", turn)
    assert found.question.lens is None
    assert sum_told is None or flat(found).startswith(sum_told)


def test_what_a_lens_does_with_the_stack_is_told_of_its_length(club):
    _, found = talk(club, "i have tubes 7, 14 and 28 and want 35 mm", "how close does a 50 mm get with that")
    assert [piece.thickness_mm for piece in found.question.adapters] == [(35, 35)]
    assert "0.7x" in flat(found)


@pytest.mark.parametrize(
    "asks",
    [
        "need 20.3 mm, have spacers 0.3, 5, 10, 10",
        "which spacers make 20.3 mm, i have 0.3, 5, 10 and 10",
    ],
)
def test_two_pieces_alike_are_two(club, asks):
    (found,) = talk(club, asks)
    assert "For 20.3 mm: 10 + 10 + 0.3 = 20.3 mm: just right" in flat(found)


@pytest.mark.parametrize(
    ("asks", "told"),
    [
        ("tubes 10 16 21, need 37", "For 37 mm: 21 + 16 = 37 mm"),
        ("which tubes add up to 31, i own 10, 21 and 12", "For 31 mm: 21 + 10 = 31 mm"),
        ("i have 5, 10 and 20 mm spacers, need 25", "For 25 mm: 20 + 5 = 25 mm"),
    ],
)
def test_tubes_told_beside_a_length_that_is_needed_are_to_come_to_it(club, asks, told):
    (found,) = talk(club, asks)
    assert flat(found).startswith(told)


@pytest.mark.parametrize(
    ("first", "turn", "left"),
    [
        ("35mm lens on my mft, infinity comes at the 8 m mark", "i put a 0.1 shim in", "0.054 mm too close"),
        ("35mm lens on my mft, infinity comes at the 8 m mark", "with 0.2 mm of shim", "0.045 mm too far out"),
        ("50mm m42 on e with a 27.2 ring, how thick a shim", "put a 0.2 shim in, whats left", "0.06 mm too close"),
        ("50mm m42 on e with a 27.2 ring, how thick a shim", "with a 0.3 shim", "0.04 mm too far out"),
        (
            "my c to e adapter is 0.15 too short, 25mm f1.4, how thick a shim",
            "slip 0.1 of foil in",
            "0.05 mm too close",
        ),
    ],
)
def test_a_shim_that_is_put_in_leaves_so_much_less(club, first, turn, left):
    _, found, way = talk(club, first, turn, "which way is it off now")
    assert left in flat(found)
    assert flat(way).startswith("Too close" if left.endswith("close") else "Too far out")


def test_a_shim_taken_out_again_is_off_as_before(club):
    first = "35mm lens on my mft, infinity comes at the 8 m mark"
    _, _, back = talk(club, first, "i put a 0.1 shim in", "take the 0.1 out again")
    assert "0.15 mm too close" in flat(back)


def test_layers_are_no_tubes(club):
    _, found = talk(club, "50mm m42 on e with a 27.2 ring, how thick a shim", "put 3 layers of foil in")
    assert [piece.thickness_mm for piece in found.question.adapters] == [(27.2, 27.2)]


def test_where_infinity_falls_after_a_shim_takes_the_place_of_what_was_left(club):
    turns = ["28mm on e infinity falls at 3m", "i put 0.2 of shim in", "now its at 10 m", "another 0.05"]
    _, left, found, more = talk(club, *turns)
    assert "0.066 mm too close" in flat(left)
    assert flat(found).startswith("Infinity at the 10 m mark of a 28 mm lens: it sits 0.079 mm too close")
    assert "0.029 mm too close" in flat(more)


@pytest.mark.parametrize("turn", ["register comes to 17.5", "register is 17.5", "the register measures 17.5"])
def test_the_register_of_a_lens_that_is_identified_is_a_measure_and_nothing_to_keep(club, turn):
    _, found, again = talk(club, "screw mount lens 25.4mm across", turn, "its 17.3 actually")
    assert found.question.said("flange_to_image") == "17.5 mm"
    assert again.question.said("flange_to_image") == "17.3 mm"
    assert again.question.said("thread") == "25.4 mm"


@pytest.mark.parametrize(
    ("asks", "tpi"),
    [
        ("8 threads in 1/4 inch, 25.4mm across", 32),
        ("16 threads in half an inch, about 25.4 across", 32),
        ("13 threads in half an inch, 39 mm", 26),
        ("8 threads in a quarter inch", 32),
    ],
)
def test_threads_counted_over_a_part_of_an_inch_tell_the_pitch(club, asks, tpi):
    (found,) = talk(club, asks)
    pitch = found.question.said("pitch") or (found.question.said("thread") or "").split(" x ")[1]
    assert float(pitch.removesuffix(" mm")) == pytest.approx(25.4 / tpi, abs=1e-5)


def test_how_sure_it_is_that_a_lens_is_none_of_another_sort_is_no_danger(club):
    turns = ["unmarked lens, screw thread 39 mm", "26 threads per inch", "flange to image 28.5 or so"]
    found = talk(club, *turns, "sure its not an enlarger lens")[-1]
    assert found.intent == "why"
    assert "by a thread of 39 mm" in flat(found)


@pytest.mark.parametrize(
    ("first", "said", "ring"),
    [
        ("my ring OM to E is too thick, 28.15. 24mm lens", "if i sand 0.2 off by mistake", 27.95),
        ("28mm FD on E, ring measures 24.2", "i lapped 0.15 off it", 24.05),
        ("28mm FD on E, ring measures 24.2", "what if i file off 0.1", 24.1),
        ("50mm M42 on X with a 27.9 ring", "sanded it by 0.1", 27.8),
    ],
)
def test_what_is_sanded_off_a_ring_leaves_it_so_much_thinner(club, first, said, ring):
    _, found = talk(club, first, said)
    assert found.question.adapters[0].thickness_mm == (pytest.approx(ring), pytest.approx(ring))
    right = 28 if "OM" in first else 24 if "FD" in first else 27.76
    way = "too far out" if ring > right else "too close"
    assert flat(found).startswith(f"The lens sits {round(abs(ring - right), 2):g} mm {way}")


@pytest.mark.parametrize("said", ["with a plain m42 to L ring of 25.8?", "and a 10 mm ring beside it"])
def test_a_ring_told_after_a_helicoid_stands_beside_it(club, said):
    _, found = talk(club, "75mm enlarger lens on L, flange to image 70.5, 25-55 helicoid", said)
    assert [piece.piece for piece in found.question.adapters] == ["helicoid", "adapter"]


@pytest.mark.parametrize(
    ("said", "left"), [("drop the 28, what changes", [50, 135]), ("forget about the 50", [28, 135])]
)
def test_a_lens_left_away_by_its_focal_length_is_the_one_that_goes(club, said, left):
    _, found = talk(club, "K 28mm and M42 50 and a C/Y 135, one Z body", said)
    assert [lens.focal_length_mm for lens in found.question.lenses] == left


def test_all_put_onto_one_mount_first_go_through_it(club):
    _, found = talk(club, "K 28mm and M42 50 and a C/Y 135, one Z body", "all of them onto M first?")
    assert found.question.limits.using == ("m-mount",)
    assert len(found.question.lenses) == 3


@pytest.mark.parametrize(
    "turns",
    [
        ("25 1.4 c on mft", "with a 1mm washer under it"),
        ("25 1.4 c on mft", "what if i put a 1mm washer under it", "then infinity?"),
        ("25 1.4 c on mft with a 1mm washer under it",),
        ("25 1.4 c on mft", "with a 1 mm washer under the lens", "infinity then?"),
    ],
)
def test_a_washer_that_is_put_in_stays_in_and_costs_infinity(club, turns):
    found = talk(club, *turns)[-1]
    assert flat(found).startswith("A 25 mm f/1.4 C-mount lens on a Micro Four Thirds body: stops at 68 cm")


def test_a_washer_that_sets_an_early_infinity_right_is_a_shim(club):
    found = talk(club, "58mm f2 m42 on E, i get infinity at the 8 m mark", "can i put a 0.4 washer under it")[-1]
    assert "0.027 mm too close" in flat(found)


@pytest.mark.parametrize(
    ("first", "said", "by"),
    [
        ("28mm FD on E, ring measures 24.2", "is that worth fixing", "0.2 mm too long"),
        ("50mm M42 on X with a 27.5 ring", "is it worth shimming", "0.26 mm too short"),
    ],
)
def test_whether_an_error_is_worth_mending_keeps_the_ring(club, first, said, by):
    before, found = talk(club, first, said)
    assert f"The seat is {by}" in flat(found)
    assert found.question.adapters == before.question.adapters


@pytest.mark.parametrize("said", ["i have a 17-31 one", "mine is a 17-31 one"])
def test_a_span_after_a_flange_to_image_is_that_of_a_helicoid(club, said):
    _, found = talk(club, "50 enlarger lens on E, flange to image 45", said)
    assert found.question.lens.focal_length_mm == 50
    assert flat(found).startswith("Infinity at 27 mm on the 17 to 31 mm helicoid")


@pytest.mark.parametrize("turn", ["is 5 mm safe for the thread", "is that 5mm ok", "so what do i lose with 5mm"])
def test_the_length_of_a_tube_said_again_is_no_other_lens(club, turn):
    _, found = talk(club, "50mm C mount on E with 5 mm tube", turn)
    assert found.question.lens.focal_length_mm == 50
    assert [piece.thickness_mm for piece in found.question.adapters] == [(5, 5)]


def test_a_helicoid_of_the_trade_set_to_one_length_stands_where_it_stood(club):
    _, found, less = talk(
        club, "80mm enlarger lens m39 on Z with a 25-55 helicoid", "what magnification at full extension", "at 40 mm?"
    )
    # the bush, the helicoid and the ring behind it: 84.46 less 60 of infinity, 76 - 16, over 80
    assert found.chains[0].title.endswith("M42 helicoid 25..55 mm at 55 mm + M42 to Z ring")
    assert "24.46 mm too far out" in flat(found)
    assert "0.31x" in flat(found)
    assert "9.46 mm too far out" in flat(less)
    assert "0.12x" in flat(less)


def test_a_lens_without_a_scale_has_no_mark(club):
    (found,) = talk(club, "80mm enlarger lens m39 on Z with a 25 mm helicoid")
    assert "mark of its scale" not in flat(found)


@pytest.mark.parametrize(
    ("first", "turn", "stop"),
    [
        ("25mm c mount on mft, infinity at the 3 m mark", "what stop hides it", "f/14"),  # 0.2119 / (21.63 / 1442)
        ("50 m42 on E, ring 0.1 too thin", "from which stop is it fine", "f/5.1"),  # 0.1 / (28.35 / 1442)
    ],
)
def test_the_stop_that_hides_a_seat_too_close_is_told_with_what_else_helps(club, first, turn, stop):
    _, found = talk(club, first, turn)
    assert found.intent == "focus-verdict"
    assert f"eft on the infinity mark, from {stop} on" in flat(found)
    assert "focused by eye infinity is sharp at every stop" in flat(found)


def test_a_zoom_set_to_one_end_by_the_way_keeps_its_other(club):
    answers = talk(
        club,
        "12-120 c mount zoom on mft",
        "why is infinity soft at 120",
        "shim how thick if sharp at the 3 m mark at 12mm",
    )
    assert "Infinity at the 3 m mark of a 12 mm lens: it sits 0.048 mm too close" in flat(answers[-1])


def test_light_lost_behind_a_helicoid_that_seats_the_lens_is_that_beyond_infinity(club):
    _, drawn, at = talk(club, "50 enlarger on E with a 17-31 helicoid", "how much light do i lose", "and at 31")
    # 31 mm, 12 of LTM less the bush and 1 of the flat ring leave it 2.5 mm beyond infinity; 2 log2(1 + 2.5 / 50)
    for answer in (drawn, at):
        assert "2.5 mm beyond infinity: 0.1 stops" in flat(answer)


def test_light_lost_behind_a_bellows_without_a_chain_counts_its_whole_draw(club):
    (found,) = talk(club, "50 K on E with bellows 40-130, light loss")
    assert "bellows drawn in to 40 mm: 1.7 stops" in flat(found)  # 2 log2(1 + 40 / 50)


UNSCREWED = "16mm c lens, infinity comes when i unscrew it a third of a turn"


@pytest.mark.parametrize(
    ("turns", "told"),
    [
        (["how many turns would half a mm be"], "0.5 mm is 0.63 turn"),
        (["how many turns is 0.2"], "0.2 mm is 0.252 turn"),
        (["if i leave it, where on the scale is infinity"], "a 16 mm lens has infinity at its 1 m mark"),
        (["how many turns would half a mm be", "what if it stays so"], "a 16 mm lens has infinity at its 1 m mark"),
        (["and a 50 on the same camera?"], "the same 0.26 mm for this lens"),
        (["how many turns is 0.1 mm", "a 25 on it?"], "the 2.41 m mark of the 25 mm lens"),
        (["half a turn?"], "0.5 turn of 0.794 mm pitch is 0.4 mm"),
    ],
)
def test_an_error_told_by_turns_is_one_for_whatever_is_asked_next(club, turns, told):
    assert told in flat(talk(club, UNSCREWED, *turns)[-1])


def test_how_far_a_turn_moves_a_lens_is_no_error_of_its_seat(club):
    assert "mark" not in flat(talk(club, "how far does a quarter turn move an ltm 50")[-1])


@pytest.mark.parametrize(("first", "turn", "mm"), [
    ("slide projector lens 90/2.5, plain tube no iris, on EF", "measured. 68 mm from where the collar would sit", "68"),
    ("projector lens 100/2.8 for RF", "its 74 mm from where i would clamp it", "74"),
    ("50mm lens, 39mm screw, no name, going on MFT", "window test says 45.2", "45.2"),
    ("unmarked 50mm in 39mm screw, E body", "did the paper trick, 45", "45"),
    ("no name 25mm lens with a C thread on MFT", "did the test with a far tree, 17.5", "17.5"),
])  # fmt: skip
def test_what_a_window_and_paper_gave_is_the_flange_to_image(club, first, turn, mm):
    found = talk(club, first, turn)[-1]
    assert found.question.said("flange_to_image") == f"{mm} mm"
    assert not found.question.adapters


@pytest.mark.parametrize(
    "turn", ["and wound right out to 55 how big do things get", "screwed out to 55, magnification?"]
)
def test_a_helicoid_wound_out_leaves_what_was_measured_of_its_lens(club, turn):
    found = talk(
        club, "80mm enlarger lens w 39 thread on a Z body", "74.5 from the shoulder",
        "i own an M42 to Z ring and a 25-55 helicoid. where do i set it for infinity", turn,
    )[-1]  # fmt: skip
    assert (found.intent, found.question.said("flange_to_image")) == ("macro-distance", "74.5 mm")
    assert [piece.thickness_mm for piece in found.question.adapters if piece.piece == "helicoid"] == [(55, 55)]


@pytest.mark.parametrize(
    ("first", "turn", "turns"),
    [
        ("25 mm c lens on mft stops at 3m, nothing further gets sharp", "turns of the thread for that?", 0.267),
        ("50mm C lens on E only gets to 10 m", "how many turns of thread is that", 0.318),
        ("12.5 mm C mount on mft wont go past 1.5m", "in turns?", 0.133),
        ("35mm M42 on E, ring 27.7", "what is that in turns of the thread", 0.24),
    ],
)
def test_how_far_a_lens_is_off_is_told_in_turns_of_its_thread(club, first, turn, turns):
    *_, found = talk(club, first, turn)
    assert found.intent == "shim-calibration"
    assert f"is {turns:g} turn of its thread" in flat(found)[:60]


@pytest.mark.parametrize(
    ("first", "turn", "piece"),
    [
        ("M mount 35 on Z with a 4 mm helicoid, how close", "and 6", "6 mm helicoid"),
        ("50 M42 on E with a 10 mm helicoid, how close", "and 15", "15 mm helicoid"),
        ("LTM 50 on E with 6mm helicoid", "make it 8", "0..8 mm helicoid"),
        ("50mm with a 10mm tube, how close", "and 6", "6 mm extension tube"),
    ],
)
def test_a_number_after_a_helicoid_is_another_helicoid(club, first, turn, piece):
    *_, found = talk(club, first, turn)
    assert f"with a {piece}" in found.reading.replace("with an ", "with a ")


def test_infinity_behind_another_helicoid_is_still_there(club):
    *_, found = talk(club, "M mount 35 on Z with a 4 mm helicoid, how close", "and 6", "infinity still there?")
    assert "reaches infinity" in flat(found)[:90]


def test_a_bayonet_is_not_turned_by_a_shim(club):
    *_, found = talk(club, "oct-18 75mm to E", "infinity came at 12 m on the scale", "and how many turns would that be")
    assert "OCT-18 has no thread to turn" in flat(found)


@pytest.mark.parametrize("turn", ["76 measured to the paper", "measured it at 76", "it measured 76 to the paper"])
def test_what_was_asked_to_be_measured_is_from_flange_to_image_and_no_ring(club, turn):
    _, found = talk(club, "my 80mm enlarger lens, L body, want landscapes", turn)
    assert found.question.said("flange_to_image") == "76 mm"
    assert not found.question.adapters


@pytest.mark.parametrize(
    ("first", "turns", "now", "error"),
    [
        (
            "28mm, infinity at the 3 m mark",
            ("where does the 1 m mark go",),
            "1 m mark: it is now sharp at 1.44 m",
            0.27,
        ),
        ("28mm, infinity at the 3 m mark", ("and the 2 m mark",), "2 m mark: it is now sharp at 5.78 m", 0.27),
        ("28mm, infinity at the 3 m mark", ("how wrong is it at 1 m",), "it is now sharp at 1.44 m", 0.27),
        ("K 28/2.8 on Z, infinity at the 3 m mark", ("if left how bad at 1 m",), "it is now sharp at 1.44 m", 0.27),
        ("50 M42 on E infinity at the 10 m mark", ("how wrong is the 2 m mark",), "is now sharp at 2.45 m", 0.25),
        (
            "28mm, infinity at the 3 m mark",
            ("where does the 2 m mark go", "how far off is the 1 m mark"),
            "it is now sharp at 1.44 m",
            0.27,
        ),
    ],
)
def test_another_mark_after_that_of_infinity_is_told_on_the_seat_that_infinity_told(club, first, turns, now, error):
    *_, found = talk(club, first, *turns)
    assert now in flat(found)
    assert f"The seat is {error:g} mm too close" in flat(found)


@pytest.mark.parametrize("turn", ["no it is the 8 m mark", "sorry, infinity is at the 8 m mark"])
def test_a_mark_of_infinity_put_right_is_that_of_infinity_still(club, turn):
    *_, found = talk(club, "50 M42 on E infinity at the 10 m mark", turn)
    assert "it sits 0.32 mm too close" in flat(found)


def test_a_register_within_the_range_of_a_zoom_is_no_setting_of_it(club):
    *_, found = talk(club, "super 8 zoom 8-64 cut off its camera", "register is 13")
    assert "13 mm flange to image" in found.reading
    assert "13 mm zoom" not in found.reading
