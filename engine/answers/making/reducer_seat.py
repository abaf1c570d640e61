"""How thick a ring with a reducer in it is from seat to seat, by how far its glass draws the image in, and back."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.said import mentions, number, number_beside, numbers
from engine.answers.parts.wording import small_mm
from engine.answers.picture.circles import glass_factor
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.kinds import GLASS_KINDS
from engine.physics import worked_back as back
from grammar.questions import Question, Thing
from grammar.things.casting import DRAWN

_LEAST_MM: Final = 3.0  # of a ring with glass in it
_MOST_MM: Final = 5.0  # of what is put before or behind the glass to set it right
_OTHER_GLASS: Final = frozenset({"corrective-glass", "teleconverter"})  # what draws the image out


def with_reducer_seat(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """In place of the answer, where the seat of a ring with glass in it is told or asked for."""
    if not _has_reducer(question) or question.off_word is not None:
        return answer
    told = _behind(question, knowledge) + _seat(question, knowledge.catalogue)
    if not told.lines:
        return answer
    return replace(answer, status=ANSWERED, lines=told.lines, chains=None, ring=None, quantities=told.quantities)


def _has_reducer(question: Question) -> bool:
    pieces = [one.piece for one in question.adapters]
    less = any(one.factor is not None and one.factor < 1 for one in question.adapters)
    return (less or "focal-reducer" in pieces) and not _OTHER_GLASS.intersection(pieces)


def _seat(question: Question, facts: Catalogue) -> Told:
    """The seat by what the glass draws in, or the other way round."""
    apart = _registers_apart(question, facts)
    if apart is None:
        return Told()
    drawn, thick = number_beside(question, "glass-draws-in"), _thickness(question)
    if drawn is not None and drawn != thick and 0 < drawn < apart:
        seat = apart - drawn
        text = f"{small_mm(seat)} from seat to seat: the registers differ by {small_mm(apart)}, and the glass draws the"
        text += f" image in by {small_mm(drawn)}."
        return Told((Line("head", text),), (Quantity("ring_thickness_mm", Interval.exact(seat), "with the reducer"),))
    if thick is None or thick >= apart:
        return Told()
    text = f"If it is right for infinity its glass draws the image in by {small_mm(apart - thick)}: the registers"
    text += f" differ by {small_mm(apart)}, less the seat of {small_mm(thick)}."
    also = (
        "A ring with a reducer is thinner than a plain one by that much, so its thickness alone does not tell whether"
    )
    also += " it reaches infinity: the glass and its place do. With 0.71x of 80 mm of focal length it is some 7 mm."
    also += " Try it on a far thing."
    rows = (Quantity("glass_shift_mm", Interval.exact(apart - thick), "drawn in by the reducer"),)
    return Told((Line("head", text), Line("text", also)), rows)


def _behind(question: Question, knowledge: Knowledge) -> Told:
    """'1 mm behind the 0.71 glass, how much is that in front': d/(k*k)."""
    factor, size = glass_factor(question, knowledge.catalogue), _small(question)
    if factor is None or size is None or not mentions(question, "behind-the-glass"):
        return Told()
    ahead = back.ahead_of_glass_mm(size, factor)
    text = f"{small_mm(size)} behind {factor:g}x counts as about {small_mm(ahead)} of extension before it, d/(k x k);"
    text += f" {small_mm(size)} between lens and glass counts whole."
    return Told((Line("head", text),), (Quantity("extension_mm", Interval.exact(ahead), "behind the glass"),))


def _small(question: Question) -> float | None:
    pieces = [one.thickness_mm[0] for one in question.adapters if one.thickness_mm is not None]
    told = [*pieces, *numbers(question, "thickness", "length", "extension", "total", "numbers")]
    return next((one for one in told if 0 < one <= _MOST_MM), None)


def _thickness(question: Question) -> float | None:
    rings = [one for one in question.adapters if one.piece not in DRAWN and one.thickness_mm is not None]
    told = [one.thickness_mm[0] for one in rings if one.thickness_mm is not None]
    thick = number(question, "thickness", "total")
    return next((one for one in (*told, *([thick] if thick is not None else [])) if one >= _LEAST_MM), None)


def _registers_apart(question: Question, facts: Catalogue) -> float | None:
    """Register of the lens less that of the body, by what is named of them or by what the ring joins."""
    rings = [one for one in question.adapters if one.piece not in GLASS_KINDS or one.front]
    front = next((Thing("mount", one.front[:1], one.words) for one in rings if one.front), None)
    rear = next((Thing("mount", one.rear[:1], one.words) for one in rings if one.rear), None)
    lens = lens_side(question.lens if question.lens is not None and question.lens.ids else front, facts)
    body = body_side(question.body if question.body is not None and question.body.ids else rear, facts)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)):
        return None
    registers = (lens.mount.register_mm, body.mount.register_mm)
    if not all(is_known(one) for one in registers):
        return None
    apart = registers[0] - registers[1]
    return apart.nominal if is_known(apart) and apart.nominal > 0 else None
