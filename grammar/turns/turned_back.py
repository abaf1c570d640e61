"""A lens that was turned round and is the right way round again: 'not reversed', 'turn it back round'."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.questions import Question, Thing

_REVERSED: Final = "reversed"
_SAID: Final = "turned-back"
_LEAD: Final = "turned-back-lead"  # the small words before it
_WORD: Final = re.compile(r"[\w'-]+")


def turned_back(heard: Heard, told: Question, before: Question) -> Question:
    """The question with its one lens as it sits on its own mount, where the text says no more than that."""
    lenses = before.lenses
    if not told.follows or len(lenses) != 1 or not _is_turned(lenses[0]) or not _says_no_more(heard):
        return told
    lens = lenses[0]
    words = re.sub(r"\s*\breversed\b", "", lens.words)
    kind = None if lens.lens_kind == _REVERSED else lens.lens_kind
    plain = replace(lens, words=words, lens_kind=kind, traits=tuple(one for one in lens.traits if one != _REVERSED))
    known = tuple(plain if one == lens else one for one in told.known)
    return told.with_(
        intent=before.intent, lenses=(plain,), adapters=before.adapters, values=before.values, known=known
    )


def _is_turned(lens: Thing) -> bool:
    return lens.lens_kind == _REVERSED or _REVERSED in lens.traits


def _says_no_more(heard: Heard) -> bool:
    """Whether the text tells that the lens is turned back, and every word of it belongs to that."""
    spans = (*heard.places(_SAID), *heard.places(_LEAD))
    every = all(any(of.at <= one.start() and one.end() <= of.end for of in spans) for one in _WORD.finditer(heard.text))
    return bool(heard.places(_SAID)) and every
