"""How far a target must be to stand for infinity, and how wrong a nearer one makes what is set on it."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, focals, mentions, number
from engine.answers.parts.wording import distance, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import usual_focals
from engine.base.interval import Interval, is_known
from grammar.questions import Question


def is_target(question: Question) -> bool:
    told = question.said("target") is not None or mentions(question, "target-place") or is_tested_on(question)
    return told or _of_another_lens(question)


def _of_another_lens(question: Question) -> bool:
    """'and for the 135?' after how far a target must be: the same is asked of the lens named now."""
    before = question.prior if question.follows else None
    same = before is not None and question.intent == before.intent and is_target(before)
    return same and before is not None and focals(question) != focals(before) and question.values == before.values


def is_tested_on(question: Question) -> bool:
    """'testing infinity at 500 m': so far away is what infinity is tested on, and no mark of a scale is told."""
    tested = mentions(question, "infinity-tested") and not mentions(question, "read-off-scale")
    return tested or (mentions(question, "infinity-set-by") and not mentions(question, "scale-or-mark"))


def target_told(question: Question, knowledge: Knowledge) -> Told:
    """How far a target must be to stand for infinity, and how wrong a nearer one makes the shim."""
    if not is_target(question):
        return Told()
    times = knowledge.catalogue.assumptions["infinity-target-focals"].value.nominal
    lines: list[Line] = []
    rows: list[Quantity] = []
    tested = is_tested_on(question)
    near = distance_mm(question) or (number(question, "mark") if tested else None) or number(question, "field")
    for focal in focals(question) or usual_focals(knowledge.catalogue):
        far = focal * times
        lens = f"{trimmed(focal, 1)} mm lens"
        rows.append(Quantity("target_distance_mm", Interval.exact(far), lens))
        text = f"{lens}: beyond {distance(far, question.feet)}"
        for at in (near, far):
            error = Distances(focal, knowledge.catalogue).extension_at(at) if at else None
            if at is not None and error is not None and is_known(error):
                rows.append(Quantity("extension_mm", error, f"{lens}, {trimmed(at / 1000, 1)} m"))
                text += f"; set at {distance(at, question.feet)} it would be {small_mm(error.nominal)} wrong"
        lines.append(Line("fact", text, 1))
    rule = (
        f"Something far beyond {times:.0f} focal lengths stands for infinity; the moon, stars or a far mast are best."
    )
    enough = _far_enough(near, times, question) if tested or question.said("mark") is None else ""
    return Told((Line("head", f"{enough}{rule}"), *lines), tuple(rows))


def _far_enough(near: float | None, times: float, question: Question) -> str:
    """Whether a target told by its distance stands for infinity, for the longest lens told."""
    longest = max(focals(question), default=None)
    if near is None or longest is None:
        return ""
    at = distance(near, question.feet)
    if near < longest * times and at != distance(longest * times, question.feet):  # as it is told, so it is judged
        return f"No, {at} is too near for {trimmed(longest, 1)} mm. "
    return f"Yes, {at} is far enough for {trimmed(longest, 1)} mm. "
