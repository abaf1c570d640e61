"""Which of several mounts of one name is meant, by what else was told: kind of lens, pitch, time, flange to image."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from engine.answers.said import mentions, number, pitch_mm
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing

JUST_MM: Final = 0.004  # a pitch told as that of a thread is meant to be its own
# words that tell of the days of film
FILM_YEAR: Final = re.compile(r"\b19[2-9]\d\b")
FILM_DAYS: Final = (
    "film slr", "film kit", "film camera", "film body", "film days", "film bag", "off film", "from film", "old film",
    "fifties", "sixties", "seventies", "eighties", "50s", "60s", "70s", "80s", "1950s", "1960s", "1970s", "1980s",
    "from 19", "of 19", "slr lens",
)  # fmt: skip


def told_apart(question: Question, catalogue: Catalogue) -> Question:
    """The question with each lens whose words mean several mounts narrowed by the kind of lens that was told."""
    question = _named_twice(question)
    measured = number(question, "flange_to_image")
    of_film = mentions(question, *FILM_DAYS) or FILM_YEAR.search(question.text) is not None
    pitch = pitch_mm(question)
    lenses = []
    names: list[tuple[str, ...]] = []
    for thing in question.lenses:
        # of one name told twice the first is that of the old lens
        is_old = of_film and thing.ids not in names
        names.append(thing.ids)
        thing = _of_its_time(_of_its_kind(thing, catalogue), is_old, catalogue)
        lenses.append(_as_measured(_of_its_pitch(thing, pitch, catalogue), measured, catalogue))
    return question if tuple(lenses) == question.lenses else question.with_(lenses=tuple(lenses))


def _named_twice(question: Question) -> Question:
    """'lens says X mount, goes on my X digital': of one name said of two bodies the first is that of the lens."""
    lens, bodies = question.lens, question.bodies
    if lens is None or len(question.lenses) != 1 or lens.ids or len(bodies) != 2 or bodies[0].ids != bodies[1].ids:
        return question
    if bodies[0].kind != "mount" or not bodies[0].ids:
        return question
    of_lens = replace(lens, kind="mount", ids=bodies[0].ids, words=bodies[0].words)
    return question.with_(lenses=(of_lens,), bodies=bodies[1:])


def _of_its_kind(thing: Thing, catalogue: Catalogue) -> Thing:
    """Of several mounts that the words may mean, those of the kind of lens that was told: an 'enlarger lens, M39'."""
    kinds = {thing.lens_kind, *(trait.removeprefix("from ") for trait in thing.traits if trait.startswith("from "))}
    if thing.kind != "mount" or not thing.ambiguous or kinds == {None}:
        return thing
    fitting = tuple(name for name in thing.ids if catalogue.mounts[name].kind in kinds)
    return replace(thing, ids=fitting) if fitting else thing


def _of_its_pitch(thing: Thing, pitch: float | None, catalogue: Catalogue) -> Thing:
    """Of the mounts that a thread may be, those of the pitch that was told; of no other, where one has just that pitch.

    Where the one mount named has another pitch, it is rather a mount of the same width of thread that has it.
    """
    if thing.kind != "mount" or not thing.ids or pitch is None:
        return thing
    off = _off_pitch(thing.ids, pitch, catalogue)
    if not thing.ambiguous:
        good = catalogue.assumptions["pitch-by-paper"].value
        if all(good.holds(by) for by in off.values()):
            return thing
        off = _off_pitch(_as_wide(thing.ids[0], catalogue), pitch, catalogue)
    good = catalogue.assumptions["pitch-by-paper"].value
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


def _as_wide(name: str, catalogue: Catalogue) -> tuple[str, ...]:
    """The other mounts whose thread is as wide."""
    own = catalogue.threads.get(catalogue.mounts[name].thread or "")
    if own is None:
        return ()
    wide = {
        id_ for id_, thread in catalogue.threads.items()
        if thread.major_mm.nominal == own.major_mm.nominal
    }  # fmt: skip
    found = [id_ for id_, mount in catalogue.mounts.items() if mount.thread in wide and id_ != name]
    return tuple(sorted(found, key=lambda id_: not is_known(catalogue.mounts[id_].register_mm)))


def _of_its_time(thing: Thing, of_film: bool, catalogue: Catalogue) -> Thing:
    """Of several mounts that the words may mean, not those of digital bodies, where a lens of film days is told of."""
    if thing.kind != "mount" or not thing.ambiguous or not of_film:
        return thing
    older = tuple(name for name in thing.ids if catalogue.mounts[name].kind not in ("mirrorless", "medium-format"))
    return replace(thing, ids=older) if older else thing


def _as_measured(thing: Thing, measured_mm: float | None, catalogue: Catalogue) -> Thing:
    """A lens named by one mount that measures as another of the same thread is of that other: 'C', 12.5 mm, is CS."""
    mount = catalogue.mounts.get(thing.id or "") if thing.kind == "mount" else None
    if measured_mm is None or mount is None or not mount.thread:
        return thing
    near = catalogue.assumptions["register-by-paper"].value.greatest
    if is_known(mount.register_mm) and abs(mount.register_mm.nominal - measured_mm) <= near:
        return thing  # no ruler tells it from the mount that was named
    alike = [
        (abs(row.register_mm.nominal - measured_mm), row.id)
        for row in catalogue.mounts.values()
        if row.thread == mount.thread and is_known(row.register_mm)
    ]
    off, other = min(alike, default=(near + 1, ""))
    return replace(thing, ids=(other,)) if off <= near else thing
