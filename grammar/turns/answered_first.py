"""A reply to what was asked for, with a question right behind it: '70. so how long a stack?'."""

from __future__ import annotations

import re
from typing import Final

from grammar.hearing import hear
from grammar.questions import Question
from grammar.turns.answering import asks, completed
from grammar.words.lexicon import Lexicon

_REPLY: Final = re.compile(r"\s*([^.?!;,]*?\d+(?:\.\d+)? ?(?:mm|cm|m)?)\s*[.;,]+\s+(?=[^\W\d])(\S.*)", re.DOTALL)
_MOST: Final = 4  # words of the reply


def answered_first(text: str, lexicon: Lexicon, before: Question) -> tuple[Question, str] | None:
    """The question before, completed by what the line begins with, and the rest of it; None where that is no reply."""
    split = _REPLY.fullmatch(text) if before.wants else None
    if split is None or len(split[1].split()) > _MOST:
        return None
    if "?" not in split[2] and not asks(hear(split[2], lexicon, before.intent)):
        return None  # '48 mm. it says 50'
    done = completed(hear(split[1], lexicon, before.intent), before, lexicon.hosts)
    return (done, split[2]) if done is not None else None
