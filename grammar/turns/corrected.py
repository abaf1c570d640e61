"""A number told wrong before and put right: 'its 35 not 50', 'not 50, 35', after a 50 mm lens."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from engine.base.units import MM_PER_METRE
from grammar.hearing import Heard, hear
from grammar.intents import Weighed
from grammar.questions import OFF, Question
from grammar.turns.number_roles import ROLES, numbers_told
from grammar.turns.unit_put_right import unit_put_right
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import Token

_NUMBERS: Final = frozenset(["NUMBER", "LENGTH", "FNUM", "FOCAL"])
_OTHERS: Final = frozenset(["MOUNT", "BODY", "PIECE", "KIND", "FORMAT", "RANGE", "COMBO", "KEYED"])
_NOT: Final = "not"
_PAIR: Final = 2


def corrected(heard: Heard, before: Question, lexicon: Lexicon) -> Heard | None:
    """The line read anew with the right number as what the wrong one was of; None where none is put right."""
    pair = _pair(heard)
    if pair is None:
        return unit_put_right(heard, before, lexicon)
    right, wrong = pair
    role = next((name for name, value in numbers_told(before) if abs(value - _told(wrong)) < 1e-9), None)
    if role in (None, OFF):
        return None
    says = next(one.says for one in ROLES if one.name == role).format(f"{_told(right):g}")
    again = hear(says, lexicon, before.intent)
    return replace(again, line=replace(again.line, text=heard.text), weighed=Weighed((), {}))


def _pair(heard: Heard) -> tuple[Token, Token] | None:
    """The right and the wrong number: the one behind the 'not' is wrong."""
    tokens = heard.line.tokens
    numbers = [token for token in tokens if token.kind in _NUMBERS and not token.text.isalpha()]
    denied = [token for token in tokens if token.value == _NOT and token.kind == "VERB"]
    if len(numbers) != _PAIR or len(denied) != 1 or any(token.kind in _OTHERS for token in tokens):
        return None
    behind = next((one for one in numbers if one.column > denied[0].column), None)
    if behind is None:
        return None
    right = next(one for one in numbers if one is not behind)
    return right, behind


def _told(token: Token) -> float:
    """The number as it counts there: distances in metres."""
    return token.numbers[0] / (MM_PER_METRE if token.unit in ("m", "cm", "ft") else 1.0)
