"""What is to be drawn: the chain that a question asks a drawing of, its name as a file, and the numbers drawn."""

from __future__ import annotations

import re
from collections.abc import Iterator
from math import inf
from typing import Final

from engine.answers.howto import how_to
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, ListedChain, Quantity, Sketch
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side, setup_of
from engine.answers.parts.said import mentions, numbers
from engine.answers.seat.cautioning import warnings_of
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.passed_over import is_passed_over
from engine.answers.seat.telling import chain_title, life_line
from engine.answers.seat.unsold import made_chain
from engine.answers.shims.summed import UNSIZED
from engine.answers.ways.pairs import as_measured
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.judging.judge import Judged
from engine.judging.ranking import Listed
from engine.physics.coverage import largest_crop_mm
from grammar.kinds import CHAIN, DRAW, SHIM_CALIBRATION
from grammar.questions import AND, DRAWINGS, Question

BEFORE: Final = "What screws in before the lens is not drawn, nor what it does to the distances."
MOST_PAIRS: Final = 6
WIDEST: Final = 28  # characters of a lens or body in the name of a file
DRAWN: Final = {
    "section": ("seat_mm", "body_register_mm", "lens_register_mm", "register_error_mm", "infinity_allowance_mm",
                "focal_length_mm", "f_number", "rear_reach_mm", "overhang_mm", "clear_depth_mm", "throat_mm"),
    "frame": ("used_width_mm", "used_height_mm", "image_circle_at_far_mm", "lit_share", "crop_factor",
              "equivalent_focal_mm"),
    "distances": ("far_from_sensor_mm", "near_from_sensor_mm", "far_from_front_glass_mm",
                  "near_from_front_glass_mm", "travel_mm", "register_error_mm"),
}  # fmt: skip
# words of a description that a file's name can do without
_IDLE: Final = frozenset(["a", "an", "the", "lens", "body", "with"])


def draw(question: Question, knowledge: Knowledge) -> Answer:
    """The best chain of each lens on each body, to be drawn; or what is missing for it."""
    answers = [_best(one, knowledge) for one in _pairs(question)]
    if len(answers) == 1:
        return answers[0]
    return Answer(
        question.text, "draw", min(answer.status for answer in answers),
        tuple(line for answer in answers for line in answer.lines), question=question,
        quantities=tuple(replace(row, case=_case(answer)) for answer in answers for row in answer.quantities),
        sketches=tuple(sketch for answer in answers for sketch in answer.sketches), drawings=(),
    )  # fmt: skip


def draw_again(question: Question, rows: tuple[Listed, ...], knowledge: Knowledge) -> Answer | None:
    """A chain of the last answer, to be drawn; None where the question is about another lens or body than that."""
    lens, body = (side(thing, knowledge.catalogue) for side, thing in
                  ((lens_side, question.lens), (body_side, question.body)))  # fmt: skip
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return None
    number = question.number or 1
    setup = setup_of(as_measured(lens, question), body, knowledge.catalogue, question.f_number)
    row = rows[number - 1]
    had = row.judged.setup
    if (had.lens, had.body) != (setup.lens, setup.body):
        return None
    if had != setup:  # another stop: the same chain is judged anew
        row = replace(row, judged=knowledge.judge_chain(row.judged.chain, setup))
    question = replace(question, number=number)
    chain = ListedChain(number, row, chain_title(row.judged, knowledge))
    return replace(_drawn(question, chain, len(rows), knowledge, (chain,)), draws_again=True)


def _pairs(question: Question) -> Iterator[Question]:
    """One question for each lens on each body; a question that lacks one of them stays whole."""
    lenses, bodies = question.lenses, question.bodies
    if len(lenses) * len(bodies) < 2:
        yield question
        return
    pairs = [(lens, body) for lens in lenses for body in bodies]
    for lens, body in pairs[:MOST_PAIRS]:
        yield replace(question, lenses=(lens,), bodies=(body,))


def _case(answer: Answer) -> str:
    setup = answer.sketches[0].judged.setup
    return f"{setup.lens.name} on {setup.body.name}"


def _best(question: Question, knowledge: Knowledge) -> Answer:
    made, why_not = _to_make(question, knowledge) if mentions(question, "ring-to-make") else (None, ())
    if made is not None:
        return _drawn(question, made, 1, knowledge, (made,))
    found = how_to(replace(question, intent=CHAIN), knowledge)
    nothing = replace(found, intent=DRAW, status=NO, question=question, quantities=(), drawings=())
    if not found.chains:
        return replace(nothing, lines=found.lines if found.chains is None else found.lines[:1])
    count = len(found.chains)
    if not 1 <= (question.number or 1) <= count:
        text = f"There are {count} ways; ask for one of 1 to {count}."
        return replace(nothing, lines=(Line("ask", text),))
    answer = _drawn(question, found.chains[(question.number or 1) - 1], count, knowledge, found.chains)
    before = found.lines[: _first_chain(found)]
    unled = tuple(line for line in before if is_passed_over(line.text) or line.text == UNSIZED)
    taken = tuple(line for line in before if line.kind == "note")
    return replace(
        answer, lines=(*why_not, *unled, *answer.lines[:1], *_as_it_should_be(question), *taken, *answer.lines[1:])
    )


def _as_it_should_be(question: Question) -> tuple[Line, ...]:
    """'draw it' after an error of the seat was told: the pieces are drawn as sold, and that is said."""
    told = question.follows and question.prior is not None and question.prior.intent == SHIM_CALIBRATION
    text = "Drawn with the ring as it should be: the error of the seat that was told before is not in the drawing."
    return (Line("caution", text),) if told else ()


def _to_make(question: Question, knowledge: Knowledge) -> tuple[ListedChain | None, tuple[Line, ...]]:
    """The one ring between lens and body that would have to be made; where none can be, why not."""
    lens, body = lens_side(question.lens, knowledge.catalogue), body_side(question.body, knowledge.catalogue)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return None, ()
    setup = setup_of(lens, body, knowledge.catalogue, question.f_number)
    ring = ring_to_make(setup, knowledge.catalogue)
    if ring.possible == "no":
        return None, (Line("head", f"No ring can be made for that: {ring.why}."),)
    return made_chain(ring, setup, knowledge), ()


def _first_chain(answer: Answer) -> int:
    """Where the chains begin; what stands before them says how the question was taken."""
    return next((n for n, line in enumerate(answer.lines) if line.kind == "chain"), len(answer.lines))


def _drawn(
    question: Question, chain: ListedChain, count: int, knowledge: Knowledge, chains: tuple[ListedChain, ...]
) -> Answer:
    judged, setup = chain.listed.judged, chain.listed.judged.setup
    subject = _sentence(f"{setup.lens.name} on {setup.body.name}")
    which = f"{chain.number} of {count}: " if count > 1 else ""
    left_out = [Line("note", BEFORE)] if question.before_lens else []
    lines = [
        Line("head", f"{subject}, {which}{chain.title}."),
        Line("text", f"{_sentence(life_line(judged, question.feet))}."),
        *left_out,
        *warnings_of(judged, knowledge, question.feet),
    ]
    asked = question.topic.split(AND) if question.topic else DRAWINGS
    kinds = [kind for kind in DRAWINGS if kind in asked]
    rows = dict.fromkeys(row for kind in kinds for row in _quantities(judged, kind, _aspect(question)))
    return Answer(
        question.text, "draw", ANSWERED, tuple(lines), question=question, chains=chains, quantities=tuple(rows),
        sketches=tuple(_sketches(question, chain, kinds)), drawings=(),
    )  # fmt: skip


def _sketches(question: Question, chain: ListedChain, kinds: list[str]) -> Iterator[Sketch]:
    judged = chain.listed.judged
    marks = numbers(question, "mark")
    stem = _stem(judged, chain.number)
    told = question.said("file")
    if told is not None:
        stem = told.rpartition(".")[0]
    for kind in kinds:
        name = stem if told is not None and len(kinds) == 1 else f"{stem}-{kind}"
        yield Sketch(
            kind, judged, name, chain.number, (inf, *marks) if marks else (), _aspect(question), question.feet
        )  # fmt: skip


def _aspect(question: Question) -> float | None:
    """Width over height of the crop asked for: '16:9'."""
    wide, colon, high = (question.said("crop") or "").partition(":")
    return float(wide) / float(high) if colon else None


def _stem(judged: Judged, number: int) -> str:
    """'avocet-on-skiff', 'avocet-on-skiff-2': lens, body and, but for the best, which chain."""
    lens, body = (_words(side.name) for side in (judged.setup.lens, judged.setup.body))
    return f"{lens or 'lens'}-on-{body or 'body'}" + (f"-{number}" if number > 1 else "")


def _words(name: str) -> str:
    """A name without its small words, cut between words."""
    kept = re.findall(r"[^\W_]+(?:\.\d+)?", name.replace("f/", "f").replace("'", "").lower())
    out = ""
    for word in (word for word in kept if word not in _IDLE):
        longer = f"{out}-{word}" if out else word[:WIDEST]
        if len(longer) > WIDEST:
            break
        out = longer
    return out


def _quantities(judged: Judged, kind: str, aspect: float | None) -> Iterator[Quantity]:
    """The numbers that a drawing of this kind shows; of what can be set, both ends."""
    for name in DRAWN[kind]:
        value = judged.trace.value(name)
        if isinstance(value, Interval):
            yield Quantity(name, value)
        elif isinstance(value, Span):
            ends = (("shortest", value.shortest), ("longest", value.longest))
            for case, end in ends[:1] if value.is_fixed else ends:
                if is_known(end):
                    yield Quantity(name, end, None if value.is_fixed else case)
    form, circle = judged.setup.format, judged.trace.value("image_circle_at_far_mm")
    if kind == "frame" and form is not None and isinstance(circle, Interval):
        shape = aspect or form.width_mm / form.height_mm
        sides = zip(("crop_width_mm", "crop_height_mm"),
                    largest_crop_mm(circle, form.width_mm, form.height_mm, shape), strict=True)  # fmt: skip
        yield from (Quantity(name, side) for name, side in sides if is_known(side))


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:]
