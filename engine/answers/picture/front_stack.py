"""Filters and rings stacked before a lens: whether they cut its corners, by how much wider the view is out there."""

from __future__ import annotations

import re
from math import radians, tan
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, numbers
from engine.answers.parts.wording import ranged, small_mm, trimmed
from engine.answers.picture.filter_effects import is_behind
from engine.answers.picture.frames import FULL, frames_named
from engine.answers.picture.step_down import stepped_down, stepped_down_to
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question, Thing

FILTER: Final = "filter"
STEP: Final = "step-ring"
SORTS: Final = ("density-filter", "polariser", "clear-filter")  # phrases for filters that are one each
LEAST_STACKED: Final = 2
MORE_THAN_STACKED: Final = 5
GENERAL: Final = (
    "A rim before the lens cuts the widest views first: wides lose their corners, teles none. Take the thin mounts, "
    "one filter fewer, or step up to a larger size before the first filter; never down."
)
LOOK: Final = "Look at an even sky, stopped down and focused far: a hard dark edge is the rim."


def front_stack(question: Question, knowledge: Knowledge) -> Told:
    """What the stack asks for; nothing where none is told, where it sits behind the lens or glass stands there too."""
    pieces = [thing for thing in question.adapters if thing.piece in (FILTER, STEP)]
    marks = re.findall(r"ND", question.said("factor") or "", re.IGNORECASE)
    if not (pieces or marks) or is_behind(question) or len(pieces) < len(question.adapters):
        return Told()
    count = sum(thing.count or 1 for thing in pieces if thing.piece == FILTER) + len(marks)
    count = max(count, sum(mentions(question, sort) for sort in SORTS))
    count = count or sum(thing.count or 1 for thing in pieces)
    if mentions(question, "added-up", "stack-of-rings"):
        count = max(count, LEAST_STACKED)
    facts, told = knowledge.catalogue, Told()
    down = stepped_down_to(question)
    if down is not None:
        return stepped_down(question, down, knowledge) + Told((Line("text", f"{GENERAL} {LOOK}"),))
    frames = frames_named(question, facts)
    for lens in question.lenses:
        if lens.focal_length_mm is not None:
            gained, most = _gained(pieces, question), mentions(question, "how-many-filters")
            told += _of_lens(lens.focal_length_mm, count, gained, frames, facts, most)
    ask = () if told.lines else (Line("ask", "For which lens: which focal length, on which sensor?"),)
    return told + Told((Line("text" if told.lines else "head", f"{GENERAL} {LOOK}"), *ask))


def _gained(pieces: list[Thing], question: Question) -> float:
    """By how much step-up rings widen what follows them, mm."""
    told = [thing.steps[1] - thing.steps[0] for thing in pieces if thing.piece == STEP and thing.steps]
    threads = numbers(question, "filter_thread")
    stepped = any(thing.piece == STEP for thing in pieces) and len(threads) > 1
    return sum(told) if told else max(threads) - min(threads) if stepped else 0.0


def _of_lens(
    focal: float, count: int, gained: float, frames: list[Format], facts: Catalogue, most: bool = False
) -> Told:
    """What stands beyond the one filter that fronts are made for, times twice the tangent of half the angle of view.

    `most`: how many may stand there is asked.
    """
    rows = facts.assumptions
    form = max(frames, key=lambda one: one.diagonal_mm) if frames else facts.formats[FULL]
    angle = coverage.angle_of_view_deg(Interval.exact(form.diagonal_mm), Interval.exact(focal), Interval.exact(0.0))
    if not is_known(angle):
        return Told()
    beyond = rows["filter-height"].value * float(count - 1)
    each = rows["filter-height"].value * (2 * tan(radians(angle.nominal) / 2))
    spare = rows["front-spare"].value + gained
    where = f"before a {trimmed(focal, 1)} mm on {form.name}{'' if frames else ' (assumed)'}"
    if most:
        return _most(where, each, spare, gained, form)
    if count < LEAST_STACKED:
        text = f"{count} {where}: one filter is what most fronts are made for, a thick one on a wide lens may show."
        return Told((Line("head", text),))
    wider = each * float(count - 1)
    verdict = "they may cut the corners"
    if wider.least > spare.greatest:
        verdict = "they cut the corners"
    elif wider.greatest < spare.least:
        verdict = "the corners stay clear"
    says = f"{ranged(beyond, small_mm)} beyond the first one, where the view is {ranged(wider, small_mm)} wider"
    text = f"{count} {where}: {verdict}. They stand {says}; {_spare(spare, gained)} to spare, mostly."
    return Told((Line("head", text),), (Quantity("rim_wider_mm", wider, form.name),))


def _most(where: str, each: Interval, spare: Interval, gained: float, form: Format) -> Told:
    """The first, and as many more as the front has room for, each with so much (mm) of wider view."""
    least, greatest = 1 + int(spare.least / each.greatest), 1 + int(spare.greatest / each.least)
    held = "more than anybody stacks" if least >= MORE_THAN_STACKED else f"{least} for sure, perhaps {greatest}"
    held = f"{least}" if least == greatest else held
    text = (
        f"Filters {where}: {held}. Each after the first asks for {ranged(each, small_mm)} more of front; "
        f"{_spare(spare, gained)} to spare, mostly."
    )
    return Told((Line("head", text),), (Quantity("filter_count", Interval.between(least, greatest), form.name),))


def _spare(spare: Interval, gained: float) -> str:
    stepped = f", the {small_mm(gained)} of stepping up counted," if gained else ""
    return f"fronts have {ranged(spare, small_mm)}{stepped}"
