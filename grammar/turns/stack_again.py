"""A stack that is to come to a length, asked of again: 'without the 14', 'and for 42', 'how close is a 50 on it'."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from grammar.hearing import Heard
from grammar.kinds import CLOSE_UPS
from grammar.questions import Question, Thing
from grammar.things.casting import SPACER
from grammar.turns.answer_told import STACK, told_as
from grammar.words.mentioned import mentioned

AT_HAND: Final = "at_hand"
TOTAL: Final = "total"
_ASKING_ELSE: Final = ("how-close", "how-big", "infinity", "macro", "dof", "exposure", "how-far")
_GONE: Final = "piece-gone"
_MORE: Final = "piece-more"
_ONLY: Final = "piece-only"
_NUMBERS: Final = re.compile(r"\d+(?:\.\d+)?")
_OF_OTHERS: Final = frozenset(["LENS", "MOUNT", "BODY", "FORMAT", "KIND", "COMBO", "RANGE", "FNUM", "SHUTTER", "ISO"])
_MOST: Final = 12  # words of such a line
_LONGEST: Final = 300.0  # mm


def stack_again(heard: Heard, before: Question, phrases: Mapping[str, tuple[str, ...]]) -> Question | None:
    """The question before with other pieces at hand, or another length to come to; None where neither is told."""
    held, tokens = before.said(AT_HAND), heard.line.tokens
    told = [token for token in tokens if token.kind in ("NUMBER", "LENGTH") and not token.text.isalpha()]
    others = any(token.kind in _OF_OTHERS or token.unit not in ("", "mm") for token in tokens if token.numbers)
    others = others or any(token.kind in _OF_OTHERS for token in tokens)
    if held is None or before.said(TOTAL) is None or not told or others or len(tokens) > _MOST:
        return None
    numbers = [one for token in told for one in token.numbers]
    keys = {one.key for one in mentioned(heard.text, phrases)}
    at_hand = [float(one) for one in _NUMBERS.findall(held)]
    if _GONE in keys and all(one in at_hand for one in numbers):
        for one in numbers:
            at_hand.remove(one)
        return _with(before, heard, AT_HAND, at_hand) if at_hand else None
    if _ONLY in keys and all(one in at_hand for one in numbers):
        return _with(before, heard, AT_HAND, numbers)
    if _MORE in keys:
        return _with(before, heard, AT_HAND, [*at_hand, *numbers])
    asks = any(map(heard.tells, _ASKING_ELSE))
    return _with(before, heard, TOTAL, numbers) if len(numbers) == 1 and numbers[0] <= _LONGEST and not asks else None


def with_stack_kept(got: Question, before: Question) -> Question:
    """'how close does a 50 mm get with that' after the tubes for 35 mm: with as much between as they come to."""
    told = next(iter(told_as(before, STACK)), None)
    sized = any(piece.thickness_mm is not None or piece.ids for piece in got.adapters)
    if told is None or not got.follows or got.intent not in CLOSE_UPS or sized or got.lens is None:
        return got
    tube = Thing(words=f"{told:g} mm of tube", thickness_mm=(told, told), piece=SPACER)
    values = got.rest(AT_HAND, TOTAL, "numbers")
    return got.with_(adapters=(tube,), values=values)


def _with(before: Question, heard: Heard, key: str, numbers: list[float]) -> Question:
    text = ", ".join(f"{one:g} mm" for one in numbers)
    values = tuple((name, text if name == key else value) for name, value in before.values)
    pieces = tuple(piece for piece in before.adapters if piece.thickness_mm is None)
    return before.with_(
        text=heard.text, values=values, adapters=pieces, follows=True, wants="", instead=(), number=None
    )  # fmt: skip
