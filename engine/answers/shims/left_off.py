"""What a lens does with an error left in its seat, and which stop forgives it."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, stop
from engine.answers.parts.wording import article, distance, f_number, small_mm, trimmed
from engine.answers.picture.frames import frames_of
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import far_limits, marks, usual_focals
from engine.base.interval import Interval, is_known
from engine.physics import focus
from grammar.questions import Question

MOST_FRAMES = 1
SELDOM_CLOSED = "seldom-closed-beyond"  # of the facts: the f-number
NO_STOP = "no stop that lenses have forgives all of it"


def left_as_it_is(error: float, question: Question, knowledge: Knowledge) -> Told:
    """What the lens does with the error in it, and from which stop on it is forgiven."""
    facts, lines, rows = knowledge.catalogue, [], []
    for focal in focals(question):
        lens = Distances(focal, facts)
        where = lens.from_sensor(error) if error > 0 else lens.mark(error)
        if is_known(where):
            name = "far_from_sensor_mm" if error > 0 else "scale_mark_mm"
            rows.append(Quantity(name, where, f"{trimmed(focal, 1)} mm lens"))
            at = distance(where.nominal, question.feet)
            which = f"{article(f'{trimmed(focal, 1)} mm')} {trimmed(focal, 1)} mm lens"
            text = f"left so, {which} "
            text += f"is sharp to {at} from the sensor at most" if error > 0 else f"has infinity at its {at} mark"
            lines.append(Line("fact", text, 1))
    divisor, at_stop = facts.assumptions["blur-divisor"].value, stop(question)
    by_mark = "set by the infinity mark, " if error < 0 else ""  # too close, it is sharp before that at every stop
    for form in frames_of(question, facts)[:MOST_FRAMES]:
        blur = Interval.exact(form.diagonal_mm) / divisor
        needed = Interval.exact(abs(error)) / blur
        if at_stop is not None:
            allowed = focus.infinity_allowance_mm(Interval.exact(at_stop), blur, Interval.exact(1.0))
            if is_known(allowed):
                case = f"f/{f_number(at_stop)}, {form.name}"
                rows.append(Quantity("infinity_allowance_mm", allowed, case))
                text = f"{by_mark}f/{f_number(at_stop)} on {form.name} forgives {small_mm(allowed.nominal)}"
                left = abs(error) - allowed.nominal
                text += f": {small_mm(left)} still to set right" if left > 0 else ": no more need be done at that stop"
                lines.append(Line("fact", text, 1))
        if is_known(needed):
            rows.append(Quantity("infinity_from_f_number", needed, form.name))
            far = ", with infinity" if error > 0 else ""  # too close it is there at any stop
            text = f"{by_mark}the whole error is forgiven{far} from f/{f_number(needed.nominal)} on ({form.name})"
            closes = needed.nominal <= facts.assumptions[SELDOM_CLOSED].value.greatest
            lines.append(Line("fact", text if closes else NO_STOP, 1))
    return Told(tuple(lines), tuple(rows))


def of_any_lens(error: float, question: Question, knowledge: Knowledge) -> Told:
    """Where no lens is told: how far each usual one comes with that error, and what must be known to say it of one."""
    of_each = far_limits if error > 0 else marks
    told = of_each(usual_focals(knowledge.catalogue), abs(error), knowledge.catalogue, question.feet, 0)
    return told + Told(
        (Line("ask", "What is the focal length of the lens? How far it comes goes by that.", wants="focal"),)
    )
