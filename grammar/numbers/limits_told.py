"""The number that goes with a limit: 'at most 2 adapters', 'under 40'; and what is under a lens, which is none."""

from __future__ import annotations

from grammar.words.tokens import Token


def under_lens(tokens: list[Token]) -> list[Token]:
    """'a 0.5 mm spacer under my 35': what a piece is put under is a lens, and no limit."""
    out = []
    for at, token in enumerate(tokens):
        kinds = [one.kind for one in tokens[at + 1 : at + 3]]
        under = token.kind == "LIMIT" and token.value == "under" and kinds in (["DET", "NUMBER"], ["DET", "FOCAL"])
        piece = any(one.kind == "PIECE" for one in tokens[:at])
        lens = [one.kind for one in tokens[at + 3 : at + 4]] in (["KIND"], ["LENS"], ["FNUM"], ["MOUNT"])
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
        return token.as_("LIMIT", value="price", numbers=number, text=text), 1
    return token.as_("CUE"), 0
