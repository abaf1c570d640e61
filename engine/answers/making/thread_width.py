"""'a board lens, 7 mm thread': so wide is the thread of a mount it is taken for, and so long is none of its own."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.said import mentions, numbers
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Mount
from grammar.questions import Question

LENGTH: Final = "thread_length"
WIDTH: Final = "thread"
SAME_MM: Final = 0.05


def with_width_of_thread(question: Question, facts: Catalogue) -> Question:
    """The question with the length of a thread as its width, where a look-alike of the lens's mount is so wide."""
    lens, told = question.lens, numbers(question, LENGTH)
    own = facts.mounts.get(lens.ids[0]) if lens is not None and lens.ids else None
    if own is None or lens is None or len(told) != 1 or mentions(question, "thread-length-asked", "long-told"):
        return question
    alike = [facts.mounts[name] for name in own.look_alikes if name in facts.mounts]
    alike = [one for one in alike if _is_so_wide(one, told[0], facts)]
    if not alike or _is_so_wide(own, told[0], facts):
        return question
    meant = replace(lens, ids=tuple(one.id for one in alike))
    values = tuple((WIDTH, f"{told[0]:g} mm") if row[0] == LENGTH else row for row in question.values)
    lenses = tuple(meant if one is lens else one for one in question.lenses)
    return question.with_(lenses=lenses, values=values)


def _is_so_wide(mount: Mount, width_mm: float, facts: Catalogue) -> bool:
    thread = facts.threads.get(mount.thread or "")
    return thread is not None and is_known(thread.major_mm) and abs(thread.major_mm.nominal - width_mm) < SAME_MM
