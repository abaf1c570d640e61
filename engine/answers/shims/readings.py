"""What several caliper readings of one ring tell: its mean, whether it is tilted, and what it is off from right."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import lens_off_mm
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.said import number
from engine.answers.parts.wording import SEAT_READS_MM, small_mm, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from grammar.questions import Question

MOST_TILT_MM: Final = 0.5  # what one side is thicker by; more is how thick it is
MOST_WRONG_MM: Final = 15.0  # by which a ring is told to be off


def readings_told(question: Question, knowledge: Knowledge) -> Told:
    """Mean, spread and error of the ring that was read at several places; nothing where there are no readings."""
    values = [float(one.split(" ")[0]) for one in (question.said("readings") or "").split(", ") if one]
    if not values:
        return _thicker_there(question, knowledge)
    mean, spread = sum(values) / len(values), max(values) - min(values)
    usual = knowledge.catalogue.assumptions
    flat, fine = (usual[name].value.nominal for name in ("faces-parallel", "ring-left-alone"))
    parts = [f"Mean {trimmed(mean, 3)} mm"]
    rows = [Quantity("ring_thickness_mm", Interval.exact(mean), "mean of the readings")]
    error = _error(mean, question, knowledge)
    if error is not None:
        rows += [Quantity("register_error_mm", Interval.exact(error), "mean of the readings"),
                 Quantity("shim_mm", Interval.exact(abs(error)), "to take off" if error > 0 else "to add")]  # fmt: skip
        way = (
            "just right"
            if abs(error) < SEAT_READS_MM
            else f"{small_mm(abs(error))} too {'thick' if error > 0 else 'thin'}"
        )
        parts.append(way)
        if abs(error) > lens_off_mm(knowledge.catalogue):
            parts.append("so far off that it was hardly read from seat to seat: leave out what reaches into the body")
        elif abs(error) <= fine and spread <= 2 * flat + 1e-9:
            parts.append("leave it")
        elif error < -fine:
            parts.append(f"a shim of {small_mm(-error)} sets it right")
        elif error > fine:
            parts.append(f"take {small_mm(error)} off, parallel")
    tilt = f"The readings lie {small_mm(spread)} apart: "
    if spread <= flat + 1e-9:
        tilt += f"parallel within the {small_mm(flat)} that counts as flat."
    elif spread <= 2 * flat + 1e-9:
        tilt += (
            f"over the {small_mm(flat)} that counts as flat, at most a slight tilt and little more than a caliper's"
            " own error; read again."
        )
    else:
        tilt += (
            f"more than the {small_mm(flat)} that counts as flat, so it is tilted, one side of the picture soft:"
            " clean the seats, tighten the screws evenly, read again; else lap the high side."
        )
    if error is None:
        return Told((Line("head", tilt), Line("fact", f"{parts[0].lower()} in the middle", 1)), tuple(rows))
    return Told((Line("head", f"{', '.join(parts)}."), Line("fact", tilt, 1)), tuple(rows))


def _thicker_there(question: Question, knowledge: Knowledge) -> Told:
    """'0.06 thicker on one side': a tilt, which no shim all round cures."""
    sided = number(question, "thickness", "length", "numbers") if question.mentions("on-one-side") else None
    by = number(question, "tilt") or sided
    flat = knowledge.catalogue.assumptions["faces-parallel"].value.nominal
    if by is None or not 0 < by <= MOST_TILT_MM:
        return Told()
    if by <= flat + 1e-9:
        text = f"{small_mm(by)} between one side and the other is within the {small_mm(flat)} that counts as flat."
    else:
        text = (
            f"{small_mm(by)} between one side and the other is more than the {small_mm(flat)} that counts as flat: the"
            " lens stands tilted, one side of the picture soft. A shim all round does not cure that: clean the seats,"
            " tighten the screws evenly, read again at four points, then lap the high side."
        )
    return Told((Line("head", text),), (Quantity("tilt_mm", Interval.exact(by)),))


def _error(thickness: float, question: Question, knowledge: Knowledge) -> float | None:
    """How much the ring is too thick (above 0): for what it should be, else for the lens and the body named, mm."""
    right = number(question, "nominal")
    if right is not None:
        return round(thickness - right, 4)
    lens, body = lens_side(question.lens, knowledge.catalogue), body_side(question.body, knowledge.catalogue)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return None
    one, other = lens.mount.register_mm, body.mount.register_mm
    return round(thickness - (one.nominal - other.nominal), 4) if is_known(one) and is_known(other) else None


def with_readings(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer with what the readings tell before it, where it was asked with some."""
    told = readings_told(question, knowledge)
    if not told.lines:
        return answer
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=(*told.quantities, *answer.quantities))


def is_told_by_how_much(size: float, question: Question) -> bool:
    """'the ring is 10 mm too thin': right before these words, so much is wrong with it."""
    by = re.search(rf"\b{size:g} ?(mm )?too ", question.text.casefold())
    return by is not None and size <= MOST_WRONG_MM
