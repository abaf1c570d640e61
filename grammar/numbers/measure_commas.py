"""A comma between what was measured and how much: 'i measured its register, 45.2'."""

from __future__ import annotations

from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token


def without_measure_commas(tokens: list[Token]) -> list[Token]:
    """The tokens without a comma that only sets a measure's number off; one that parts two measures stays."""
    return [token for at, token in enumerate(tokens) if not _sets_off(tokens, at)]


def _sets_off(tokens: list[Token], at: int) -> bool:
    if tokens[at].kind != "JOIN" or tokens[at].text != "," or at < 1 or at + 1 >= len(tokens):
        return False
    before, behind = tokens[at - 1], tokens[at + 1]
    taken = at > 1 and tokens[at - 2].kind in SIZES  # '48 throat, 45.5 register'
    other = at + 2 < len(tokens) and tokens[at + 2].kind in ("MEASURE", "LENS", "MOUNT", "PIECE")
    return before.kind == "MEASURE" and before.value != "size" and behind.kind in SIZES and not (taken or other)
