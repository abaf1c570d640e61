"""Advice: what can hurt gear or a person, what to set, why a thing is so; with the worked table that shows it."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.cautions import all_cautions, asks_all
from engine.answers.explained import explained
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import numbers
from engine.answers.parts.wording import trimmed
from engine.answers.picture.by_length import lengths_apart
from engine.answers.picture.circle_explained import circle_explained
from engine.answers.picture.cover import cover_told
from engine.answers.seat.reaching_in import is_ruled_by_depth, reach_told
from engine.answers.seat.spacing import FAR_AT_A_MARK
from engine.answers.shims.loose import Loose, loose
from engine.answers.stuck_still import gone_on, stuck_before
from engine.answers.words.advice import (
    HARM,
    MOST,
    STUCK,
    advice_lines,
    examples,
    named_mounts,
    named_or_near,
    of_pair,
    of_the_term,
    only_feared,
    plainly,
    warned_by_cue,
)
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.guidance import Advice
from engine.facts.subjects import subjects_of
from engine.judging.judge import Judged
from grammar.conditions import names_in
from grammar.kinds import BY_SEAT, CHAIN, HAZARD
from grammar.questions import Question, Thing

MIRROR = "body_mirror"
MIRRORLESS = "mirrorless"  # trait of a body that is told so
ANY_LENS = "no-contacts-harm"  # the advice on what any lens without contacts can do
DANGER = "danger"
MOUNT, SCREW = "mount", "screw"  # the kind of a thing, and the coupling of a mount
CROSSED = "cross-thread"  # the advice on threads that nearly meet
HEAVY = "heavy"  # the advice on what a lens weighs
OF_REAR = frozenset(["rear-shutter", "rear-mirror"])  # the advice on a rear that reaches into the body
REACH = "rear_reach"
PAST, LOST_INFINITY = "past-infinity-advice", "too-far-out-why"  # on infinity before its mark, and on none
RADIOACTIVE_TRAIT = "thoriated"
RADIOACTIVE, TINTED = "radioactive", "thorium-yellow"  # the topic, and the advice on how the tint is bleached
TOUCHED = "crunch"  # the advice on what has met what
TOUCH = "touch"  # the topic of what may meet what
WORKED_OUT = ("tubes", "light-lost", "framing")  # examples that say in numbers what the advice says in words
NOTHING_KNOWN = (
    "Nothing in the facts answers that. What can be asked: why a picture is soft, dark or tinted, why infinity or the "
    "marks of the scale are off, why a ring is as thick as it is; or how a lens gets on a body, and then 'why?'."
)
NOTHING_BEFORE = (
    "Why is what: which lens, on which body? There is no question before this one that it could lean on. Put it whole,"
    " such as 'why does a 50 mm M42 lens not reach infinity on an F-mount body'."
)
BARE_WORDS = 5  # at most, where only a reason is asked for
NOTHING_WARNS = (
    "Nothing in the facts warns of that, which does not make it safe. Stop at any resistance, measure before you "
    "mount, and in doubt ask the maker or a repair technician."
)


def advise(question: Question, knowledge: Knowledge) -> Answer:
    """The advice that the question names or is about, with what its numbers allow to be worked out."""
    return ruled(question, knowledge) if question.intent == HAZARD else _reasoned(question, knowledge)


def ruled(question: Question, knowledge: Knowledge) -> Answer:
    """Whether it is safe: the ruling in a few words, what the numbers say, what the chain warns of, then the advice."""
    stuck = stuck_before(question, knowledge.catalogue)
    question = gone_on(question, stuck) if stuck is not None else question
    way = _way_of(question, knowledge)
    chain = way.chains[0].listed.judged if way is not None and way.chains else None
    if chain is not None and asks_all(question, knowledge):
        return all_cautions(question, chain, knowledge)
    # 'is that safe': of the lens on the body, whose chain tells what to mind, whatever words asked for it before
    kept = chain is not None and question.topic != STUCK and question.follows and _is_of_seat(question.prior)
    if question.topic == TOUCH and question.follows:
        question = question.with_(adapters=question.between)  # a filter spoken of before meets nothing behind
    rows = named_or_near(stuck or (question.with_(prior=None, adapters=()) if kept else question), knowledge)
    rows = warned_by_cue(rows, question, knowledge)
    if rows[0].id in OF_REAR if rows else question.topic == TOUCH:
        rows = [*dict.fromkeys((*of_pair(question, knowledge), *rows))]  # what meets what in just that body
    if question.topic == RADIOACTIVE and not question.mentions("tint-out"):
        rows = sorted(rows, key=lambda row: row.id == TINTED)  # whether it is, and not how the tint goes
    touched = question.topic == TOUCH and not only_feared(question)
    if rows and question.mentions("has-touched") and (rows[0].id in OF_REAR or touched):
        further = [row for row in rows if row.id not in OF_REAR]  # no longer what may meet what
        rows = [row for row in knowledge.catalogue.advice.values() if row.id == TOUCHED] + further
    thoriated = question.lens is not None and RADIOACTIVE_TRAIT in question.lens.traits
    if thoriated and question.follows and question.mentions("tint-out"):
        rows = [knowledge.catalogue.advice[TINTED]]  # 'put it in the sun?' looks into none
    rows = rows or _of_weight(question, knowledge) or _of_any_lens(question, knowledge)
    rows = rows or (_of_threads(question, knowledge) if chain is None else [])
    if not rows and chain is None:
        return _nothing(question, NOTHING_WARNS)
    rows = _of_chain(rows, chain, knowledge) if chain is not None else rows
    if question.said("weight") is not None:
        rows = sorted(rows, key=lambda row: row.id != HEAVY)  # how heavy it is was told, whatever else is
    told = reach_told(question, knowledge) + examples(rows[:1], question, knowledge)
    warned = _warnings(chain, rows[:MOST], question, knowledge) if chain is not None else []
    # what the question is about comes before what else the chain warns of
    lines = (*_ruling(rows, question, knowledge), *told.lines, *advice_lines(rows[:MOST]), *warned)
    lines += _reach_asked(rows, question)
    if chain is not None and not lines:
        return _nothing(question, f"{_by(chain, knowledge)} {NOTHING_WARNS[:1].lower()}{NOTHING_WARNS[1:]}")
    answer = Answer(question.text, question.intent, ANSWERED, lines, question=question, quantities=told.quantities)
    if way is None or chain is None or question.topic == STUCK or _is_told(question) or not _is_amiss(question, chain):
        return answer
    # 'it clicks in, ok?': that it does not focus there comes before whether it hurts, unless it may be broken by it
    first = _ruling([row for row in rows[:MOST] if row.severity == DANGER], question, knowledge)
    return replace(
        answer, lines=tuple(dict.fromkeys((*first, *way.lines, *lines))), chains=way.chains,
        quantities=(*(way.quantities or ()), *told.quantities),
    )  # fmt: skip


def _of_any_lens(question: Question, knowledge: Knowledge) -> list[Advice]:
    """'is it dangerous to put an old lens on my camera': nothing else is told, so what holds of any is."""
    telling = subjects_of(knowledge.catalogue).vocabulary.words_of(question.text)
    asked = question.lenses and not telling and not question.follows
    return [row for row in knowledge.catalogue.advice.values() if row.id == ANY_LENS] if asked else []


def _reach_asked(rows: Sequence[Advice], question: Question) -> tuple[Line, ...]:
    """What decides whether a rear meets anything in the body, where that is asked and not told."""
    told = question.said(REACH) is not None or not rows or rows[0].id not in OF_REAR
    return () if told else (Line("ask", "How far does its rear reach behind its flange, in mm?", wants=REACH),)


def _of_weight(question: Question, knowledge: Knowledge) -> list[Advice]:
    """What is said of heavy lenses, where one is told of and nothing nearer to the words is known."""
    heavy = any(HEAVY in lens.traits for lens in question.lenses)
    return [row for row in knowledge.catalogue.advice.values() if row.id == HEAVY] if heavy else []


def _of_threads(question: Question, knowledge: Knowledge) -> list[Advice]:
    """'any harm in trying it' of lenses that screw in: a thread that nearly meets is stripped by force."""
    named = [
        knowledge.catalogue.mounts[name] for lens in question.lenses for name in lens.ids[:1] if lens.kind == MOUNT
    ]
    screwed = any(mount.coupling == SCREW for mount in named)
    return [row for row in knowledge.catalogue.advice.values() if row.id == CROSSED] if screwed else []


def _ruling(rows: Sequence[Advice], question: Question, knowledge: Knowledge) -> list[Line]:
    """The ruling in a few words; of a weight that is told it is by the weight."""
    mirrorless = any(MIRRORLESS in body.traits for body in question.bodies)
    if (mirrorless and rows and MIRRORLESS in rows[0].says) or is_ruled_by_depth(question):
        return []  # what it says of those is no plain no; or the numbers rule
    weights = numbers(question, "weight")
    weight, limit = max(weights, default=None), knowledge.catalogue.assumptions["carried-by-a-ring"].value
    if weight is None or not rows or rows[0].id != HEAVY or not is_known(limit) or weight > limit.nominal:
        return _if_of_mount(plainly(rows, question), rows, question, knowledge)
    text = f"Yes: {weight:.0f} g is within the {limit.nominal:.0f} g or so that a thin ring and the mount carry."
    return [Line("head", text)]


def _if_of_mount(ruling: list[Line], rows: Sequence[Advice], question: Question, knowledge: Knowledge) -> list[Line]:
    """The ruling of one mount on another, where the lens told of is of none that is known: only if it is of that."""
    lens, pair = question.lens, bool(rows and rows[0].mounts and rows[0].bodies)
    if not ruling or not pair or lens is None or lens.ids or named_mounts(question, knowledge) & {*rows[0].mounts}:
        return ruling
    mount = knowledge.catalogue.mounts[rows[0].mounts[0]].designation
    text = f"It depends on the mount of that lens. If it is {mount}: {ruling[0].text[:1].lower()}{ruling[0].text[1:]}"
    ask = "Which mount or thread has the lens, and how far is it from its flange to the image of a far window?"
    return [Line("head", text), Line("ask", ask, wants="flange_to_image thread")]


def _reasoned(question: Question, knowledge: Knowledge) -> Answer:
    """Why it is so: where the numbers come from, the reasons nearest to the words, and what can be worked out."""
    rows = named_or_near(question, knowledge) or of_the_term(question, knowledge)
    if question.mentions(FAR_AT_A_MARK):  # its ring is thin, whatever is soft beyond
        rows = [knowledge.catalogue.advice[PAST], *(row for row in rows if row.id not in (PAST, LOST_INFINITY))]
    numbers = lengths_apart(question, knowledge.catalogue) + circle_explained(question, knowledge.catalogue)
    numbers += explained(question, knowledge)
    found = loose(question, knowledge) if question.topic != HARM else Loose()
    bare = question.lens is None or _is_bare(question.lens)
    cover = Told() if bare else cover_told(question, knowledge)
    beside = _beside_reasons(question, knowledge)
    if not (rows or numbers.lines or cover.lines or beside.lines) and found.is_empty:
        return (
            _nothing(question, NOTHING_BEFORE, "ask") if _is_bare_why(question) else _nothing(question, NOTHING_KNOWN)
        )
    told = found.told if found.told.lines and not _is_worked_out(rows) else examples(rows, question, knowledge)
    told += beside + cover
    advice = advice_lines(rows[:MOST])
    anywhere = not (
        question.bodies or question.said("format") or question.frames
    )  # of no frame in particular, so the reason comes first
    soft = bool(advice) and question.mentions("soft-said") and not question.mentions("gets-dark")  # and not unlit
    reasons = (*advice, *cover.lines) if anywhere or soft else (*cover.lines, *advice)
    lines = dict.fromkeys((*numbers.lines, *reasons, *told.lines))
    return Answer(
        question.text, question.intent, ANSWERED, tuple(lines), question=question, chains=found.chains or None,
        quantities=(*told.quantities, *numbers.quantities),
    )  # fmt: skip


def _is_bare_why(question: Question) -> bool:
    """'but why is that?' with nothing before it."""
    told = (*question.lenses, *question.bodies, *question.adapters, *question.things, *question.values)
    return not (question.follows or told) and len(question.text.split()) <= BARE_WORDS


def _nothing(question: Question, text: str, kind: str = "text") -> Answer:
    return Answer(question.text, question.intent, NO, (Line(kind, text),), question=question)


def _way_of(question: Question, knowledge: Knowledge) -> Answer | None:
    """The answer how the lens gets on the body, where both are known and there is a way; else None."""
    if not (question.lens and question.lens.ids and question.body and question.body.ids):
        return None
    from engine.answers.howto import how_to

    answer = how_to(question.with_(intent=CHAIN, topic=None), knowledge)
    return answer if answer.chains else None


def _is_told(question: Question) -> bool:
    """Whether the answer before told where the same pieces leave the lens: then only the harm is asked for."""
    before = question.prior
    return question.follows and _is_of_seat(before) and before is not None and before.adapters == question.adapters


def _is_of_seat(question: Question | None) -> bool:
    return question is not None and question.intent in BY_SEAT


def _is_amiss(question: Question, judged: Judged) -> bool:
    """Whether the pieces that were named, or none between, leave the lens where it cannot focus far, or at all."""
    named = any(thing.front or thing.ids or thing.thickness_mm for thing in question.adapters)
    return (named or not judged.chain.adapters) and judged.verdict != "infinity"


def _of_chain(rows: list[Advice], judged: Judged, knowledge: Knowledge) -> list[Advice]:
    """The advice without what only rules about a mirror carry, where the body has none."""
    if judged.measured_trace.value(MIRROR) is not False:
        return rows
    about = {name: [case for case in knowledge.cases if case.rule.advice == name] for name in {row.id for row in rows}}
    mirror = {name for name, cases in about.items() if cases and all(MIRROR in names_in(c.condition) for c in cases)}
    return [row for row in rows if row.id not in mirror]


def _warnings(judged: Judged, told: Sequence[Advice], question: Question, knowledge: Knowledge) -> list[Line]:
    """What the chain itself warns of, dangers first; of what the advice told says already, only the numbers."""
    from engine.answers.seat.telling import finding_lines, template

    said = {row.id for row in told}
    again = [row for row in judged.findings if row.decided and row.rule.advice in said]
    fresh = replace(judged, findings=tuple(row for row in judged.findings if row not in again))
    found = [
        Line(row.severity, f"{template(row.rule.because, judged.measured_trace, question.feet)}.")
        for row in again if row.severity in ("danger", "caution") and "{" in row.rule.because
    ]  # fmt: skip
    lines = finding_lines(fresh, knowledge, question.feet)
    found += [line for line in lines if line.kind in ("danger", "caution")]
    return [Line("head", _by(judged, knowledge)), *(Line(line.kind, line.text, 1) for line in found)] if found else []


def _by(judged: Judged, knowledge: Knowledge) -> str:
    from engine.answers.seat.telling import chain_title

    return f"By {chain_title(judged, knowledge)}:"


def _beside_reasons(question: Question, knowledge: Knowledge) -> Told:
    """What a reason hangs on, where the question names it: the light an extension costs, the registers of mounts."""
    more = Told()
    if question.said("stops") is not None or question.f_number is not None:
        from engine.answers.exposure.drawn_longer import lost_by_extension

        more += lost_by_extension(question, knowledge)
    for thing in (*question.lenses, *question.bodies):
        mount = knowledge.catalogue.mounts.get(thing.ids[0]) if thing.kind == "mount" and thing.ids else None
        if mount is not None and is_known(mount.register_mm):
            note = f" {mount.register_note}" if mount.register_note else ""
            note += f" {mount.note}" if mount.note and thing in question.lenses else ""
            text = f"{mount.designation}: register {trimmed(mount.register_mm.nominal, 3)} mm.{note}"
            more += Told((Line("fact", text, 1),), (Quantity("register_mm", mount.register_mm, mount.id),))
    return more


def _is_bare(lens: Thing) -> bool:
    """Whether nothing is told of a lens but that there is one."""
    return not (lens.ids or lens.format or lens.focal_length_mm or lens.lens_kind)


def _is_worked_out(rows: Sequence[Advice]) -> bool:
    return any(row.example in WORKED_OUT for row in rows[:1])
