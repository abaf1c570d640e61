"""Two threads named side by side, of a mount, a filter or a part: whether the one screws into the other."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.found.screwed_in import starts
from engine.answers.found.thread_told import ASSUMED
from engine.answers.found.threads_told import SAME_WIDTH_MM, of_pitch, threads_told
from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, numbers
from engine.answers.parts.wording import trimmed
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.chains.joints import screw_of
from engine.facts.records import Thread
from engine.physics.mating import mate
from grammar.kinds import HAZARD
from grammar.questions import Question, Thing

_METRIC: Final = re.compile(r"\bm(\d{1,3}(?:\.\d+)?)(?![\w.])(?! ?x ?\d)", re.IGNORECASE)
FILTERS = ("filter", "step-ring")
NOT = "No,"
OFTEN_HOME = "mostly goes home, a tight pair binds before it is,"
AS_SIZE = "format"  # the kind of thing that '39x26' is written as
COARSEST = "coarsest-filter-pitch"  # of the facts
# what becomes of a screw in a thread that is not its own
_OUTCOMES = {
    "binds": "starts, then binds",
    "falls-through": "drops through without catching",
    "loose": "goes in, loosely",
    "same": "goes in",
    "blocked": "does not start",
    "too-large": "does not start",
}


def threads_meet(question: Question, knowledge: Knowledge) -> Told:
    """For the first two different threads named, at least one of them bare: yes or no, and why."""
    facts = knowledge.catalogue
    threads = threads_told(question, knowledge)
    bare = bool(threads)
    for name in _named(question):
        if name in facts.threads:
            threads.append(facts.threads[name])
            bare = bare or not any(mount.thread == name for mount in facts.mounts.values())
        elif name in facts.mounts and facts.mounts[name].thread:
            threads.append(facts.threads[facts.mounts[name].thread or ""])
    pitched = of_pitch(question, threads[0], knowledge) if len(threads) == 1 else None
    threads += [pitched] if pitched is not None else []
    filters = [thread for thread in (_of_filter(thing, knowledge) for thing in question.adapters) if thread is not None]
    filters = filters or _by_width(question, knowledge)
    threads = list(dict.fromkeys([*filters, *threads]))
    threads = threads[::-1] if len(threads) == 2 and _named_first(question, knowledge) else threads
    written = [thing.ids[0] for thing in question.things if thing.ids and thing.kind in ("thread", AS_SIZE)]
    typed = any(one in facts.threads or one in facts.mounts for one in written) and mentions(question, "goes-into")
    bare = bare or bool(filters) or pitched is not None or typed
    if len(threads) == 1 and bare:
        return _by_width_alone(question, threads[0])
    if len(threads) < 2 or not bare:
        return Told()
    one, other = threads[:2]
    rows = tuple(
        Quantity("thread_pitch_mm", thread.pitch_mm, thread.designation)
        for thread in (one, other)
        if is_known(thread.pitch_mm)
    )
    return Told((Line("head", f"{_answer(one, other, knowledge)} {_how_told(one, other)}".strip()),), rows)


def _named_first(question: Question, knowledge: Knowledge) -> bool:
    """Whether a lens is named by its mount before the thread that it is put into: 'a C lens in an SM1 tube'.

    Or behind it, where the thread takes the lens: 'an SM1 tube takes a C lens'.
    """
    lens, told = question.lens, question.said("thread") or ""
    takes = mentions(question, "takes-in")
    if lens is None or lens.id not in knowledge.catalogue.mounts or not (takes or mentions(question, "goes-into")):
        return False
    at = question.text.casefold().replace(" ", "").find(told.casefold().replace(" ", ""))
    before = len(question.text[: lens.column - 1].replace(" ", ""))
    return 0 <= at < before if takes else 0 <= before < at


def _by_width_alone(question: Question, one: Thread) -> Told:
    """'is RMS the same as M20': a metric thread told by its width alone, beside one that is known in full."""
    named = " ".join(thing.words.casefold() for thing in (*question.things, *question.lenses, *question.bodies))
    widths = [width for width in _METRIC.findall(question.text) if f"m{width}" not in named]
    if len(widths) != 1 or not (is_known(one.major_mm) and is_known(one.pitch_mm)):
        return Told()
    width, pitch = float(widths[0]), trimmed(one.pitch_mm.nominal, 3)
    own = f"{one.designation} is {trimmed(one.major_mm.nominal, 2)} mm wide with a pitch of {pitch} mm"
    apart = abs(width - one.major_mm.nominal) > SAME_WIDTH_MM
    text = f"{NOT if apart else 'The width alone does not tell:'} {own}; M{widths[0]} is a metric thread"
    text += (
        f" {widths[0]} mm wide, whose name does not tell its pitch. Measure ten crests before you screw them together."
    )
    rows = (Quantity("thread_pitch_mm", one.pitch_mm, one.designation),)
    return Told((Line("head", text),), rows)


def with_threads_apart(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind the warning that the two threads named are not the same, where that is so."""
    told = threads_meet(question, knowledge)
    if not told.lines or not told.lines[0].text.startswith(NOT):
        return answer
    rows = (*told.quantities, *(answer.quantities or ()))
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=rows)


def with_threads_crossed(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer about a lens that is stuck in a ring, with why, where the thread of the one is not the other's."""
    facts = knowledge.catalogue
    before = question.prior.adapters if question.prior is not None and question.follows else ()
    rings = [one.front[0] for one in (*question.adapters, *before) if one.front]
    names = [one.ids[0] for one in (*question.lenses[:1], *question.bodies[:1]) if one.ids] + rings
    told = (facts.threads.get(facts.mounts[name].thread or "") for name in names if name in facts.mounts)
    threads = list(dict.fromkeys(one for one in told if one is not None))
    if len(threads) < 2:
        return answer
    said = _answer(threads[0], threads[1], knowledge)
    if not said.startswith(NOT):
        return answer
    text = f"If the one was screwed straight into the other, that is why: {said.removeprefix(NOT).strip()}"
    text += " Turn it back the way it went in, by hand and evenly."
    after = next((at + 1 for at, line in enumerate(answer.lines) if line.kind == "danger"), 0)
    after = after if question.intent == HAZARD else 0  # where harm is asked of, that is said first
    return replace(answer, lines=(*answer.lines[:after], Line("text", text), *answer.lines[after:]))


def _of_filter(thing: Thing, knowledge: Knowledge) -> Thread | None:
    """The thread of a filter or step ring that goes by its width alone: 'M42 filter' has the fine pitch of filters."""
    facts = knowledge.catalogue
    mount = facts.mounts.get(thing.front[0]) if thing.piece in FILTERS and thing.front else None
    own = facts.threads.get(mount.thread or "") if mount is not None else None
    if own is None and mount is None and thing.piece in FILTERS and thing.thickness_mm is not None:
        return _fine(thing.thickness_mm[0], knowledge)  # 'a 25.5 filter ring': no ring is so thick
    return _fine(own.major_mm.nominal, knowledge) if own is not None else None


def _fine(width_mm: float, knowledge: Knowledge) -> Thread | None:
    """The thread of that width with a pitch that filters have, one of filters first."""
    alike = [one for one in knowledge.catalogue.threads.values() if one.major_mm.nominal == width_mm]
    coarsest = knowledge.catalogue.assumptions[COARSEST].value.greatest
    fine = [(one.pitch_mm.nominal, one) for one in alike if is_known(one.pitch_mm) and one.pitch_mm.nominal <= coarsest]
    best = max(fine, key=lambda row: ("filter" in (row[1].used_for or ""), row[0]), default=None)
    return best[1] if best is not None else None


def _by_width(question: Question, knowledge: Knowledge) -> list[Thread]:
    """'a 48 mm filter': the thread of the one width told of filters."""
    told = numbers(question, "filter_thread") if any(one.piece in FILTERS for one in question.adapters) else []
    fine = _fine(told[0], knowledge) if len(told) == 1 else None
    return [fine] if fine is not None else []


def _named(question: Question) -> list[str]:
    """The ids of threads and mounts that are named, the likeliest of each thing; of a lone ring, that of its front."""
    things = sorted((*question.lenses, *question.things, *question.adapters, *question.bodies), key=_where)
    rings = [thing.front[0] for thing in question.adapters if thing.front and not thing.rear]
    # a mount that the kind of lens alone tells is not one that was named
    told = (thing for thing in things if thing.ids and ASSUMED not in thing.traits)
    return [*(thing.ids[0] for thing in told if thing.kind in ("mount", "thread", AS_SIZE)), *rings]


def _where(thing: Thing) -> int:
    return thing.column or 0


def _answer(one: Thread, other: Thread, knowledge: Knowledge) -> str:
    mating = mate(screw_of(one), screw_of(other), knowledge.joints.limits)
    names = f"{one.designation} and {other.designation}"
    if mating.runs_home == "yes" and mating.outcome not in ("binds", "falls-through"):
        return f"Yes, {one.designation} {_OUTCOMES.get(mating.outcome, 'goes')} into {other.designation}: {mating.why}."
    outcome = _OUTCOMES.get(mating.outcome, mating.outcome.replace("-", " "))
    outcome = "does not start" if mating.outcome == "binds" and not starts(mating) else outcome
    outcome = OFTEN_HOME if mating.outcome == "binds" and mating.runs_home == "often" else outcome
    return f"{NOT} {names} are not the same: {one.designation} {outcome} in {other.designation} ({mating.why})."


def _how_told(one: Thread, other: Thread) -> str:
    """How the two are told apart by ten pitches."""
    if not (is_known(one.pitch_mm) and is_known(other.pitch_mm)):
        return ""
    first, second = one.pitch_mm.nominal, other.pitch_mm.nominal
    if first == second:
        return ""
    tens = f"ten of them are {trimmed(10 * first, 2)} or {trimmed(10 * second, 2)} mm"
    return f"The pitches are {trimmed(first, 3)} and {trimmed(second, 3)} mm: {tens}. Do not force it."
