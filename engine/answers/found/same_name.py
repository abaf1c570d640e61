"""Mounts that go by one name: what is known of the name, and of the others that carry it."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import mount_line
from engine.base.interval import is_known
from grammar.questions import Question

MOST_NOTES: Final = 2


def named_alike(name: str, knowledge: Knowledge) -> list[Line]:
    """The other mounts that go by the same designation, where there are any."""
    facts = knowledge.catalogue
    mount, out = facts.mounts[name], []
    for row in facts.shared.values():
        if name in row.mounts:
            others = [facts.mounts[other] for other in row.mounts if other != name]
            # those that its thread meets are told of anyway
            others = [one for one in others if one.thread is None and one.id not in mount.look_alikes]
            if not others:
                continue
            told = "; ".join(f"{mount.designation}: {mount_line(mount, knowledge)}" for mount in others)
            out.append(Line("note", f"Not the same, though it goes by the same name: {told}."))
            out += [Line("text", row.note)] if row.note else []
    return out[:2]


def of_the_name(question: Question, knowledge: Knowledge) -> list[Line]:
    """What is known of a name of several mounts, where it is the name that is asked about."""
    named = [set(thing.ids) for thing in (*question.lenses, *question.things, *question.bodies) if thing.ambiguous]
    rows = [row for row in knowledge.catalogue.shared.values() if set(row.mounts) in named and row.note]
    return [Line("text", row.note) for row in rows[:MOST_NOTES]]


def registers_alike(name: str, knowledge: Knowledge) -> list[Quantity]:
    facts = knowledge.catalogue
    ids = dict.fromkeys(other for row in facts.shared.values() if name in row.mounts for other in row.mounts)
    known = [(other, facts.mounts[other].register_mm) for other in ids if other != name]
    return [Quantity("register_mm", register, other) for other, register in known if is_known(register)]
