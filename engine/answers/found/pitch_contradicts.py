"""A register that is that of one mount beside a pitch that its thread has not: one of the two was measured wrong."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.answers.found.by_pitch import as_wide
from engine.answers.found.threads_measured import thread_measured
from engine.answers.parts.answer import Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import listed, small_mm, trimmed
from engine.base.interval import is_known
from engine.facts.records import Mount
from grammar.questions import Question

MOST: Final = 3  # mounts that are named


def against_pitch(told_mm: float, mount: Mount, question: Question, knowledge: Knowledge) -> Line | None:
    """What is said instead of the mount by its register where the pitch told is another's; None where it agrees."""
    _, pitch = thread_measured(question)
    its = _pitch_mm(mount, knowledge)
    if pitch is None or its is None or _is_as_fine(its, pitch, knowledge):
        return None
    text = (
        f"The two do not go together: {small_mm(told_mm)} from flange to image is {mount.designation}, whose thread has"
        f" a pitch of {trimmed(its, 3)} mm and not {trimmed(pitch, 3)} mm."
    )
    named = [f"{one.designation} ({small_mm(register)})" for one, register in _of_pitch(mount, pitch, knowledge)]
    if named:
        text += f" As wide and of that pitch, with their registers: {listed(named[:MOST])}."
    return Line("head", f"{text} Measure both again: ten pitches on paper, and a far window on paper.")


def _of_pitch(mount: Mount, pitch: float, knowledge: Knowledge) -> Iterator[tuple[Mount, float]]:
    """The mounts with a register of their own whose screw is as wide as that of the mount, and of the pitch told."""
    for name in as_wide(mount.id, knowledge.catalogue):
        one = knowledge.catalogue.mounts[name]
        its = _pitch_mm(one, knowledge)
        if its is not None and _is_as_fine(its, pitch, knowledge) and is_known(one.register_mm):
            yield one, one.register_mm.nominal


def _is_as_fine(one: float, other: float, knowledge: Knowledge) -> bool:
    return knowledge.catalogue.assumptions["pitch-by-paper"].value.holds(one - other)


def _pitch_mm(mount: Mount, knowledge: Knowledge) -> float | None:
    thread = knowledge.catalogue.threads.get(mount.thread or "")
    return thread.pitch_mm.nominal if thread is not None and is_known(thread.pitch_mm) else None
