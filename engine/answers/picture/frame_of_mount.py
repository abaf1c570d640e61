"""Which of the small frames a word such as 'APS-C' means on a body: the one that bodies of its mount have."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing

_USUAL: Final = "aps-c-1.5"  # what the word means where no mount tells
_ALIKE: Final = "aps-c"  # how the ids of those begin that go by the same word
_FACTOR: Final = "1.5"


def with_frame_of_mount(question: Question, facts: Catalogue) -> Question:
    """'50 mm on an APS-C EF body': bodies of that mount have the frame of 1.6, and no other that is called so."""
    mounts = {thing.ids[0] for thing in question.bodies if thing.kind == "mount" and thing.ids}
    mount = facts.mounts.get(next(iter(mounts))) if len(mounts) == 1 else None
    own = mount.smallest_format if mount is not None else None
    if own is None or not own.startswith(_ALIKE) or own == _USUAL or _FACTOR in (question.said("crop") or ""):
        return question
    bodies = tuple(
        replace(one, format=own) if one.format == _USUAL and _is_by_word(one) else one for one in question.bodies
    )
    things = tuple(
        replace(one, ids=(own,)) if one.kind == "format" and one.ids == (_USUAL,) and _is_by_word(one) else one
        for one in question.things
    )
    same = bodies == question.bodies and things == question.things
    return question if same else question.with_(bodies=bodies, things=things)


def _is_by_word(thing: Thing) -> bool:
    return _FACTOR not in thing.words
