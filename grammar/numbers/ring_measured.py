"""Which number of a caliper's reading is the thickness of a ring that is named behind it."""

from __future__ import annotations

from itertools import dropwhile
from typing import Final

from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token

PIECES: Final = frozenset(["PIECE", "LINK"])  # 'ring', and what two mounts are joined by: 'the M-L'
_THE: Final = "the"
_NAMING: Final = frozenset(["PREP", "DET", "MOUNT", "LETTER", "JOIN", "MARK", "CUE", "FILLER"])


def ring_measured(tokens: list[Token], at: int) -> int | None:
    """The place of the thickness told with the measuring word at `at`, where a ring is what it is told of."""
    behind = _of_ring_behind(tokens, at)
    behind = _of_ring_named_after(tokens, at) if behind is None else behind
    return _of_ring_before(tokens, at) if behind is None else behind


def _of_ring_behind(tokens: list[Token], at: int) -> int | None:
    """'measured my M42 to E ring at 27.35': the decimal number behind the ring that follows the word."""
    piece = False
    for n, token in enumerate(tokens[at + 1 :], start=at + 1):
        if token.kind == "STOP":
            return None
        piece = piece or token.kind in PIECES
        if piece and token.kind in SIZES and "." in token.text:
            return n
    return None


def _of_ring_named_after(tokens: list[Token], at: int) -> int | None:
    """'caliper says 27.60 on my M42-E ring': the decimal beside the word, where a ring is what it is told of."""
    beside = [n for n in (at + 1, at - 1) if 0 <= n < len(tokens) and _is_decimal(tokens[n])]
    if not beside:
        return None
    rest = dropwhile(lambda one: one.kind in _NAMING, tokens[max(at, beside[0]) + 1 :])
    ring = next(rest, None)
    return beside[0] if ring is not None and ring.kind in PIECES else None


def _of_ring_before(tokens: list[Token], at: int) -> int | None:
    """'ring measured 27.30 M42 to E': the decimal between the word, behind a ring, and the two mounts of that."""
    ring = at > 0 and tokens[at - 1].kind in PIECES
    ends = [one.kind for one in tokens[at + 2 : at + 5]]
    joins = ends in (["MOUNT", "PREP", "MOUNT"], ["MOUNT", "LINK", "MOUNT"])
    return at + 1 if ring and joins and _is_decimal(tokens[at + 1]) else None


def _is_decimal(token: Token) -> bool:
    return token.kind in SIZES and token.unit in ("", "mm") and "." in token.text


def pieces_told(tokens: list[Token]) -> int:
    """How many pieces are told of: 'a no-glass ring ... I measured the ring at 1.2' is one, said again."""
    seen: set[str] = set()
    count = 0
    for at, token in enumerate(tokens):
        if token.kind != "PIECE":
            continue
        again = at > 0 and tokens[at - 1].kind == "DET" and tokens[at - 1].value == _THE
        count += not (again and token.text.casefold() in seen)
        seen.add(token.text.casefold())
    return count
