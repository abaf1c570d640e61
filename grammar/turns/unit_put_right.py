"""The unit of a distance or mark told wrong before and put right: 'feet, not metres', 'its a feet scale' after 8 m."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from engine.base.units import MM_PER_FOOT
from grammar.hearing import Heard, hear
from grammar.intents import Weighed
from grammar.questions import Question
from grammar.words.groups import UNIT_FEET, UNIT_METRES
from grammar.words.lexicon import Lexicon
from grammar.words.mentioned import mentioned
from grammar.words.tokens import Token

_UNITS: Final = {UNIT_FEET: ("ft", MM_PER_FOOT), UNIT_METRES: ("m", 1000.0)}
_PUT_RIGHT: Final = ("put-right", "put-right-beside")
_THINGS: Final = frozenset(["LENS", "BODY", "PIECE", "KIND", "FORMAT", "FOCAL", "COMBO", "FNUM", "RANGE", "NUMBER"])
_ASKING: Final = frozenset(["what", "how", "how-much", "how-many", "can", "will", "why"])
_MM: Final = re.compile(r"(\d+(?:\.\d+)?) mm")
_SAME: Final = 0.005  # share by which two numbers may differ
_MARK, _NOT = "mark", "not"


def unit_put_right(heard: Heard, before: Question, lexicon: Lexicon) -> Heard | None:
    """The line read anew as the number of before in the right unit; None where no unit is put right."""
    tokens = heard.line.tokens
    right = [token for at, token in enumerate(tokens) if _unit(token) is not None and not _is_denied(tokens, at)]
    if len(right) != 1 or any(token.kind in _THINGS for token in tokens) or any(map(heard.tells, _ASKING)):
        return None
    says, size_mm = _UNITS[_unit(right[0]) or ""]
    mark = _MM.fullmatch(before.said(_MARK) or "")
    told_mm = float(mark[1]) if mark is not None else before.distance_mm
    if told_mm is None:
        return None
    wrong_mm = 1000.0 if says == "ft" else MM_PER_FOOT
    if (says == "ft") == before.feet:
        return None  # it was told so
    number = told_mm / wrong_mm
    again = right[0].numbers[0] / size_mm if right[0].numbers else None
    if again is not None and abs(again / number - 1) > _SAME:
        return None  # another number, and no other unit of that
    if again is None and not _is_put_right(heard, lexicon):
        return None
    text = f"{number:.4g} {says} mark" if mark else f"at {number:.4g} {says}"
    heard_so = hear(text, lexicon, before.intent)
    return replace(heard_so, line=replace(heard_so.line, text=heard.text), weighed=Weighed((), {}))


def _unit(token: Token) -> str | None:
    if token.kind == "LENGTH":
        return {"ft": UNIT_FEET, "m": UNIT_METRES}.get(token.unit)
    return next((group for group in _UNITS if group in token.groups), None)


def _is_denied(tokens: tuple[Token, ...], at: int) -> bool:
    return at > 0 and tokens[at - 1].value == _NOT


def _is_put_right(heard: Heard, lexicon: Lexicon) -> bool:
    """Whether the other unit is denied, or it is said what the number is in: 'in feet' alone asks for the answer so."""
    tokens = heard.line.tokens
    denied = any(_unit(token) is not None and _is_denied(tokens, at) for at, token in enumerate(tokens))
    is_so = any((token.kind, token.value) in (("DET", "its"), ("VERB", "be")) for token in tokens)
    phrases = {key: lexicon.words.mentions.get(key, ()) for key in _PUT_RIGHT}
    return denied or is_so or heard.tells("correct") or bool(list(mentioned(heard.text, phrases)))
