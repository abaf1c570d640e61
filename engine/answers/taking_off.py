"""What to take off a ring, or to add, where the talk knows how wrong the seat is; and what each stop forgives."""

from __future__ import annotations

from engine.answers.answer import Line, Quantity, Told
from engine.answers.circles import frames_of
from engine.answers.distances import Distances
from engine.answers.knowledge import Knowledge
from engine.answers.loose import off_by_mm
from engine.answers.said import focals, number, stop
from engine.answers.wording import article, distance, f_number, small_mm, trimmed
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.physics import focus
from grammar.questions import Question

HOW = "lapping"  # the advice on how a ring is taken down
SEAT_RIGHT_MM = 0.005
MOST_FRAMES = 1
SMALLEST = 32.0  # f-number beyond which lenses seldom close
NO_STOP = "no stop that lenses have forgives all of it"


def known_error_mm(question: Question, knowledge: Knowledge) -> float | None:
    """How much the seat is too long (above 0) or too short: as told, or by the rings that were told of, in mm."""
    off = off_by_mm(question)
    if off is not None:
        return off
    told = any(thing.thickness_mm is not None and not thing.factor for thing in question.adapters)
    if not (told or number(question, "thickness")) or not (question.lenses and question.bodies):
        return None
    from engine.answers.howto import how_to

    answer = how_to(question.with_(intent="chain"), knowledge)
    error = answer.chains[0].listed.judged.measured_trace.value("register_error_mm") if answer.chains else None
    if not isinstance(error, Span) or not error.is_fixed or not is_known(error.shortest):
        return None
    off = error.shortest.nominal
    return off if abs(off) > SEAT_RIGHT_MM else None


def by_known_error(question: Question, knowledge: Knowledge) -> tuple[Told, float | None]:
    """What sets it right, and how thick a shim where a shim can; nothing where the error is not known."""
    error = known_error_mm(question, knowledge)
    if error is None:
        return Told(), None
    size = small_mm(abs(error))
    rows = [Quantity("register_error_mm", Interval.exact(error))]
    lines: list[Line] = []
    if error > 0:
        lines.append(Line("head", (
            f"It sits {size} too far out: take {size} off the ring, or use one that much thinner."
        )))  # fmt: skip
        lines.append(Line("text", "A shim under lens or ring only adds to that; it sets right what sits too close."))
        advice = knowledge.catalogue.advice.get(HOW)
        lines += [Line("text", f"{advice.topic}: {advice.says}")] if advice is not None else []
    else:
        lines.append(Line("head", (
            f"It sits {size} too close: a shim of {size} between lens and ring, or ring and body, sets it right."
        )))  # fmt: skip
    rows.append(Quantity("shim_mm", Interval.exact(abs(error))))
    told = Told(tuple(lines), tuple(rows)) + _left_as_it_is(error, question, knowledge)
    return told, -error if error < 0 else None


def _left_as_it_is(error: float, question: Question, knowledge: Knowledge) -> Told:
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
    for form in frames_of(question, facts)[:MOST_FRAMES]:
        blur = Interval.exact(form.diagonal_mm) / divisor
        needed = Interval.exact(abs(error)) / blur
        if at_stop is not None:
            allowed = focus.infinity_allowance_mm(Interval.exact(at_stop), blur, Interval.exact(1.0))
            if is_known(allowed):
                case = f"f/{f_number(at_stop)}, {form.name}"
                rows.append(Quantity("infinity_allowance_mm", allowed, case))
                text = f"f/{f_number(at_stop)} on {form.name} forgives {small_mm(allowed.nominal)}"
                left = abs(error) - allowed.nominal
                text += f": {small_mm(left)} still to set right" if left > 0 else ": no more need be done at that stop"
                lines.append(Line("fact", text, 1))
        if is_known(needed):
            rows.append(Quantity("infinity_from_f_number", needed, form.name))
            text = f"the whole error is forgiven from f/{f_number(needed.nominal)} on ({form.name})"
            lines.append(Line("fact", text if needed.nominal <= SMALLEST else NO_STOP, 1))
    return Told(tuple(lines), tuple(rows))
