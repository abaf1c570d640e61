"""Why two that were told one after the other come out alike: two bodies of one depth, two lenses of one register."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import READS_MM, small_mm
from engine.base.interval import Interval, is_known
from engine.facts.records import Mount
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import Question, Thing

_PAIR: Final = 2


def same_for_both(question: Question, knowledge: Knowledge) -> Told:
    """The registers that make them come out alike; nothing where that is not wondered at, or has another cause."""
    if not (mentions(question, "same-said") and mentions(question, "wondered-at")):
        return Told()
    lens, bodies = _mount(question.lens, knowledge), [*question.elsewhere[:1], *question.bodies]
    stood = [one for one in (_mount(thing, knowledge) for thing in bodies) if one is not None]
    if lens is None:
        return Told()
    if len(stood) == _PAIR and stood[0].id != stood[1].id:
        return _on_both(question, lens, stood[0], stood[1])
    lenses = [one for one in (_mount(thing, knowledge) for thing in question.known[-_PAIR:]) if one is not None]
    if len(lenses) == _PAIR and len(stood) == 1 and lenses[0].id != lenses[1].id:
        return _of_both(lenses[0], lenses[1], stood[0])
    return Told()


def _on_both(question: Question, lens: Mount, first: Mount, second: Mount) -> Told:
    """One lens on two bodies."""
    rows, reach = _registers(lens, first, second), number(question, "rear_reach")
    if not is_known(lens.register_mm):
        return Told()
    register, depth = lens.register_mm.nominal, _shared(first, second)
    if reach is not None:
        told = (
            f"Because the ring puts the lens flange {small_mm(register)} from the sensor on either body:"
            f" {register:g} - {reach:g} = {small_mm(register - reach)}. What differs is where shutter and throat lie."
        )
        return Told((Line("head", told),), rows[:1])
    if question.prior is not None and question.prior.intent == MACRO_DISTANCE:
        told = (
            f"Because the ring of each body puts the lens flange {small_mm(register)} from the sensor, however deep the"
            " body is: what is left to tell how near it comes is the extension, and that is the same."
        )
        return Told((Line("head", told),), rows)
    if depth is None:
        return Told()
    told = (
        f"Because {first.designation} and {second.designation} are both {small_mm(depth)} deep, and a lens of"
        f" {lens.designation} sits {small_mm(register)} from the sensor: {register:g} - {depth:g} ="
        f" {small_mm(register - depth)} on either. The bayonets differ all the same: each body wants a ring of its own."
    )
    return Told((Line("head", told),), rows)


def _of_both(first: Mount, second: Mount, body: Mount) -> Told:
    """Two lenses on one body."""
    register = _shared(first, second)
    if register is None or not is_known(body.register_mm):
        return Told()
    depth = body.register_mm.nominal
    told = (
        f"Because lenses of {first.designation} and of {second.designation} both sit {small_mm(register)} from the"
        f" sensor: {register:g} - {depth:g} = {small_mm(register - depth)} on {body.designation} for either. The fronts"
        " of the rings differ all the same."
    )
    return Told((Line("head", told),), _registers(first, second, body))


def _shared(first: Mount, second: Mount) -> float | None:
    one, other = first.register_mm, second.register_mm
    if not (is_known(one) and is_known(other)) or abs(one.nominal - other.nominal) > READS_MM:
        return None
    return one.nominal


def _registers(*mounts: Mount) -> tuple[Quantity, ...]:
    return tuple(
        Quantity("register_mm", one.register_mm, case=one.id) for one in mounts if isinstance(one.register_mm, Interval)
    )


def _mount(thing: Thing | None, knowledge: Knowledge) -> Mount | None:
    if thing is None or thing.id is None:
        return None
    facts = knowledge.catalogue
    if thing.kind in ("lens", "body"):
        own = facts.lenses.get(thing.id) if thing.kind == "lens" else facts.bodies.get(thing.id)
        return facts.mounts.get(own.mount) if own is not None else None
    return facts.mounts.get(thing.id)
