"""Mounts told of several lenses spoken of: 'both are m42', 'the 50 is F mount and the 135 m42'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.questions import Question, Thing
from grammar.things.casting import Part

_OTHER: Final = "pick:other"
_TWO: Final = 2
_ASSUMED: Final = "assumed mount"
_EVERY: Final = frozenset(["pick:both", "pick:all"])  # cues
_OF_CAMERAS: Final = frozenset(["slr", "rangefinder"])  # kinds that tell what a lens was made for


def each_told(heard: Heard, before: Question, known: tuple[Thing, ...], part: Part) -> tuple[Thing, ...]:
    """The lenses that a mount is told of, where none was told of them before; none where it is of another lens."""
    every = any(cue.tells in _EVERY for cue in heard.cues) or (part.subject is not None and part.subject.is_several)
    more = part.focal or part.f_number or part.zoom or part.formats or set(part.kinds) - _OF_CAMERAS
    pool = before.lenses if len(before.lenses) > 1 else known
    open_yet = len(pool) > 1 and all(one.kind != "lens" and not one.ids for one in pool)
    alone = len(heard.cast.lenses) == 1 and not heard.cast.pieces
    counted = part.count in (None, len(pool))
    return pool if every and part.mounts and counted and not more and open_yet and alone else ()


def told_apart(heard: Heard, known: tuple[Thing, ...]) -> tuple[tuple[Thing, Part], ...]:
    """Each lens spoken of with what is told of its own mount; none where that is not told of two or more.

    'the other one is K': of two lenses the one that was not named by its length.
    """
    cast = heard.cast
    parts = [part for part in cast.lenses if not part.is_bare]
    more = cast.pieces or any(part.mounts for part in cast.bodies)
    if len(parts) < _TWO or more or not all(part.mounts and not part.kinds for part in parts):
        return ()
    out: list[tuple[Thing, Part]] = []
    for part in parts:
        left = [one for one in known if one not in [lens for lens, _ in out]]
        at = [one for one in left if part.focal is not None and part.focal == one.focal_length_mm]
        other = bool(out) and len(known) == _TWO and any(cue.tells == _OTHER for cue in heard.cues)
        at = at or (left if other else [])
        if len(at) != 1 or at[0].kind == "lens" or part.f_number not in (None, at[0].f_number):
            return ()
        out.append((at[0], part))
    return tuple(out)


def with_told(thing: Thing, part: Part) -> Thing:
    """The lens with what was said of it; what was not said stays."""
    said = replace(part, sort="lens").thing()
    traits = tuple(one for one in thing.traits if not (said.ids and one == _ASSUMED))
    return replace(
        thing,
        kind=said.kind if said.ids else thing.kind,
        ids=said.ids or thing.ids,
        focal_length_mm=said.focal_length_mm or thing.focal_length_mm,
        f_number=said.f_number or thing.f_number,
        format=said.format or thing.format,
        lens_kind=said.lens_kind or thing.lens_kind,
        traits=tuple(dict.fromkeys((*traits, *said.traits))),
    )


def is_open(part: Part, thing: Thing) -> bool:
    """Whether a mount is told beside the length of a lens of which none was told."""
    own = part.focal is not None and part.focal == thing.focal_length_mm
    return own and bool(part.mounts) and not thing.ids and part.f_number in (None, thing.f_number)
