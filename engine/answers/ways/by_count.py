"""How many rings so many kinds of lens need on so many bodies, whatever they are: each its own, or by way of a hub."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.usual_mounts import HUB, usual_mount
from engine.answers.ways.hubs import hub_of, so_many_bodies
from engine.base.compact import replace
from engine.base.interval import Interval
from grammar.questions import Question

LEAST = 2


def by_count(question: Question, knowledge: Knowledge) -> Told:
    """Nothing where bodies and mounts of lenses themselves are told: then the rings are counted that there are."""
    many, on, hub = kinds_told(question), so_many_bodies(question), _hub(question, knowledge)
    if len(question.lenses) == 1 and not question.lenses[0].ids:
        on = on or len(question.bodies)
    if on < LEAST <= many and hub_of(question) is not None and _only_counted(question):
        return _on_one_body(many, hub, knowledge)
    if many < LEAST or on < LEAST or any(hub in lens.ids[:1] for lens in question.lenses[1:]):
        return Told()
    direct, through = many * on, many + on
    name = knowledge.catalogue.mounts[hub].designation if hub in knowledge.catalogue.mounts else "one mount"
    text = (
        f"Single rings: {many} x {on} = {direct}, one for each kind of lens on each body. Through {name} as a hub:"
        f" {many} + {on} = {through}, one from each kind to it and one from it to each body."
    )
    fewer = "The hub needs fewer" if through < direct else "The hub needs more" if through > direct else "Both come out"
    text += f" {fewer}{' alike' if through == direct else ''}; it adds a joint, with its play, to every lens."
    rows = (
        Quantity("adapter_count", Interval.exact(float(direct)), "direct"),
        Quantity("adapter_count", Interval.exact(float(through)), f"hub {hub}"),
    )
    return Told((Line("head", text),), rows)


def _only_counted(question: Question) -> bool:
    """'six mounts, one body': lenses and the body are told by no name."""
    return not any(thing.ids for thing in (*question.lenses, *question.bodies)) and len(question.bodies) == 1


def _on_one_body(many: int, hub: str, knowledge: Knowledge) -> Told:
    """For one body alone a hub is one piece more than single rings."""
    mounts = knowledge.catalogue.mounts
    name = mounts[hub].designation if hub in mounts else "a hub"
    text = (
        f"For one body single rings: {many} of them, with one tolerance each. Through {name} it would be {many + 1},"
        " with a second joint in every chain: a hub pays only from the second body on."
    )
    rows = (
        Quantity("adapter_count", Interval.exact(float(many)), "direct"),
        Quantity("adapter_count", Interval.exact(float(many + 1)), f"hub {hub}"),
    )
    return Told((Line("head", text),), rows)


def with_kinds_alone(question: Question) -> Question:
    """'4 kinds of slr lens, is the M hub cheaper': of lenses that are only counted, the hub's is not the mount."""
    hub, lens = hub_of(question), question.lens
    named = (*hub.front, *hub.ids) if hub is not None else question.limits.using
    if lens is None or len(question.lenses) > 1 or (lens.count or 0) < LEAST or lens.ids[:1] != named[:1]:
        return question
    return question.with_(lenses=(replace(lens, kind="", ids=()),))


def kinds_told(question: Question) -> int:
    """How many kinds of lens are told: '3 kinds of lens', 'M42, K and OM lenses'."""
    mounts = {lens.ids[0] for lens in question.lenses if lens.ids}
    alone = question.lenses[0].count if len(question.lenses) == 1 else None
    return int(alone or 0) if len(mounts) < LEAST else len(mounts)


def _hub(question: Question, knowledge: Knowledge) -> str:
    """The mount that is named as the hub, or told to go through; else the usual one."""
    named = hub_of(question)
    told = (*((*named.front, *named.ids) if named is not None else ()), *question.limits.using)
    mounts = [name for name in (*told, *usual_mount(HUB, knowledge.catalogue)) if name in knowledge.catalogue.mounts]
    return mounts[0] if mounts else ""
