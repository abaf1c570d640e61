"""How sure an answer is, and what would put a chain right: what is known, assumed and unknown, and what to measure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import READS_MM, listed, quantity_text, small_mm
from engine.answers.seat.elsewhere import elsewhere
from engine.answers.seat.making import ring_to_make
from engine.answers.seat.standin import ANY, OWN_BODY
from engine.answers.seat.telling import CERTAINTY_WORDS, VERDICT_WORDS, chain_title, finding_text, life_line, template
from engine.base.interval import Interval, Unknown, is_known
from engine.base.span import Span
from engine.chains.walk import seats
from engine.facts.kinds import STRONG, VERDICTS
from engine.judging.judge import Finding, Judged
from engine.judging.ranking import Listed
from engine.physics.trace import Given
from grammar.questions import Question

_SEVERAL = 2
_REGISTERS = ("lens_register_mm", "body_register_mm")
_DECIDING = ("lens_register_mm", "body_register_mm", "f_number", "focal_length_mm", "hiatus_mm", "image_circle_mm")


def how_sure(question: Question, row: Listed, number: int, knowledge: Knowledge) -> Answer:
    """What the verdict of a chain rests on, what could change it, and which measurement would help most."""
    judged = row.judged
    head = f"Chain {number}, {chain_title(judged, knowledge)}: {VERDICT_WORDS[judged.verdict]}, "
    lines = [Line("head", head + f"{CERTAINTY_WORDS[judged.certainty]}.")]
    if judged.best != judged.worst:
        best, worst = VERDICT_WORDS[judged.best], VERDICT_WORDS[judged.worst]
        lines.append(Line("text", f"At best it {_verb(best)}, at worst {_verb(worst)}."))
    lines += list(_filled(judged, knowledge))
    given = {name: judged.measured_trace.given[name] for name in _DECIDING if name in judged.measured_trace.given}
    if judged.setup.lens_mount.id == ANY:
        given = {name: fact for name, fact in given.items() if name not in _REGISTERS}
        lines.append(Line("fact", f"assumed: {OWN_BODY}", 1))
    for title, rows in (
        ("known", [row for row in given.values() if _is_known(row) and not row.assumed]),
        ("assumed", [row for row in given.values() if _is_known(row) and row.assumed]),
    ):
        for fact in rows:
            lines.append(Line("fact", f"{title}: {fact.says}, {_shown(fact, given)}", 1))
    lines += [Line("fact", f"not known: {row.says}", 1) for row in given.values() if isinstance(row.value, Unknown)]
    lines += [Line("fact", f"not measured: the seat of {name}", 1) for name in _unmeasured(judged)]
    helps = list(_helpful(judged))
    if helps:
        lines.append(Line("text", f"What would help most: {helps[0]}."))
        lines += [Line("fact", f"then: {text}", 1) for text in helps[1:3]]
    else:
        lines.append(Line("text", "No measurement would change it."))
    return Answer(question.text, question.intent, ANSWERED, tuple(lines), question=question)


def put_right(
    question: Question, rows: Sequence[Listed], number: int, knowledge: Knowledge, feet: bool = False
) -> Answer:
    """What would lift the verdict of a chain: the smallest change of it, a better chain of those listed, a ring."""
    judged = rows[number - 1].judged
    lines = [Line("head", f"Chain {number}, {chain_title(judged, knowledge)}: {life_line(judged, feet)}.")]
    lowering = [finding for finding in judged.findings if finding.limits and finding.decided]
    for finding in lowering:
        remedy = finding.rule.remedy
        told = template(remedy, judged.measured_trace) if remedy else finding_text(finding, judged, knowledge)
        lines.append(Line("fact", f"to lift it: {told}", 1))
    for finding in judged.findings:
        if not finding.decided and finding.rule.measure:
            lines.append(Line("fact", f"to decide it: {finding.rule.measure}", 1))
    if not lowering and len(lines) == 1:
        lines += _bettered(judged)
    rank = VERDICTS.index(judged.verdict)
    for n, row in enumerate(rows, start=1):
        if VERDICTS.index(row.judged.verdict) < rank:
            lines.append(
                Line("text", f"Or chain {n}, {chain_title(row.judged, knowledge)}: {life_line(row.judged, feet)}.")
            )
            break
    ring = ring_to_make(judged.setup, knowledge.catalogue)
    quantities = []
    if lowering and ring.thickness_mm is not None:
        lines.append(Line("text", f"The seat that is right here: {small_mm(ring.thickness_mm.nominal)}; {ring.why}."))
        quantities.append(Quantity("ring_thickness_mm", ring.thickness_mm))
    if lowering:
        others = elsewhere(judged.setup.lens_mount, knowledge, but=judged.setup.body_mount.id)
        lines += others.lines
        quantities += others.quantities
    return Answer(
        question.text, question.intent, ANSWERED, tuple(lines), question=question, quantities=tuple(quantities)
    )


def _bettered(judged: Judged) -> list[Line]:
    """What may be put right although it lowers nothing: marks that read wrong."""
    remedies = [finding.rule.remedy for finding in judged.findings if finding.decided and finding.rule.remedy]
    if not remedies:
        return [Line("text", "There is nothing to put right.")]
    told = (Line("fact", f"to better it: {template(one, judged.measured_trace)}", 1) for one in remedies if one)
    return [Line("text", "Nothing has to be put right."), *told]


def _filled(judged: Judged, knowledge: Knowledge) -> Iterator[Line]:
    """Of rings one behind the other how each fills what its two mounts differ by."""
    facts = knowledge.catalogue
    if not {judged.setup.lens_mount.id, judged.setup.body_mount.id} <= facts.mounts.keys():
        return  # a lens that is taken for one of the body's own mount
    rows = seats(judged.chain, judged.setup, facts, with_spread=False)
    plain = all(row.link.front != row.link.rear and row.thickness_mm.is_fixed for row in rows)
    if len(judged.chain.adapters) < _SEVERAL or judged.verdict != "infinity" or not plain:
        return
    told = []
    for row in rows:
        front, rear = (facts.mounts[id_].register_mm for id_ in (row.link.front, row.link.rear))
        seat = row.thickness_mm.shortest
        if not (is_known(front) and is_known(rear) and is_known(seat)):
            return
        fills = (
            "" if abs(front.nominal - rear.nominal - seat.nominal) < READS_MM else f", it has {small_mm(seat.nominal)}"
        )
        told.append(f"{front.nominal:g} - {rear.nominal:g} = {small_mm(front.nominal - rear.nominal)}{fills}")
    yield Line("text", f"Each piece fills what its two mounts differ by: {listed(told)}. Several lose nothing by that.")


def _verb(words: str) -> str:
    return f"is {words}" if words in ("close-up only", "no use") else words


def _is_known(row: Given) -> bool:
    return row.value is not None and not isinstance(row.value, Unknown)


def _shown(row: Given, given: dict[str, Given]) -> str:
    name = next(key for key, one in given.items() if one is row)
    told = quantity_text(name, row.value)
    if row.sources == ("asked",):
        return f"{told} (as you said)"
    return f"{told} ({row.confidence.replace('-', ' ')})" if row.confidence else told


def _unmeasured(judged: Judged) -> Iterator[str]:
    for adapter in judged.chain.adapters:
        if adapter.seat_basis != "measured":
            yield adapter.name


def _helpful(judged: Judged) -> Iterator[str]:
    """Measurements in the order of what they decide: a missing fact first, then what varies, then weak facts."""
    open_ones: list[Finding] = [row for row in judged.findings if not row.decided and row.rule.measure]
    open_ones.sort(key=lambda row: -VERDICTS.index(row.limits) if row.limits else 1)
    for finding in open_ones:
        yield finding.rule.measure
    seats = list(_unmeasured(judged))
    error, allowance = judged.trace.value("register_error_mm"), judged.trace.value("infinity_allowance_mm")
    if seats and isinstance(error, Span) and isinstance(error.shortest, Interval):
        spread = (error.shortest.greatest - error.shortest.least) / 2
        text = f"a caliper over {listed(seats)}, from seat to seat: in the making it varies by {small_mm(spread)}"
        if isinstance(allowance, Interval):
            text += f", and the depth of focus forgives {small_mm(allowance.nominal)}"
        if spread > 0:
            yield text
    for whose, mount in (("lens", judged.setup.lens_mount), ("body", judged.setup.body_mount)):
        if mount.basis.confidence not in STRONG and is_known(mount.register_mm):
            yield f"the register of the {whose}: {mount.designation} rests on a weak fact"
