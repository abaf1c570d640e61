"""The number that goes with a limit: 'at most 2 adapters', 'under 40'; and what is under a lens, which is none."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_OF_GLASS: Final = frozenset(["without-glass", "with-glass"])
_DESCRIBING: Final = frozenset(["MOUNT", "LINK", "LENGTH", "NUMBER"])
_LEAST_PRICE: Final = 3.0  # of a bare number that may be one
_ARTICLES: Final = frozenset(["A", "the"])
_BEFORE: Final = _DESCRIBING | {"DET", "PREP"}


def with_limits_apart(tokens: list[Token]) -> list[Token]:
    """'with a 1 mm glassless plate', 'an FD-EF no-glass ring': the limit goes before all that is told of the piece."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        place = len(out)
        while place and out[place - 1].kind in _BEFORE:
            place -= 1
            led = place > 0 and out[place - 1].kind == "PREP"
            if out[place].kind == "PREP" or (out[place].kind == "DET" and not led):
                break
        led = token.kind == "LIMIT" and token.value in _OF_GLASS and _leads_to_piece(tokens[at + 1 :])
        told = led and any(one.kind in _DESCRIBING for one in out[place:])
        out.insert(place if told else len(out), token)
    return out


def _leads_to_piece(behind: list[Token]) -> bool:
    heads = [one for one in behind[:4] if one.kind not in _DESCRIBING]
    return bool(heads) and heads[0].kind == "PIECE"


def under_lens(tokens: list[Token]) -> list[Token]:
    """'a 0.5 mm spacer under my 35': what a piece is put under is a lens, and no limit."""
    out = []
    for at, token in enumerate(tokens):
        kinds = [one.kind for one in tokens[at + 1 : at + 3]]
        under = token.kind == "LIMIT" and token.value == "under" and kinds in (["DET", "NUMBER"], ["DET", "FOCAL"])
        piece = any(one.kind == "PIECE" for one in tokens[:at])
        lens = [one.kind for one in tokens[at + 3 : at + 4]] in (["KIND"], ["LENS"], ["FNUM"], ["MOUNT"])
        lens = lens or (
            under and tokens[at + 1].value in _ARTICLES and tokens[at + 2].text.isdecimal()
        )  # no price is 'a 50'
        out.append(token.as_("CUE") if under and (piece or lens) else token)
    return out


def limited(tokens: list[Token]) -> list[Token]:
    """'at most 2 adapters', 'under 40': the number goes with its limit."""
    out: list[Token] = []
    at = 0
    while at < len(tokens):
        token = tokens[at]
        if token.kind == "LIMIT" and token.value in ("at-most", "under", "best"):
            rest = tokens[at + 1 : at + 3]
            limit, used = _limit(token, rest)
            out.append(limit)
            at += 1 + used
            continue
        out.append(token)
        at += 1
    return out


def _limit(token: Token, rest: list[Token]) -> tuple[Token, int]:
    if rest and rest[0].kind in ("NUMBER", "COUNT", "PRICE", "FOCAL"):
        number, text = rest[0].numbers, f"{token.text} {rest[0].text}"
        counts = rest[0].kind != "PRICE" and len(rest) > 1 and rest[1].kind == "PIECE"
        if token.value == "best":
            return token.as_("LIMIT", value="best", numbers=number, text=text), 1
        if counts or (rest[0].kind == "COUNT" and token.value == "at-most"):
            return token.as_("LIMIT", value="pieces", numbers=number, text=text), 2 if counts else 1
        if rest[0].kind != "PRICE" and 0 <= max(number) < _LEAST_PRICE:
            return token.as_("CUE"), 0  # 'is the total under 1'
        return token.as_("LIMIT", value="price", numbers=number, text=text), 1
    return token.as_("CUE"), 0
