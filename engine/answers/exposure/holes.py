"""The holes of stops that are dropped into a lens: focal length over f-number."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions, number, numbers
from engine.answers.parts.wording import f_number, listed, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.physics import closeup
from grammar.questions import Question
from grammar.words.written import STOPS

HOLE = "hole_mm"
LONGEST_MM = 1000.0
SHORTEST_MM = 8.0  # of a focal length that is told by its number alone


def holes_for(question: Question) -> Told:
    """The hole for every stop that is wanted, on every lens told; of a hole that is told the stop that it makes."""
    if not mentions(question, "hole-for-stop") and question.topic != _ASKED:
        return Told()
    return _holes(question)


_ASKED: Final = "hole-q"  # the topic of a question for the opening of a stop of card
_NONE: Final = "none"  # who works the iris of a mount whose lenses have none


def with_hole_for_stop(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """'no iris, i want f/8': the answer behind the hole of a stop that is wanted of a lens without an iris of use."""
    wished = mentions(question, "stop-wished") or (
        question.f_number is not None and mentions(question, "stops-it-down")
    )
    told = _holes(question) if wished and _is_without(question, knowledge) else Told()
    if not told.lines or any(row.name == HOLE for row in answer.quantities or ()):
        return answer
    way = Line(
        "text", "A disc of black card or thin brass, dropped in where the blades would stand, or before the lens."
    )
    lines = (*told.lines, way, *answer.lines)
    return replace(answer, lines=lines, quantities=(*told.quantities, *(answer.quantities or ())))


def _is_without(question: Question, knowledge: Knowledge) -> bool:
    """Whether the lens is said to have no iris, or is of a mount whose lenses have none."""
    mounts = [knowledge.catalogue.mounts.get(name) for one in question.lenses for name in one.ids[:1]]
    return mentions(question, "no-iris") or any(mount is not None and mount.iris == _NONE for mount in mounts)


def _holes(question: Question) -> Told:
    hole = number(question, "bore", "circle", "length")
    if hole is not None and hole > 0 and question.f_number is None and not question.stops and focals(question):
        return _stops_of(hole, question)
    lines, rows = [], []
    for focal, open_at in _lenses(question):
        parts = []
        for at in _stops(question, open_at):
            cut = closeup.hole_mm(Interval.exact(focal), Interval.exact(at))
            if is_known(cut):
                parts.append(f"{trimmed(cut.nominal, 1)} mm for f/{f_number(at)}")
                rows.append(Quantity(HOLE, cut, f"{trimmed(focal, 1)} mm at f/{f_number(at)}"))
        if parts:
            lines.append(Line("head", f"The hole: {listed(parts)} ({trimmed(focal, 1)} mm), near the lens's own stop."))
    return Told(tuple(lines), tuple(rows))


def _lenses(question: Question) -> list[tuple[float, float | None]]:
    """Focal length and widest stop of each lens; where none is told by its focal length, a bare length is one."""
    told = [(one.focal_length_mm, one.f_number) for one in question.lenses if one.focal_length_mm is not None]
    told = [row for row in told if row[0] >= SHORTEST_MM or row[0] not in STOPS] or told
    told = told or [(length, None) for length in numbers(question, "length", "bore", "circle")]
    away = question.distance_mm  # 'a hole for f/16 at 300 mm'
    told = told or ([(away, None)] if away is not None and away <= LONGEST_MM else [])
    # 'a card stop for a 58 to make it f/4': what is no stop itself is the lens
    bare = [one for one in numbers(question, "numbers") if one >= SHORTEST_MM and one not in STOPS]
    return told or [(length, None) for length in bare]


def _stops_of(hole_mm: float, question: Question) -> Told:
    """The f-number that a hole makes of every lens told: focal length over its width."""
    told = Told()
    for focal in focals(question):
        at = focal / hole_mm
        text = f"A hole of {trimmed(hole_mm, 1)} mm makes {trimmed(focal, 1)} mm f/{f_number(at)}, near its own stop."
        told += Told((Line("head", text),), (Quantity("f_number", Interval.exact(at), f"{trimmed(focal, 1)} mm"),))
    return told


def _stops(question: Question, open_at: float | None) -> list[float]:
    """The stops wanted: those told for themselves and bare numbers that are stops; the lens's own where none is."""
    others = [one.f_number for one in question.lenses if one.focal_length_mm is None and one.f_number]
    shorter = [one.focal_length_mm for one in question.lenses if (one.focal_length_mm or SHORTEST_MM) < SHORTEST_MM]
    others += [one for one in shorter if one in STOPS and len(question.lenses) > 1]  # 'a 50 for 5.6'
    asked = [one for one in (question.f_number, *question.stops, *others) if one is not None]
    asked += numbers(question, "aperture")  # 'T8' is as near as a hole can be cut
    asked += [one for one in numbers(question, "numbers") if one in STOPS and one > (open_at or 0)]
    wanted = list(dict.fromkeys(asked))
    return sorted(wanted) or ([open_at] if open_at else [])


def with_stop_of_hole(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """'a 12.5 mm hole before my 50, what stop is that': the f-number of a hole, in place of the answer."""
    keys = ("bore", "thread", "circle", "length", "width")
    holes = [one for one in numbers(question, *keys) if one not in focals(question)]
    told = any(row.name == "f_number" for row in answer.quantities or ())
    asked = mentions(question, "stop-of-hole") or mentions(question, "which-stop", "as-f-number")
    if (
        told
        or not asked
        or len(holes) != 1
        or len(focals(question)) != 1
        or question.f_number is not None
        or question.stops
    ):
        return answer
    found = _stops_of(holes[0], question)
    return replace(answer, lines=found.lines, quantities=found.quantities, chains=None)
