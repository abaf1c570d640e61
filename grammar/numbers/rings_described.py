"""How thick a ring is, told of it behind its name: 'the ring I own is a flat one of 1 mm', 'with a 1.5 mm seat'."""

from __future__ import annotations

from typing import Final

from grammar.questions import RING
from grammar.words.groups import SEAT_NAMED
from grammar.words.tokens import Token

_BE: Final = "be"
_OF, _WITH = "of", "with"
_ONE: Final = "one"
_BETWEEN: Final = frozenset(["VERB", "DET", "FILLER", "NUMBER", "PREP", "CUE"])
_LED: Final = frozenset([_OF])  # the one preposition that a size may follow
_ENDS: Final = frozenset(["STOP", "JOIN"])
_MOST: Final = 9  # tokens between the ring and its size
_LONGEST_MM: Final = 80.0


def with_rings_described(tokens: list[Token]) -> list[Token]:
    """Such a length becomes KEYED as the thickness; nothing where one is told already."""
    if any(one.kind == "KEYED" and one.value == "thickness" for one in tokens):
        return tokens
    for at, token in enumerate(tokens):
        if token.kind != "PIECE" or token.value != RING:
            continue
        place = _seat_behind(tokens, at)
        place = _one_behind(tokens, at) if place is None else place
        if place is not None:
            return [*tokens[:place], tokens[place].as_("KEYED", value="thickness", unit="mm"), *tokens[place + 1 :]]
    return tokens


def _seat_behind(tokens: list[Token], at: int) -> int | None:
    """'adapter with a 1.5 mm seat', 'ring with a seat of 1.5 mm'."""
    rest = [n for n in range(at + 1, min(len(tokens), at + 6)) if tokens[n].kind != "DET"]
    if len(rest) < 3 or tokens[rest[0]].value != _WITH:
        return None
    one, two = tokens[rest[1]], tokens[rest[2]]
    if _is_size(one) and SEAT_NAMED in two.groups:
        return rest[1]
    third = rest[3] if len(rest) > 3 else None
    of = SEAT_NAMED in one.groups and two.value == _OF
    return third if of and third is not None and _is_size(tokens[third]) else None


def _one_behind(tokens: list[Token], at: int) -> int | None:
    """'the ring is a plain one of 1 mm', 'the one ring I have is a 1 mm one': behind 'is', with 'one' beside it."""
    said = one = False
    for n in range(at + 1, min(len(tokens), at + _MOST + 1)):
        token = tokens[n]
        if said and _is_size(token):
            after = tokens[n + 1] if n + 1 < len(tokens) else None
            headed = after is not None and after.text.casefold() == _ONE
            ends = after is None or after.kind in _ENDS
            return n if headed or (one and ends) else None
        if token.kind not in _BETWEEN or (token.kind == "PREP" and token.value not in _LED):
            return None
        said = said or (token.kind in ("VERB", "CUE") and token.value == _BE)
        one = one or (said and token.text.casefold() == _ONE)
    return None


def _is_size(token: Token) -> bool:
    return token.kind == "LENGTH" and token.unit == "mm" and 0 < token.numbers[0] <= _LONGEST_MM
