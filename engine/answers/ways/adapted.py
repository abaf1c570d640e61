"""Lenses of which mount are the easier to adapt, to no body in particular: who works the iris, which rings are sold."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import LensSide
from engine.answers.parts.wording import small_mm
from engine.answers.spending import bodies_by_plain_rings
from engine.base.interval import is_known
from grammar.questions import Question

MOST = 4
# who works the iris of a lens of the mount, and what that asks of a ring
_IRIS = {
    "ring": "the iris by a ring on the lens",
    "lever": "the iris by a lever of the body: the ring must have one to move it",
    "electronic": "the iris is driven electrically: only a ring with electronics closes it, a plain one leaves it open",
    "mixed": "the iris by a ring on older lenses; later ones need a lever or contacts in the ring",
    "none": "no iris of its own",
}


def adapted(question: Question, lenses: Sequence[LensSide], knowledge: Knowledge) -> Told:
    """Each mount by its register, its iris and the cheapest plain rings; nothing where only one is named."""
    by_mount = {lens.mount.id: lens for lens in lenses}
    if len(by_mount) < 2:
        return Told()
    told = Told()
    for lens in list(by_mount.values())[:MOST]:
        mount = lens.mount
        parts = [_IRIS.get(mount.iris, "")]
        rows: list[Quantity] = []
        if is_known(mount.register_mm):
            parts.insert(0, f"register {small_mm(mount.register_mm.nominal)}")
            rows.append(Quantity("register_mm", mount.register_mm, mount.id))
        text = f"{mount.designation}: {'; '.join(part for part in parts if part)}."
        told += Told((Line("head", text),), tuple(rows)) + bodies_by_plain_rings(question, [lens], knowledge)
    return told
