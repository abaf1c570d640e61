"""Which of two lenses told by their f-numbers is the brighter, with the glass that one of them wears."""

from __future__ import annotations

from math import inf, log2
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.wording import trimmed
from engine.base.interval import Interval
from grammar.questions import Question, Thing

ALIKE: Final = 0.05  # stops; less sets nothing apart


def stops_apart(question: Question) -> Told:
    """The f-number that each has behind its glass, and the stops between; nothing where not two of them are told."""
    lenses = [(lens, lens.f_number) for lens in question.lenses if lens.f_number]
    glass = [piece for piece in question.adapters if piece.factor]
    if len(lenses) != 2 or any(lens.ids for lens, _ in lenses) or not glass:
        return Told()
    found: list[tuple[float, str]] = []
    for lens, opened in lenses:
        factor, name = _worn_by(lens, [other for other, _ in lenses], glass), f"f/{trimmed(opened, 1)}"
        found.append((opened * factor, f"{name} with {factor:g}x") if factor else (opened, name))
    (one, first), (other, second) = sorted(found)
    apart = 2 * log2(other / one)
    told = "; ".join(f"{name} is f/{trimmed(at, 2)}" for at, name in found if "with" in name)
    text = f"{told}: as bright as {second if 'with' in first else first}."
    if apart > ALIKE:
        text = f"{told}: {first} is brighter than {second} by {trimmed(apart, 2)} stops."
    rows = [Quantity("f_number", Interval.exact(at), name) for at, name in found]
    rows.append(Quantity("light_difference_stops", Interval.exact(apart), f"{first} against {second}"))
    return Told((Line("head", text),), tuple(rows))


def _worn_by(lens: Thing, lenses: list[Thing], glass: list[Thing]) -> float | None:
    """The factor of the glass told right behind the lens, before the next."""
    after = [other.column for other in lenses if other.column > lens.column]
    end = min(after, default=inf)
    return next((piece.factor for piece in glass if lens.column < piece.column < end), None)
