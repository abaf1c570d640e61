"""Which mounts a lens may have by its flange to image distance alone, the nearest first."""

from __future__ import annotations

from engine.answers.answer import Line, Quantity, Told
from engine.answers.knowledge import Knowledge
from engine.answers.mount_line import mount_line
from engine.answers.said import mentions, number
from engine.answers.wording import small_mm
from engine.base.interval import is_known
from engine.facts.records import Mount
from grammar.questions import Question

MOST = 8
ACCESSORIES = frozenset({"filter", "bellows", "board"})


def by_register(question: Question, knowledge: Knowledge) -> Told:
    """The mounts whose register lies as near to the told one as a ruler tells; of the coupling that is spoken of."""
    told = number(question, "flange_to_image")
    if told is None:
        return Told()
    facts = knowledge.catalogue
    good = facts.assumptions["register-by-paper"].value.greatest
    near: list[tuple[float, str, Mount]] = []
    for mount in facts.mounts.values():
        if mount.kind in ACCESSORIES or not is_known(mount.register_mm) or not _is_coupled_so(mount, question):
            continue
        off = abs(mount.register_mm.nominal - told)
        if off <= good:
            near.append((off, mount.id, mount))
    head = f"{small_mm(told)} from flange to image, good to {small_mm(good)} by a ruler on paper"
    if not near:
        text = f"{head}: no mount in the facts has that register, so the lens brings one of its own."
        return Told((Line("head", text),))
    shown = [mount for _, _, mount in sorted(near, key=lambda row: row[:2])[:MOST]]
    lines = [Line("head", f"{head}, may be:")]
    lines += [Line("fact", f"{mount.designation}: {mount_line(mount, knowledge)}", 1) for mount in shown]
    return Told(tuple(lines), tuple(_register(mount) for mount in shown))


def _register(mount: Mount) -> Quantity:
    assert is_known(mount.register_mm)
    return Quantity("register_mm", mount.register_mm, mount.id)


def _is_coupled_so(mount: Mount, question: Question) -> bool:
    """Whether the mount is of the coupling that the question names; of any where it names none."""
    named = {word for word in ("screw", "bayonet", "breech") if mentions(question, word)}
    return not named or any(mount.coupling.startswith(word) for word in named)
