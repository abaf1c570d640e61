"""Which mounts a question of look-alikes means, by its lenses, bodies, pieces and threads."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import number
from engine.facts.records import Mount
from grammar.questions import Question, Thing

_SAME: Final = "same"  # the topic where it is asked whether two are one


def mounts_named(question: Question, knowledge: Knowledge) -> Iterator[Mount]:
    """The mounts of all that is named: lenses, bodies, both sides of pieces, threads; one may come twice."""
    said_too = likeliest(question, knowledge)
    for thing in (*question.lenses, *question.things, *question.adapters, *question.bodies):
        for name in thing.ids:
            if thing.kind == "mount" and name in knowledge.catalogue.mounts:
                yield knowledge.catalogue.mounts[name]
            elif thing.kind == "lens" and name in knowledge.catalogue.lenses:
                yield knowledge.catalogue.mounts[knowledge.catalogue.lenses[name].mount]
            elif thing.kind == "thread":
                yield from (m for m in knowledge.catalogue.mounts.values() if m.thread == name)
        for name in (*thing.front[:1], *thing.rear[:1]):
            yield knowledge.catalogue.mounts[name]
    yield from (knowledge.catalogue.mounts[name] for name in said_too)


def bodies_meant(question: Question) -> tuple[Thing, ...]:
    """The bodies, but where a ring is set against the lens that is on one: 'isn't my M42 ring the same'.

    Nor is one meant that was told before, where another lens is: 'could it be a T2' after an M42 on E.
    """
    against = question.follows and len(question.lenses) == 1 and any(one.kind == "mount" for one in question.things)
    return () if against or _are_left(question) else question.bodies


def _are_left(question: Question) -> bool:
    before = question.prior if question.follows else None
    if before is None or question.bodies != before.bodies or question.lens is None:
        return False
    text = question.text.casefold()
    named = any(body.words and body.words.casefold() in text.split() for body in question.bodies)
    both = question.lenses == before.lenses and question.topic == _SAME  # 'are they the same?'
    return not (named or both)


def spoken_of(question: Question, knowledge: Knowledge) -> list[str]:
    """Of the mounts that the lens spoken of may have, those of the kind asked about: "one of the rangefinder ones"."""
    kinds = {thing.lens_kind for thing in question.lenses}
    known = [name for thing in question.known if thing.kind == "mount" for name in thing.ids]
    known += [mount.id for mount in _of_thread_told(question, knowledge)]
    return [name for name in dict.fromkeys(known) if knowledge.catalogue.mounts[name].kind in kinds]


def _of_thread_told(question: Question, knowledge: Knowledge) -> Iterator[Mount]:
    """The mounts whose thread is as wide as the one that was told."""
    wide = number(question, "thread")
    near = knowledge.catalogue.assumptions["mating-same-diameter"].value.greatest
    for mount in knowledge.catalogue.mounts.values() if wide is not None else ():
        thread = knowledge.catalogue.threads.get(mount.thread or "")
        if thread is not None and wide is not None and abs(thread.major_mm.nominal - wide) <= near:
            yield mount


def likeliest(question: Question, knowledge: Knowledge) -> list[str]:
    """The likeliest mount of each thing named; where all are one, what more is said of that lens: '(L8), is it D'."""
    known = knowledge.catalogue.mounts
    things = [one for one in (*question.lenses, *question.things, *question.bodies) if one.kind == "mount"]
    firsts = [thing.ids[0] for thing in things if thing.ids[:1] and thing.ids[0] in known]
    more = [name for thing in things for name in thing.said_too[:1] if name in known and name not in thing.ids]
    return [*firsts, *more] if len(firsts) > 1 and len(set(firsts)) == 1 else firsts


def is_set_against(thing: Thing, old: Thing, others: tuple[Thing, ...]) -> bool:
    """'is an X film SLR lens the same as X': what the name meant of old is told by its full name beside it."""
    return thing.ambiguous and old.ids[:1] in [one.ids for one in others if len(one.ids) == 1]


def names_typed(question: Question) -> set[str]:
    """The names of mounts as typed: one name typed twice says nothing of two."""
    things = (*question.lenses, *question.things, *question.bodies)
    return {thing.words.casefold() for thing in things if thing.kind == "mount"}


def of_ring(question: Question) -> Question:
    """'isn't my M42 ring the same' after a T2 lens on Z: what the ring takes against the lens, whatever the body."""
    rings = [one for one in question.adapters if one.front and not one.rear]
    if not (question.follows and rings and question.lenses):
        return question
    taken = tuple(Thing("mount", one.front[:1], one.words) for one in rings)
    return question.with_(adapters=(), lenses=question.lenses[:1], things=taken)
