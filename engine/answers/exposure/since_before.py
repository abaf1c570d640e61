"""How much more or less light a setting lets in than the one of the turn before, where one was told anew."""

from __future__ import annotations

from math import log2

from engine.answers.exposure.lighting import seconds, shutters_s
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.near_enough import same_light_stops
from engine.answers.parts.said import number, stop
from engine.answers.parts.wording import f_number, listed, trimmed
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from grammar.kinds import EXPOSURE_ND
from grammar.questions import Question


def since_before(question: Question, facts: Catalogue) -> Told:
    """Each setting that is another than in the turn before, and what the change makes in stops."""
    before = question.prior
    if not question.follows or before is None or before.intent != EXPOSURE_ND:
        return Told()
    told = (_time(before, question), _iso(before, question), _stop(before, question))
    changes = [change for change in told if change is not None]
    stops = sum(gained for _, gained in changes)
    if not changes or abs(stops) < same_light_stops(facts):
        return Told()
    way = "more" if stops > 0 else "less"
    text = f"{listed([says for says, _ in changes])}: {trimmed(abs(stops), 2)} stops {way} light than before"
    row = Quantity("light_difference_stops", Interval.exact(abs(stops)), "than before")
    return Told((Line("fact", text, 1),), (row,))


def _time(before: Question, now: Question) -> tuple[str, float] | None:
    one, other = shutters_s(before), shutters_s(now)
    if len(one) != 1 or len(other) != 1 or one == other:
        return None
    return f"{seconds(other[0])} instead of {seconds(one[0])}", log2(other[0] / one[0])


def _iso(before: Question, now: Question) -> tuple[str, float] | None:
    one, other = number(before, "iso"), number(now, "iso")
    if not one or not other or one == other:
        return None
    return f"ISO {other:g} instead of {one:g}", log2(other / one)


def _stop(before: Question, now: Question) -> tuple[str, float] | None:
    one, other = stop(before), stop(now)
    if not one or not other or one == other:
        return None
    return f"f/{f_number(other)} instead of f/{f_number(one)}", 2 * log2(one / other)
