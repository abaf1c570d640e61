"""Where infinity falls once a shim is laid under a lens that had it at a mark: 'at 6 m, two sheets of 0.05?'."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, focals, mentions, number, number_beside
from engine.answers.parts.wording import READS_MM, distance, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import far_limits
from engine.answers.shims.carried import is_limit
from engine.base.interval import Interval, is_known
from grammar.questions import Question

_THICKEST_MM: Final = 2.0  # of a shim
_MOST_LAYERS: Final = 20.0


def after_shim(question: Question, knowledge: Knowledge) -> Told:
    """The mark then, or how far it reaches where the shim is too much; nothing where that is not asked."""
    named, at = focals(question), number(question, "mark") or distance_mm(question)
    shim = number_beside(question, "sheet-laid")
    wanted = mentions(question, "mark-after-shim") and not question.follows and not is_limit(question)
    if not wanted or at is None or shim is None or len(named) != 1 or not 0 < shim <= _THICKEST_MM:
        return Told()
    count = number_beside(question, "layers-counted") or 1.0
    whole = round(shim * (count if 1 < count <= _MOST_LAYERS and count == int(count) else 1.0), 4)
    lens = Distances(named[0], knowledge.catalogue)
    close = lens.extension_at(at)
    if not is_known(close):
        return Told()
    left = close.nominal - whole
    was = f"of the {small_mm(close.nominal)} that the lens sat too close"
    if abs(left) < READS_MM:
        return Told((Line("head", f"Then infinity falls on its mark: {small_mm(whole)} is all {was}."),))
    if left < 0:
        over = f"{small_mm(whole)} is {small_mm(-left)} more than the {small_mm(close.nominal)} that it sat too close"
        told = Told((Line("head", f"Then it falls short of infinity: {over}."),))
        return told + far_limits(named, -left, knowledge.catalogue, question.feet, 1)
    mark = lens.mark(-left)
    if mark is None or not is_known(mark):
        return Told()
    focal = trimmed(named[0], 1)
    text = f"Then infinity falls at the {distance(mark.nominal, question.feet)} mark of the {focal} mm lens"
    rows = (
        Quantity("scale_mark_mm", mark, f"{focal} mm lens, shimmed by {small_mm(whole)}"),
        Quantity("shim_mm", Interval.exact(round(left, 4)), "still to add"),
    )
    return Told((Line("head", f"{text}: {small_mm(whole)} {was}, {small_mm(left)} are still to add."),), rows)
