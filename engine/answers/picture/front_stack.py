"""Filters and rings stacked before a lens: whether they cut its corners, by how much wider the view is out there."""

from __future__ import annotations

import re
from math import radians, tan
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import ranged, small_mm, trimmed
from engine.answers.picture.filter_effects import is_behind
from engine.answers.picture.frames import FULL, frames_named
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question, Thing

FILTER: Final = "filter"
STEP: Final = "step-ring"
LEAST_STACKED: Final = 2
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
    count = sum(thing.count or 1 for thing in pieces) + len(marks)
    if mentions(question, "added-up", "stack-of-rings"):
        count = max(count, LEAST_STACKED)
    facts, told = knowledge.catalogue, Told()
    down = [thing for thing in pieces if thing.piece == STEP and thing.steps and thing.steps[0] > thing.steps[1]]
    if down:
        told += Told((Line("head", "Yes: a step down puts a rim narrower than the lens's own front before it."),))
    frames = frames_named(question, facts)
    for lens in question.lenses:
        if lens.focal_length_mm is not None and not down:
            told += _of_lens(lens.focal_length_mm, count, _gained(pieces), frames, facts)
    ask = () if told.lines else (Line("ask", "For which lens: which focal length, on which sensor?"),)
    return told + Told((Line("text" if told.lines else "head", f"{GENERAL} {LOOK}"), *ask))


def _gained(pieces: list[Thing]) -> float:
    """By how much step-up rings widen what follows them, mm."""
    return sum(thing.steps[1] - thing.steps[0] for thing in pieces if thing.piece == STEP and thing.steps)


def _of_lens(focal: float, count: int, gained: float, frames: list[Format], facts: Catalogue) -> Told:
    """What stands beyond the one filter that fronts are made for, times twice the tangent of half the angle of view."""
    rows = facts.assumptions
    form = max(frames, key=lambda one: one.diagonal_mm) if frames else facts.formats[FULL]
    angle = coverage.angle_of_view_deg(Interval.exact(form.diagonal_mm), Interval.exact(focal), Interval.exact(0.0))
    beyond = rows["filter-height"].value * float(count - 1)
    if not is_known(angle):
        return Told()
    wider = beyond * (2 * tan(radians(angle.nominal) / 2))
    spare = rows["front-spare"].value + gained
    name = f"{count} before a {trimmed(focal, 1)} mm on {form.name}{'' if frames else ' (assumed)'}"
    if count < LEAST_STACKED:
        text = f"{name}: one filter is what most fronts are made for, a thick one on a wide lens may show."
        return Told((Line("head", text),))
    says = f"{ranged(beyond, small_mm)} beyond the first one, where the view is {ranged(wider, small_mm)} wider"
    verdict = "they may cut the corners"
    if wider.least > spare.greatest:
        verdict = "they cut the corners"
    elif wider.greatest < spare.least:
        verdict = "the corners stay clear"
    text = f"{name}: {verdict}. They stand {says}; {_spare(spare, gained)} to spare, mostly."
    return Told((Line("head", text),), (Quantity("rim_wider_mm", wider, form.name),))


def _spare(spare: Interval, gained: float) -> str:
    stepped = f", the {small_mm(gained)} of stepping up counted," if gained else ""
    return f"fronts have {ranged(spare, small_mm)}{stepped}"
