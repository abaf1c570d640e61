"""How much is to be put between a corrector and the sensor that it wants at one distance, less what is there."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import wrong_seat_mm
from engine.answers.parts.resolve import BodySide, body_side
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import small_mm, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.spaced import Spaced
from engine.physics.seat import glass_shift_mm
from grammar.questions import Question

ADDED_UP: Final = "For "  # begins an answer that adds up pieces at hand
_SAME_MM: Final = 0.6  # as near as a depth of a camera is told by hand
_T2: Final = "t2"
_MOST: Final = 5


def with_spacing(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """In place of the answer, where the distance that is wanted and what stands in it are told."""
    spaced = question.spaced
    if spaced is None or not spaced.asked or (answer.lines and answer.lines[0].text.startswith(ADDED_UP)):
        return answer
    there = _there(question, knowledge)
    if not there or len(there) > _MOST or not (question.follows or mentions(question, "spacer-asked")):
        return answer
    shift = _shift_of(spaced.glass, knowledge)
    wanted = spaced.wanted + (shift.nominal if shift is not None else 0.0)
    have = sum(there)
    left, near = round(wanted - have, 3), knowledge.catalogue.assumptions["making-spread-nominal"].value.greatest
    listed_ = " + ".join(trimmed(one, 2) for one in there)
    sums = f"{listed_} = {trimmed(have, 2)} mm" if len(there) > 1 else f"{listed_} mm"
    asked = f"{small_mm(spaced.wanted)} are wanted to the sensor"
    if shift is not None:
        asked += f", {small_mm(wanted)} with the {trimmed(spaced.glass, 2)} mm filter in between"
    if abs(left) <= near:
        text = f"Nothing: {asked}, and {sums} are there."
    elif left > 0:
        lead = f"{small_mm(left)} short still" if spaced.chosen else f"{small_mm(left)} of spacer"
        text = f"{lead}: {asked}, {sums} are there."
    else:
        text = f"{small_mm(-left)} too long already: {asked}, {sums} are there."
    share = _shift_of(1.0, knowledge)
    more = (
        f" A filter in between moves the focus back by {trimmed(share.nominal, 2)} of its thickness: add that."
        if share
        else ""
    )
    spacer = (Quantity("stack_mm", Interval.exact(max(left, 0.0)), "spacer"),) if left >= -near else ()
    rows = (*spacer, *_shifted(shift))
    advice = [line for line in answer.lines if line.text.startswith("spacing before")]
    head = Line("head", f"{text}{more if left > 0 and shift is None else ''}")
    return replace(answer, status=ANSWERED, lines=(head, *advice), quantities=rows, chains=None)


def _shift_of(glass_mm: float, knowledge: Knowledge) -> Interval | None:
    """How far a filter moves the image back; None where there is none."""
    shift = glass_shift_mm(Interval.exact(glass_mm), knowledge.catalogue.assumptions["filter-glass-index"].value)
    return shift if glass_mm and is_known(shift) else None


def _shifted(shift: Interval | None) -> tuple[Quantity, ...]:
    return (Quantity("glass_shift_mm", shift),) if shift is not None else ()


def _there(question: Question, knowledge: Knowledge) -> list[float]:
    """What stands there: the pieces told, with the depth of the body, and its T ring, where those are not."""
    facts = knowledge.catalogue
    spaced = question.spaced or Spaced(0.0)
    told = [one for one, _ in spaced.there]
    side = body_side(question.body, facts) if question.body is not None else None
    if not isinstance(side, BodySide) or not is_known(side.mount.register_mm) or side.mount.thread:
        return told
    depth = side.mount.register_mm.nominal
    if any(abs(one - depth) <= _SAME_MM or one > depth + _SAME_MM for one in told[: spaced.first]):
        return told  # the depth is told itself, or with a ring
    t_mount = facts.mounts[_T2].register_mm
    spans = t_mount.nominal - depth if is_known(t_mount) else None
    ring = spaced.t_ring and spans is not None and not any(abs(one - spans) < wrong_seat_mm(facts) for one in told)
    return [depth, *((spans,) if ring and spans is not None else ()), *told]
