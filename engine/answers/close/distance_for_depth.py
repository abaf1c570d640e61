"""From how far away so much is sharp in all: 'how far off must she stand for 10 cm of depth with a 135 f/2.8'."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, number
from engine.answers.parts.wording import about, depth_words, distance, f_number, trimmed
from engine.answers.picture.blur import blur_of
from engine.answers.seat.distances import distances_of
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import depth
from grammar.questions import Question


def distance_for_depth(at: float, frames: Sequence[Format], question: Question, knowledge: Knowledge) -> Iterator[Told]:
    """Where the subject must be for the depth told, of each lens on each frame; nothing where its distance is told."""
    wanted = number(question, "depth")
    if wanted is None or distance_mm(question) is not None or question.said("magnification") is not None:
        return
    for form in frames:
        blur = Interval.exact(blur_of(question, form, knowledge))
        for thing in question.lenses:
            lens = distances_of(thing, knowledge.catalogue)
            if lens is None:
                continue
            m = depth.magnification_for_depth(Interval.exact(wanted), lens.focal, Interval.exact(at), blur)
            away = lens.at(Interval.exact(m.nominal * lens.focal.nominal)).from_sensor_mm if is_known(m) else m
            if not (is_known(m) and is_known(away)):
                continue
            case = f"{trimmed(lens.focal.nominal, 1)} mm f/{f_number(at)}, {form.name}"
            deep = depth_words(wanted, question.feet)
            there = about(away, lambda value: distance(value, question.feet))
            text = f"{case}: {deep} is sharp in all with the subject {there} from the sensor; farther off it is more."
            rows = (Quantity("focus_from_sensor_mm", away, case), Quantity("magnification", m, case))
            yield Told((Line("head", text),), rows)
