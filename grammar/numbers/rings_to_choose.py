"""Lengths of several rings for one pair, of which one is to be chosen: 'rings of 26.5, 26.7 and 26.9, which?'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.parted_rows import with_parted
from grammar.questions import RING
from grammar.words.token_kinds import CHOICES, SIZES
from grammar.words.tokens import Token

CHOICE: Final = "ring-choice"
_CHOOSING: Final = frozenset(["which", "better"])  # cues
_BETWEEN: Final = frozenset(["JOIN", "DET", "MARK", "CUE"])
_OF_LENS: Final = frozenset(["LENS", "KIND", "FNUM"])
_LEAST_MM: Final = 0.3
_APART_MM: Final = 1.0  # rings for one pair are no farther apart,
_APART: Final = 0.06  # or than this share of them
_LEAST: Final = 2


def with_rings_to_choose(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """Each length of such a row becomes KEYED, where a ring is spoken of and which of them is asked."""
    named = next((at for at, one in enumerate(tokens) if one.kind == "MEASURE" and one.value == CHOICE), None)
    if named is None and not any(one.kind == "PIECE" and one.value == RING for one in tokens):
        return tokens
    tokens = with_parted(tokens)
    row = next((row for at in range(len(tokens)) if len(row := _row(tokens, at)) >= _LEAST), [])
    between = tokens[row[0] : row[-1]] if row else []
    asked = named is not None or told & _CHOOSING or any(one.kind == "JOIN" and one.value in CHOICES for one in between)
    if not row or not asked:
        return tokens
    out = list(tokens)
    for at in row:
        out[at] = out[at].as_("KEYED", value=CHOICE, unit="mm")
    if named is not None:
        out[named] = out[named].as_("CUE")
    return out


def _row(tokens: list[Token], at: int) -> list[int]:
    """The lengths from here on that are nearly alike and told as finely, with no more than joins between."""
    row: list[int] = []
    while at < len(tokens):
        token = tokens[at]
        if _is_length(tokens, at):
            if row and not _is_alike(tokens[row[0]], token):
                break
            row.append(at)
        elif not row or not (token.kind in _BETWEEN or _is_another(token)):
            break
        at += 1
    return row


def _is_another(token: Token) -> bool:
    """'one 26.1, one 26.3', 'one measures 27.95 and the other is 28.08', 'one of 26.6': words that lead to the next."""
    counted = token.kind == "NUMBER" and token.numbers == (1.0,) and token.text.isalpha()
    told = (token.kind, token.value) in (("MEASURE", "size"), ("VERB", "be"), ("VERB", "it"), ("PREP", "of"))
    return counted or told or token.kind == "FILLER"


def _is_length(tokens: list[Token], at: int) -> bool:
    token, after = tokens[at], tokens[at + 1] if at + 1 < len(tokens) else None
    fine = token.kind in SIZES and token.unit in ("", "mm") and "." in token.text and len(token.numbers) == 1
    return fine and token.numbers[0] >= _LEAST_MM and not (after is not None and after.kind in _OF_LENS)


def _is_alike(one: Token, other: Token) -> bool:
    apart = abs(one.numbers[0] - other.numbers[0])
    return 0 < apart <= max(_APART * one.numbers[0], min(_APART_MM, 0.3 * one.numbers[0]))
