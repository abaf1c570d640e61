"""Close-up lenses: where a lens at infinity is sharp behind one, and the tube that would do the same."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from engine.answers.answer import Line, Quantity, Told
from engine.answers.wording import distance, figures, small_mm, times, trimmed
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.physics import closeup
from grammar.questions import Question

CLOSE_UP_LENS = "close-up-lens"
USUAL = "close-up-lens-"  # the assumptions that hold the powers of a usual set


def powers_of(question: Question) -> list[float]:
    """The strengths of the close-up lenses told, in dioptres; a bare number beside one is its strength."""
    out = []
    for thing in question.adapters:
        if thing.piece == CLOSE_UP_LENS:
            value = thing.factor or (thing.thickness_mm[0] if thing.thickness_mm else None)
            out += [value] if value else []
    return out


def with_close_up_lens(focal: float, question: Question, facts: Catalogue) -> Iterator[Told]:
    """A close-up lens on the lens at infinity, and the tube that does the same."""
    powers = powers_of(question)
    if not powers:
        if any(thing.piece == CLOSE_UP_LENS for thing in question.adapters):
            for row in facts.assumptions.values():
                if row.id.startswith(USUAL):
                    yield _close_up(focal, row.value.nominal, question)
        return
    yield _close_up(focal, sum(powers), question)


def _close_up(focal: float, dioptres: float, question: Question) -> Told:
    """A close-up lens of this strength on the lens at infinity, and the tube that does the same."""
    power = Interval.exact(dioptres)
    f = Interval.exact(focal)
    room = closeup.close_up_focus_mm(power, Interval(inf, inf, inf))
    magnified = closeup.close_up_magnification(f, power, Interval.exact(0.0))
    same = closeup.extension_for_subject_mm(f, room)
    if not (is_known(room) and is_known(magnified) and is_known(same)):
        return Told()
    name = f"+{figures(power.nominal, 3)} dioptre at infinity"
    return Told(
        (
            Line(
                "head",
                f"{name}: sharp {distance(room.nominal, question.feet)} before the close-up lens, "
                f"{times(magnified.nominal)}; no light is lost.",
            ),
            Line(
                "fact",
                f"the same from a tube on {trimmed(focal, 1)} mm: {small_mm(same.nominal)}, "
                "which costs light but adds no glass",
                1,
            ),
        ),
        (
            Quantity("working_distance_mm", room, name), Quantity("magnification", magnified, name),
            Quantity("extension_mm", same, f"{trimmed(focal, 1)} mm lens, the same by a tube"),
        ),
    )  # fmt: skip
