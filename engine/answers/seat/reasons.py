"""Why: the verdict read off its rules, the rules off their quantities, those off the facts and their sources."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import listed, quantity_text
from engine.answers.seat.listing import chain_lines, close_up_quantities, seat_quantities
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.observing import beside
from engine.answers.seat.standin import ANY, OWN_BODY
from engine.answers.seat.telling import CERTAINTY_WORDS, VERDICT_WORDS, chain_title, finding_text, seat_line, template
from engine.base.interval import Unknown, is_known
from engine.base.span import Span
from engine.chains.ring_map import Joint
from engine.judging.judge import Finding, Judged
from engine.judging.ranking import Listed
from engine.physics.trace import Step
from grammar.conditions import names_in
from grammar.questions import Question

DEEPEST = 6
# told only where there is glass in the chain
OF_GLASS = frozenset({"error_behind_glass_mm", "glass_factor", "glass_focal_mm", "image_shift_mm"})
SEAT_GROUNDS = {
    "derived": "cut to the difference of the registers",
    "nominal": "as sold, not measured",
    "measured": "measured",
    "register-difference": "made to hold infinity",
}


def why(question: Question, row: Listed, number: int, knowledge: Knowledge, rows: Sequence[Listed] = ()) -> Answer:
    """The reasons of one listed chain: of its verdict, or of the quantity that the question names.

    `rows`: the chains listed with it; those of another verdict are set against it.
    """
    judged = row.judged
    lines = [Line("head", f"Chain {number}, {chain_title(judged, knowledge)}: {_verdict_words(judged)}.")]
    if question.topic and question.topic in _quantity_names(judged):
        lines += list(step_lines(judged, judged.measured_trace.step(question.topic), 1, DEEPEST))
    else:
        lines += list(verdict_lines(judged, knowledge, only_lowering=question.topic == "not"))
    setup = judged.setup
    seen = beside(judged, knowledge.catalogue, question.feet)
    lines += seen.lines
    quantities = [
        *seat_quantities(setup, ring_to_make(setup, knowledge.catalogue), knowledge), *close_up_quantities(row)
    ]  # fmt: skip
    quantities += [*_error(judged, None), *seen.quantities]
    for other in rows:
        if other is not row and other.judged.verdict != judged.verdict:
            title = chain_title(other.judged, knowledge)
            lines.append(
                Line(
                    "text", f"Against that, {title}: {VERDICT_WORDS[other.judged.verdict]}; {seat_line(other.judged)}."
                )
            )
            quantities += _error(other.judged, title)
    return Answer(question.text, "why", 0, tuple(lines), question=question, quantities=tuple(quantities))


def _error(judged: Judged, case: str | None) -> list[Quantity]:
    error = judged.trace.value("register_error_mm")
    hull = error.hull() if isinstance(error, Span) else None
    return [Quantity("register_error_mm", hull, case)] if is_known(hull) else []


def _verdict_words(judged: Judged) -> str:
    return f"{VERDICT_WORDS[judged.verdict]}, {CERTAINTY_WORDS[judged.certainty]}"


def _quantity_names(judged: Judged) -> frozenset[str]:
    from engine.physics.quantities import QUANTITIES

    return frozenset(judged.measured_trace.given) | frozenset(QUANTITIES)


def verdict_lines(judged: Judged, knowledge: Knowledge, only_lowering: bool = False) -> Iterator[Line]:
    """Each finding that bears on the verdict, the change that would lift it, and what it was read off."""
    limiting = [finding for finding in judged.findings if finding.limits]
    others = [finding for finding in judged.findings if not finding.limits]
    told: set[str] = set()
    if not limiting:
        yield Line(
            "text", "Nothing lowers it: the lens can be set so that its register error is within the depth of focus."
        )
        yield from _register_lines(judged, told)
    for finding in limiting:
        yield Line("reason", finding_text(finding, judged, knowledge), 1)
        if finding.decided and finding.rule.remedy:
            yield Line("fact", f"what would lift it: {template(finding.rule.remedy, judged.measured_trace)}", 2)
        yield from _finding_inputs(finding, judged, knowledge, told)
    if only_lowering and limiting:
        return
    yield from certainty_lines(judged)
    for finding in others:
        yield Line(finding.severity, finding_text(finding, judged, knowledge), 1)


def _register_lines(judged: Judged, told: set[str]) -> Iterator[Line]:
    for name in ("register_error_mm", "infinity_allowance_mm"):
        value = judged.measured_trace.value(name)
        if value is not None and not isinstance(value, Unknown):
            yield from step_lines(judged, judged.measured_trace.step(name), 1, DEEPEST, told)


def _finding_inputs(finding: Finding, judged: Judged, knowledge: Knowledge, told: set[str]) -> Iterator[Line]:
    case = next(case for case in knowledge.cases if case.rule.id == finding.rule.id)
    for name in sorted(names_in(case.condition)):
        yield from step_lines(judged, judged.measured_trace.step(name), 2, DEEPEST, told)


def step_lines(judged: Judged, step: Step, depth: int, deepest: int, told: set[str] | None = None) -> Iterator[Line]:
    """A quantity, then what it was worked out from; what was told once is not told again."""
    told = told if told is not None else set()
    if step.name in told or depth > deepest:
        return
    told.add(step.name)
    glass = any(adapter.has_glass for adapter in judged.chain.adapters)
    if step.value is None or (not glass and step.name in OF_GLASS):
        return
    if step.name == "error_before_glass_mm" and not glass:
        yield from seat_lines(judged, depth, told)
        return
    value = quantity_text(step.name, step.value)
    if step.given is not None:
        given = step.given
        if isinstance(step.value, Unknown):
            yield Line("fact", f"{step.says}: not known", depth)
            return
        grounds = []
        if given.assumed:
            grounds.append("assumed")
        if given.confidence:
            grounds.append(given.confidence.replace("-", " "))
        if given.sources == ("asked",):
            grounds = ["as you said"]
        elif given.sources:
            grounds.append(f"source {listed(given.sources)}")
        yield Line("fact", f"{step.says}: {value}" + (f" ({'; '.join(grounds)})" if grounds else ""), depth)
        return
    source = f" ({step.source})" if step.source else ""
    yield Line("fact", f"{step.says}: {value}{source}", depth)
    for inner in step.inputs:
        yield from step_lines(judged, inner, depth + 1, deepest, told)


def seat_lines(judged: Judged, depth: int, told: set[str]) -> Iterator[Line]:
    """The register error as the sum it is: each seat, the register of the body, less that of the lens."""
    for seat in judged.seats:
        link = seat.link
        if isinstance(link, Joint):
            yield Line("fact", f"{link.front} straight into {link.rear}: adds no thickness", depth)
            continue
        thickness = quantity_text("seat_mm", link.thickness_mm)
        resting = "; the barrel does not enter the cup, so the lens rests on its face" if seat.rests_on_flange else ""
        grounds = SEAT_GROUNDS.get(link.seat_basis, link.seat_basis)
        yield Line("fact", f"seat of {link.name}: {thickness} ({grounds}){resting}", depth)
    if judged.setup.lens_mount.id == ANY:
        yield Line("fact", OWN_BODY, depth)
        return
    for name, sign in (("body_register_mm", "plus"), ("lens_register_mm", "less")):
        step = judged.measured_trace.step(name)
        for line in step_lines(judged, step, depth, DEEPEST, told):
            yield Line(line.kind, f"{sign} the {line.text}", line.depth)


def certainty_lines(judged: Judged) -> Iterator[Line]:
    """What the certainty rests on: what is assumed, what is unknown, and the best and worst that leaves."""
    if judged.certainty == "certain":
        yield Line("text", "It is the same everywhere inside the tolerances, on facts that are measured or standard.")
        return
    if judged.best != judged.worst:
        yield Line(
            "text", f"Best possible: {VERDICT_WORDS[judged.best]}. Worst possible: {VERDICT_WORDS[judged.worst]}."
        )
    unmeasured = [a.name for a in judged.chain.adapters if a.seat_basis != "measured"]
    if unmeasured:
        yield Line(
            "text", f"Not measured: the seat of {listed(unmeasured)}. A caliper reading of it would make this surer."
        )
    weak = [
        mount.designation for mount in (judged.setup.lens_mount, judged.setup.body_mount) if not mount.basis.is_strong
    ]
    if weak:
        yield Line("text", f"On a weak fact: the register of {listed(weak)}.")


def listing(question: Question, rows: tuple[Listed, ...], number: int, knowledge: Knowledge) -> Answer:
    """One of the listed chains again, in full."""
    from engine.answers.parts.answer import ListedChain

    row = rows[number - 1]
    chain = ListedChain(number, row, chain_title(row.judged, knowledge))
    lines = chain_lines(chain, knowledge, question.feet, full=True)
    return Answer(
        question.text, question.intent, 0, tuple(lines), question=question, chains=(chain,),
        ring=ring_to_make(row.judged.setup, knowledge.catalogue), quantities=close_up_quantities(row),
    )  # fmt: skip
