"""A screw that went in some turns and got tight: which threads of that width bind so soon, and when one is home."""

from __future__ import annotations

from typing import Final

from engine.answers.found.mounts_by import named_thread
from engine.answers.found.threads_measured import thread_measured
from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import thread_width_mm
from engine.answers.parts.pitch_drift import drift
from engine.answers.parts.said import focals, mentions, number
from engine.answers.parts.wording import trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.records import Thread
from grammar.kinds import HAZARD, LOOK_ALIKE, WHY
from grammar.questions import Question

MOST: Final = 4
BINDS: Final = "binds"
BY_TURNS: Final = (HAZARD, LOOK_ALIKE, WHY)


def turned_in(question: Question, knowledge: Knowledge) -> Told:
    """What got tight after the turns that are told; nothing where no turns or no width of a thread are told."""
    turns = number(question, "turns")
    if turns is None or not mentions(question, "got-tight"):
        return Told()
    hole = named_thread(question, knowledge)
    width = hole.major_mm.nominal if hole is not None else thread_measured(question)[0]
    if width is None:
        rings = (one.thickness_mm[0] for one in question.adapters if one.thickness_mm is not None)
        width = next(iter([*focals(question), *rings]), None)  # 'half a turn then tight, 39 mm' is no lens of 39
    alike = _as_wide(width, knowledge) if width is not None else []
    usual = knowledge.joints.limits.usual_turns
    stuck = question.intent == HAZARD and turns < usual.least  # whatever its thread is
    if not alike and not stuck:
        return Told()
    bound = _binding(alike, hole, turns, knowledge)[:MOST]
    if not bound and hole is not None and turns < usual.least:
        bound = _binding(alike, hole, None, knowledge)[:MOST]  # turns are counted roughly
    home = f"a thread's own is home after {_span(usual)}"
    if turns >= usual.least and not bound:
        text = f"{_turns(turns)} in and then tight is mostly home: {home}."
        return Told((Line("head", f"{text} Look whether the flange sits flat all round."),))
    if turns >= usual.least:
        text = (
            f"Tight after {_turns(turns)} it may be home ({home}, and then the flange sits flat all round) or be a"
            " thread of another pitch that binds there. Stop, do not force it."
        )
    else:
        text = (
            f"Tight after {_turns(turns)} it is not home, which takes {_span(usual)}: crossed, dirty, or a thread of"
            " another pitch. Stop, turn it back and do not force it."
        )
    lines, rows = [Line("head", text)], []
    for male, female, until in bound:
        lines.append(Line("fact", _binds_in(male, female, until, knowledge), 1))
        rows += [Quantity("thread_pitch_mm", one.pitch_mm, one.id) for one in (male, female) if is_known(one.pitch_mm)]
    lines.append(Line("ask", "How long are ten crests of it? That tells which of them it is.", wants="pitch"))
    return Told(tuple(lines), tuple(dict.fromkeys(rows)))


def with_turns_told(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what the turns tell: of two threads set against each other how far they run apart."""
    told = turned_in(question, knowledge) if answer.intent != LOOK_ALIKE else drift(question, knowledge, of_two=True)
    rows = (*told.quantities, *(answer.quantities or ()))
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=rows) if told.lines else answer


def with_not_home_told(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """'won't go right in my M42 ring', of no other mount: which threads of its width begin in it and bind."""
    turns = turned_in(question, knowledge)
    if turns.lines:  # some kinds tell of the turns by themselves
        return answer if answer.intent in BY_TURNS else replace(answer, lines=(*turns.lines, *answer.lines))
    hole = named_thread(question, knowledge)
    if hole is None or len(_threads(question, knowledge)) > 1:
        return answer
    bound = _binding(_as_wide(hole.major_mm.nominal, knowledge), hole, None, knowledge)[:MOST]
    if not bound:
        return answer
    text = (
        f"A screw that does not go home in {hole.designation} by hand is mostly one as wide and of another pitch, else"
        " crossed or dirty. Stop, turn it back and do not force it. As wide, and binding in it:"
    )
    lines = [Line("head", text)]
    lines += [Line("fact", _binds_in(male, female, until, knowledge), 1) for male, female, until in bound]
    lines.append(Line("ask", "How long are ten crests of it? That tells which of them it is.", wants="pitch"))
    screws = (hole, *(row[0] for row in bound))
    rows = [Quantity("thread_pitch_mm", one.pitch_mm, one.id) for one in screws if is_known(one.pitch_mm)]
    quantities = (*dict.fromkeys(rows), *(answer.quantities or ()))
    return replace(answer, lines=(*lines, *answer.lines), quantities=quantities)


def _threads(question: Question, knowledge: Knowledge) -> set[str]:
    """The threads of all mounts that are named."""
    mounts = knowledge.catalogue.mounts
    things = (*question.lenses, *question.bodies)
    named = [
        *(one for thing in things for one in thing.ids[:1]),
        *(one for ring in question.adapters for one in ring.front),
    ]
    return {mounts[one].thread or one for one in named if one in mounts and mounts[one].coupling == "screw"}


def _binds_in(male: Thread, female: Thread, until: Interval, knowledge: Knowledge) -> str:
    """Which screw binds in which hole, and what lenses have such a screw."""
    mounts = [one for one in knowledge.catalogue.mounts.values() if one.thread == male.id]
    named = [one.designation for one in mounts if "thread-only" not in one.traits and is_known(one.register_mm)]
    of = f" ({', '.join(named[:2])})" if named else ""
    return f"{male.designation}{of} in {female.designation} binds after {_span(until)}"


def _as_wide(width: float, knowledge: Knowledge) -> list[Thread]:
    """The threads of mounts that are as wide."""
    used = {mount.thread for mount in knowledge.catalogue.mounts.values() if mount.kind != "filter"}
    threads, near = knowledge.catalogue.threads.values(), thread_width_mm(knowledge.catalogue)
    return [one for one in threads if one.id in used and abs(one.major_mm.nominal - width) <= near]


def _binding(
    alike: list[Thread], hole: Thread | None, turns: float | None, knowledge: Knowledge
) -> list[tuple[Thread, Thread, Interval]]:
    """The pairs that bind about there, or at all where no turns are told, those first that never run home."""
    found = []
    for female in [hole] if hole is not None else alike:
        for male in alike:
            mating = knowledge.joints.mating(male.id, female.id) if male.id != female.id else None
            if mating is None or mating.outcome != BINDS or mating.turns is None:
                continue
            if mating.turns.holds(turns) if turns is not None else mating.turns.greatest > 0:
                found.append((mating.runs_home != "no", (male, female, mating.turns)))
    return [row for _, row in sorted(found, key=lambda one: one[0])]


def _turns(turns: float) -> str:
    return f"{trimmed(turns, 1)} turn{'' if turns <= 1 else 's'}"


def _span(turns: Interval) -> str:
    return f"{trimmed(turns.least, 1)} to {trimmed(turns.greatest, 1)} turns"
