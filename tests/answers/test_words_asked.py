"""Reasons with numbers, words set side by side, dangers and what is not answered, as they are asked for."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


def mid(found, name):
    return [(low + high) / 2 for low, high in numbers(found, name)]


def test_a_number_that_the_registers_differ_by_is_accounted_for(asked):
    found = asked("why does my extension come out at 5.24 when i use a D to C ring on mft")
    assert flat(found).startswith("5.24 mm is what the registers differ by: C 17.526 less D 12.29")


@pytest.mark.parametrize(
    "text",
    [
        "marked 3m but really sharp at 3.4m, 50mm, why",
        "why does the ring say 3 when the tape says 3.4, 50mm lens",
        "50mm: tape says 3.4 m, scale reads 3 m, whats causing that",
    ],
)
def test_the_scale_against_the_tape_tells_the_error(asked, text):
    f, mark, true = 50.0, 3000.0, 3400.0

    def extension(distance):
        room = distance - 2 * f
        return (room - (room * room - 4 * f * f) ** 0.5) / 2

    found = asked(text)
    assert mid(found, "register_error_mm")[0] == pytest.approx(extension(true) - extension(mark), abs=1e-3)
    assert "too thin" in flat(found)


def test_lengths_of_parts_are_no_scale(asked):
    assert "Set to" not in flat(asked("why is my ring 27.46 mm when the tape says 27.5 mm, m42 on E"))


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("is dof the same as depth of focus", "No, depth of field and depth of focus are not the same."),
        ("is register the same thing as flange distance", "Yes, register and flange distance are the same thing."),
        ("EF vs EF-S, interchangeable", "Not both ways"),
        ("does m42 filter screw into m42 mount", "No, M42x0.75 and M42x1 are not the same"),
        ("is T2 the same as f/2", "T2 is about"),
        ("is M26x0.75 the same as 26 mm 36 tpi", "No, M26x0.75 and 26 mm x 36 tpi (0.706) are not the same"),
        ("M39x1 into the 26tpi hole goes ok, can i trust", "No, M39x1 and 39 mm x 26 tpi"),
        ("is 39x26 the same as 39x1", "No, 39 mm x 26 tpi (Whitworth form) and M39x1"),
        ("what is play", "play in a joint"),
        ("whats a dumb adapter", "plain ring without electronics"),
        ("define shoulder", "shoulder of a thread"),
        ("what does iris mean", "iris diaphragm"),
        ("what is freelensing", "free lensing"),
        ("what is a hot spot", "pale spot in the middle"),
        ("twins? un 1-32 and 25.5x0.5", "No, 1-32 UN and M25.5x0.5 are not the same"),
    ],
)
def test_what_is_asked_of_words_is_answered_first(asked, text, head):
    assert flat(asked(text)).startswith(head)


@pytest.mark.parametrize("text", ["hyperfocle distnace", "whats a hyperfocle distance", "brech lok?"])
def test_a_term_is_found_though_misspelt(asked, text):
    found = asked(text)
    assert found["intent"] == "definition"
    assert flat(found).split(":")[0] in ("hyperfocal", "breech lock")


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("1.8kg 400mm on a cheap ring on E body ok?", "Not by the camera alone."),
        ("is it ok to file the adapter with camera attached", "Not near a lens or a camera."),
        ("screw fell out of adapter into camera. what now", "Keep the power off until it is out."),
    ],
)
def test_what_is_safe_is_ruled_on_first(asked, text, first):
    assert flat(asked(text)).startswith(first)


@pytest.mark.parametrize("text", ["which laptop for cutting 4k", "recommend a good restaurant"])
def test_what_names_nothing_of_the_trade_is_declined(asked, text):
    found = asked(text)
    assert found["intent"] == "out-of-scope"
    assert "What can be answered" in flat(found)


def test_a_chain_tells_what_is_to_be_known_of_lenses_of_that_mount(asked):
    assert "leaf shutter must be held open" in flat(asked("how do I get an RB67 lens on an E-mount full frame body"))


def test_of_one_name_said_twice_a_year_of_film_tells_the_lens(asked):
    found = asked("lens says X mount but its from 1979, goes on my X digital?")
    assert "25.8 mm" in flat(found)


def test_a_small_number_of_nothing_that_is_named_is_an_error_of_the_seat(asked):
    found = asked("how come 0.02 matters with a 6mm lens")
    assert mid(found, "far_from_sensor_mm")[0] == pytest.approx(6**2 / 0.02 + 12, abs=15)


def test_two_focal_lengths_tell_that_the_short_one_is_the_fussy_one(asked):
    assert "Test rings with the widest lens" in flat(asked("why is infinity ok with the 135 but not with the 24"))


def test_that_a_lens_seems_longer_comes_with_what_it_frames_like(asked):
    found = asked("why does my 50 look so tele on mft")
    assert pytest.approx(mid(found, "equivalent_focal_mm")[0], abs=0.5) == 100


@pytest.mark.parametrize(
    ("text", "head"),
    [
        ("extension tube, is that just a hollow ring?", "extension tube: A ring without glass"),
        ("focal reducer, the thing with glass that people rave about = ?", "focal reducer: Glass behind the lens"),
        ("reverse ring, is that just a ring with two threads?", "reverse ring: A ring that holds a lens turned"),
    ],
)
def test_what_a_thing_simply_is_asks_what_it_is(asked, text, head):
    assert flat(asked(text)).startswith(head)


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("what is an M42 helicoid", "helicoid:"),
        ("I keep reading that I should use an M 'hub'. I'm new to this, what does hub mean here?", "hub mount:"),
        ("what is a C mount cup", "cup:"),
        ("what is the register of FD", "FD-mount:"),
        ("what is M42 thread pitch", "M42:"),
    ],
)
def test_a_piece_is_told_before_the_mount_that_only_says_which(asked, text, first):
    assert asked(text)["text"].startswith(first)


@pytest.mark.parametrize(
    "text", ["define auto pin (m42)", "what is the auto pin on an m42 lens", "what is a cup for C mount"]
)
def test_a_term_told_before_the_mount_that_it_is_of_comes_first(asked, text):
    found = flat(asked(text))
    assert found.startswith(("auto pin:", "cup:"))


@pytest.mark.parametrize(
    "say", ["what does the T actually mean", "what is T on a cine lens", "lens says T1.5, what's T"]
)
def test_a_bare_t_is_the_stop_before_it_is_the_mount(asked, say):
    assert asked(say)["text"].startswith("T-stop")


def test_a_t_with_mount_to_it_is_the_mount(asked):
    assert asked("what is a T mount")["text"].startswith("T2")


@pytest.mark.parametrize(
    "say", ["working distance, from where to where", "is working distance from the sensor or the front of the lens"]
)
def test_between_which_points_a_distance_counts_is_its_meaning(asked, say):
    found = asked(say)
    assert found["intent"] == "definition"
    assert "front glass" in " ".join(found["text"].split())


@pytest.mark.parametrize(("say", "head"), [
    ("waterhouse stop, what is it", "drop-in stop"), ("whats a witness mark", "witness line"),
    ("field flattener?", "field flattener"), ("what is a taking lens", "lens that takes the picture"),
    ("what does rectilinear mean", "rectilinear lens"), ("what is a rehoused lens", "rehoused lens"),
    ("whats a follow focus", "follow focus"), ("half-frame is how big", "Half-frame: 24 x 18 mm"),
    ("super 16 is how big", "Super 16: 12.52 x 7.41 mm"),
])  # fmt: skip
def test_words_of_the_set_and_the_bench_have_their_meaning(asked, say, head):
    found = asked(say)
    assert found["intent"] == "definition"
    assert found["text"].startswith(head)


@pytest.mark.parametrize(
    ("say", "said"),
    [
        ("hyperfocal, in one sentence", "hyperfocal: The focus distance"),
        ("crop factor, short version", "crop factor: The diagonal"),
        ("image circle, briefly", "image circle: The disc"),
        ("what do macro people mean by working distance", "working distance: From the subject"),
    ],
)
def test_a_term_asked_in_few_words_is_told_by_itself(asked, say, said):
    found = asked(say)
    assert found["intent"] == "definition"
    assert flat(found).startswith(said)


@pytest.mark.parametrize(
    "say",
    [
        "i have a 39mm filter ring, does it go on an LTM lens back or tube?",
        "does a 39 mm step ring fit the LTM thread",
        "is a 39 mm filter thread the same as LTM",
    ],
)
def test_a_filter_of_39_mm_is_of_half_a_millimetre_and_no_lens_screw(asked, say):
    found = asked(say)
    assert found["intent"] == "look-alike"
    assert flat(found).startswith("No, M39x0.5 and 39 mm x 26 tpi")


def test_a_step_ring_by_its_width_is_no_tube_of_that_length(asked):
    assert "49 mm of tube" not in flat(asked("49mm step ring for my M42 50"))


@pytest.mark.parametrize(("turn", "head"), [
    ("someone said use a matte box, what is that", "box for square filters"), ("what is a matte box", "box for square"),
    ("it has fungus, what is that", "fungus on glass"), ("he talks of lapping, whats that", "lapping a ring"),
    ("people talk about parfocal, what does that mean", "parfocal"),
])  # fmt: skip
def test_a_word_asked_about_in_passing_is_told(talked, turn, head):
    found = talked("M42 50 on E, f2 sun 1/50 iso 100, nd?", turn)
    assert found["intent"] == "definition"
    assert found["text"].startswith(head)


@pytest.mark.parametrize("turn", ["what is that at f8", "what is a shorter shutter then"])
def test_what_is_that_after_a_number_asks_no_word(talked, turn):
    assert talked("M42 50 on E, f2 sun 1/50 iso 100, nd?", turn)["intent"] != "definition"


@pytest.mark.parametrize("text", ["is my set of PL primes worth selling now or later", "will PL lenses lose value",
                                  "do c/y lenses hold their value", "should i sell my m42 lenses or wait"])  # fmt: skip
def test_what_a_lens_is_worth_is_not_known(asked, text):
    found = asked(text)
    assert found["intent"] == "out-of-scope"
    assert "No prices of lenses are known here" in flat(found)
    assert "EF body" not in flat(found)


@pytest.mark.parametrize("text", ["T stop, is that different from f stop", "t-stops, are they different from f-stops"])
def test_what_sets_two_words_apart_is_their_meaning(asked, text):
    found = asked(text)
    assert found["intent"] == "definition"
    assert flat(found).startswith("T-stop: ")


def test_pitch_and_diameter_asked_at_once_are_both_told(asked):
    told = asked("cutting 1 inch 32 tpi on a metric lathe, what pitch do I set and what's the major dia")["text"]
    assert "male thread 25.22 to 25.37 mm over the crests" in told
    assert "32 tpi is 0.7937 mm a turn" in told


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("what do you call the distance from the metal mounting face to the film", "register"),
        ("term for the gap between the two principal planes", "hiatus"),
        ("an f number that takes off what the glass eats, whats it called", "T-stop"),
        ("the thing that folds like an accordion between lens and camera, name?", "bellows"),
        ("whats the word for a zoom that you need to refocus each time", "varifocal"),
    ],
)
def test_a_word_is_found_by_what_it_means(asked, text, word):
    assert flat(asked(text)).startswith(f"That is {word}:")


def test_the_name_of_a_mount_at_hand_is_no_word(asked):
    assert "QBM" in flat(asked("what is that mount called with three lugs and a notch"))
