"""Who is who in a question, what it must keep to, what it leans on, and why it is refused."""

from __future__ import annotations

import pytest

from grammar.questions import Question, Thing, Unread
from grammar.reader import read
from tests.grammar.names import lexicon


def asked(text: str, before: Question | None = None) -> Question:
    got = read(text, lexicon(), before)
    assert isinstance(got, Question), got
    return got


def refused(text: str) -> Unread:
    got = read(text, lexicon())
    assert isinstance(got, Unread), got
    return got


def ids(things: tuple[Thing, ...]) -> list[str | None]:
    return [thing.id for thing in things]


def test_a_lens_described_in_place_keeps_what_was_said_of_it() -> None:
    lens = asked("how do I get a 25mm f/1.4 C-mount lens made for 16mm on an E-mount APS-C body").lens
    assert lens is not None
    assert (lens.kind, lens.id, lens.focal_length_mm, lens.f_number, lens.format) == ("mount", "c", 25, 1.4, "16mm")


def test_a_body_described_in_place_keeps_its_format() -> None:
    body = asked("get an M42 lens on an E-mount APS-C body").body
    assert body is not None
    assert (body.kind, body.id, body.format) == ("mount", "e-mount", "aps-c-1.5")


@pytest.mark.parametrize(
    ("text", "kind", "traits"),
    [
        ("K zoom on E", "zoom", ()),
        ("a projector lens on EF, how", "projector", ()),
        ("F lens without aperture ring on MFT, how", None, ("no aperture ring",)),
        ("f/1.6 fixed C lens on MFT, how", None, ("fixed iris",)),
        ("enlarger lens on Z body", "enlarger", ("assumed mount",)),
    ],
)
def test_the_sort_of_lens_is_kept(text: str, kind: str | None, traits: tuple[str, ...]) -> None:
    lens = asked(text).lens
    assert lens is not None
    assert (lens.lens_kind, lens.traits) == (kind, traits)


@pytest.mark.parametrize(
    ("text", "lenses", "bodies"),
    [
        ("M42 on E", ["m42"], ["e-mount"]),
        ("M42 to E", ["m42"], ["e-mount"]),
        ("M42 -> E", ["m42"], ["e-mount"]),
        ("M42 lens, E body, how", ["m42"], ["e-mount"]),
        ("on my m43 camera how do I use a C lens", ["c"], ["mft-mount"]),
        ("how do I put my zoom for F on MFT", ["f-mount"], ["mft-mount"]),
        ("is there an M42 to E adapter", ["m42"], ["e-mount"]),
        ("M42-E ring, where sold", ["m42"], ["e-mount"]),
        ("m42 mft adapter exists?", ["m42"], ["mft-mount"]),
        ("M42 adapter for x mount", ["m42"], ["x-mount"]),
        ("C + LTM + M42 on e, which rings", ["c", "ltm", "m42"], ["e-mount"]),
        (
            "FD, OM and K lenses on two bodies, E and Z, how",
            ["fd-mount", "om-mount", "k-mount"],
            ["e-mount", "z-mount"],
        ),
        ("58mm m39-zenit on EF with an M39-zenit to M42 ring and M42 to EF ring", ["m39-zenit"], ["ef-mount"]),
    ],
)
def test_lens_and_body_are_told_apart(text: str, lenses: list[str], bodies: list[str]) -> None:
    got = asked(text)
    assert (ids(got.lenses), ids(got.bodies)) == (lenses, bodies)


def test_facts_told_in_other_sentences_are_kept() -> None:
    got = asked(
        "Hi all! I have a 38mm from an 8mm projector, found at a flea market. Will it reach infinity on my m43 camera?"
    )
    assert got.intent == "focus-verdict"
    assert got.lens is not None
    assert (got.lens.focal_length_mm, got.lens.lens_kind, got.lens.format) == (38, "projector", "8mm")
    assert ids(got.bodies) == ["mft-mount"]


def test_an_ambiguous_designation_keeps_what_it_may_mean() -> None:
    lens = asked("F lens on MFT").lens
    assert lens is not None
    assert lens.ambiguous
    assert lens.id == "f-mount"


def test_a_word_before_a_designation_is_skipped_and_told() -> None:
    got = asked("get a blorfex M42 lens on E-mount")
    assert ids(got.lenses) == ["m42"]


def test_limits_are_kept() -> None:
    limits = asked("M42 on E with at most 2 adapters, without glass, under $40, with what I own, with infinity").limits
    assert (limits.pieces, limits.without_glass, limits.price_usd) == (2, True, 40)
    assert (limits.owned_only, limits.at_least) == (True, "infinity")


def test_pieces_to_use_and_to_leave_out_are_kept() -> None:
    limits = asked("LTM on E via M without the helicoid, cheapest").limits
    assert (limits.using, limits.without, limits.cheapest) == (("m-mount",), ("helicoid",), True)


def test_a_stop_to_work_at_is_not_the_stop_of_the_lens() -> None:
    got = asked("can a 50mm f/1.8 M42 lens reach infinity on E at f/8")
    assert got.f_number == 8
    assert got.lens is not None
    assert got.lens.f_number == 1.8


def test_pieces_keep_length_range_and_factor() -> None:
    got = asked("how close will a 50mm M42 get on E with a 17-31 mm helicoid, a 12 mm tube and a 0.71x reducer")
    assert [(thing.piece, thing.thickness_mm, thing.factor) for thing in got.adapters] == [
        ("helicoid", (17, 31), None), ("extension-tube", (12, 12), None), ("focal-reducer", None, 0.71),
    ]  # fmt: skip


def test_a_list_of_tubes_is_as_many_tubes() -> None:
    got = asked("10, 16 and 26mm tubes on a 50, how close")
    assert [thing.thickness_mm for thing in got.adapters] == [(10, 10), (16, 16), (26, 26)]


def test_settings_of_light_are_kept() -> None:
    got = asked("f/1.6 fixed, bright sun, 1/50, iso 100. how much nd")
    assert (got.f_number, got.said("shutter"), got.said("iso"), got.said("light")) == (1.6, "1/50 s", "100", "full-sun")


def test_a_thread_is_put_together_from_width_and_pitch() -> None:
    assert asked("which mount has a 15.9mm thread 0.8 pitch").said("thread") == "15.9 mm x 0.8 mm"


def test_a_mark_of_the_scale_is_no_distance() -> None:
    assert asked("28mm, infinity at 3m on the scale, shim?").said("mark") == "3000 mm"


BEFORE = "how do I get a 25mm f/1.4 C-mount lens on an E-mount body"


@pytest.mark.parametrize(
    ("fragment", "part", "value"),
    [
        ("and on the full frame body?", "format", "35mm-full-frame"),
        ("on m43?", "body", "mft-mount"),
        ("and MFT?", "body", "mft-mount"),
        ("and for a D lens?", "lens", "d"),
        ("and with a 50?", "focal", 50.0),
        ("at f/8?", "stop", 8.0),
        ("with a 5 mm ring?", "piece", (5.0, 5.0)),
        ("without the helicoid", "without", ("helicoid",)),
        ("cheaper", "cheapest", True),
        ("the second one", "number", 2),
        ("why?", "intent", "why"),
        ("why not?", "topic", "not"),
        ("how close?", "intent", "macro-distance"),
        ("equiv?", "intent", "crop-equivalent"),
        ("will it cover?", "intent", "coverage"),
        ("does it reach infinity", "intent", "focus-verdict"),
    ],
)
def test_a_fragment_changes_only_what_it_names(fragment: str, part: str, value: object) -> None:
    before = asked(BEFORE)
    got = asked(fragment, before)
    assert got.follows
    parts = {
        "format": got.body and got.body.format, "body": got.body and got.body.id, "lens": got.lens and got.lens.id,
        "focal": got.lens and got.lens.focal_length_mm, "stop": got.f_number, "without": got.limits.without,
        "piece": got.adapters[0].thickness_mm if got.adapters else None, "cheapest": got.limits.cheapest,
        "number": got.number, "intent": got.intent, "topic": got.topic,
    }  # fmt: skip
    assert parts[part] == value
    if part != "lens":
        assert ids(got.lenses) == ["c"]
    if part not in ("body",):
        assert ids(got.bodies) == ["e-mount"]


def test_a_whole_question_leans_on_nothing() -> None:
    got = asked("get M42 on Z", asked(BEFORE))
    assert not got.follows
    assert (ids(got.lenses), ids(got.bodies)) == (["m42"], ["z-mount"])


def test_what_was_taken_away_is_gone() -> None:
    before = asked("50 f/2 M42 with .71 on mft equivalent?")
    assert before.adapters
    assert asked("and without it", before).adapters == ()


@pytest.mark.parametrize(
    "fragment",
    ["and on the full frame body?", "at f/8?", "why?", "why not?", "the second one", "cheaper", "without the helicoid",
     "and with a 50?", "on m43?", "with a 5 mm ring?", "how close?", "equiv?"],
)  # fmt: skip
def test_a_fragment_with_nothing_before_it_asks_which(fragment: str) -> None:
    assert "which lens" in refused(fragment).expected


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("M42 on E without glass with glass", "with glass"),
        ("M42 on E with at most 0 adapters", "at most 0"),
        ("M42 on E under -5", "under -5"),
        ("M42 on E at f/0", "f/0"),
    ],
)
def test_what_cannot_be_meant_is_refused_at_its_place(text: str, found: str) -> None:
    got = refused(text)
    assert got.found == found
    assert text[got.column - 1 :].startswith(found)


def test_lens_and_body_the_wrong_way_round_are_told_the_right_one() -> None:
    got = refused("get an E-mount body on a C-mount lens")
    assert "lens goes on a body" in got.expected
    assert asked(got.guesses[0]).with_(text="").lenses[0].id == "c"
    assert asked(got.guesses[0]).bodies[0].id == "e-mount"


def test_an_unknown_word_where_a_name_should_be_is_refused_with_the_nearest() -> None:
    got = refused("get an M24 lens on E-mount")
    assert (got.column, got.found, got.nearest) == (8, "M24", "M42")
    assert got.guesses[0] == "how do I get an M42 lens on an E-mount body"
    assert refused("get a blorf lens on e-mount").column == 7
    assert refused("get M42 on qbn").nearest == "QBM"
    assert [one.ids for one in asked("get M42 on blorf").bodies] == [()]  # like no name: its mount is asked for


@pytest.mark.parametrize("text", ["m42 on e-mont", "m42 to e-monut", "e-mont body, m42 lens"])
def test_a_slip_in_the_word_mount_behind_a_letter_is_read_over(text: str) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert (got.lenses[0].ids[0], got.bodies[0].ids[0]) == ("m42", "e-mount")


def test_a_misspelt_name_of_several_words_is_told_the_right_one() -> None:
    assert refused("m42 to micro four thurd").nearest == "Micro Four Thirds"


@pytest.mark.parametrize(
    ("text", "intent"),
    [
        ("help", "help"),
        ("?", "help"),
        ("QUIT!", "quit"),
        ("start over", "start-over"),
        ("forget everything", "start-over"),
        ("show memory", "show-memory"),
        ("my gear", "list-gear"),
    ],
)
def test_orders_are_whole_lines(text: str, intent: str) -> None:
    assert asked(text).intent == intent


@pytest.mark.parametrize(
    ("text", "topic"),
    [("why is the extension 5.24", "extension_mm"), ("why not infinity", "not"), ("why infinity", "infinity")],
)
def test_what_is_asked_of_a_reason_is_its_topic(text: str, topic: str) -> None:
    got = asked(text, asked(BEFORE))
    assert (got.intent, got.topic) == ("why", topic)


def test_the_chain_meant_is_kept_by_its_number() -> None:
    got = asked("why #2", asked(BEFORE))
    assert (got.intent, got.number) == ("why", 2)


@pytest.mark.parametrize(
    ("text", "pair"),
    [
        ("the scale of my 50 says 5 m but the tape says 4.2", (5000, 4200)),
        ("laser says 3, lens shows 10 ft", (3048, 914.4)),
        ("the scale says 5 m", None),
    ],
)
def test_what_the_scale_says_and_what_is_so_are_read_together(text: str, pair: tuple[float, float] | None) -> None:
    got = asked(text).scale_pair
    assert got == (pair if pair is None else pytest.approx(pair))
