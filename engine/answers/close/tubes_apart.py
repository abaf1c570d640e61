"""Lenses set against each other close up, each with a tube of its own: which draws larger."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import distance, times, trimmed
from engine.base.compact import compact
from engine.base.interval import Interval, is_known
from engine.facts.kinds import TUBELIKE
from engine.physics import focus
from grammar.questions import Question, Thing

PAIR = 2
ALIKE = 0.02  # magnifications within this share of one another are the same


@compact
class _Way:
    """A lens with its tubes, mm, and how large it draws: m = x / f."""

    focal_mm: float
    tube_mm: float

    @property
    def size(self) -> float:
        return self.tube_mm / self.focal_mm

    @property
    def name(self) -> str:
        return f"{trimmed(self.tube_mm, 2)} mm behind {trimmed(self.focal_mm, 1)} mm"


def tubes_apart(question: Question) -> Told:
    """Nothing where not every lens has its own tube in its own part of the question."""
    ways = _ways(question) if question.said("close_focus") is None else []  # how near each comes is asked
    if len(ways) < PAIR:
        return Told()
    ranked = sorted(ways, key=lambda way: -way.size)
    most, least = ranked[0], ranked[-1]
    sizes = f"{times(most.size)} against {times(least.size)}"
    same = most.size <= least.size * (1 + ALIKE)
    head = "Both draw alike" if same else f"{most.name} draws the larger"
    told = Told((Line("head", f"{head}: {sizes}, focus rings at infinity."),))
    for way in ways:
        f, x = Interval.exact(way.focal_mm), Interval.exact(way.tube_mm)
        whole = focus.from_sensor_mm(f, Interval.exact(0.0), x)
        rows = [Quantity("magnification", Interval.exact(way.size), way.name)]
        text = f"{way.name}: {times(way.size)}"
        if is_known(whole):
            rows.append(Quantity("focus_from_sensor_mm", whole, way.name))
            text += f", sharp at {distance(whole.nominal, question.feet)} from the sensor"
        told += Told((Line("fact", text, 1),), tuple(rows))
    return told


def _ways(question: Question) -> list[_Way]:
    lenses = [lens for lens in question.lenses if lens.focal_length_mm]
    tubes = [piece for piece in question.adapters if piece.is_of_one_length and _is_tube(piece)]
    if len(tubes) == 1 and not mentions(question, "either-or"):
        return []  # 'how close will 50 and 35 go with it' sets nothing apart
    ends = [one.at for one in question.places("parts-ways")]
    ways: list[_Way] = []
    for begin, end in zip((0, *ends), (*ends, len(question.text)), strict=True):
        own = [lens for lens in lenses if begin <= lens.column - 1 < end]
        behind = [piece for piece in tubes if len(tubes) == 1 or begin <= piece.column - 1 < end]
        if len(own) == 1 and behind:
            length = sum(piece.thickness_mm[0] for piece in behind if piece.thickness_mm is not None)
            ways.append(_Way(own[0].focal_length_mm or 0.0, length))
        elif own or (behind and len(tubes) > 1):
            return []
    return ways


def _is_tube(piece: Thing) -> bool:
    return (piece.piece in TUBELIKE or piece.piece == "adapter") and not (piece.front or piece.rear or piece.factor)
