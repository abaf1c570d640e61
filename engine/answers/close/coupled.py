"""A lens reversed before another: how large things get, and how much light comes through both."""

from __future__ import annotations

from math import log2

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import f_number, times, trimmed
from engine.base.interval import Interval, is_known
from engine.physics import closeup
from grammar.questions import Question, Thing

REVERSED = "reversed"
PAIR = 2
LEAST = 0.05  # stops; less is none
ROOM = "Working distance is about the reversed lens's own register, less what its rear stands behind its flange."
NONE_BY_EXTENSION = "Nothing is lost to extension: between the two the light runs parallel."


def pair_of(question: Question) -> tuple[Thing, Thing] | None:
    """The lens on the body and the one reversed before it; of two that are only said to be coupled the longer behind.

    Two of a kind may be told as one: 'two 50s face to face'. None where no pair is told.
    """
    lenses = [lens for lens in question.lenses if lens.focal_length_mm]
    front = next((lens for lens in lenses if is_reversed(lens)), None)
    coupled = mentions(question, "coupled-lenses")
    if len(lenses) == 1 and len(question.lenses) == 1:
        alike = lenses[0].count == PAIR and (coupled or front is not None)
        return (lenses[0], lenses[0]) if alike else None
    if len(lenses) != PAIR or not (front is not None or coupled):
        return None
    if front is None:
        front = min(lenses, key=lambda lens: lens.focal_length_mm or 0.0)
    return next(lens for lens in lenses if lens is not front), front


def is_reversed(lens: Thing) -> bool:
    return REVERSED in (*lens.traits, lens.lens_kind or "")


def coupled(question: Question) -> Told:
    """The long one's focal length over the reversed one's, then the light; nothing where no pair is told."""
    pair = _sized(question)
    if pair is None:
        return Told()
    rear, front, size = pair
    text = (
        f"{trimmed(_focal(front).nominal, 1)} mm reversed before {trimmed(_focal(rear).nominal, 1)} mm, both at "
        f"infinity: {times(size.nominal)}."
    )
    told = Told((Line("head", text), Line("text", ROOM)), (Quantity("magnification", size, "coupled"),))
    return told + coupled_light(question)


def _sized(question: Question) -> tuple[Thing, Thing, Interval] | None:
    """The pair told, and its magnification."""
    pair = pair_of(question)
    size = closeup.coupled_magnification(_focal(pair[0]), _focal(pair[1])) if pair is not None else None
    return (*pair, size) if pair is not None and size is not None and is_known(size) else None


def coupled_light(question: Question) -> Told:
    """The f-number that counts for exposure, and what is lost against the lens on the body alone."""
    pair = _sized(question)
    if pair is None:
        return Told()
    rear, front, size = pair
    if rear.f_number is None or front.f_number is None:
        rule = (
            f"{NONE_BY_EXTENSION} What counts is the larger of two f-numbers: that of the lens on the body, and "
            f"{trimmed(size.nominal, 2)} times that of the reversed one, the magnification. Leave the reversed one "
            "wide open and stop down behind; a meter behind the lens sees it."
        )
        ask = Line("ask", "How far does each of the two open? Then the f-number that counts can be told.")
        alike = Quantity("light_difference_stops", Interval.exact(0.0), "alike open")
        return Told((Line("head", rule), ask), (alike,) if size.nominal <= 1 else ())
    at = (Interval.exact(rear.f_number), Interval.exact(front.f_number))
    counts = closeup.coupled_f_number(_focal(rear), at[0], _focal(front), at[1])
    if not is_known(counts):
        return Told()
    lost = 2 * log2(counts.nominal / rear.f_number)
    by = f"{trimmed(lost, 2)} stops less than f/{f_number(rear.f_number)} alone" if lost > LEAST else "no light is lost"
    bound = "the reversed one" if lost > LEAST else "the one on the body"
    text = f"It exposes as f/{trimmed(counts.nominal, 2)}: {by}, for {bound} has the narrower opening. "
    rows = (
        Quantity("effective_f_number", counts, "coupled"),
        Quantity("light_difference_stops", Interval.exact(lost), "coupled"),
    )
    return Told((Line("head", text + NONE_BY_EXTENSION),), rows)


def _focal(lens: Thing) -> Interval:
    return Interval.exact(lens.focal_length_mm or 0.0)
