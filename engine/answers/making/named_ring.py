"""A ring to make that is told by the name of one that is sold: 'machining an SR (MD) to Z ring'."""

from __future__ import annotations

from typing import Final

from engine.facts.catalogue import Catalogue
from grammar.questions import RING, Question, Thing

_MOUNT: Final = "mount"


def as_pair(question: Question, facts: Catalogue) -> Question:
    """The question with the mounts of the one ring named as those of lens and body, where neither is told."""
    named = [facts.adapters[one.ids[0]] for one in question.adapters if one.ids and one.ids[0] in facts.adapters]
    told = question.lenses or question.bodies or len(question.adapters) != 1 or not named
    if told or named[0].stackable or not {named[0].front, named[0].rear} <= facts.mounts.keys():
        return question
    lens, body = (Thing(_MOUNT, (id_,), facts.mounts[id_].designation) for id_ in (named[0].front, named[0].rear))
    return question.with_(lenses=(lens,), bodies=(body,), adapters=(Thing("", (), RING, piece=RING),))
