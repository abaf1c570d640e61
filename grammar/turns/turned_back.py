"""A lens that was turned round and is the right way round again: 'not reversed', 'turn it back round'."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.questions import Question, Thing

_REVERSED: Final = "reversed"
_BACK: Final = re.compile(
    r"(?:(?:and|now|ok|so|if|then) )*(?:the )?"
    r"(?:not reversed|un-?reversed|without reversing(?: it)?|(?:right|normal|usual) way (?:round|around|on)"
    r"|turn(?:ed)? (?:it )?back(?: (?:round|around))?|mounted (?:normally|the right way))\W*",
    re.IGNORECASE,
)


def turned_back(told: Question, before: Question) -> Question:
    """The question with its one lens as it sits on its own mount, where the text says no more than that."""
    lenses = before.lenses
    if not told.follows or len(lenses) != 1 or not _is_turned(lenses[0]) or not _BACK.fullmatch(told.text.strip()):
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
