"""Filters alike that are counted, and what several are taken to make: 'two ND4', 'ND8 on ND8', 'ND4 + ND4 = ND8'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

TAKEN: Final = "taken"  # as unit: what others are thought to make together
_ND: Final = "ND"
_MOST: Final = 6  # that one screws together
_TWICE: Final = frozenset(["twice", "double", "doubled"])
_LEADS_COUNT: Final = frozenset(["VERB", "DET", "FILLER", "JOIN", "STOP", "CUE", "PREP"])
_MAKES: Final = frozenset([("CUE", "equals"), ("MEASURE", "total")])
_LIKENING: Final = "likening"
_BETWEEN: Final = frozenset(["DET", "FILLER", "PREP"])
_BESIDE: Final = frozenset(["and", "+", ","])  # values of what joins two that are both there


def with_filters_stacked(tokens: list[Token]) -> list[Token]:
    """The tokens with a filter of which there are several told so often, and with what they are taken to make apart."""
    if not any(_is_mark(token) for token in tokens):
        return tokens
    out: list[Token] = []
    for at, token in enumerate(tokens):
        if not _is_mark(token):
            out.append(token)
            continue
        if _is_taken(tokens, at, sum(_marks(one) for one in out)):
            out.append(token.as_(_ND, unit=TAKEN))
            continue
        many, led = _count(tokens, at)
        again = next((one for one in reversed(out) if _is_mark(one)), None) if _is_put_beside(tokens, at) else None
        if again is not None and again.value.split(", ")[0] == token.value:
            out[out.index(again)] = again.as_(_ND, value=f"{again.value}, {token.value}")
            continue
        out = out[: len(out) - led]
        out.append(token.as_(_ND, value=", ".join([token.value] * many)) if many > 1 else token)
    return out


def _is_mark(token: Token) -> bool:
    return token.kind == _ND and len(token.numbers) == 1


def _marks(token: Token) -> int:
    return len(token.value.split(", ")) if _is_mark(token) and token.unit != TAKEN else 0


def _count(tokens: list[Token], at: int) -> tuple[int, int]:
    """How many such filters there are, and how many tokens before this one tell it."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    led = 2 if at > 1 and tokens[at - 1].value == "of" else 1
    number = tokens[at - led] if at >= led else None
    if number is not None and number.kind in ("NUMBER", "COUNT", "TIMES"):
        lead = tokens[at - led - 1] if at > led else None
        many = number.numbers[0]
        if many in range(2, _MOST + 1) and (lead is None or lead.kind in _LEADS_COUNT):
            return int(many), led
    near = [one.text.casefold() for one in (after, number) if one is not None]
    return (2 if _TWICE & set(near) else 1), 0


def _is_taken(tokens: list[Token], at: int, before: int) -> bool:
    """'ND4 + ND4 = ND8', 'make ND64', 'the same as ND12': behind two filters or more, what they are thought to make."""
    led = [one for one in tokens[max(0, at - 3) : at] if one.kind != "DET"]
    return before > 1 and any((one.kind, one.value) in _MAKES or _LIKENING in one.groups for one in led[-2:])


def _is_put_beside(tokens: list[Token], at: int) -> bool:
    """Whether it stands behind another right before it, as one more: 'ND8 on ND8', 'ND4 and another ND4'."""
    start = at - 1
    while start >= 0 and (tokens[start].kind in _BETWEEN or tokens[start].value in _BESIDE):
        start -= 1
    joined = [one for one in tokens[start + 1 : at] if one.kind == "PREP" or one.value in _BESIDE]
    return start >= 0 and _is_mark(tokens[start]) and bool(joined)
