"""Advice: what can hurt gear or a person, what to set, why a thing is so; with the worked table that shows it."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.answer import ANSWERED, NO, Answer, Line, Quantity, Told
from engine.answers.explained import explained
from engine.answers.knowledge import Knowledge
from engine.answers.loose import Loose, loose
from engine.answers.nearby import LEAST, asked_about, nearest
from engine.answers.owned import own_lens
from engine.answers.reaching_in import reach_told
from engine.answers.remembered import HARM
from engine.answers.said import focals
from engine.answers.spacing import far_limits, marks, tubes, usual_focals
from engine.answers.wording import trimmed
from engine.base.interval import is_known
from engine.facts.records import Advice
from engine.facts.subjects import asked_as
from engine.judging.judge import Judged
from grammar.conditions import names_in
from grammar.questions import Question, Thing

MOST = 3
ALONE = 3.0  # what the words of two questions together must share with an advice
MIRROR = "body_mirror"
NOTHING_KNOWN = (
    "Nothing in the facts answers that. Ask about a lens on a body first, then 'why?'.",
    "Nothing in the facts warns of that, which does not make it safe. Stop at any resistance, measure before you "
    "mount, and in doubt ask the maker or a repair technician.",
)


def advise(question: Question, knowledge: Knowledge) -> Answer:
    """The advice that the question names or is about, with what its numbers allow to be worked out."""
    rows = named_or_near(question, knowledge)
    found = loose(question, knowledge) if question.intent == "why" and question.topic != HARM else Loose()
    numbers = explained(question, knowledge) if question.intent == "why" else Told()
    chain = _chain_of(question, knowledge) if question.intent == "hazard" else None
    if not rows and found.is_empty and not numbers.lines and chain is None:
        text = NOTHING_KNOWN[question.intent == "hazard"]
        return Answer(question.text, question.intent, NO, (Line("text", text),), question=question)
    told = found.told if found.told.lines and not _shown_by_tubes(rows) else examples(rows, question, knowledge)
    if chain is not None:
        rows = _of_chain(rows, chain, knowledge)
    told = (reach_told(question, knowledge) if question.intent == "hazard" else Told()) + told
    warned = _warnings(chain, question, knowledge) if chain is not None else []
    lines = (
        [*plainly(rows, question), *told.lines, *warned, *advice_lines(rows[:MOST])]
        if question.intent == "hazard"
        else [*advice_lines(rows[:MOST]), *told.lines]
    )
    if question.intent == "why":
        told += _beside_reasons(question, knowledge)
        lines = [*numbers.lines, *lines]
        lines += [line for line in told.lines if line not in lines]
        told += Told((), numbers.quantities)
    quantities = told.quantities
    if question.intent == "why" and question.lens is not None and not _is_bare(question.lens):
        from engine.answers.cover import cover_told

        cover = cover_told(question, knowledge)
        lines += cover.lines
        quantities = (*quantities, *cover.quantities)
    return Answer(
        question.text, question.intent, ANSWERED, tuple(lines), question=question, chains=found.chains or None,
        quantities=quantities,
    )  # fmt: skip


def _chain_of(question: Question, knowledge: Knowledge) -> Judged | None:
    """The best chain of the lens on the body, where both are known; None where they are not."""
    if not (question.lens and question.lens.ids and question.body and question.body.ids):
        return None
    from engine.answers.howto import how_to

    answer = how_to(question.with_(intent="chain", topic=None), knowledge)
    return answer.chains[0].listed.judged if answer.chains else None


def _of_chain(rows: list[Advice], judged: Judged, knowledge: Knowledge) -> list[Advice]:
    """The advice without what only rules about a mirror carry, where the body has none."""
    if judged.measured_trace.value(MIRROR) is not False:
        return rows
    about = {name: [case for case in knowledge.cases if case.rule.advice == name] for name in {row.id for row in rows}}
    mirror = {name for name, cases in about.items() if cases and all(MIRROR in names_in(c.condition) for c in cases)}
    return [row for row in rows if row.id not in mirror]


def _warnings(judged: Judged, question: Question, knowledge: Knowledge) -> list[Line]:
    """What the chain itself warns of, dangers first."""
    from engine.answers.telling import chain_title, finding_lines

    found = [line for line in finding_lines(judged, knowledge, question.feet) if line.kind in ("danger", "caution")]
    head = f"By {chain_title(judged, knowledge)}:"
    return [Line("head", head), *(Line(line.kind, line.text, 1) for line in found)] if found else []


def _beside_reasons(question: Question, knowledge: Knowledge) -> Told:
    """What a reason hangs on, where the question names it: the light an extension costs, the registers of mounts."""
    more = Told()
    if question.said("stops") is not None or question.f_number is not None:
        from engine.answers.exposing import lost_by_extension

        more += lost_by_extension(question, knowledge)
    for thing in question.lenses:
        mount = knowledge.catalogue.mounts.get(thing.ids[0]) if thing.kind == "mount" and thing.ids else None
        if mount is not None and is_known(mount.register_mm):
            note = f" {mount.register_note}" if mount.register_note else ""
            text = f"{mount.designation}: register {trimmed(mount.register_mm.nominal, 3)} mm.{note}"
            more += Told((Line("fact", text, 1),), (Quantity("register_mm", mount.register_mm, mount.id),))
    return more


def plainly(rows: Sequence[Advice], question: Question) -> list[Line]:
    """The answer in a few words, first, where it is asked whether a thing is safe or may be done."""
    return [Line("head", rows[0].plainly)] if rows and rows[0].plainly and question.intent == "hazard" else []


def _is_bare(lens: Thing) -> bool:
    """Whether nothing is told of a lens but that there is one."""
    return not (lens.ids or lens.format or lens.focal_length_mm or lens.lens_kind)


def _shown_by_tubes(rows: Sequence[Advice]) -> bool:
    return any(row.example == "tubes" for row in rows[:1])


def advice_lines(rows: Sequence[Advice]) -> list[Line]:
    """Each advice with its severity, and whom to ask."""
    lines: list[Line] = []
    for advice in rows:
        lines.append(Line("head" if advice.severity == "note" else advice.severity, f"{advice.topic}: {advice.says}"))
        if advice.defer_to:
            lines.append(Line("text", f"Ask: {advice.defer_to}.", 1))
    return lines


def of_their_kind(question: Question, knowledge: Knowledge) -> list[Advice]:
    """Advice for what the lens or the body has, by what is said of it, by the gear file or by its mount."""
    facts, has = knowledge.catalogue, set()
    for thing in (*question.lenses, *question.bodies):
        has |= {trait.replace(" ", "-") for trait in thing.traits}
        own = own_lens(thing, facts)
        mount = facts.mounts.get(own.mount if own is not None else thing.id or "")
        has |= set(mount.traits) if mount is not None else set()
        has |= {"fixed-iris"} if own is not None and own.iris == "fixed" else set()
    return [row for row in facts.advice.values() if has & set(row.traits)]


def named_or_near(
    question: Question, knowledge: Knowledge, most: int = MOST, least: float = LEAST
) -> list[Advice]:  # fmt: skip
    """Advice named in the question first, then what its words are about."""
    table = knowledge.catalogue.advice
    mounts = _mounts_named(question)
    ids = [question.topic] if question.topic is not None and question.topic in table else []
    ids += [name for thing in question.things if thing.kind == "advice" for name in thing.ids]
    near = nearest(asked_about(question), knowledge.catalogue, most, least, question.intent)
    if not near and question.prior is not None and least == LEAST:
        # 'does that hurt anything?': what it is about was said before
        said = f"{asked_about(question)} {question.prior.text}"
        near = nearest(said, knowledge.catalogue, 1, ALONE, question.intent)
    ids += [advice.id for advice in near]
    rows = [table[name] for name in dict.fromkeys(ids) if name in table]
    if question.intent == "hazard":
        rows.sort(key=lambda row: asked_as(row) == "other")  # what rules on a danger first, how a thing is done after
    return [row for row in rows if not (row.mounts and mounts) or mounts & set(row.mounts)][:most]


def _mounts_named(question: Question) -> set[str]:
    """The mounts of the lenses that the question is about: advice on others is beside the point."""
    return {name for thing in question.lenses if thing.kind == "mount" for name in thing.ids}


def examples(rows: Sequence[Advice], question: Question, knowledge: Knowledge) -> Told:
    """The worked tables that go with the advice: an everyday error on the lenses named, else on usual ones."""
    facts = knowledge.catalogue
    lenses = focals(question) or usual_focals(facts)
    told = Told()
    for kind in dict.fromkeys(advice.example for advice in rows if advice.example):
        if kind == "far-limits":
            error = facts.assumptions["making-spread-nominal"].value.greatest
            told += far_limits(lenses, error, facts, question.feet)
        elif kind == "marks":
            error = facts.assumptions["making-spread-derived"].value.greatest
            told += marks(lenses, error, facts, question.feet)
        elif kind == "tubes":
            usual = facts.assumptions["tube-to-show-by"].value.nominal
            length = next((one.thickness_mm[1] for one in question.adapters if one.thickness_mm), usual)
            told += tubes(lenses, length, facts, question.feet)
    return told
