"""Which of one's own adapters take a lens or fit a body, or fulfil a condition on a named quantity."""

from __future__ import annotations

from engine.answers.own.own_cases import Case, as_interval
from engine.answers.own.own_rulings import NO as NOT
from engine.answers.own.own_rulings import OPEN, YES, Ruling, grouped, ruled
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.own_words import OwnWords, told_value
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side, setup_of
from engine.base.interval import Interval
from engine.chains.walk import Chain, givens
from engine.facts.records import Adapter
from engine.physics.trace import Trace
from grammar.questions import Question, Thing


def which_adapters(question: Question, knowledge: Knowledge) -> Answer:
    """Each adapter of one's own against the mounts and conditions asked for."""
    facts, words = knowledge.catalogue, OwnWords.of(knowledge.catalogue)
    own = [row for row in facts.adapters.values() if row.owned]
    if not own:
        text = (
            "No adapters of yours are known. Tell them, one by one: 'I own a C to E ring, 4.02 mm thick'; then 'yes'."
        )
        return Answer(question.text, question.intent, NO, (Line("ask", text),), question=question)
    bodies = [body for thing in question.bodies if isinstance(body := body_side(thing, facts), BodySide)]
    lenses = [side for thing in question.lenses if isinstance(side := lens_side(thing, facts), LensSide)]
    rears, fronts = {body.mount.id for body in bodies}, {side.mount.id for side in lenses}
    told = question.sought
    assert told is not None
    order = told.order
    sorts = order.quantity.split("|")[0] if order is not None else ""
    found: dict[str, list[tuple[Adapter, str, Case]]] = {YES: [], NOT: [], OPEN: []}
    for adapter in own:
        case = _case(adapter, knowledge)
        rulings = [
            *([_mount(adapter.front, fronts, "takes", knowledge)] if fronts else []),
            *([_mount(adapter.rear, rears, "fits", knowledge)] if rears else []),
            *([_glass(adapter, question.limits.with_glass)] if _asks_of_glass(question) else []),
        ]
        groups = [[*rulings, *(ruled(demand, case, words, question.feet) for demand in group)]
                  for group in told.any_of or ((),)]  # fmt: skip
        state = grouped(groups)
        group = min(groups, key=lambda rows: sum(one.state != YES for one in rows))
        shown = [one.says for one in group if state == YES or one.state == state]
        if state == YES and sorts and as_interval(case.value(sorts)) is None:
            state, shown = OPEN, [f"{words.label(sorts)} not known"]
        found[state].append((adapter, "; ".join(shown), case))
    if order is not None:
        for rows in found.values():
            rows.sort(key=lambda row: _key(row[2], sorts, order.least))
    return _answer(question, found, words, knowledge, sorts)


def _case(adapter: Adapter, knowledge: Knowledge) -> Case:
    """The adapter between a lens and a body of its own two mounts, for its quantities."""
    facts = knowledge.catalogue
    lens = lens_side(Thing("mount", (adapter.front,), ""), facts)
    body = body_side(Thing("mount", (adapter.rear,), ""), facts)
    if not isinstance(lens, LensSide) or not isinstance(body, BodySide):
        raise TypeError(f"a mount that is none: {adapter.front}, {adapter.rear}")
    setup = setup_of(lens, body, facts)
    chain = Chain((adapter,), {})
    judged = knowledge.judge_chain(chain, setup)
    return Case(adapter.name, lens, body, setup, Trace(givens(chain, setup, facts)), is_piece=True, alone=judged)


def _mount(mount: str, wanted: set[str], does: str, knowledge: Knowledge) -> Ruling:
    name = knowledge.catalogue.mounts[mount].designation
    return Ruling(YES if mount in wanted else NOT, f"{does} {name}")


def _asks_of_glass(question: Question) -> bool:
    return question.limits.with_glass or question.limits.without_glass


def _glass(adapter: Adapter, wanted: bool) -> Ruling:
    return Ruling(YES if adapter.has_glass == wanted else NOT, "has glass" if adapter.has_glass else "no glass")


def _key(case: Case, quantity: str, least: bool) -> tuple[bool, float]:
    value = as_interval(case.value(quantity))
    return (value is None, 0.0 if value is None else value.nominal if least else -value.nominal)


def _answer(
    question: Question, found: dict[str, list[tuple[Adapter, str, Case]]], words: OwnWords, knowledge: Knowledge,
    sorts: str,
) -> Answer:  # fmt: skip
    total = sum(map(len, found.values()))
    yes = found[YES]
    lines = [Line("head", f"{len(yes) or 'None'} of {total} adapters{':' if yes else '.'}")]
    rows: list[Quantity] = []
    for n, (adapter, _, case) in enumerate(yes, start=1):
        seat = told_value("seat_mm", case.value("seat_mm"), question.feet)
        more = f"; {words.label(sorts)} {told_value(sorts, case.value(sorts))}" if sorts not in ("", "seat_mm") else ""
        names = (knowledge.catalogue.mounts[name].designation for name in (adapter.front, adapter.rear))
        lines.append(Line("text", f"{n}. {adapter.name}: {' to '.join(names)}, seat {seat}{more}", 1))
    for state, head in ((NOT, "Not:"), (OPEN, "Undecided:")):
        if found[state]:
            lines.append(Line("head", head))
            lines += [Line("fact", f"{adapter.name}: {says}", 1) for adapter, says, _ in found[state]]
    values = {YES: Interval.exact(1.0), NOT: Interval.exact(0.0), OPEN: Interval.between(0.0, 1.0)}
    for state, group in found.items():
        for adapter, _, case in group:
            rows.append(Quantity("fulfils", values[state], adapter.name))
            seat_mm = as_interval(case.value("seat_mm"))
            if seat_mm is not None:
                rows.append(Quantity("seat_mm", seat_mm, adapter.name))
    return Answer(
        question.text, question.intent, ANSWERED if yes or found[OPEN] else NO, tuple(lines), question=question,
        quantities=tuple(rows),
    )  # fmt: skip
