"""A thread longer than its socket is deep: what keeps it off the bottom, and what that does to focus."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, number
from engine.answers.parts.wording import small_mm
from engine.answers.seat.spacing import far_limits, usual_focals
from engine.base.interval import Interval
from grammar.questions import Question


def screwed_in(question: Question, knowledge: Knowledge) -> Told:
    """By how much a thread is too long for the socket told; nothing where either is not told."""
    long, deep = number(question, "thread_length"), number(question, "socket", "depth")
    if long is None or deep is None:
        return Told()
    over = round(long - deep, 4)
    if over <= 0:
        text = f"A thread of {small_mm(long)} goes into a socket {small_mm(deep)} deep with {small_mm(-over)} to spare."
        return Told((Line("head", text),), (Quantity("thread_depth_left_mm", Interval.exact(-over)),))
    facts = knowledge.catalogue
    lines = [
        Line(
            "head",
            f"The thread is {small_mm(over)} longer than its socket: a washer of {small_mm(over)}, better a little"
            " more, keeps it from meeting what lies behind.",
        ),
        Line(
            "text",
            f"But the lens then sits {small_mm(over)} too far out: infinity is lost, near focus only. To keep infinity,"
            " shorten the thread (a machinist, the glass out), or take a body or ring whose socket is deep enough."
            " Never screw it home by force.",
        ),
    ]
    far = far_limits(focals(question) or usual_focals(facts), over, facts, question.feet, 1)
    rows = (
        Quantity("shim_mm", Interval.exact(over), "washer"), Quantity("register_error_mm", Interval.exact(over)),
        Quantity("thread_depth_left_mm", Interval.exact(-over)),
    )  # fmt: skip
    return Told((*lines, *far.lines), (*rows, *far.quantities))
