"""Where the register of one mount stands among those of bodies: why its lenses go on all of them, or on hardly any."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import listed, small_mm
from engine.base.interval import is_known
from engine.facts.records import Mount
from grammar.questions import Question

BODIES: Final = frozenset(["slr", "rangefinder", "mirrorless"])  # kinds of mount that cameras are built with
NO_CAMERAS: Final = frozenset(["lens-side-only", "thread-only"])  # traits of those that none are
MOST_NAMED: Final = 4
LEAST_RING: Final = "thinnest-ring"  # the assumption what lies between two bayonets at least


def among_bodies(mount: Mount, question: Question, knowledge: Knowledge) -> Told:
    """On how many bodies a plain ring finds room ahead of the flange; nothing where that is not asked, or unknown."""
    register = mount.register_mm
    if not mentions(question, "on-all-bodies") or not is_known(register):
        return Told()
    others = _others(mount, knowledge)
    shorter = sorted(row for row in others if row[0] < register.nominal)
    longer = sorted(row for row in others if row[0] >= register.nominal)
    own = f"{mount.designation} lenses form their image {small_mm(register.nominal)} behind the flange"
    if len(shorter) >= len(longer):
        some = f"that of {len(shorter)} of the {len(others)} mounts of bodies"
        those = some if longer else "that of every body's mount"
        but = f"; not on {_named(longer)}" if longer else ""
        text = (
            f"{own}, a longer way than {those} in the facts: on each of those a plain ring of the difference finds "
            f"room between lens and body{but}."
        )
    else:
        only = f"only on {_named(shorter)} is there room for a ring" if shorter else "on none is there room for a ring"
        text = (
            f"{own}, a shorter way than that of {len(longer)} of the {len(others)} mounts of bodies in the facts: "
            f"{only}; elsewhere the lens would have to sit inside the body."
        )
    return Told((Line("head", text),), (Quantity("register_mm", register, mount.id),))


def among_lenses(body: Mount, question: Question, knowledge: Knowledge) -> Told:
    """The lenses of how many mounts of bodies find room for a plain ring on one; nothing where that is not asked."""
    register = body.register_mm
    if not mentions(question, "on-all-bodies") or not is_known(register):
        return Told()
    others = _others(body, knowledge)
    least = knowledge.catalogue.assumptions[LEAST_RING].value.nominal
    longer = [row for row in others if row[0] >= register.nominal + least]
    shorter = sorted(row for row in others if row not in longer)
    own = f"A ring is as thick as lens register less body register, and {body.designation} is"
    text = (
        f"{own} {small_mm(register.nominal)} deep: the lenses of {len(longer)} of the {len(others)} other mounts of"
        f" bodies in the facts leave {small_mm(least)} or more for one"
    )
    text += f"; not those of {_named(shorter)}." if shorter else "."
    return Told((Line("head", text),), (Quantity("register_mm", register, body.id),))


def _others(mount: Mount, knowledge: Knowledge) -> list[tuple[float, str]]:
    """Register in mm and designation of every other mount that cameras are built with."""
    return [
        (one.register_mm.nominal, one.designation)
        for one in knowledge.catalogue.mounts.values()
        if one.kind in BODIES and one.id != mount.id and not NO_CAMERAS & set(one.traits) and is_known(one.register_mm)
    ]


def _named(rows: list[tuple[float, str]]) -> str:
    names = [f"{name} ({small_mm(register)})" for register, name in rows[:MOST_NAMED]]
    return listed(names) if len(rows) <= MOST_NAMED else f"{', '.join(names)} and {len(rows) - MOST_NAMED} more"
