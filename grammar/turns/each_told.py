"""Whether a mount is told of each lens spoken of: 'both are m42', 'they have the K mount'."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.questions import Question, Thing
from grammar.things.casting import Part

_EVERY: Final = frozenset(["pick:both", "pick:all"])  # cues
_OF_CAMERAS: Final = frozenset(["slr", "rangefinder"])  # kinds that tell what a lens was made for


def each_told(heard: Heard, before: Question, known: tuple[Thing, ...], part: Part) -> tuple[Thing, ...]:
    """The lenses that a mount is told of, where none was told of them before; none where it is of another lens."""
    every = any(cue.tells in _EVERY for cue in heard.cues) or (part.subject is not None and part.subject.is_several)
    more = part.focal or part.f_number or part.zoom or part.formats or set(part.kinds) - _OF_CAMERAS
    pool = before.lenses if len(before.lenses) > 1 else known
    open_yet = len(pool) > 1 and all(one.kind != "lens" and not one.ids for one in pool)
    alone = len(heard.cast.lenses) == 1 and not (heard.cast.pieces or heard.cast.bodies)
    counted = part.count in (None, len(pool))
    return pool if every and part.mounts and counted and not more and open_yet and alone else ()
