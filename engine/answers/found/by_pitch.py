"""Which of the mounts that a thread may be is meant, by the pitch that was told."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from typing import Final

from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing

JUST_MM: Final = 0.004  # a pitch told as that of a thread is meant to be its own

# a pitch as typed
PITCHED: Final = re.compile(r"\d ?(?:mm)? ?[x×] ?\d|\d ?tpi\b|\bpitch\b|(?<![\d.])0?\.\d+ ", re.IGNORECASE)


def is_of_the_hole(lens: Thing, question: Question) -> bool:
    """'an M42 lens into an M42x0.75 thread': a pitch behind what the lens is put into is that of the hole."""
    into = (one.end for one in question.mentioned if one.key == "into-it" and one.at >= lens.column)
    return any(PITCHED.search(question.text, end) is not None for end in into)


def of_its_pitch(thing: Thing, pitch: float | None, catalogue: Catalogue) -> Thing:
    """Of the mounts that a thread may be, those of the pitch that was told; of no other, where one has just that pitch.

    Where every mount named has another pitch, it is rather a mount of the same width of thread that has it.
    """
    if thing.kind != "mount" or not thing.ids or pitch is None:
        return thing
    good = catalogue.assumptions["pitch-by-paper"].value
    off = _off_pitch(thing.ids, pitch, catalogue)
    if not thing.ambiguous and all(good.holds(by) for by in off.values()):
        return thing
    if not any(good.holds(by) for by in off.values()):
        off = _off_pitch(as_wide(thing.ids[0], catalogue), pitch, catalogue)
    fitting = tuple(name for name, by in off.items() if good.holds(by))
    just = tuple(name for name in fitting if abs(off[name]) < JUST_MM)
    return replace(thing, ids=just or fitting) if fitting else thing


def _off_pitch(ids: Sequence[str], pitch: float, catalogue: Catalogue) -> dict[str, float]:
    """By how much the thread of each mount that has one differs from that pitch, in mm."""
    threads = {name: catalogue.threads.get(catalogue.mounts[name].thread or "") for name in ids}
    return {
        name: thread.pitch_mm.nominal - pitch
        for name, thread in threads.items()
        if thread is not None and is_known(thread.pitch_mm)
    }


def as_wide(name: str, catalogue: Catalogue) -> tuple[str, ...]:
    """The other mounts whose thread is as wide, the likeliest first."""
    own = catalogue.threads.get(catalogue.mounts[name].thread or "")
    if own is None:
        return ()
    wide = {
        id_ for id_, thread in catalogue.threads.items()
        if thread.major_mm.nominal == own.major_mm.nominal
    }  # fmt: skip
    found = [id_ for id_, mount in catalogue.mounts.items() if mount.thread in wide and id_ != name]
    rings = Counter(adapter.front for adapter in catalogue.adapters.values())  # the likelier, the more there are for it
    return tuple(sorted(found, key=lambda id_: (not is_known(catalogue.mounts[id_].register_mm), -rings[id_])))
