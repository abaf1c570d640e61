"""A length shut and how far it goes from there: '7.8 mm closed, extends by 6', '10.8 collapsed with 4 mm of travel'."""

from __future__ import annotations

from typing import Final

from grammar.things.ends_drawn import past_mounts
from grammar.words.groups import GIVES, OPEN_END, SHUT_END
from grammar.words.tokens import Token

_HELICOID, _RING = "helicoid", "adapter"
_DRAWN: Final = (_HELICOID, "bellows", _RING)  # the first of these that is told
_TRAVEL: Final = "travel"
_SMALL: Final = frozenset(["FILLER", "VERB", "DET", "PREP"])
_PLUS: Final = frozenset(["plus", "+"])
_APART: Final = frozenset(["JOIN", "MARK", *_SMALL])
_LONGEST: Final = 250.0  # mm, of what is drawn out
_NEAR: Final = 3  # tokens from a number to its word
_FAR: Final = 6  # and from the one length to the other


def with_shut_and_travel(tokens: list[Token]) -> list[Token]:
    """The travel as the length fully out: that shut and the travel together, in mm."""
    if not any(one.kind == "PIECE" and one.value in _DRAWN for one in tokens):
        return tokens
    for at, token in enumerate(tokens):
        shut = _shut(tokens, at) if _is_length(token) else None
        if shut is None:
            continue
        behind = max(at, shut) + 1
        while behind < len(tokens) and _is_apart(tokens[behind]):
            behind += 1
        span = _travel(tokens, behind if behind <= max(at, shut) + 1 + _FAR else len(tokens))
        if span is None:
            continue
        way, last = span
        low, high = token.numbers[0], round(token.numbers[0] + tokens[way].numbers[0], 3)
        ends = token.as_("RANGE", numbers=(low, high), unit="mm", text=f"{low:g}-{high:g}")
        return _behind_piece([*tokens[: min(at, shut)], *tokens[last + 1 :]], ends)
    return tokens


def _behind_piece(rest: list[Token], ends: Token) -> list[Token]:
    """The two ends right behind what is drawn out; a ring that goes so far is a helicoid."""
    at = next(n for value in _DRAWN for n, one in enumerate(rest) if (one.kind, one.value) == ("PIECE", value))
    value = _HELICOID if rest[at].value == _RING else rest[at].value
    behind = past_mounts(rest, at + 1)
    if behind > at + 1 and behind < len(rest) and rest[behind].kind == "PIECE":
        behind += 1  # 'a helicoidal M42-MFT adapter'
    return [*rest[:at], rest[at].as_("PIECE", value=value), *rest[at + 1 : behind], ends, *rest[behind:]]


def _shut(tokens: list[Token], at: int) -> int | None:
    """Where the word stands that tells the number to be the length shut: behind it, or right before it."""
    for ahead in range(at + 1, min(at + 1 + _NEAR, len(tokens))):
        if SHUT_END in tokens[ahead].groups:
            return ahead
        if tokens[ahead].kind not in _SMALL:
            break
    return at - 1 if at and SHUT_END in tokens[at - 1].groups else None


def _travel(tokens: list[Token], start: int) -> tuple[int, int] | None:
    """Where the travel stands, and the last token that tells of it: its number led by what it does, or named behind."""
    first = start
    while first < len(tokens) and not _is_length(tokens[first]) and _leads(tokens[first]):
        first += 1
    if first >= len(tokens) or first - start > _NEAR or not _is_length(tokens[first]):
        return None
    led = tokens[max(0, start - 1) : first]
    last = first
    for ahead in range(first + 1, min(first + 1 + _NEAR, len(tokens))):
        if tokens[ahead].value == _TRAVEL or OPEN_END in tokens[ahead].groups:
            last = ahead
        elif tokens[ahead].kind not in _SMALL:
            break
    added = any(one.kind == "JOIN" and one.text.casefold() in _PLUS for one in led)
    named = any(tokens[ahead].value == _TRAVEL for ahead in range(first + 1, last + 1))
    does = any((GIVES in one.groups and one.kind != "PREP") or one.value == _TRAVEL for one in led)
    return (first, last) if added or named or does else None


def _leads(token: Token) -> bool:
    return token.kind in _SMALL or GIVES in token.groups or token.value == _TRAVEL


def _is_apart(token: Token) -> bool:
    """Whether it may stand between the two: 'like a regular one', but nothing that tells of a move."""
    one = token.kind == "NUMBER" and not _is_length(token)
    return (one or token.kind in _APART) and GIVES not in token.groups


def _is_length(token: Token) -> bool:
    number = token.kind == "NUMBER" and not token.text[:1].isalpha()
    return (number or token.is_mm) and 0 < token.numbers[0] <= _LONGEST
