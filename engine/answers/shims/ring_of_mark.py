"""How thick the ring is that a mark or a limit told off, and how thick it should be."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.said import mentions, numbers
from engine.answers.parts.wording import small_mm
from engine.base.interval import Interval, is_known
from grammar.questions import Question

_THICKEST = 3.0  # mm; what is more is no shim
_LEAST_RING = 1.0  # mm: less room between two registers is for no ring


def ring_of_mark(question: Question, told: Told, knowledge: Knowledge) -> Told:
    """'the ring is 27.3, infinity at the 4 m mark': how thick it should be; by lens and body how thick it then is."""
    sizes = [one.thickness_mm[0] for one in question.adapters if one.thickness_mm and len(set(one.thickness_mm)) == 1]
    sizes += [one for one in numbers(question, "thickness") if not sizes]
    errors = [row.value.nominal for row in told.quantities if row.name == "register_error_mm" and is_known(row.value)]
    if len(errors) != 1 or question.said("nominal") is not None:
        return Told()
    if not sizes:
        return _by_the_pair(question, errors[0], knowledge)
    if len(sizes) != 1 or sizes[0] <= _THICKEST:
        return Told()
    if mentions(question, "length-nominal"):  # 'nominal 27.46, actual thickness?'
        own = sizes[0] + errors[0]
        text = f"So the ring, if it is the cause, is {small_mm(own)} thick where {small_mm(sizes[0])} is meant."
        return Told((Line("text", text),), (Quantity("ring_thickness_mm", Interval.exact(own), "as it is"),))
    right = sizes[0] - errors[0]
    text = f"So the ring of {small_mm(sizes[0])} should be {small_mm(right)}."
    return Told((Line("text", text),), (Quantity("ring_thickness_mm", Interval.exact(right), "for infinity"),))


def _by_the_pair(question: Question, error: float, knowledge: Knowledge) -> Told:
    """'what should it have been' after a mark: the difference of the registers, and what the ring lacks of it."""
    lens, body = lens_side(question.lens, knowledge.catalogue), body_side(question.body, knowledge.catalogue)
    if not (isinstance(lens, LensSide) and isinstance(body, BodySide)) or any(
        one.ids or one.factor for one in question.adapters
    ):
        return Told()
    one, other = lens.mount.register_mm, body.mount.register_mm
    if not (is_known(one) and is_known(other)) or one.nominal - other.nominal < _LEAST_RING:
        return Told()
    right = one.nominal - other.nominal
    text, rows = f"Right is {small_mm(right)}, lens register less body register", [(right, "what is right")]
    if right + error > 0:  # no ring alone is off by more than it is thick
        text += f"; if the ring is the cause, it is {small_mm(right + error)} thick"
        rows.append((right + error, "as it is"))
    text += "."
    cases = tuple(Quantity("ring_thickness_mm", Interval.exact(size), case) for size, case in rows)
    return Told((Line("fact", text, 1),), cases)
