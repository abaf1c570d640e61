"""A lens whose thread was told has that thread, and not the one that most lenses of its kind have."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Mount
from grammar.questions import Question, Thing

ASSUMED: Final = "assumed mount"  # trait of a lens whose kind alone tells its mount
_METRIC: Final = re.compile(r"M?(\d+(?:\.\d+)?)(?: mm)? x (\d+(?:\.\d+)?)(?! ?tpi)")
_WIDE_MM: Final = 0.3
_PITCH_MM: Final = 0.02


def with_thread_told(question: Question, facts: Catalogue) -> Question:
    """'an industrial lens, M42x1': with the mounts of that thread in place of the assumed one; else as it is."""
    told = _METRIC.search(question.said("thread") or "")
    lens = question.lens
    if told is None or lens is None or ASSUMED not in lens.traits or len(question.lenses) != 1:
        return question
    width, pitch = float(told[1]), float(told[2])
    found = [mount for mount in facts.mounts.values() if _has(mount, width, pitch, facts)]
    ids = tuple(mount.id for mount in sorted(found, key=lambda mount: _rarity(mount, facts)))
    if not ids or lens.id in ids:
        return question
    meant: Thing = replace(
        lens, ids=ids[:1], traits=tuple(trait for trait in lens.traits if trait != ASSUMED)
    )  # fmt: skip
    return replace(question, lenses=(meant,))


def _has(mount: Mount, width: float, pitch: float, facts: Catalogue) -> bool:
    thread = facts.threads.get(mount.thread or "")
    if thread is None or mount.kind == "filter" or not is_known(thread.pitch_mm):
        return False
    return abs(thread.major_mm.nominal - width) <= _WIDE_MM and abs(thread.pitch_mm.nominal - pitch) <= _PITCH_MM


def _rarity(mount: Mount, facts: Catalogue) -> tuple[int, str]:
    return -sum(ring.front == mount.id for ring in facts.adapters.values()), mount.id
