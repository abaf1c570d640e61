"""Rings told in a row, of which each takes what the one before it ends on: 'DKL to M42 then M42-EF'."""

from __future__ import annotations

from grammar.words.tokens import Token, is_plural

RING = "adapter"
_SLR = "slr"


def leads(token: Token) -> bool:
    return token.kind == "PREP" and token.value == "to"


def without_slrs(tokens: list[Token]) -> list[Token]:
    """'M39 SLR to M42 ring': the camera tells which mount of that name it is, from which something leads on."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        ahead = tokens[at + 1 : at + 3]
        on = [one.kind for one in ahead] == ["PREP", "MOUNT"] and leads(ahead[0])
        if token.kind == "BODY" and token.text.casefold() == _SLR and on and out and out[-1].kind == "MOUNT":
            continue
        if token.kind == "DET" and out and out[-1].kind == "JOIN" and _is_pair(tokens, at + 1):
            continue  # 'C/Y to M plus the M to Z'
        out.append(token)
    return out


def _is_pair(tokens: list[Token], at: int) -> bool:
    row = tokens[at : at + 3]
    return [one.kind for one in row[::2]] == ["MOUNT", "MOUNT"] and (leads(row[1]) or row[1].text == "-")


def goes_on(tokens: list[Token], at: int) -> bool:
    """'DKL to M42 then M42-EF': of two pairs in a row the second begins where the first ends, so both are rings."""
    row = tokens[at + 2 : at + 7]
    if [one.kind for one in row[:2] + row[2::2]] != ["MOUNT", "JOIN", "MOUNT", "MOUNT"]:
        return False
    joined = all(leads(one) or one.text == "-" for one in (tokens[at + 1], row[3]))
    return joined and row[0].ids[:1] == row[2].ids[:1] and tokens[at].ids[:1] != row[4].ids[:1]


def is_piece(tokens: list[Token]) -> bool:
    return bool(tokens) and tokens[0].kind == "PIECE"


def leads_on(tokens: list[Token], at: int) -> bool:
    """Whether a pair that nothing heads is joined to one with a word for rings that takes what this one ends on."""
    row = tokens[at : at + 8]
    if len(row) < 8 or [row[n].kind for n in (2, 3, 4, 6, 7)] != ["MOUNT", "JOIN", "MOUNT", "MOUNT", "PIECE"]:
        return False
    linked = all(leads(row[n]) or row[n].text == "-" for n in (1, 5))
    return linked and row[7].value == RING and is_plural(row[7]) and row[2].ids[:1] == row[4].ids[:1]
