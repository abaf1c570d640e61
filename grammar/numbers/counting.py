"""Bare numbers that count things: '2 c-mount ones', '2x K, 1x F'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

MOST_THINGS: Final = 12  # a larger number before a lens is its focal length
_DESCRIBING: Final = frozenset(["MOUNT", "KIND", "TRAIT", "FORMAT"])
_NUMBERED: Final = frozenset(["LENGTH", "FOCAL", "FNUM", "COMBO", "NUMBER", "LIMIT", "PREP"])  # of the lens before
_SEVERAL: Final = frozenset(["lenses", "primes", "bodies", "cameras"])
_ENDS: Final = frozenset(["STOP", "JOIN", "PREP", "CUE", "LIMIT", "TRAIT"])


def is_so_many(tokens: list[Token], at: int) -> bool:
    """'2x K, 1x F': so many lenses of a mount; '2x M42 extender' is a factor."""
    number = tokens[at].numbers[0]
    rest = tokens[at + 1 : at + 3]
    mount = bool(rest) and rest[0].kind == "MOUNT"
    return mount and number == int(number) <= MOST_THINGS and not any(one.kind in ("PIECE", "LINK") for one in rest)


def is_several(head: Token) -> bool:
    return head.text.casefold().endswith("s")


def counts(tokens: list[Token], at: int) -> bool:
    """'2 c-mount ones', 'two old M42 lenses', '2 c-mount': so many of what is described right behind the number."""
    number, before = tokens[at].numbers[0], tokens[at - 1] if at else None
    listed = before is not None and (before.kind == "JOIN" or before.text.casefold() in _SEVERAL)
    one_more = number == 1 and listed  # '3 K lenses and 1 OM', 'two K lenses one OM'
    counts = number == int(number) and (2 <= number <= MOST_THINGS or one_more)
    if not counts or (before is not None and before.kind in _NUMBERED):
        return False
    end = at + 1
    while end < len(tokens) and tokens[end].kind in _DESCRIBING:
        end += 1
    if end == at + 1:
        return False
    head = tokens[end] if end < len(tokens) else None
    if head is not None and head.kind in ("LENS", "BODY", "MOUNTWORD"):
        return is_several(head)
    return all(one.kind == "MOUNT" for one in tokens[at + 1 : end]) and (head is None or head.kind in _ENDS)
