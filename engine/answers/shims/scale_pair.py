"""What the distance scale says against what the tape says: the pair as told, and the error of the seat it shows."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.answer import Line, ListedChain, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import INCH_MM, focals, stop
from engine.answers.parts.wording import distance, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import USUAL_FORMAT, usual_focals
from engine.answers.seat.standin import as_listed, judged_alone
from engine.base.interval import Interval, is_known
from grammar.questions import Question

_NUMBER: Final = re.compile(
    r"(?<![\w./])(?P<value>\d+(?:\.\d+)?)(?P<half> and a half)?\s?"
    r"(?P<unit>mm|cm|m|metres?|meters?|ft|feet|foot)?(?![\w/])",
    re.IGNORECASE,
)
_PARTS: Final = re.compile(r"[,;.]")  # what parts a number from the words behind it
_UNITS: Final = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "f": 12 * INCH_MM}
_LEAST_MM: Final = 150.0  # no scale begins nearer
_APART: Final = 4.0  # what the one may be of the other
MOST_MM: Final = 3.0  # an error beyond this is not one of making: such lenses are not shown by
SHORTEST_BARE_MM: Final = 12.0  # of focal lengths told without a unit
_BARE_MOST: Final = 100.0  # a bare number of metres


def _unit(text: str | None) -> str | None:
    word = (text or "").casefold()
    return None if not word else word if word in _UNITS else word[0]


def scale_pair(question: Question) -> tuple[float, float] | None:
    """What the scale says and what is so, in mm; None where not both are told."""
    text = question.text
    found = [one for one in _NUMBER.finditer(text) if not _is_focal(one, question)]
    said: dict[str, re.Match[str]] = {}
    for at, one in enumerate(found):
        before = found[at - 1].end() if at else 0
        after = found[at + 1].start() if at + 1 < len(found) else len(text)
        kind = _kind(question, before, one.start(), one.end(), after)
        if kind is not None and kind not in said:
            said[kind] = one
    if len(said) < 2:
        return None
    units = {kind: _unit(one["unit"]) for kind, one in said.items()}
    common = next((unit for unit in units.values() if unit), "m")
    values = {}
    for kind, one in said.items():
        value = float(one["value"]) + (0.5 if one["half"] else 0.0)
        unit = units[kind] or (common if value <= _BARE_MOST else "mm")
        values[kind] = value * _UNITS[unit]
    mark, sharp = values["scale"], values["tape"]
    apart = max(mark, sharp) / min(mark, sharp) if min(mark, sharp) > _LEAST_MM else 0.0
    return (mark, sharp) if 1.0 < apart <= _APART else None


def _is_focal(found: re.Match[str], question: Question) -> bool:
    """Whether a number is the focal length of a lens that is named; short bare ones may have been taken for such."""
    value, unit = float(found["value"]), _unit(found["unit"])
    return value in focals(question) and (unit == "mm" or (unit is None and value >= SHORTEST_BARE_MM))


def _kind(question: Question, before: int, start: int, end: int, after: int) -> str | None:
    """By which of the two a number is told: the last word that leads to it, else the first that follows.

    The number stands from `start` to `end`; the one before it ends at `before`, the next begins at `after`.
    """
    told = [(one.at, "scale") for one in question.places("by-the-scale")]
    told = sorted(told + [(one.at, "tape") for one in question.places("by-the-tape")])
    stops = [end + one.start() for one in _PARTS.finditer(question.text[end:after])]
    stops += [one.at for one in question.places("but-or-and") if end <= one.at < after]
    leads = [kind for at, kind in told if before <= at < start]
    follows = [kind for at, kind in told if end <= at < min(stops, default=after)]
    return next(iter([*leads[-1:], *follows[:1]]), None)


def by_scale_pair(question: Question, knowledge: Knowledge) -> tuple[Told, tuple[ListedChain, ...]]:
    """The error in mm for each lens named, else for usual ones, what mends it, and the first lens judged with it."""
    pair = scale_pair(question)
    if pair is None:
        return Told(), ()
    mark, sharp = pair
    facts, feet = knowledge.catalogue, question.feet
    named = tuple(focal for focal in focals(question) if focal * 1000.0 not in pair)
    rows: list[tuple[float, float]] = []
    for focal in named or usual_focals(facts):
        lens = Distances(focal, facts)
        set_to, true = lens.extension_at(mark), lens.extension_at(sharp)
        if is_known(set_to) and is_known(true) and (named or abs(true.nominal - set_to.nominal) <= MOST_MM):
            rows.append((focal, true.nominal - set_to.nominal))
    if not rows:
        return Told(), ()
    thin = rows[0][1] < 0
    way, mend = ("close", "add a shim of") if thin else ("far out", "take off")
    parts = ", ".join(f"{trimmed(focal, 1)} mm lens {small_mm(abs(error))}" for focal, error in rows)
    text = (
        f"Set to {distance(mark, feet)} it is sharp at {distance(sharp, feet)}: the lens sits too {way}, the ring is "
        f"too {'thin' if thin else 'thick'}, by: {parts}. All marks read {'short' if thin else 'long'}; {mend} that "
        "much, and the scale is right."
    )
    quantities = []
    for focal, error in rows:
        case = "by the tape" if named else f"{trimmed(focal, 1)} mm lens"
        quantities.append(Quantity("register_error_mm", Interval.exact(error), case))
        quantities.append(Quantity("shim_mm", Interval.exact(abs(error)), case))
    chains: tuple[ListedChain, ...] = ()
    if named:
        focal, error = rows[0]
        pieces = (("extension-tube", error, error),)
        judged = judged_alone(focal, stop(question), pieces, facts.formats[USUAL_FORMAT], knowledge)
        chains = (as_listed(judged, f"a {trimmed(focal, 1)} mm lens that sits too {way}"),)
    return Told((Line("head", text),), tuple(quantities)), chains
