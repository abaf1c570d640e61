"""What a line begins with before it asks: a reply to what was asked for, '70. so how long a stack?', or what goes."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

from grammar.hearing import hear
from grammar.questions import Question, Unread
from grammar.turns.answering import asks, completed
from grammar.words.lexicon import Lexicon
from grammar.words.mentioned import mentioned

_REPLY: Final = re.compile(r"\s*([^.?!;,]*?\d+(?:\.\d+)? ?(?:mm|cm|m)?)\s*[.;,]+\s+(?=[^\W\d])(\S.*)", re.DOTALL)
_CLAUSE: Final = re.compile(r"\s*([^.;,?]+)[.;,]+\s+(\S.*)", re.DOTALL)
_TOLD_OF: Final = frozenset(["advice", "part-named"])  # features of what is told of a lens
_IN_PLACE: Final = "in-its-place"  # the key of phrases for what is put on
_FEW: Final = 7  # words of what tells so
_MOST: Final = 4  # words of the reply


def begun(
    text: str, lexicon: Lexicon, before: Question, read: Callable[[str], Question | Unread]
) -> tuple[Question, str] | None:  # fmt: skip
    """The question before with what the line begins with, and the rest of it, which asks; None where it asks at once.

    `read`: reads what it begins with after the question before.
    """
    first = answered_first(text, lexicon, before) if before.wants else None
    return first or placed_first(text, lexicon, before) or left_first(text, lexicon, before, read)


def placed_first(text: str, lexicon: Lexicon, before: Question) -> tuple[Question, str] | None:
    """'ok ring is on. can i add another 2mm': that what was spoken of is in its place, and the rest of the line."""
    split = _CLAUSE.fullmatch(text) if before.lenses and before.bodies else None
    if split is None or len(split[1].split()) > _FEW or any(sign.isdigit() for sign in split[1]):
        return None
    told = mentioned(split[1], lexicon.words.mentions, only=(_IN_PLACE,))
    first = hear(split[1], lexicon, before.intent).cast if told else None
    if first is None or first.bodies or any(not part.is_bare for part in first.lenses):
        return None
    return before, split[2]


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
