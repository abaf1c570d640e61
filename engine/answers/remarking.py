"""The lens's own scale re-marked for a seat: what each mark now means, and where infinity now is."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import inf, isinf

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.owned import own_lens
from engine.answers.parts.said import numbers
from engine.answers.parts.wording import SEAT_READS_MM, about, distance, small_mm, trimmed
from engine.answers.picture.moved_out import extension_mm
from engine.answers.seat.distances import PARTLY, Distances, distances_of, moves_in_part
from engine.answers.shims.loose import off_by_mm
from engine.base.interval import INFINITE, Interval, is_known
from engine.base.span import Span
from engine.base.units import MM_PER_FOOT
from engine.facts.records import Lens
from engine.physics import focus
from grammar.kinds import CHAIN
from grammar.questions import Question

# marks as focus scales carry them, in mm
METRES = tuple(1000 * m for m in (0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.5, 2, 3, 5, 10, 20))
FEET = tuple(MM_PER_FOOT * ft for ft in (0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4, 5, 7, 10, 15, 30, 60))
MOST_MARKS = 12
SCALE = 3  # so many marks told are those that the lens bears
PLANES = (
    "The ranges are for the lens's principal planes, which are assumed, and for the making of rings not measured; one "
    "tape reading at a mark pins both."
)
TURN = "Which way the ring turns, and how far, is not told in your gear file (near_turn, throw)."


def remarked(question: Question, knowledge: Knowledge) -> Told:
    """For each lens named: where infinity now is, then its marks; what is missing is asked for."""
    told = Told()
    for thing in question.lenses:
        if moves_in_part(thing, knowledge.catalogue):
            return Told((Line("head", PARTLY),))
        lens = distances_of(thing, knowledge.catalogue)
        if lens is None:
            ask = "What each mark means hangs on the focal length: what is engraved on the lens?"
            return Told((Line("ask", ask, wants="focal"),))
        off = _error(question, knowledge)
        own = own_lens(thing, knowledge.catalogue)
        if off is None:
            ask = "By how much does it sit too far out or too close? Name the body and the ring, or the error in mm."
            return Told((*_turn(own), Line("ask", ask)))
        if abs(off.nominal) < SEAT_READS_MM:
            off = Interval(min(off.least, 0.0), max(off.greatest, 0.0), 0.0)
        told += _scale(lens, off, own, question, knowledge)
    return told


def _error(question: Question, knowledge: Knowledge) -> Interval | None:
    """How much the lens sits too far out (above 0): told, or that of the best chain for the pair."""
    off = off_by_mm(question)
    if off is not None:
        return Interval.exact(off)
    if not question.bodies:
        x = extension_mm(question, knowledge.catalogue)
        return Interval.exact(x) if x is not None else None
    from engine.answers.howto import how_to

    answer = how_to(question.with_(intent=CHAIN), knowledge)
    if not answer.chains:
        return None
    # with the spread of the rings' making, unless they were measured
    error = answer.chains[0].listed.judged.trace.value("register_error_mm")
    return error.shortest if isinstance(error, Span) and is_known(error.shortest) else None


def _scale(lens: Distances, off: Interval, own: Lens | None, question: Question, knowledge: Knowledge) -> Told:
    feet = question.feet

    def show(value: float) -> str:
        return distance(value, feet)

    infinity = _at_infinity(lens, off, show)
    rows, told = list(infinity.quantities), _asked(question)
    asked: list[Line] = []
    table: list[Line] = []
    for value in (*_marks(lens, own, question, knowledge), inf):
        meant = focus.remarked_mm(INFINITE if isinf(value) else Interval.exact(value), lens.focal, lens.hiatus, off)
        if not is_known(meant):
            continue
        shown = _meant_words(value, meant, off, show)
        table.append(Line("fact", f"{show(value)} -> {shown}{_ring(value, lens, own)}", 1))
        if value in told and not isinf(meant.nominal):
            rows.append(Quantity("focus_from_sensor_mm", meant, f"{show(value)} mark"))
        if value in told and len(told) < SCALE:
            asked.append(
                Line(
                    "head",
                    f"At its {show(value)} mark: {shown if isinf(meant.nominal) else f'it is now sharp at {shown}'}.",
                )
            )
        if not isinf(meant.nominal):
            rows.append(Quantity("remarked_mm", meant, f"{show(value)} mark"))
    lines = [*asked, *infinity.lines, Line("text", "What the marks now mean, from the sensor:"), *table]
    if "hiatus_mm" in lens.assumed or not off.is_exact:
        lines.append(Line("note", PLANES))
    lines += _turn(own)
    return Told(tuple(lines), tuple(rows))


def _at_infinity(lens: Distances, off: Interval, show: Callable[[float], str]) -> Told:
    """How the seat is off, in mm, and where infinity lies by that."""
    way = (
        "right"
        if abs(off.nominal) < SEAT_READS_MM
        else f"{small_mm(abs(off.nominal))} too {'far out' if off.nominal > 0 else 'close'}"
    )
    case, head = f"seat {trimmed(off.nominal, 3)} mm off", f"The seat is {way}. "
    far = focus.from_sensor_mm(lens.focal, lens.hiatus, off)
    mark = focus.infinity_mark_mm(lens.focal, lens.hiatus, off)
    if off.nominal > SEAT_READS_MM and is_known(far):
        head += (
            f"Infinity is out of reach: with the ring at infinity it is sharp at {about(far, show)} from the sensor."
        )
        return Told((Line("head", head),), (Quantity("far_from_sensor_mm", far, case),))
    if off.nominal < -SEAT_READS_MM and is_known(mark):
        head += f"Infinity is now at the {about(mark, show)} mark; past that mark nothing is sharp."
        return Told((Line("head", head),), (Quantity("scale_mark_mm", mark, case),))
    return Told((Line("head", f"{head}Infinity is at its mark, and the marks mean what they say."),))


def _asked(question: Question) -> list[float]:
    """The marks that were asked for, mm."""
    told = (question.distance_mm, *numbers(question, "mark", "distance"))
    return [value for value in told if value is not None]


def _meant_words(mark: float, meant: Interval, off: Interval, show: Callable[[float], str]) -> str:
    """What is sharp at a mark now."""
    if not isinf(meant.nominal):
        return about(meant, show)
    if off.nominal < -SEAT_READS_MM:
        return "past infinity, nothing is sharp"
    return "infinity" if isinf(mark) else about(meant, show)


def _marks(lens: Distances, own: Lens | None, question: Question, knowledge: Knowledge) -> Iterator[float]:
    """The marks told, where they are a scale; else those from the lens's nearest on, with those asked for."""
    told = _asked(question)
    if len(told) >= SCALE:
        yield from sorted(set(told))
        return
    if own is not None and is_known(own.close_focus_mm):
        nearest = own.close_focus_mm.nominal
        first: tuple[float, ...] = (nearest,)
    else:
        share = knowledge.catalogue.assumptions["usual-travel-share"].value.greatest
        usual = focus.from_sensor_mm(lens.focal, lens.hiatus, lens.focal * share)
        nearest = usual.nominal if is_known(usual) else 4 * lens.focal.nominal
        first = ()
    rows = [value for value in (FEET if question.feet else METRES) if value > nearest * 1.01][:MOST_MARKS]
    least = nearest * 0.99 if first else 4 * lens.focal.nominal  # a lens whose marks are not known may bear nearer ones
    yield from sorted({*first, *rows, *(value for value in told if value >= least)})


def _ring(mark: float, lens: Distances, own: Lens | None) -> str:
    """How far the ring is turned from infinity for a mark, where throw and travel are known."""
    if own is None or not is_known(own.throw_deg) or isinf(mark):
        return ""
    at = lens.extension_at(mark)
    whole = own.travel_mm
    if not is_known(whole) and is_known(own.close_focus_mm):
        whole = lens.extension_at(own.close_focus_mm.nominal)
    if not (is_known(at) and is_known(whole)) or whole.nominal <= 0:
        return ""
    return f", ring {own.throw_deg.nominal * at.nominal / whole.nominal:.0f} degrees from infinity"


def _turn(own: Lens | None) -> list[Line]:
    """Direction and throw of the focus ring, as far as the gear file tells them."""
    if own is None:
        return []
    parts = []
    if own.near_turn != "unknown":
        parts.append(
            "slides to focus"
            if own.near_turn == "push-pull"
            else f"turns {own.near_turn} towards near, seen from behind the camera"
        )
    if is_known(own.throw_deg):
        parts.append(f"{own.throw_deg.nominal:.0f} degrees from infinity to its nearest mark")
    if not parts:
        return [Line("note", TURN)]
    return [Line("fact", "focus ring: " + ", ".join(parts))]
