"""Advice of the facts: which of it a question names or is about, how it is told, and the worked table beside it."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.exposure.drawn_longer import lost_by_extension
from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import (
    HUNDREDTHS,
    LEAST,
    asked_about,
    nearest,
    of_values,
    outdone_last,
    surely_named,
)
from engine.answers.parts.owned import own_lens
from engine.answers.parts.said import focals, mentions
from engine.answers.picture.equivalent import framed
from engine.answers.seat.spacing import far_limits, marks, tubes, usual_focals
from engine.facts.guidance import Advice
from engine.facts.subjects import asked_as
from grammar.kinds import DEFINITION, EXPOSURE_ND, HAZARD, SHIM_CALIBRATION, WHY
from grammar.questions import Question

LENS_STUCK = "lens-stuck"  # the advice where nothing is told of what else is stuck
STUCK = "stuck"  # the topic of what does not come off
_BEFORE_LENS = frozenset({"step-ring", "filter", "close-up-lens"})
_SHOWN = {"dashes": "no-aperture-data"}  # what a display shows, by the advice on it
FIRST_OF = {HAZARD: (WHY, HAZARD), "why": (WHY, HAZARD)}  # kinds of advice that are told first
PUT_IN = "shim-how"  # the advice where a shim is put
WHOSE = "ring-or-lens"  # and that on how to tell which of them is off
MOST = 3
ALONE = 3.0  # what the words of two questions together must share with an advice
HELD_BACK = "nd filter"
HARM = "damage"  # whether it hurts is a matter of advice, not of a chain told before
THREE_CHIPS = "three chips"  # trait of a lens for video
PRISM = "prism-behind"  # and of the mounts of such
_SMEAR = "smear"  # the advice on what oblique rays do in the glass before the sensor
_WARNING = frozenset({"caution", "danger"})


def of_shims(question: Question, rows: list[Advice], alone: str | None, knowledge: Knowledge) -> list[Advice]:
    """The advice that its words are about, behind what it asks for; `alone`: the one that is all there is to tell."""
    asked = ((PUT_IN, mentions(question, "shim-where")), (WHOSE, mentions(question, "whose-fault")))
    wanted = alone or next((name for name, is_asked in asked if is_asked), None)
    if wanted is None:
        return rows
    first = knowledge.catalogue.advice[wanted]
    return [first, *(row for row in rows if row is not first)][: 1 if alone or wanted == WHOSE else 2]


def named_or_near(
    question: Question, knowledge: Knowledge, most: int = MOST, least: float = LEAST
) -> list[Advice]:  # fmt: skip
    """Advice named in the question first, then what its words are about."""
    table = knowledge.catalogue.advice
    mounts = named_mounts(question, knowledge)
    topic = _SHOWN.get(question.topic or "", question.topic)
    ids = [topic] if topic is not None and topic in table else []
    ids += [name for thing in question.things if thing.kind == "advice" for name in thing.ids]
    ids = surely_named(ids, asked_about(question, knowledge.catalogue), knowledge.catalogue, question.intent)

    def fits(advice: Advice) -> bool:
        of_lens = not (advice.mounts and mounts) or bool(mounts & set(advice.mounts))
        return of_lens and is_of_body(advice, question) and not (advice.happened and only_feared(question))

    said, prior = asked_about(question, knowledge.catalogue), question.prior
    if question.intent in (HAZARD, WHY) and question.asked:
        said += f" {question.asked}"  # 'how do i know' tells nothing by itself
    elif question.intent == HAZARD and question.follows and prior is not None and prior.intent == HAZARD:
        own = () if made_safe(question) else nearest(said, knowledge.catalogue, 1, LEAST, question.intent, fits, mounts)
        both = nearest(f"{said} {prior.text}", knowledge.catalogue, 1, LEAST, question.intent, fits, mounts)
        before = nearest(prior.text, knowledge.catalogue, 1, LEAST, question.intent, fits, mounts)
        alone = own and not _is_more_of(own, both) and not _is_more_of(before, both)
        said = said if alone else f"{said} {prior.text}"  # what it is about was told before
    if question.intent == WHY and question.is_of_a_fault and prior is not None:
        near = nearest(prior.text, knowledge.catalogue, most, least, WHY, fits, mounts)  # of that fault still
        ranged = any(knowledge.catalogue.mounts[name].kind == "rangefinder" for name in mounts)
        return [table[_SMEAR]] if ranged and prior.mentions("edges-smear") else list(near)
    lit = question.intent == WHY and prior is not None and prior.intent == EXPOSURE_ND  # its 'sun' is what it is lit by
    if lit and question.places("by-other-means") and prior is not None and prior.mentions("nd-or-filter"):
        said += f" {HELD_BACK}"  # 'why not just stop down' after a filter
    # 'can the old screw hurt the camera' after how much light is wanted is of no sun
    lit = lit or (prior is not None and prior.intent == EXPOSURE_ND and prior.said("light") is None)
    near = nearest(said, knowledge.catalogue, most, least, question.intent, fits, mounts)
    if not near and question.prior is not None and least == LEAST and not lit:
        # 'does that hurt anything?': what it is about was said before
        said = f"{asked_about(question, knowledge.catalogue)} {question.prior.text}"
        if question.prior.intent == SHIM_CALIBRATION:  # 'do i need to care' after a shim
            said += f" {HUNDREDTHS}"
        near = nearest(said, knowledge.catalogue, 1, ALONE, question.intent, fits)
        if question.intent == HAZARD:
            near = tuple(row for row in near if asked_as(row) == HAZARD or row.severity in _WARNING)
    if question.intent == HAZARD:
        ids += [advice.id for advice in nearest(of_values(question), knowledge.catalogue, 1, least, question.intent)]
    within = question.mentions("stuck-within") or not (question.adapters or question.mentions("stuck-on-ring"))
    if question.topic == STUCK and question.intent == HAZARD and not within:
        # what is stuck is told by what is named, however near other words lie
        named = (name for name in ids if name in table and not _tells_of_stuck(table[name]))
        ids = [what_is_stuck(question, knowledge), *named]
        near = tuple(row for row in near if _tells_of_stuck(row) and mounts & set(row.mounts))
    if question.topic == STUCK and question.intent == HAZARD and not near and not ids:
        ids = [LENS_STUCK]  # whatever else is told, that it does not come off is plain
    ids = outdone_last(ids, [advice.id for advice in near], said, knowledge.catalogue, question.intent)
    rows = [table[name] for name in dict.fromkeys(ids) if name in table]
    first = FIRST_OF.get(question.intent)
    if first is not None:
        rows.sort(key=lambda row: asked_as(row) not in first)  # what answers such a question first, how to do it after
    return [row for row in rows if fits(row)][:most]


def warned_by_cue(rows: list[Advice], question: Question, knowledge: Knowledge) -> list[Advice]:
    """The advice, or where none of it warns what the topic alone warns of: 'will a tele tip my thin ring'."""
    gear = question.lenses or question.bodies or question.adapters
    if question.topic is None or not gear or any(row.severity in _WARNING for row in rows):
        return rows
    return [row for row in knowledge.catalogue.advice.values() if row.cue == question.topic] or rows


def _is_more_of(own: Sequence[Advice], both: Sequence[Advice]) -> bool:
    """'could I polish it' after a thoriated lens: what both lines are about is more of the same matter."""
    matter = own[0].id.partition("-")[0] if own else ""
    return bool(own and both) and own[0] != both[0] and both[0].id.partition("-")[0] == matter


def only_feared(question: Question) -> bool:
    """'can the rear hit something inside': nothing has happened yet, by the text or by the danger before it."""
    texts = (question, *((question.prior,) if question.follows and question.prior is not None else ()))
    happened = any(one.mentions("it-happened") for one in texts)
    return not happened and any(one.mentions("only-feared") for one in texts)


def made_safe(question: Question) -> bool:
    """Whether a filter is told that may make safe what was not: 'is an ND64 ok then'."""
    return question.said("factor") is not None or bool(question.adapters)


def what_is_stuck(question: Question, knowledge: Knowledge) -> str:
    """The advice on what does not come off what, by what is named."""
    pieces = {piece.piece for piece in question.adapters}
    if pieces & _BEFORE_LENS:
        return "ring-stuck"
    if question.mentions("ring-on-body"):
        return "ring-on-body-stuck"
    mounts = (knowledge.catalogue.mounts.get(thing.id or "") for thing in question.lenses)
    threaded = any(mount is not None and mount.thread for mount in mounts)
    return "stuck-thread" if threaded else "adapter-stuck"


def _tells_of_stuck(advice: Advice) -> bool:
    return any(STUCK in phrase for phrase in (advice.topic, *advice.names, *advice.about))


def is_of_body(advice: Advice, question: Question) -> bool:
    """Whether advice may be told of the bodies that are named: what tells of one mount alone is kept from others."""
    named = {name for thing in question.bodies if thing.kind == "mount" for name in thing.ids}
    return not (advice.bodies and named) or bool(named & set(advice.bodies))


def named_mounts(question: Question, knowledge: Knowledge) -> frozenset[str]:
    """The mounts of the lenses that the question is about, own ones too: advice on others is beside the point."""
    own = (own_lens(thing, knowledge.catalogue) for thing in question.lenses)
    named = (name for thing in question.lenses if thing.kind == "mount" for name in thing.ids)
    chips = any(THREE_CHIPS in thing.traits for thing in question.lenses)  # made for a prism, whatever the bayonet
    behind = (id_ for id_, mount in knowledge.catalogue.mounts.items() if chips and PRISM in mount.traits)
    return frozenset([*named, *behind, *(lens.mount for lens in own if lens is not None)])


def of_pair(question: Question, knowledge: Knowledge) -> list[Advice]:
    """The dangers that are told of just such a lens on just such a body."""
    lenses = named_mounts(question, knowledge)
    bodies = {name for thing in question.bodies if thing.kind == "mount" for name in thing.ids} or lenses
    return [
        row for row in knowledge.catalogue.advice.values()
        if row.severity == "danger" and lenses & {*row.mounts} and (bodies - {*row.mounts}) & {*row.bodies}
    ]  # fmt: skip


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


def plainly(rows: Sequence[Advice], question: Question) -> list[Line]:
    """The answer in a few words, first, where it is asked whether a thing is safe or may be done."""
    return [Line("head", rows[0].plainly)] if rows and rows[0].plainly and question.intent == HAZARD else []


def advice_lines(rows: Sequence[Advice]) -> list[Line]:
    """Each advice with its severity, and whom to ask."""
    lines: list[Line] = []
    for advice in rows:
        lines.append(Line("head" if advice.severity == "note" else advice.severity, f"{advice.topic}: {advice.says}"))
        if advice.defer_to:
            lines.append(Line("text", f"Ask: {advice.defer_to}.", 1))
    return lines


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
        elif kind == "light-lost":
            told += lost_by_extension(question, knowledge)
        elif kind == "tubes":
            usual = facts.assumptions["tube-to-show-by"].value.nominal
            length = next((one.thickness_mm[1] for one in question.adapters if one.thickness_mm), usual)
            told += tubes(lenses, length, facts, question.feet)
        elif kind == "framing":
            told += framed(question, knowledge)
    return told


def of_the_term(question: Question, knowledge: Knowledge) -> list[Advice]:
    """'why would old ones do that' after what a word means: of what that word is about."""
    before, terms = question.prior, knowledge.catalogue.terms
    if before is None or not question.follows or before.intent != DEFINITION:
        return []
    names = [terms[id_].names[0] for thing in before.things for id_ in thing.ids if id_ in terms]
    return named_or_near(question.with_(text=f"{question.text} {' '.join(names)}"), knowledge) if names else []
