"""A lens whose thread was told has that thread, and not the one that most lenses of its kind have."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.found.threads_told import thread_named
from engine.answers.parts.near_enough import thread_width_mm
from engine.answers.parts.said import number
from engine.answers.seat.seen import is_coupled_by_lugs
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.base.units import MM_PER_INCH
from engine.facts.catalogue import Catalogue
from engine.facts.records import Mount, Thread
from grammar.kinds import IDENTIFY_MOUNT, LOOK_ALIKE
from grammar.questions import Question, Thing

MEASURED: Final = "flange_to_image"
SCREW: Final = "screw"
NEEDS_TUBE_LENS: Final = "needs-tube-lens"  # trait of mounts whose lenses form no image by themselves
ASSUMED: Final = "assumed mount"  # trait of a lens whose kind alone tells its mount
_METRIC: Final = re.compile(r"M?(\d+(?:\.\d+)?)(?: mm)? x (\d+(?:\.\d+)?)(?![\d.])(?! ?tpi)")
# as such threads are told: '1 in-32', '5/8 in-32', and '39 x 26 tpi' by a width in mm
_INCHES: Final = re.compile(r"(\d*\.?\d+)(?:/(\d+))? in-(\d+)")
_MIXED: Final = re.compile(r"M?(\d+(?:\.\d+)?) ?x ?(\d+) tpi")
_WIDTH: Final = re.compile(r"(\d+(?:\.\d+)?) mm")
_INCHES_WIDE: Final = re.compile(r"(\d*\.?\d+)(?:/(\d+))? inch(?: thread)?")
_PITCH_MM: Final = 0.02


def with_thread_told(question: Question, facts: Catalogue) -> Question:
    """'an industrial lens, M42x1', 'a 58 with 1-32 thread': with the mounts of that thread, else as it is.

    They stand in place of an assumed mount, or of none; not where the lens's own register was measured.
    """
    lens = question.lens
    told = _thread_of(question.said("thread") or "") if lens is not None and len(question.lenses) == 1 else None
    plain = lens is not None and _has_no_mount(lens, question)
    if lens is None or not (ASSUMED in lens.traits or plain):
        return question
    if plain and question.said(MEASURED) is not None:
        return question
    named = thread_named(question.said("thread") or "", facts) if question.bodies else None
    if told is None and named is None:
        ids = _by_width_alone(question, lens, facts)
    else:
        mounts = facts.mounts.values()
        found = [one for one in mounts if (_has(one, *told, facts) if told is not None else _by_name(one, named))]
        ids = _of_kind([mount.id for mount in sorted(found, key=lambda mount: _rarity(mount, facts))], lens, facts)
    if not ids or lens.id in ids:
        return question
    traits = tuple(trait for trait in lens.traits if trait != ASSUMED)
    meant: Thing = replace(lens, ids=ids if plain else ids[:1], kind="mount", traits=traits)
    return replace(question, lenses=(meant,))


def _by_width_alone(question: Question, lens: Thing, facts: Catalogue) -> tuple[str, ...]:
    """The mounts whose screw a caliper reads so, in the order in which they are meant; of its kind where told."""
    told = _width_mm(question.said("thread") or "")
    if told is None or not question.bodies:
        return ()
    rows = [row for row in facts.shared.values() if is_known(row.across_mm) and row.across_mm.holds(told)]
    ids = dict.fromkeys(one for row in rows for one in (((row.likely,) if row.likely else ()) + row.mounts))
    could = _of_kind(list(ids), lens, facts)
    if lens.f_number is not None:  # what forms no image by itself is told by its magnification and aperture
        could = tuple(one for one in could if NEEDS_TUBE_LENS not in facts.mounts[one].traits)
    return could


def _of_kind(ids: list[str], lens: Thing, facts: Catalogue) -> tuple[str, ...]:
    """Of the mounts of a thread those of the kind of lens that was told; all where none is."""
    of_kind = tuple(one for one in ids if lens.lens_kind is not None and facts.mounts[one].kind == lens.lens_kind)
    if lens.ids or lens.lens_kind is None:
        return of_kind or tuple(ids)
    return of_kind  # a projector lens is clamped, whatever thread its barrel has


def _width_mm(told: str) -> float | None:
    """Of a screw told by its width alone: '25.3 mm', '1 inch thread'."""
    found = _WIDTH.fullmatch(told)
    if found is not None:
        return float(found[1])
    inches = _INCHES_WIDE.fullmatch(told)
    return MM_PER_INCH * float(inches[1]) / float(inches[2] or 1) if inches is not None else None


def _has_no_mount(lens: Thing, question: Question) -> bool:
    """A lens told by its numbers alone, or put on a body."""
    told = lens.focal_length_mm is not None or (bool(question.bodies) and question.intent != LOOK_ALIKE)
    return not lens.ids and not lens.kind and told


def _by_name(mount: Mount, thread: Thread | None) -> bool:
    return thread is not None and mount.thread == thread.id and mount.kind != "filter"


def _thread_of(told: str) -> tuple[float, float] | None:
    """Width and pitch in mm of a thread told by both; None of one told by its width, or of two."""
    threads = [(float(width), float(pitch)) for width, pitch in _METRIC.findall(told)]
    threads += [(float(width), MM_PER_INCH / float(tpi)) for width, tpi in _MIXED.findall(told)]
    for over, under, tpi in _INCHES.findall(told):
        threads.append((MM_PER_INCH * float(over) / float(under or 1), MM_PER_INCH / float(tpi)))
    return threads[0] if len(threads) == 1 else None


def of_another_lens(question: Question, facts: Catalogue) -> Question:
    """'thread is 42 mm, ten crests in 7.5' in a talk of a bayonet lens: told of another, whose mount is not known."""
    told, lens, prior = question.said("thread"), question.lens, question.prior
    mount = facts.mounts.get(lens.id or "") if lens is not None and lens.kind == "mount" else None
    new = told is not None and (prior is None or prior.said("thread") != told)
    if mount is None or lens is None or not (new and question.follows) or question.intent != IDENTIFY_MOUNT:
        return question
    named = bool(lens.words) and lens.words.casefold() in question.text.casefold()
    if mount.coupling == SCREW or named or _METRIC.search(told or "") is None:
        return question
    return question.with_(lenses=(), bodies=())


def without_assumed(question: Question, facts: Catalogue) -> Question:
    """'a tv lens, three slots, 48 mm flange': without the mount that such lenses mostly have, where that cannot be."""
    lens, told = question.lens, number(question, "flange_to_image")
    if lens is None or ASSUMED not in lens.traits:
        return question
    good = facts.assumptions["register-by-paper"].value.greatest
    sizes = [facts.mounts[name].register_mm for name in lens.ids if name in facts.mounts]
    near = told is None or any(is_known(size) and abs(size.nominal - told) <= good for size in sizes)
    if near and not is_coupled_by_lugs(question):
        return question
    rest = tuple(trait for trait in lens.traits if trait != ASSUMED)
    return question.with_(lenses=(replace(lens, ids=(), kind="", traits=rest), *question.lenses[1:]))


def _has(mount: Mount, width: float, pitch: float, facts: Catalogue) -> bool:
    thread = facts.threads.get(mount.thread or "")
    if thread is None or mount.kind == "filter" or not is_known(thread.pitch_mm):
        return False
    as_wide = abs(thread.major_mm.nominal - width) <= thread_width_mm(facts)
    return as_wide and abs(thread.pitch_mm.nominal - pitch) <= _PITCH_MM


def _rarity(mount: Mount, facts: Catalogue) -> tuple[int, str]:
    return -sum(ring.front == mount.id for ring in facts.adapters.values()), mount.id
