"""What is sharp where a lens ends that its seat keeps from infinity, and subjects that lie beyond that end."""

from __future__ import annotations

from math import isinf
from typing import Final

from engine.answers.parts.answer import Line, ListedChain, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, focals
from engine.answers.parts.wording import distance
from engine.answers.picture.moved_out import extension_mm
from engine.base.compact import replace
from engine.base.interval import Interval
from grammar.kinds import CHAIN
from grammar.questions import RING, Question

AT_END: Final = "far_end"  # the key that tells that the distance is where the lens ends
_THICKNESS: Final = "thickness"


def seen_at_its_end(question: Question, knowledge: Knowledge) -> Question:
    """'depth there wide open?' after a ring that lets a lens no farther than 2 m: what is sharp there is asked."""
    sized = any(one.piece == RING and one.thickness_mm is not None for one in question.adapters)
    off = sized or question.said(_THICKNESS) is not None
    drawn = extension_mm(question, knowledge.catalogue) is not None or question.said("magnification") is not None
    drawn = drawn or _is_of_the_scale(question)
    far = _far_end(question, knowledge) if off and focals(question) and not drawn else None
    if far is None:
        return question
    rest = question.rest(_THICKNESS)
    at = question.distance_mm if question.distance_mm is not None else far[1].nominal
    return replace(question, distance_mm=at, values=(*rest, (AT_END, f"{far[1].nominal:.5g} mm")))


def out_of_reach(question: Question, knowledge: Knowledge) -> Told:
    """That the distance told lies beyond what the lens can be set to on this body with what stands between.

    `question`: as it was asked, before it was seen at its end.
    """
    ends = question.topic != "remark"  # a mark is no subject
    far = _far_end(question, knowledge) if ends else None
    subject = distance_mm(question)
    if far is None:
        return Told()
    stops = f"By {far[0].title} it stops at {distance(far[1].nominal, question.feet)}"
    if subject is None and _is_of_the_scale(question):
        return Told((Line("caution", f"{stops}, whatever its scale says."),))
    if subject is None:
        return Told((Line("head", f"{stops}: what is sharp there."),))
    text = f"{stops}: nothing at {distance(subject, question.feet)} comes sharp."
    return Told((Line("caution", text),)) if subject > far[1].greatest else Told()


def _is_of_the_scale(question: Question) -> bool:
    """Whether the hyperfocal distance is asked for, which no ring changes, and no depth at a distance."""
    return question.mentions("hyperfocal-asked") and question.distance_mm is None


def _far_end(question: Question, knowledge: Knowledge) -> tuple[ListedChain, Interval] | None:
    """The way told and how far the lens can be set on it; None where that is to infinity, or nothing is named."""
    if not (question.lens and question.lens.ids and question.body and question.body.ids):
        return None
    from engine.answers.howto import how_to

    chains = how_to(question.with_(intent=CHAIN, topic=None), knowledge).chains
    far = chains[0].listed.judged.trace.value("far_from_sensor_mm") if chains else None
    finite = isinstance(far, Interval) and not isinf(far.greatest)
    return (chains[0], far) if chains and finite and isinstance(far, Interval) else None
