"""The shim of a lens by where its infinity falls, or by where its focus ends: told now, or seen by the user before."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals
from engine.answers.parts.wording import article, distance, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.answers.seat.observing import end_seen
from engine.answers.shims.loose import off_by_mm
from engine.base.interval import Interval, is_known
from grammar.questions import Question


def as_seen(question: Question, knowledge: Knowledge) -> Told:
    """Where nothing is told of how far off it is: by what the user saw of this lens on this body."""
    seen = end_seen(question, knowledge.catalogue) if off_by_mm(question) is None else None
    if seen is None or len(focals(question)) != 1:
        return Told()
    (focal,), (end, line) = focals(question), seen
    x = Distances(focal, knowledge.catalogue).extension_at(end)
    return shim_by(focal, end, x, True, question.feet, several=False) + Told((line,)) if is_known(x) else Told()


def shim_by(focal: float, at: float, shim: Interval, limit: bool, feet: bool, several: bool) -> Told:
    """`at`: mm, the mark that infinity is found at, or with `limit` the distance at which focus ends."""
    lens = f"{trimmed(focal, 1)} mm"
    case = f"{lens} lens" if several else None
    which, off = f"{article(lens)} {lens} lens", small_mm(shim.nominal)
    if limit:
        text = (
            f"{which.capitalize()} that stops at {distance(at, feet)} sits {off} too far out: take that off the ring."
        )
        error = shim
    else:
        text = (
            f"Infinity at the {distance(at, feet)} mark of {which}: it sits {off} too close; add a shim of {off} "
            "between lens and ring, or ring and body."
        )
        error = -shim
    rows = (Quantity("shim_mm", shim, case), Quantity("register_error_mm", error, case))
    return Told((Line("head" if not several else "fact", text),), rows)
