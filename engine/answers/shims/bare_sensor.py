"""What comes of the glass taken off a sensor: every lens then sits too far out, by what the glass moved the image."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide
from engine.answers.parts.said import focals, mentions, number, number_beside, numbers
from engine.answers.parts.wording import READS_MM, distance, ranged, small_mm, trimmed
from engine.answers.picture.filter_effects import GLASS_GONE, index_of_glass
from engine.answers.seat.spacing import far_limits
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.facts.catalogue import Catalogue
from engine.judging.judge import Judged
from engine.physics import focus, seat
from grammar.kinds import COVERAGE, CROP_EQUIVALENT, HAZARD
from grammar.questions import Question

THICKEST_MM: Final = 8.0  # of what lies before a sensor
IN_FRONT: Final = (
    "A filter in front of the lens does not move infinity, and the seat stays as it is; near by it brings the focus a "
    "third of its thickness farther off. Only glass behind the lens asks for a thicker ring."
)
_FRONT: Final = "glass-in-front"
_GONE: Final = "piece-gone"
_DANGER: Final = "danger"


def glass_gone_mm(question: Question) -> float | None:
    """How thick the glass was that the question says is gone from before the sensor, mm."""
    if not mentions(question, "glass-gone") or not mentions(question, "sensor-glass"):
        return None
    told = number(question, "glass")
    if told is not None:
        return told
    filters = [one.thickness_mm[0] for one in question.adapters if one.piece == "filter" and one.thickness_mm]
    filters += [size for size in numbers(question, "filter_thread") if size <= THICKEST_MM]
    beside = number_beside(question, "so-much-glass")
    return beside if beside is not None else filters[0] if filters and mentions(question, "sensor") else None


def glass_added_mm(question: Question) -> float | None:
    """How thick the glass is that the question says was put before the sensor, mm."""
    told = number(question, "glass")
    if told is None or glass_gone_mm(question) is not None or not mentions(question, "glass-added"):
        return None
    return told if mentions(question, "at-the-sensor") else None


def shift_of(glass_mm: float, facts: Catalogue, index: Interval | None = None) -> Interval | None:
    """How far glass moves the image back: t(1 - 1/n). `index`: n where it is told."""
    usual = facts.assumptions["filter-glass-index"].value
    shift = seat.glass_shift_mm(Interval.exact(glass_mm), index if index is not None else usual)
    return shift if is_known(shift) else None


def without_glass(side: BodySide, question: Question, facts: Catalogue) -> BodySide:
    """The body with its sensor where it lies for every lens once its glass is gone; as it is where none is gone."""
    glass = glass_gone_mm(question)
    shift = shift_of(glass, facts) if glass is not None else None
    register = side.body.register_mm if is_known(side.body.register_mm) else side.mount.register_mm
    if shift is None or not is_known(register):
        return side
    return replace(side, body=replace(side.body, register_mm=register + shift))


def glass_told(question: Question, knowledge: Knowledge) -> Told:
    """What it does to lenses on rings and to native ones, and what sets it right; nothing where no glass is told."""
    behind = _behind_lens_mm(question)
    if behind is not None:
        return _moved_by_plate(behind, question, knowledge)
    added = glass_added_mm(question)
    if added is not None:
        return _added_told(added, knowledge.catalogue)
    glass = glass_gone_mm(question)
    shift = shift_of(glass, knowledge.catalogue) if glass is not None else None
    if glass is None or shift is None:
        return Told()
    by = ranged(shift, small_mm)
    text = (
        f"Without its {trimmed(glass, 2)} mm of glass the sensor asks every lens to sit {by} nearer: now each is"
        f" {by} too far out. Clear glass as thick put back, or the sensor moved, cures all; on adapters alone take"
        f" {by} off. That is a repair technician's work."
    )
    told = Told((Line("head", text),), (Quantity("glass_shift_mm", shift), Quantity("register_error_mm", shift)))
    ends = [one for one in focals(question) if one != glass and shift.nominal > 0]
    return told + (far_limits(ends, shift.nominal, knowledge.catalogue, question.feet, 1) if ends else Told())


def _behind_lens_mm(question: Question) -> float | None:
    """How thick the plate is that the question says stands, or stood, between a lens and its seat, mm."""
    told = number(question, "glass")
    of_lens = mentions(question, "behind-a-lens") and not mentions(question, "sensor")
    prior = question.prior
    # what was there the turn before, or was left away in it
    going_on = question.follows and prior is not None and (prior.said("glass") is not None or prior.mentions(_GONE))
    front = mentions(question, _FRONT) or (question.prior is not None and question.prior.mentions(_FRONT))
    return told if told is not None and (of_lens or (going_on and not front)) else None


def plate_in(question: Question, judged: Judged | None, knowledge: Knowledge) -> Told:
    """How a lens sits on a body with a plate told behind it: too close by what that moves the image back."""
    glass = _behind_lens_mm(question)
    gone = question.prior is not None and question.follows and question.prior.mentions("glass-gone")
    shift = shift_of(glass, knowledge.catalogue, index_of_glass(question, knowledge)[0]) if glass is not None else None
    error = judged.measured_trace.value("register_error_mm") if judged is not None else None
    if glass is None or shift is None or judged is None or not isinstance(error, Span) or not is_known(error.shortest):
        return Told()
    ring = error.shortest.nominal if error.is_fixed else 0.0
    ring = 0.0 if abs(ring) < READS_MM else ring
    by = ranged(shift, small_mm)
    if gone or mentions(question, "glass-gone"):
        return _without_plate(glass, by, shift) if question.follows else Told()
    off = round(ring - shift.nominal, 3)
    text = f"{trimmed(glass, 2)} mm of glass behind the lens moves the image {by} back, t(1 - 1/n): "
    if ring:
        text += f"with a seat {small_mm(abs(ring))} {'too far out' if ring > 0 else 'too close'} the lens "
    else:
        text += "on a right seat the lens "
    text += f"sits {small_mm(abs(off))} {'too far out' if off > 0 else 'too close'}{_mark_of(off, judged)}. "
    less = f"take {small_mm(off)} off the ring" if off > 0 else f"a shim or ring {small_mm(-off)} thicker sets it right"
    rows = (Quantity("glass_shift_mm", shift), Quantity("register_error_mm", Interval.exact(off), "with the glass"))
    return Told(
        (Line("head", f"{text}{less[:1].upper()}{less[1:]}."),), (*rows, Quantity("shim_mm", Interval.exact(abs(off))))
    )


def _without_plate(glass_mm: float, by: str, shift: Interval) -> Told:
    """What a ring made for a plate behind the lens does without it."""
    text = (
        f"Without its {trimmed(glass_mm, 2)} mm of glass the image lies {by} nearer to the lens: on a ring made for it"
        f" the lens sits {by} too far out, and infinity is soft until a clear plate as thick is put in, or {by} is"
        " taken off the ring."
    )
    return Told(
        (Line("head", text),), (Quantity("glass_shift_mm", shift), Quantity("register_error_mm", shift, "without"))
    )


def plate_alone(question: Question, knowledge: Knowledge) -> Told:
    """The shim for a plate told behind a lens, where no ring is told that is judged with it."""
    glass = _behind_lens_mm(question)
    ringed = any(one.thickness_mm is not None for one in question.adapters)
    return _moved_by_plate(glass, question, knowledge) if glass is not None and not ringed else Told()


def _mark_of(off: float, judged: Judged) -> str:
    """Where infinity then falls on the scale of a lens whose focal length is told."""
    focal = judged.measured_trace.value("focal_length_mm")
    if off >= 0 or not isinstance(focal, Interval) or not is_known(focal):
        return ", past infinity" if off < 0 else ""
    mark = focus.infinity_mark_mm(focal, Interval.exact(0.0), Interval.exact(off))
    return f", infinity at its {distance(mark.nominal)} mark" if isinstance(mark, Interval) else ", past infinity"


def _moved_by_plate(glass_mm: float, question: Question, knowledge: Knowledge) -> Told:
    """What a plate behind the lens does to the length that must stand between it and the sensor."""
    shift = shift_of(glass_mm, knowledge.catalogue, index_of_glass(question, knowledge)[0])
    if shift is None:
        return Told()
    by, gone = ranged(shift, small_mm), mentions(question, *GLASS_GONE)
    way = "out, the image lies" if gone else "in, the image lies"
    where, length = ("nearer to the lens", "shorter") if gone else ("farther from the lens", "longer")
    text = (
        f"With {trimmed(glass_mm, 2)} mm of glass {way} {by} {where}, t(1 - 1/n): whatever holds the lens must be {by}"
        f" {length}."
    )
    rows = (Quantity("glass_shift_mm", shift), Quantity("shim_mm", shift, "for the glass"))
    return Told((Line("head", text),), rows[:1] if gone else rows)


def _added_told(glass_mm: float, facts: Catalogue) -> Told:
    """Glass before the sensor moves the image back: every lens then sits too close by that."""
    shift = shift_of(glass_mm, facts)
    if shift is None:
        return Told()
    by = ranged(shift, small_mm)
    text = (
        f"{trimmed(glass_mm, 2)} mm of glass more before the sensor moves the image back by {by}: every lens then sits"
        f" {by} too close and goes past infinity, its marks off by that; a shim of {by} under each ring sets it right."
        " Where a lens was too far out by as much, it is cured."
    )
    rows = (Quantity("glass_shift_mm", shift), Quantity("register_error_mm", -shift), Quantity("shim_mm", shift))
    return Told((Line("head", text),), rows)


def with_plate_told(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer with what a plate told by its thickness does to the focus before it, where it lacks that."""
    if question.mentions(_FRONT):
        if any(line.kind == _DANGER for line in answer.lines):
            return answer  # what may be hurt comes before where it focuses: the sun through a dark filter
        return replace(answer, lines=(Line("head", IN_FRONT), *answer.lines[: 0 if answer.intent == HAZARD else None]))
    glass = _plate_mm(question)
    shift = shift_of(glass, knowledge.catalogue, index_of_glass(question, knowledge)[0]) if glass is not None else None
    if glass is None or shift is None or any(row.name == "glass_shift_mm" for row in answer.quantities or ()):
        return answer
    told = _moved_by_plate(glass, question, knowledge)
    named = any(lens.ids or lens.focal_length_mm for lens in question.lenses)  # of which the picture may be asked
    of_picture = answer.intent in (COVERAGE, CROP_EQUIVALENT)
    only = not answer.quantities or (of_picture and (mentions(question, "index-of-glass") or not named))
    both = (*answer.lines, *told.lines) if of_picture else (*told.lines, *answer.lines)
    lines = told.lines if only else both
    return replace(answer, lines=lines, quantities=(*told.quantities, *(answer.quantities or ())))


def _plate_mm(question: Question) -> float | None:
    """How thick a plate is that is told as one, or as a filter that stands between lens and sensor, mm."""
    told, in_path = number(question, "glass"), mentions(question, "glass-in-path")
    stands = in_path or mentions(question, "plate-stands")
    if told is not None or not stands or not mentions(question, "filter-or-gel"):
        return told
    told = number_beside(question, "so-much-glass")
    told = number(question, "thickness", "length") if told is None and in_path else told
    return told if told is not None and told <= THICKEST_MM else None


def with_glass_changed(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what glass taken off, put before or exchanged at the sensor does to every seat."""
    if any(row.name == "glass_shift_mm" for row in answer.quantities or ()):
        return answer
    told = _exchanged(question, knowledge.catalogue)
    told = told if told.lines else glass_told(question, knowledge)
    rows = (*told.quantities, *(answer.quantities or ()))
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=rows)


def _exchanged(question: Question, facts: Catalogue) -> Told:
    """'1 mm of glass in place of a 2 mm stack': what the one moves the image less than the other."""
    sizes = [one for one in numbers(question, "glass", "length", "thickness") if 0 < one <= THICKEST_MM]
    if len(sizes) != 2 or question.said("glass") is None or not mentions(question, "glass-exchanged"):
        return Told()
    shift = shift_of(max(sizes) - min(sizes), facts)
    if shift is None:
        return Told()
    by = ranged(shift, small_mm)
    text = f"{trimmed(max(sizes), 2)} mm of glass moves the image {by} farther back than {trimmed(min(sizes), 2)} mm"
    text += f": with the thinner glass a lens sits {by} too far out where it was right before, with the thicker one as"
    text += " much too close."
    return Told((Line("head", text),), (Quantity("glass_shift_mm", shift, "between the two"),))
