"""A lens of which only the focal length is told, after glass before the sensor was taken off, put in or exchanged."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions, numbers, stop
from engine.answers.parts.wording import article, ranged, small_mm, trimmed
from engine.answers.picture.filter_effects import GLASS_GONE, index_of_glass
from engine.answers.picture.frames import frames_judged
from engine.answers.seat.chain_numbers import principal_numbers
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import marks
from engine.answers.seat.standin import as_listed, judged_alone
from engine.answers.seat.telling import life_line
from engine.answers.shims.bare_sensor import THICKEST_MM, shift_of
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.base.span import Span
from engine.facts.catalogue import Catalogue
from engine.judging.judge import Judged
from grammar.kinds import SHIM_CALIBRATION
from grammar.questions import Question

EXCHANGED: Final = "glass-exchanged"
IN_PLACE_OF: Final = "in-place-of-plate"  # what stands ahead of it is the new one
IN: Final = ("clipped-in", "glass-in-path", "behind-a-lens", "plate-stands")
_FRONT: Final = "glass-in-front"
_TURNS: Final = 4  # how far back it may have been told


def plate_changed(question: Question, knowledge: Knowledge) -> Answer | None:
    """By how much each lens is off now, how far it comes and what sets it right; None where no such glass is told."""
    change = _change(question, knowledge.catalogue, index_of_glass(question, knowledge)[0])
    seated = bool(question.lenses and question.bodies) and all(
        any(thing.ids for thing in things) for things in (question.lenses, question.bodies)
    )
    ringed = any(one.thickness_mm is not None for one in question.adapters)
    if change is None or not focals(question) or seated or ringed or mentions(question, _FRONT):
        return None
    shift, text = change
    if question.intent == SHIM_CALIBRATION and shift.nominal < 0:
        return None
    off, by = round(shift.nominal, 3), ranged(abs(shift), small_mm)
    way = "too far out" if off > 0 else "too close"
    told, chains = Told(), list[ListedChain]()
    for focal in focals(question):
        judged = judged_alone(
            focal, stop(question), (("extension-tube", off, off),), frames_judged(question, knowledge.catalogue)[0],
            knowledge,
        )  # fmt: skip
        words = f"{trimmed(focal, 1)} mm lens {small_mm(abs(off))} {way}"
        chains.append(as_listed(judged, words, len(chains) + 1))
        told += Told((Line("head", f"{article(words).capitalize()} {words}: {life_line(judged, question.feet)}."),))
        told += _numbers_of(judged)
        far = Distances(focal, knowledge.catalogue).from_sensor(off) if off > 0 else UNKNOWN
        if is_known(far):
            told += Told((), (Quantity("far_from_sensor_mm", far, f"{trimmed(focal, 1)} mm lens"),))
    if off < 0:
        told += marks(focals(question), -off, knowledge.catalogue, question.feet, 1)
    mend = f"take {by} off the ring, or have clear glass as thick put back" if off > 0 else f"add a shim of {by}"
    lead = f"{text}, t(1 - 1/n): every lens that was right before now sits so much {way}."
    rows = (
        Quantity("glass_shift_mm", abs(shift)),
        Quantity("register_error_mm", shift),
        Quantity("shim_mm", abs(shift), "to take off" if off > 0 else "to add"),
    )
    cure = Line("text", f"To set it right {mend}. A ring so changed is for that body alone.")
    lines = (Line("head", lead), *told.lines, cure)
    if question.intent == SHIM_CALIBRATION:
        lines = (Line("head", f"{cure.text} {lead}"), *told.lines)
    return Answer(
        question.text, question.intent, ANSWERED, lines, question=question, chains=tuple(chains),
        quantities=(*rows, *told.quantities),
    )  # fmt: skip


def _numbers_of(judged: Judged) -> Told:
    error = judged.measured_trace.value("register_error_mm")
    far = isinstance(error, Span) and is_known(error.shortest) and error.shortest.nominal > 0
    return Told((), tuple(principal_numbers(judged))) if far else Told()


def _change(question: Question, facts: Catalogue, index: Interval) -> tuple[Interval, str] | None:
    """How much too far out lenses sit by what became of the glass, mm (below 0: too close), and that in words."""
    turn: Question | None = question
    for _ in range(_TURNS):
        if turn is None or (turn.mentions(*GLASS_GONE, EXCHANGED, *IN) and any(one.isdigit() for one in turn.text)):
            break
        turn = turn.prior if turn.follows else None
    if turn is None:
        return None
    sizes = [one for one in numbers(turn, "glass") if 0 < one <= THICKEST_MM]
    gone = turn.mentions(*GLASS_GONE)
    if len(sizes) == 2 and turn.mentions(*GLASS_GONE, EXCHANGED):
        old, new = sizes[::-1] if turn.mentions(IN_PLACE_OF) else sizes
        shift = shift_of(abs(old - new), facts, index)
        if shift is None or old == new:
            return None
        by = ranged(shift, small_mm)
        text = f"{trimmed(new, 2)} mm of glass where {trimmed(old, 2)} mm was: the image falls {by}"
        return (shift, f"{text} nearer to the lens") if old > new else (-shift, f"{text} farther back")
    shift = shift_of(sizes[0], facts, index) if len(sizes) == 1 else None
    if shift is None:
        return None
    by = ranged(shift, small_mm)
    if gone:
        return shift, f"Without its {trimmed(sizes[0], 2)} mm of glass the image falls {by} nearer to the lens"
    return -shift, f"{trimmed(sizes[0], 2)} mm of glass behind the lens moves the image {by} back, away from it"
