"""What a line begins with before it asks: a reply to what was asked for, '70. so how long a stack?', or what goes."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

from engine.base.compact import replace
from grammar.hearing import hear
from grammar.questions import RING, Question, Unread
from grammar.turns.answering import asks, completed
from grammar.words.lexicon import Lexicon

_REPLY: Final = re.compile(r"\s*([^.?!;,]*?\d+(?:\.\d+)? ?(?:mm|cm|m)?)\s*[.;,]+\s+(?=[^\W\d])(\S.*)", re.DOTALL)
_CLAUSE: Final = re.compile(r"\s*([^.;,?]+)[.;,]+\s+(\S.*)", re.DOTALL)
_TOLD_OF: Final = frozenset(["advice", "part-named"])  # features of what is told of a lens
_MOST: Final = 4  # words of the reply
_MOST_FITTED: Final = 7  # and of what tells that a ring is on
_FITTED: Final = frozenset(["on", "in", "fitted", "mounted", "installed", "seated", "between", "there"])


def begun(
    text: str, lexicon: Lexicon, before: Question, read: Callable[[str], Question | Unread]
) -> tuple[Question, str] | None:  # fmt: skip
    """The question before with what the line begins with, and the rest of it, which asks; None where it asks at once.

    `read`: reads what it begins with after the question before.
    """
    told = answered_first(text, lexicon, before) if before.wants else None
    return told or fitted_first(text, lexicon, before) or left_first(text, lexicon, before, read)


def answered_first(text: str, lexicon: Lexicon, before: Question) -> tuple[Question, str] | None:
    """The question before, completed by what the line begins with, and the rest of it; None where that is no reply."""
    split = _REPLY.fullmatch(text) if before.wants else None
    if split is None or len(split[1].split()) > _MOST:
        return None
    rest = hear(split[2], lexicon, before.intent)
    placed = any(part.has_mount for part in rest.cast.bodies)  # '7.5. body is L'
    if "?" not in split[2] and not asks(rest) and not placed:
        return None  # '48 mm. it says 50'
    done = completed(hear(split[1], lexicon, before.intent), before, lexicon.hosts)
    return (done, split[2]) if done is not None else None


def fitted_first(text: str, lexicon: Lexicon, before: Question) -> tuple[Question, str] | None:
    """'ok ring is on. can i add 2 mm for close work?': the lens on its right ring, and the rest, which asks.

    None where no ring is told to be on, or nothing is asked of the lens on its body after that.
    """
    split = _CLAUSE.fullmatch(text)
    words = split[1].casefold().split() if split is not None else []
    pair = any(one.ids for one in before.lenses) and any(one.ids for one in before.bodies)
    if split is None or not pair or not words or words[-1] not in _FITTED or len(words) > _MOST_FITTED:
        return None
    told = hear(split[1], lexicon, before.intent)
    others = told.cast.lenses or told.cast.bodies or told.cast.frames or told.cast.without or "?" in split[1]
    ring = told.cast.pieces[0] if len(told.cast.pieces) == 1 else None
    ringed = ring is not None and ring.piece == RING and (ring.is_bare or ring.named is not None)
    if others or not ringed or not ("?" in split[2] or asks(hear(split[2], lexicon, before.intent))):
        return None
    limits = replace(before.limits, without=(), pieces=None)
    return before.with_(text="", asked="", mentioned=(), limits=limits, topic=None), split[2]


def left_first(
    text: str, lexicon: Lexicon, before: Question, read: Callable[[str], Question | Unread]
) -> tuple[Question, str] | None:
    """'scrap the X, only the L stays. how thick is each?' after several: those that stay, and the rest of the line.

    `read`: reads what it begins with after the question before. None where that leaves nothing out.
    """
    split = _CLAUSE.fullmatch(text) if len(before.bodies) > 1 or len(before.lenses) > 1 else None
    if split is None or "?" in split[1]:
        return None
    if hear(split[1], lexicon, before.intent).features & _TOLD_OF:
        return None  # 'the m42 has an A/M switch, which side': told of it, and the others stay
    left = read(split[1])
    if isinstance(left, Unread) or left.intent != before.intent or not left.follows:
        return None
    sides = ((left.lenses, before.lenses), (left.bodies, before.bodies))
    fewer = sum(map(len, (left.lenses, left.bodies))) < sum(map(len, (before.lenses, before.bodies)))
    inside = all(now and all(any(one.ids == old.ids for old in was) for one in now) for now, was in sides)
    return (left, split[2]) if fewer and inside else None
