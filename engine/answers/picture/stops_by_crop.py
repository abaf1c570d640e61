"""'Is f/2 on MFT really f/4': two stops as far apart as the crop factor are alike in depth of field, not in light."""

from __future__ import annotations

from itertools import permutations
from math import log2
from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import f_number, trimmed
from engine.answers.picture.crop_factors import crop_of
from engine.answers.picture.frames import frames_named
from engine.answers.picture.likened_stop import FOR_EXPOSURE
from engine.base.compact import replace
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from grammar.kinds import WHY
from grammar.questions import Question

NEAR: Final = 0.1  # share by which the second stop may be off the first times the crop: stops are told rounded
LEAST_CROP: Final = 1.2  # crop factors nearer 1 set no stops apart
SETTLED: Final = ("shutter", "iso", "light", "frame_rate", "factor")
PAIR: Final = 2
Likened = tuple[float, Format, float]  # the stop on the smaller frame, that frame, its crop factor


def likened(question: Question, facts: Catalogue) -> Likened | None:
    """The stop that is likened to another, on which frame; None where no two are told that differ by a crop."""
    told = [lens.f_number for lens in question.lenses if lens.f_number]
    stops = list(dict.fromkeys([*told, *([question.f_number] if question.f_number else []), *question.stops]))
    if len(stops) != PAIR or any(question.said(key) for key in SETTLED) or _is_set(question):
        return None
    made_for = [facts.formats[one.format] for one in question.lenses if one.format and one.format in facts.formats]
    ids = [one.id or "" for one in question.lenses if not question.bodies]
    mounts = [facts.mounts[name] for name in ids if name in facts.mounts]
    of_mounts = [facts.formats[mount.formats[0]] for mount in mounts if mount.formats]
    for form in (*frames_named(question, facts), *made_for, *of_mounts):
        crop = crop_of(form).by_diagonal
        for here, like in permutations(stops):
            if crop >= LEAST_CROP and abs(like / here / crop - 1) <= NEAR:
                return here, form, crop
    return None


def _is_set(question: Question) -> bool:
    """'and at f/4?' after what an f/2 frames like: the stop is set, and likened to nothing."""
    doubted = question.mentions("likened-stops", "of-exposure", "lit-less")
    return question.follows and question.mentions("set-at-stop") and not doubted


def stops_by_crop(question: Question, facts: Catalogue) -> Told:
    """That the exposure stays, and which stop has that depth on full frame; nothing where none is so likened."""
    found = likened(question, facts)
    if found is None:
        return Told()
    here, form, crop = found
    at, less = f_number(here), 2 * log2(crop)
    text = (
        f"{'' if question.intent == WHY else 'No: '}f/{at} exposes as f/{at} on any sensor, at the same shutter and "
        f"ISO; no stop is lost. On {form.name} it has the depth of field that f/{trimmed(here * crop, 2)} has on full "
        f"frame, framed the same. The smaller frame gathers {trimmed(less, 2)} stops less light in all, which shows as "
        "noise at the same ISO."
    )
    case = f"f/{here:g}, {form.name}"
    rows = (
        Quantity("equivalent_f_number", Interval.exact(here * crop), case),
        Quantity("crop_factor", Interval.exact(crop), form.name),
        Quantity("f_number", Interval.exact(here), FOR_EXPOSURE),
        Quantity("light_difference_stops", Interval.exact(less), f"{form.name}, in all"),
    )
    return Told((Line("head", text),), rows)


def with_stops_by_crop(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The reason with that first, where the stops told differ so."""
    told = stops_by_crop(question, knowledge.catalogue)
    if not told.lines:
        return answer
    lines = (*told.lines, *(answer.lines if answer.status == ANSWERED else ()))
    return replace(answer, status=ANSWERED, lines=lines, quantities=(*(answer.quantities or ()), *told.quantities))
