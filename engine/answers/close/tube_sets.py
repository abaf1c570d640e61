"""Which lengths of extension a question tells, and the sets of them that are looked at: each, and all together."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import combinations
from typing import Final

from engine.answers.close.dioptres import powers_of
from engine.answers.close.drawn import BELLOWS, draw_of
from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import ring_made_mm
from engine.answers.parts.said import focals, mentions, number, numbers
from engine.answers.parts.usual_mounts import TUBES, usual_mount
from engine.answers.parts.wording import small_mm, times, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.chains.walk import ADDED_FOCUSING
from grammar.kinds import COMPARE, MACRO_DISTANCE
from grammar.questions import CLOSE_UP_LENS, RING, Question, Thing

TUBE, STEP = "extension-tube", "step-ring"
NARROWEST: Final = 12.0  # mm, of threads; no step ring is so long
_ADDED: Final = re.compile(r"\d(?: ?mm)? ?\+ ?\d")
MOST_ROWS = 10
LEAST_SEVERAL: Final = 3  # tubes, where one is set against several
SAME_LENGTH_MM: Final = 0.5
ONE_OR_SEVERAL: Final = "one-tube-or-several"  # the advice on which to take
LONGEST_SPACER, LONGEST_DRAW = 60.0, 400.0  # mm


def sets_told(tubes: list[float], question: Question) -> bool:
    """Whether rows for tubes are told, whose ranges want a word."""
    return bool(tubes) or (any(thing.piece == TUBE for thing in question.adapters) and not powers_of(question))


def set_at_infinity(thing: Thing, question: Question) -> float | None:
    """The setting of a helicoid at which infinity is sharp, where it is told and lies between its ends; mm."""
    setting, ends = number(question, "infinity_setting"), thing.thickness_mm
    return setting if ends is not None and setting is not None and ends[0] <= setting < ends[1] else None


def left_beyond_infinity(question: Question) -> Iterator[Told]:
    """What a helicoid has left for near things where its setting at infinity is told."""
    for thing in question.adapters:
        setting = set_at_infinity(thing, question)
        if setting is not None and thing.thickness_mm is not None:
            left = Interval.exact(thing.thickness_mm[1] - setting)
            text = f"Infinity at {trimmed(setting, 2)} mm leaves {small_mm(left.nominal)} of its travel for near things"
            yield Told((Line("head", f"{text}."),), (Quantity("extension_mm", left, "left beyond infinity"),))


def with_setting_told(answer: Answer, question: Question, _: Knowledge) -> Answer:
    """The answer behind whether the setting that infinity wants lies within the travel of the helicoid told."""
    setting = number(question, "infinity_setting")
    ends = next(
        (one.thickness_mm for one in question.adapters if one.thickness_mm and one.piece in ADDED_FOCUSING), None
    )
    told = (
        question.intent == MACRO_DISTANCE and ends is not None and setting is not None and ends[0] <= setting < ends[1]
    )
    if told or setting is None or ends is None or ends[0] >= ends[1]:
        return answer  # there what is left for near things is told
    its = f"its {trimmed(ends[0], 2)} to {trimmed(ends[1], 2)} mm"
    if setting > ends[1]:
        lacks = small_mm(setting - ends[1])
        text = f"No: {small_mm(setting)} is {lacks} beyond {its}: put {lacks} of tube or ring between."
    elif setting < ends[0]:
        over = small_mm(ends[0] - setting)
        text = (
            f"No: shut it is {over} longer than {small_mm(setting)}, of {its}: close-up only, unless a ring is shorter."
        )
    else:
        left = small_mm(ends[1] - setting)
        text = f"Yes: {small_mm(setting)} lies within {its}, and {left} is left for near things."
    row = Quantity("helicoid_setting_mm", Interval.exact(setting), "at infinity")
    return replace(answer, lines=(Line("head", text), *answer.lines), quantities=(*(answer.quantities or ()), row))


def tubes_told(question: Question, knowledge: Knowledge) -> Iterator[float]:
    """The lengths of extension told: tubes one by one, a helicoid by its travel."""
    adapters = knowledge.catalogue.adapters
    for thing in question.adapters:
        if thing.piece == CLOSE_UP_LENS or draw_of(thing, question, knowledge) is not None:
            continue
        if thing.piece == STEP and thing.thickness_mm is not None and thing.thickness_mm[0] >= NARROWEST:
            continue  # 'a 49 mm step ring': how wide its thread is
        if thing.thickness_mm is not None and not joins_mounts(thing, knowledge):
            low, high = thing.thickness_mm
            from_here = set_at_infinity(thing, question)
            low = from_here if from_here is not None else low
            yield high - low if low != high and thing.piece in ADDED_FOCUSING else high
        elif (
            thing.kind == "adapter"
            and thing.id in adapters
            and is_known(at := adapters[thing.id or ""].thickness_mm.hull())
        ):
            yield at.greatest - at.least if not at.is_exact else at.nominal
    yield from numbers(question, "extension", "travel")
    if question.lenses and not any(thing.thickness_mm is not None for thing in question.adapters):
        # 'a half mm shim': a short length that belongs to nothing else stands between
        longest = LONGEST_DRAW if any(thing.piece == BELLOWS for thing in question.adapters) else LONGEST_SPACER
        yield from (one for one in numbers(question, "length", "thickness") if one <= longest)


def joins_mounts(thing: Thing, knowledge: Knowledge) -> bool:
    """'a 1.02 mm LTM to M ring': about as long as the registers of its two mounts differ, it draws nothing out."""
    if thing.piece != RING or not (thing.front and thing.rear) or thing.front[0] == thing.rear[0]:
        return False
    front, rear = (knowledge.catalogue.mounts[ids[0]].register_mm for ids in (thing.front, thing.rear))
    if not (is_known(front) and is_known(rear)) or thing.thickness_mm is None:
        return False
    return abs(thing.thickness_mm[0] - (front.nominal - rear.nominal)) <= ring_made_mm(0.0, knowledge.catalogue)


def _are_put_together(question: Question) -> bool:
    """'12 and 24 behind a 100', '12+24': tubes joined by a word or sign that adds, and not set apart."""
    joined = mentions(question, "joined-numbers") or _ADDED.search(question.text) is not None
    return joined and not mentions(question, "each-alone")


def sets_of(tubes: list[float], question: Question, knowledge: Knowledge) -> Iterator[float]:
    """The lengths told; where tubes are named without a length, a usual set and its sums."""
    if tubes:
        # what was added in a talk is asked of all together
        together = [sum(tubes)] if len(tubes) > 1 else []
        first = question.follows or mentions(question, "added-up") or _are_put_together(question)
        yield from dict.fromkeys([*together, *tubes] if first else [*tubes, *together])
        return
    if not any(thing.piece == TUBE for thing in question.adapters) or powers_of(question):
        return
    mounts = [*(thing.id for thing in (*question.bodies, *question.lenses) if thing.id)]
    mounts += usual_mount(TUBES, knowledge.catalogue)
    for mount in mounts:
        rows = sorted({
            adapter.thickness_mm.shortest.nominal
            for adapter in knowledge.catalogue.adapters.values()
            if adapter.kind == TUBE and adapter.front == mount and adapter.common == "everyday"
            and adapter.thickness_mm.is_fixed and is_known(adapter.thickness_mm.shortest)
        })  # fmt: skip
        if len(rows) > 1:
            sums = {sum(row) for size in range(1, len(rows) + 1) for row in combinations(rows, size)}
            yield from sorted(sums)[:MOST_ROWS]
            return


def with_same_length(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """'a 36 mm tube or three of 12': where one is as long as the others together, the picture is the same."""
    lengths = [one.thickness_mm[0] for one in question.adapters if one.piece == TUBE and one.thickness_mm]
    longest = max(lengths, default=0.0)
    rest = sum(lengths) - longest
    if len(lengths) < LEAST_SEVERAL or len(lengths) != len(question.adapters) or abs(rest - longest) > SAME_LENGTH_MM:
        return answer
    if len(set(lengths)) == len(lengths) and not _are_put_together(question):
        return answer  # 'a tube of 10, 16 or 26 mm': each by itself
    size = next(iter(focals(question)), None)
    gives = f" On {trimmed(size, 1)} mm at infinity {times(longest / size)} either way." if size else ""
    advice = knowledge.catalogue.advice[ONE_OR_SEVERAL]
    lines = (Line("head", f"The same length, {small_mm(longest)}.{gives} {advice.says.strip()}"),)
    rows = (Quantity("extension_mm", Interval.exact(longest), "either way"),)
    return replace(answer, intent=COMPARE, lines=lines, quantities=rows)
