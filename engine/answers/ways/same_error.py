"""Why the same error, or tube, is much for one lens or stop and little for another: the law and each figure."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import MOST_ERROR_MM
from engine.answers.parts.said import focals, mentions, number, numbers
from engine.answers.parts.wording import READS_MM, f_number, small_mm, times, trimmed
from engine.answers.picture.blur import blur_of
from engine.answers.picture.frames import frames_named
from engine.answers.seat.described import TUBE
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import USUAL_FORMAT, far_limits, marks, normal_focal
from engine.answers.shims.carried import is_limit
from engine.answers.shims.forgiving import is_error
from engine.answers.shims.loose import off_by_mm
from engine.answers.ways.ring_off import error_of_the_pair
from engine.answers.words.advice import advice_lines
from engine.base.interval import Interval, is_known
from engine.chains.walk import ADDED_FOCUSING
from grammar.kinds import SHIM_CALIBRATION, WHY
from grammar.questions import Question

TURNS_BACK: Final = 3  # that the error may have been told before
SEVERAL: Final = 2
RING: Final = "adapter"
ONE_ALONE: Final = "one-lens-off"  # the advice on a lens that is off where others are right
_SHORTEST_MM: Final = 4.0  # of focal lengths


def set_apart(question: Question, knowledge: Knowledge) -> Told:
    """Each lens, or each stop, with what the same length does to it; nothing where fewer than two are told."""
    lenses, error = _lenses(question), _error(question, knowledge)
    if error is None and _is_the_longer(question):
        return Told(tuple(advice_lines([knowledge.catalogue.advice[ONE_ALONE]])))
    if error is None and len(lenses) == 1 and (before := _told_before(question, knowledge)) is not None:
        lenses, error = tuple(sorted({*lenses, before[0]})), before[1]
    if len(lenses) == 1 and question.intent == WHY and mentions(question, "so-much-or-little"):
        told = _by_tube(tuple(sorted({*lenses, normal_focal(knowledge.catalogue)})), question)
        if told.lines:
            return told
    if len(lenses) >= SEVERAL and error is None:
        told = _by_tube(lenses, question)
        spacer = mentions(question, "error-spoken", "hurt-by-error")  # of no length that is told
        ring = any(one.piece == RING or (spacer and one.piece == TUBE) for one in question.adapters)
        if told.lines or not ring or question.bodies:
            return told
        error = knowledge.catalogue.assumptions["making-spread-nominal"].value.greatest  # an everyday one
    if error is not None and len(lenses) == 1 and question.follows and mentions(question, "so-bad"):
        normal = normal_focal(knowledge.catalogue)
        both = tuple(sorted({*lenses, normal if lenses[0] != normal else 2 * normal}))
        return _added_up(error, question, knowledge) + _by_focal(both, error, question, knowledge)
    if error is not None and len(lenses) >= SEVERAL:
        return _by_focal(lenses, error, question, knowledge)
    if error is None and not mentions(question, "soft-far"):
        return Told()
    return _by_stop(error, question, knowledge)


def _is_the_longer(question: Question) -> bool:
    """'my 90 is off on a ring that is fine on the 24': no error does that, as it shows on the shorter first."""
    off, fine = ([one.number for one in question.places(key) if one.number] for key in ("bad-on-ring", "fine-on-ring"))
    return bool(off and fine) and min(off) > max(fine)


def by_an_error(question: Question, knowledge: Knowledge) -> Told:
    """'0.08 too thin: a 20 against a 100': two lenses set apart by an error that is told, and by nothing else."""
    told = number(question, "thickness", "length", "numbers")
    small = off_by_mm(question) is not None or (told is not None and 0 < told <= MOST_ERROR_MM)
    named = any(thing.front or (thing.piece or RING) != RING for thing in question.adapters) or question.bodies
    return set_apart(question, knowledge) if small and not named and len(focals(question)) >= SEVERAL else Told()


def _told_before(question: Question, knowledge: Knowledge) -> tuple[float, float] | None:
    """'why does my 85 look fine though' after the mark of a 20: that lens, and the error it tells."""
    before = question.prior if question.follows else None
    for _ in range(TURNS_BACK):
        if before is None or before.intent != SHIM_CALIBRATION:
            return None
        told, at = focals(before), number(before, "mark") or before.distance_mm
        error = Distances(told[0], knowledge.catalogue).extension_at(at) if len(told) == 1 and at else None
        if error is not None and is_known(error) and told != focals(question):
            return told[0], error.nominal if is_limit(before) else -error.nominal
        before = before.prior
    return None


def _lenses(question: Question) -> tuple[float, ...]:
    """Every focal length told, those too that stand as bare numbers beside another."""
    told = focals(question)
    if question.follows and mentions(question, "so-different"):
        told += tuple(lens.focal_length_mm for lens in question.known if lens.focal_length_mm is not None)
    bare = [one for one in numbers(question, "numbers", "length") if one >= _SHORTEST_MM and one == int(one)]
    return tuple(sorted({*told, *bare})) if told else ()


def _error(question: Question, knowledge: Knowledge) -> float | None:
    """What the seat is off by, in mm, above 0 too far out; so little that nobody names it is taken for too far."""
    off = off_by_mm(question)
    if off is not None:
        return off if is_error(abs(off), knowledge) else None
    told = (number(question, "thickness", "layer"), *numbers(question, "length", "numbers"))
    told += tuple(one.thickness_mm[1] for one in question.adapters if one.piece == TUBE and one.thickness_mm)
    small = next((one for one in told if one is not None and 0 < one <= MOST_ERROR_MM), None)
    of_ring = error_of_the_pair(question, knowledge) if small is None and question.adapters else None
    return of_ring if of_ring is not None and abs(of_ring) > READS_MM and is_error(abs(of_ring), knowledge) else small


def _added_up(error: float, question: Question, knowledge: Knowledge) -> Told:
    """That the errors of several rings add, each that is known by its two mounts."""
    parts = []
    for ring in question.adapters:
        if not (ring.front and ring.rear and ring.is_of_one_length and ring.thickness_mm):
            continue
        front, rear = (knowledge.catalogue.mounts[ids[0]].register_mm for ids in (ring.front, ring.rear))
        if is_known(front) and is_known(rear):
            parts.append(round(ring.thickness_mm[0] - (front.nominal - rear.nominal), 3))
    if len(parts) < SEVERAL or abs(sum(parts) - error) > READS_MM:
        return Told()
    each = " ".join(f"{'-' if one < 0 else '+' if at else ''} {abs(one):g}".strip() for at, one in enumerate(parts))
    return Told((Line("head", f"The errors of the rings add up: {each} = {small_mm(error)} in all."),))


def _by_focal(lenses: tuple[float, ...], error: float, question: Question, knowledge: Knowledge) -> Told:
    short, long = lenses[0], lenses[-1]
    by, facts = small_mm(abs(error)), knowledge.catalogue
    tell = far_limits if error > 0 else marks
    ends = "comes sharp at the farthest at about" if error > 0 else "has infinity at the mark of about"
    text = (
        f"It goes by the square of the focal length: {by} {'too far out' if error > 0 else 'too close'}, a lens {ends} "
        f"f x f / {by}, so {trimmed(long, 1)} mm lies {trimmed((long / short) ** 2, 1)} times as far away as "
        f"{trimmed(short, 1)} mm. What the depth of focus forgives at the sensor is the same for all, f-number times "
        "allowed blur; but the long lens moves many times as far for the same distance, so the error is little of that."
    )
    return Told((Line("head", text),)) + tell(lenses, abs(error), facts, question.feet, 1)


def _by_tube(lenses: tuple[float, ...], question: Question) -> Told:
    """The magnification that one tube gives each lens at its infinity mark."""
    drawn = (TUBE, *ADDED_FOCUSING)
    tubes = [one.thickness_mm[1] for one in question.adapters if one.piece in drawn and one.thickness_mm]
    length = sum(tubes) or number(question, "extension")
    lenses = tuple(one for one in lenses if one not in tubes)
    if not length or len(lenses) < SEVERAL:
        return Told()
    sizes = [(focal, length / focal) for focal in lenses]
    each = ", ".join(f"{trimmed(focal, 1)} mm {times(size)}" for focal, size in sizes)
    text = (
        f"Extension counts by its share of the focal length: magnification = extension / focal length, so"
        f" {small_mm(length)} gives (focus ring at infinity) {each}. A short lens comes close with little."
    )
    rows = tuple(Quantity("magnification", Interval.exact(size), f"{trimmed(focal, 1)} mm") for focal, size in sizes)
    return Told((Line("head", text),), rows)


def _by_stop(error: float | None, question: Question, knowledge: Knowledge) -> Told:
    """What each stop forgives of the error, on the frame that is spoken of; and without one what it must be."""
    told = (*question.stops, *(lens.f_number for lens in question.lenses), question.f_number)
    stops = sorted({one for one in told if one is not None})
    if len(stops) < SEVERAL:
        return Told()
    forms = frames_named(question, knowledge.catalogue) or [knowledge.catalogue.formats[USUAL_FORMAT]]
    blur = blur_of(question.with_(values=()), forms[0], knowledge)
    rows = tuple(Quantity("infinity_allowance_mm", Interval.exact(one * blur), f"f/{f_number(one)}") for one in stops)
    each = ", ".join(f"f/{f_number(one)} {small_mm(one * blur)}" for one in stops)
    law = "The depth of focus is f-number times allowed blur, so it grows as the lens is closed: on"
    law = f"{law} {forms[0].name} {each}"
    if error is None:
        between = f"{small_mm(stops[0] * blur)} to {small_mm(stops[-1] * blur)}"
        text = (
            "Sharp far away at one stop and not at another: the lens sits too far from the sensor, the ring is too"
            f" thick, by more than f/{f_number(stops[0])} forgives and no more than f/{f_number(stops[-1])} does:"
            f" {between}."
            f" {law}. Too close it would be sharp before the end of the focus ring."
        )
        return Told((Line("head", text),), rows)
    enough = [one for one in stops if one * blur >= abs(error)]
    within = f"{small_mm(abs(error))} is within that from f/{f_number(enough[0])}" if enough else "none is enough"
    text = f"{law}; {within}. Closing down hides the error, it does not move the lens."
    return Told((Line("head", text),), rows)
