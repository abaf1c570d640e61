"""What lens, frame or glass it must be for what was seen of it: each formula asked for what it is mostly given."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, focals, interval, mentions, number, number_beside, numbers, stop
from engine.answers.parts.wording import distance, f_number, small_mm, times, trimmed
from engine.answers.picture.circles import glass_factor
from engine.answers.picture.moved_out import extension_mm
from engine.answers.shims.loose import off_by_mm
from engine.base.interval import Interval
from engine.base.units import MM_PER_INCH
from engine.physics import worked_back as back
from engine.physics.coverage import FULL_FRAME_DIAGONAL_MM
from grammar.questions import Question

_LEAST_FAR_MM: Final = 250.0  # a distance from here up is one at which a lens may end
_COARSEST_MM: Final = 5.0  # of pitches
_SAME: Final = 0.04  # share by which a frame that is named may be off from the one worked out

Way = Callable[[Question, Knowledge], Told]


def with_worked_back(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """In place of the answer, where what is asked for follows from what is told, and from that alone."""
    for keys, ways in _WAYS:
        for way in ways if mentions(question, *keys) else ():
            told = way(question, knowledge)
            if told.lines:
                return Answer(question.text, answer.intent, ANSWERED, told.lines, question=question,
                              quantities=told.quantities)  # fmt: skip
    return answer


def _told(text: str, name: str, value: float, case: str | None = None) -> Told:
    return Told((Line("head", text),), (Quantity(name, Interval.exact(value), case),))


def _size(question: Question) -> float | None:
    """A magnification; one below life size may have been taken for the factor of a reducer nobody spoke of."""
    said = number(question, "magnification")
    alone = [one.factor for one in question.adapters if one.factor is not None]
    return said if said is not None else alone[0] if alone and not mentions(question, "glass-spoken") else None


def focal_of_size(question: Question, knowledge: Knowledge) -> Told:
    """'0.5x from 20 mm of rings, which focal': f = x/m."""
    x, m = extension_mm(question, knowledge.catalogue), _size(question)
    if focals(question) or not x or not m:
        return Told()
    focal = back.focal_of_size_mm(x, m)
    text = f"{trimmed(focal, 1)} mm: {small_mm(x)} of extension is {times(m)} on it, f = x/m."
    return _told(f"{text} What its own focusing adds is left out.", "focal_length_mm", focal)


def focal_of_hole(question: Question, _: Knowledge) -> Told:
    """'an 8 mm hole acts as f/8': f = hole x N."""
    hole = number(question, "bore", "diameter", "length")
    at = stop(question) or next(iter(question.stops), None)
    if focals(question) or not hole or not at or not mentions(question, "hole-for-stop"):
        return Told()
    focal = back.focal_of_hole_mm(hole, at)
    return _told(
        f"{trimmed(focal, 1)} mm: a hole of {trimmed(hole, 1)} mm is f/{f_number(at)} on it, f = hole x f-number.",
        "focal_length_mm", focal,
    )  # fmt: skip


def focal_of_far_limit(question: Question, _: Knowledge) -> Told:
    """'0.1 too thick and it stops at 12 m, which focal': by D = 2f + f*f/x + x."""
    far, error = distance_mm(question), off_by_mm(question)
    if focals(question) or far is None or far < _LEAST_FAR_MM or not error or error <= 0:
        return Told()
    focal = back.focal_of_far_limit_mm(error, far)
    text = f"About {trimmed(focal, 0)} mm: {small_mm(error)} too far out such a lens ends at"
    return _told(f"{text} {distance(far, question.feet)}.", "focal_length_mm", focal)


def frame_of_view(question: Question, knowledge: Knowledge) -> Told:
    """'my 17 acts like a 46, how large is the sensor': 43.27 mm times f over what it is like."""
    like, told = number_beside(question, "view-like"), (*focals(question), *numbers(question, "numbers", "length"))
    focal = next((one for one in told if one != like), None)
    if not like or focal is None or mentions(question, "glass-spoken"):
        return Told()
    diagonal = back.diagonal_of_view_mm(focal, like)
    crop = FULL_FRAME_DIAGONAL_MM / diagonal
    text = f"{trimmed(diagonal, 1)} mm across the diagonal: {trimmed(focal, 1)} mm that frames like {trimmed(like, 1)}"
    text += f" mm is a crop factor of {trimmed(crop, 2)}"
    near = min(knowledge.catalogue.formats.values(), key=lambda form: abs(form.diagonal_mm - diagonal))
    text += f"; nearest: {near.name}." if abs(near.diagonal_mm / diagonal - 1) < _SAME else "."
    told_too = _told(text, "format_diagonal_mm", diagonal)
    return told_too + Told((), (Quantity("crop_factor", Interval.exact(crop), None),))


def glass_of_view(question: Question, _: Knowledge) -> Told:
    """'my 50 becomes a 35 with that glass, which factor': k = f'/f."""
    like, told = number_beside(question, "becomes-number"), focals(question)
    focal = next((one for one in told if one != like), None)
    if not like or focal is None:
        return Told()
    factor = like / focal
    kind = "a reducer" if factor < 1 else "an extender"
    text = f"{trimmed(factor, 2)}x: {kind} that makes {trimmed(focal, 1)} mm one of {trimmed(like, 1)} mm."
    return _told(text, "factor", factor)


def circle_before_glass(question: Question, knowledge: Knowledge) -> Told:
    """'behind a 1.4x the disc is 40 mm, what circle has the lens': C = C'/k."""
    circle, factor = interval(question, "circle"), glass_factor(question, knowledge.catalogue)
    if circle is None or factor is None:
        return Told()
    bare = back.before_glass(circle.nominal, factor)
    text = f"{trimmed(bare, 1)} mm by itself: {trimmed(circle.nominal, 1)} mm behind {factor:g}x, over the factor."
    return _told(text, "image_circle_mm", bare, "without the glass")


def size_of_light(question: Question, knowledge: Knowledge) -> Told:
    """'I lose 1 stop close up, what magnification is that': m = 2^(stops/2) - 1."""
    stops = number(question, "stops")
    if not stops or stops < 0 or extension_mm(question, knowledge.catalogue) or numbers(question, "magnification"):
        return Told()
    m = back.size_of_light_lost(stops)
    told = _told(
        f"{times(m)}: there {trimmed(stops, 1)} stops are lost, taking the pupils for even (p = 1).", "magnification", m
    )
    for focal in focals(question):
        text = f"On {trimmed(focal, 1)} mm that is {trimmed(m * focal, 1)} mm of extension."
        told += _told(text, "extension_mm", m * focal, f"{trimmed(focal, 1)} mm")
    return told


def pitch_of_turns(question: Question, _: Knowledge) -> Told:
    """'5 turns move it 3.75 mm, which pitch': what it moves in one turn."""
    turns, moved = number(question, "turns"), number(question, "travel", "length", "thickness", "numbers")
    if not turns or not moved or turns < 0 or moved / turns > _COARSEST_MM:
        return Told()
    pitch = moved / turns
    text = f"{trimmed(pitch, 3)} mm of pitch, {trimmed(MM_PER_INCH / pitch, 1)} threads per inch: {small_mm(moved)} in"
    return _told(f"{text} {trimmed(turns, 2)} turns.", "thread_pitch_mm", pitch)


# what is listened for, and what may then be worked out, in their order
_WAYS: Final[tuple[tuple[tuple[str, ...], tuple[Way, ...]], ...]] = (
    (("focal-wanted",), (focal_of_size, focal_of_hole, focal_of_far_limit)),
    (("frame-wanted",), (frame_of_view,)),
    (("glass-factor-wanted",), (glass_of_view,)),
    (("circle-before-glass",), (circle_before_glass,)),
    (("size-wanted",), (size_of_light,)),
    (("pitch-wanted",), (pitch_of_turns,)),
)
