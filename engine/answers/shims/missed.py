"""Infinity that is missed with a ring that should reach it, or straight on: what that tells, before the answer."""

from __future__ import annotations

from typing import Final

from engine.answers.found.lookalike import taking_it_too
from engine.answers.parts.answer import ANSWERED, Answer, Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import registers_of
from engine.answers.parts.said import focals, mentions
from engine.answers.seat.spacing import far_limits, usual_focals
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.records import Mount
from grammar.questions import Question

_ASKED: Final = "whether-asked"
_REACHED: Final = "infinity"
MOST_ALIKE: Final = 5
TOLD: Final = (
    "By its numbers that ring keeps infinity. That yours does not says that the lens sits too far out: a ring thicker "
    "than nominal, one that is not seated home, or a lens set too long. Caliper the ring from seat to seat at four "
    "points; how far it still comes sharp tells by how much it is off:"
)
SEEN: Final = "far-missed"  # that far things are seen not to come sharp
UNNAMED: Final = ("that ring", "the right ring")  # of no ring that is told of
OWN_MOUNT: Final = (
    "Straight on in its own mount it should be sharp. That it is not says that one of the two is another mount that"
    " goes in just as well, or that its register is off. Fit tells nothing of focus. The same seat at another depth:"
)
OFF_BY_ITSELF: Final = (
    "To tell which: measure flange to image of the lens on paper (far window), and try a lens that is known to be right"
    " on the camera. If that is off too, it is the camera; if not, the lens: shims or a repairer set it right."
)


def behind_advice(answer: Answer, name: str, knowledge: Knowledge) -> Answer:
    """The answer behind an advice, wherever else it may tell that already."""
    advice = knowledge.catalogue.advice.get(name)
    if advice is None or (answer.lines and answer.lines[0].text.endswith(advice.says)):
        return answer
    line = Line("head", f"{advice.topic[:1].upper()}{advice.topic[1:]}: {advice.says}")
    told = answer.status == ANSWERED or answer.chains is not None
    rest = (one for one in answer.lines if told and not one.text.endswith(advice.says))
    return replace(answer, status=ANSWERED, lines=(line, *rest))


def with_infinity_missed(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what it means that infinity is not reached, where the ring named should reach it."""
    ring = any(thing.kind == "adapter" or (thing.front and thing.rear) for thing in question.adapters)
    seen = is_seen_short(question)
    chain = answer.chains[0].listed.judged if answer.chains else None
    if not (ring or seen) or chain is None or chain.verdict != _REACHED or mentions(question, _ASKED):
        return answer
    facts = knowledge.catalogue
    error = facts.assumptions["making-spread-nominal"].value.greatest
    less = facts.assumptions["making-spread-derived"].value.greatest
    lenses = focals(question) or usual_focals(facts)
    told = far_limits(lenses, error, facts, question.feet, 1) + far_limits(lenses, less, facts, question.feet, 1)
    lines = (Line("head", TOLD if ring else TOLD.replace(*UNNAMED)), *told.lines, *answer.lines)
    return replace(answer, lines=lines, quantities=(*(answer.quantities or ()), *told.quantities))


def is_seen_short(question: Question) -> bool:
    """'it wont focus on the moon' of a lens on a body: it was tried, and nobody asks whether it would."""
    asked = "?" in question.text and not question.follows
    return bool(question.places(SEEN)) and not asked and not question.mentions(_ASKED)


def with_own_mount_soft(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """'D lenses of another D camera are all soft': straight on they must be sharp, so one of the two is another mount.

    Mounts of the same thread or bayonet and another register come first, then a register that is off.
    """
    mount = _mount_of_both(question, knowledge)
    if mount is None or not is_soft_in_its_own(question, knowledge):
        return answer
    told = _alike_at_another_depth(mount, knowledge)
    lines = (Line("head", OWN_MOUNT), *told.lines, Line("text", OFF_BY_ITSELF), *answer.lines)
    return replace(answer, lines=lines, quantities=(*told.quantities, *(answer.quantities or ())))


def is_soft_in_its_own(question: Question, knowledge: Knowledge) -> bool:
    """Whether that is said of a lens with nothing between, and not asked."""
    mount = _mount_of_both(question, knowledge)
    if mount is None or question.adapters or mentions(question, _ASKED):
        return False
    return bool(_alike_at_another_depth(mount, knowledge).lines)


def _mount_of_both(question: Question, knowledge: Knowledge) -> Mount | None:
    """The mount that lens and body are both told to have; a body told by its film may have it too."""
    lens, body = question.lens, question.body
    if lens is None or body is None or not lens.ids or lens.kind != "mount" or len(question.bodies) > 1:
        return None
    mount = knowledge.catalogue.mounts.get(lens.ids[0])
    if mount is None or not is_known(mount.register_mm):
        return None
    by_film = not body.ids and body.format is not None and body.format == mount.format
    return mount if by_film or body.ids[:1] == lens.ids[:1] else None


def _alike_at_another_depth(mount: Mount, knowledge: Knowledge) -> Told:
    """Every mount that takes the same lens in, at another register: how far off it is then."""
    told, own = Told(), mount.register_mm
    spread = knowledge.catalogue.assumptions["making-spread-derived"].value.greatest
    for other, text in taking_it_too(mount, knowledge):
        if is_known(own) and is_known(other.register_mm) and abs((other.register_mm - own).nominal) > spread:
            told += Told((Line("fact", text, 1),), registers_of([other]))
    return Told(told.lines[:MOST_ALIKE], told.quantities[:MOST_ALIKE])
