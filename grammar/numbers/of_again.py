"""'a tube of 10, of 16, or of 26 mm', 'a tube of 25 or one of 50': each length of a row led by its own small words."""

from __future__ import annotations

from typing import Final

from grammar.words.token_kinds import LENGTHS
from grammar.words.tokens import Token

_OF: Final = "of"
_ONE: Final = frozenset(["one", "1", "a", "another"])
_STANDS: Final = frozenset(["NUMBER", "LETTER", "DET", "FILLER", "STANDIN"])
_JOINS: Final = frozenset(["JOIN"])


def without_of_again(tokens: list[Token]) -> list[Token]:
    """The tokens without those words but before the first length, which a piece leads to: one row of lengths."""
    out: list[Token] = []
    of_piece = False
    at = 0
    while at < len(tokens):
        token = tokens[at]
        joined = bool(out) and out[-1].kind in _JOINS and len(out) > 1
        if of_piece and joined and (after := _length_behind(tokens, at)) is not None:
            at = after
            continue
        if token.kind in LENGTHS and len(out) > 1 and out[-1].value == _OF and out[-2].kind == "PIECE":
            of_piece = not _is_counted(out[:-2])
        elif token.kind not in (*LENGTHS, *_JOINS):
            of_piece = False
        out.append(token)
        at += 1
    return out


def _is_counted(before: list[Token]) -> bool:
    """'two tubes of 12 and one of 25': how many of each there are is told, so the row is no choice of one."""
    return bool(before) and before[-1].kind == "NUMBER" and before[-1].numbers[0] > 1


def _length_behind(tokens: list[Token], at: int) -> int | None:
    """Where the length stands behind 'of' or 'one of' that begins here; None where none does."""
    if tokens[at].kind in _STANDS and tokens[at].text.casefold() in _ONE:
        at += 1
    told = at + 1 < len(tokens) and tokens[at].value == _OF and tokens[at + 1].kind in LENGTHS
    return at + 1 if told and not tokens[at + 1].text.isalpha() else None
