"""Mounts of one thread that lie at different depths: which registers they have, and what comes of mixing them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.parts.answer import Line, Quantity
from engine.answers.parts.wording import listed, small_mm
from engine.base.interval import Interval
from engine.facts.records import Mount

PAIR: Final = 2


def depths_of_thread(users: Sequence[Mount]) -> tuple[list[Line], list[Quantity]]:
    """'are all 5/8-32 lenses the same': the register of each mount that has the thread, where they differ."""
    known = ((one, one.register_mm) for one in users)
    told = [(one, register) for one, register in known if isinstance(register, Interval)]
    if len({register.nominal for _, register in told}) < PAIR:
        return [], []
    by_depth = sorted(told, key=lambda row: -row[1].nominal)
    apart = by_depth[0][1].nominal - by_depth[-1][1].nominal
    each = listed([f"{one.designation} {small_mm(register.nominal)}" for one, register in by_depth])
    text = (
        f"The thread is the same, the register is not: {each}, {small_mm(apart)} apart. A lens of the shorter one on a "
        "body of the longer is close-up only; which one it is, flange to the image of a far window tells."
    )
    return [Line("text", text, 1)], [Quantity("register_mm", register, one.id) for one, register in by_depth]
