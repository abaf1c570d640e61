"""How long a stack is: the pieces told, together; and what must stand between body and lens for a magnification."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import number
from engine.answers.parts.wording import ranged, small_mm, trimmed
from engine.base.interval import UNKNOWN, Interval, is_known
from grammar.questions import Question

LEAST_TO_ADD = 2


def length_of_all(question: Question) -> Told:
    """How long the pieces that were told are when they stand together."""
    told = [thing.thickness_mm for thing in question.adapters if thing.thickness_mm is not None]
    if len(told) < LEAST_TO_ADD:
        return Told()
    low, high = sum(one[0] for one in told), sum(one[1] for one in told)
    size = small_mm(low) if low == high else f"{small_mm(low)} to {small_mm(high)}"
    parts = " + ".join(trimmed(one[0], 3) if one[0] == one[1] else f"{one[0]:g}..{one[1]:g}" for one in told)
    rows = (Quantity("stack_mm", Interval.between(low, high), "all together"),)
    return Told((Line("head", f"Together {parts} = {size} from seat to seat."),), rows)


def stack_for(question: Question, knowledge: Knowledge) -> Told:
    """What must stand between body and lens for a magnification, beside the lens's own flange-to-image distance."""
    from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
    from engine.answers.seat.open_lens import MEASURE, UNFOCUSED, usual_flange_to_image

    lens, body = lens_side(question.lens, knowledge.catalogue), body_side(question.body, knowledge.catalogue)
    wanted, told = number(question, "magnification"), number(question, "flange_to_image")
    if not isinstance(body, BodySide) or wanted is None or question.lens is None:
        return Told()
    if not isinstance(lens, LensSide) and told is None and question.lens.lens_kind not in UNFOCUSED:
        return Told()  # what holds it at infinity is another matter
    register, focal = body.mount.register_mm, question.lens.focal_length_mm
    if not is_known(register) or focal is None:
        return Told()
    own = lens.mount.register_mm if isinstance(lens, LensSide) else UNKNOWN
    usual = usual_flange_to_image(question.lens, knowledge)
    away = Interval.exact(told) if told else own if is_known(own) else usual
    given = "its register" if is_known(own) else "the usual flange-to-image distance"
    given = f"flange to image {small_mm(told)}" if told else given if away is not None else "flange to image"
    far = away - register if away is not None else None
    stack = far + wanted * focal if far is not None else None
    size = f"{ranged(stack, small_mm)} of tubes" if stack is not None else "tubes"
    size += (
        f", helicoid or bellows; {ranged(far, small_mm)} at infinity" if far is not None else ", helicoid or bellows"
    )
    text = (
        f"Between body and lens: {given}, plus {small_mm(wanted * focal)} of extension, less "
        f"{small_mm(register.nominal)} of body register: {size}."
    )
    asks = () if told or is_known(own) else (Line("ask", MEASURE, wants="flange_to_image"),)
    rows: tuple[Quantity, ...] = ()
    if stack is not None:
        rows = (Quantity("stack_mm", stack, "tubes and rings together"),)
    if far is not None:
        rows = (*rows, Quantity("stack_mm", far, "at infinity"))
    return Told((Line("text", text), *asks), rows)
