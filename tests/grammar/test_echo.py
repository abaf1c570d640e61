"""The canonical sentence of a question is itself read as that question."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from engine.base.compact import replace
from grammar.echo.echo import canonical
from grammar.questions import Limits, Question, Thing
from grammar.reader import read
from tests.examples import examples
from tests.grammar.names import lexicon

MOUNTS = [
    "m42",
    "c",
    "cs",
    "d",
    "e-mount",
    "mft-mount",
    "fd-mount",
    "k-mount",
    "om-mount",
    "ef-mount",
    "ltm",
    "z-mount",
]
FORMATS = ["35mm-full-frame", "aps-c-1.5", "four-thirds", "s16", "44x33", "16mm"]
FOCALS = [4.5, 12.5, 25.0, 35.0, 50.0, 75.0, 135.0]
STOPS = [0.95, 1.4, 1.8, 2.0, 2.8, 5.6]

mounts = st.sampled_from(MOUNTS)
formats = st.sampled_from(FORMATS)


def maybe(strategy: st.SearchStrategy) -> st.SearchStrategy:
    return st.one_of(st.none(), strategy)


@st.composite
def lenses(draw: st.DrawFn) -> Thing:
    return Thing(
        "mount",
        (draw(mounts),),
        focal_length_mm=draw(maybe(st.sampled_from(FOCALS))),
        f_number=draw(maybe(st.sampled_from(STOPS))),
        lens_kind=draw(maybe(st.sampled_from(["zoom", "projector", "cine", "anamorphic", "large-format", "tele"]))),
        traits=draw(st.sampled_from([(), ("no aperture ring",), ("fixed iris",), ("leaf shutter",), ("reversed",)])),
        format=draw(maybe(formats)),
    )


@st.composite
def bodies(draw: st.DrawFn) -> Thing:
    return Thing(
        "mount", (draw(mounts),), format=draw(maybe(formats)), traits=draw(st.sampled_from([(), ("mirrorless",)]))
    )


@st.composite
def adapters(draw: st.DrawFn) -> Thing:
    sort = draw(st.sampled_from(["extension-tube", "helicoid", "focal-reducer", "teleconverter", "adapter", "bellows"]))
    if sort in ("focal-reducer", "teleconverter"):
        factor = draw(st.sampled_from([0.64, 0.71] if sort == "focal-reducer" else [1.4, 2.0]))
        return Thing(piece=sort, factor=factor)
    length = draw(st.sampled_from([(5.0, 5.0), (12.0, 12.0), (26.2, 26.2)]))
    if sort in ("helicoid", "bellows"):
        length = draw(st.sampled_from([(17.0, 31.0), (10.0, 15.5)]))
    front = (draw(mounts),) if sort == "adapter" else ()
    return Thing(piece=sort, thickness_mm=length, front=front, rear=(draw(mounts),) if front else ())


@st.composite
def limits(draw: st.DrawFn) -> Limits:
    glass = draw(st.sampled_from(["", "with", "without"]))
    return Limits(
        pieces=draw(maybe(st.integers(1, 6))),
        without_glass=glass == "without",
        with_glass=glass == "with",
        owned_only=draw(st.booleans()),
        price_usd=draw(maybe(st.sampled_from([15.0, 40.0, 120.0]))),
        without=draw(st.sampled_from([(), ("helicoid",), ("extension-tube",)])),
        using=draw(st.sampled_from([(), ("m-mount",)])),
        at_least=draw(maybe(st.just("infinity"))),
        best=draw(maybe(st.integers(2, 9))),
        cheapest=draw(st.booleans()),
    )


@st.composite
def questions(draw: st.DrawFn) -> Question:
    intent = draw(
        st.sampled_from(["chain", "focus-verdict", "macro-distance", "coverage", "crop-equivalent", "why", "list-fits"])
    )
    lens, body = draw(lenses()), draw(bodies())
    asked = Question("", intent, (lens,), (body,))
    if intent in ("chain", "focus-verdict"):
        asked = replace(asked, limits=draw(limits()))
    if intent in ("chain", "focus-verdict", "macro-distance"):
        asked = replace(asked, adapters=tuple(draw(st.lists(adapters(), max_size=2))))
        asked = replace(asked, f_number=draw(maybe(st.sampled_from([4.0, 8.0]))))
    if intent == "list-fits":
        asked = (
            replace(asked, bodies=())
            if draw(st.booleans())
            else replace(asked, lenses=(), bodies=(replace(body, format=None),))
        )
    if intent == "why":
        asked = replace(asked, topic=draw(st.sampled_from([None, "not"])))
    return asked


def bare(question: Question) -> Question:
    """Only what was understood: no text, no columns, no words as typed."""

    def plain(things: tuple[Thing, ...]) -> tuple[Thing, ...]:
        return tuple(replace(thing, words="", column=0) for thing in things)

    topic = question.topic if question.intent == "why" else None
    return replace(
        question, text="", lenses=plain(question.lenses), bodies=plain(question.bodies),
        adapters=plain(question.adapters), things=(), topic=topic, values=(), skipped=(),
    )  # fmt: skip


@settings(max_examples=examples(150), deadline=None)
@given(questions())
def test_a_canonical_sentence_is_read_as_the_question_it_says(question: Question) -> None:
    sentence = canonical(question, lexicon().name_for)
    got = read(sentence, lexicon())
    assert isinstance(got, Question), f"{sentence!r} -> {got}"
    assert bare(got) == bare(question), sentence
    assert canonical(got, lexicon().name_for) == sentence
