"""A size in inches set against the mount of a body, or a frame: 'C-mount glass, MFT or 1 inch'."""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

from grammar.words.tokens import Token

_SET_AGAINST: Final = frozenset(["or", "vs"])
_LEADING: Final = frozenset(["PREP", "CUE", "DET", "STOP", "JOIN", "VERB"])
_CLOSING: Final = frozenset(["STOP", "JOIN", "CUE", "FRAME", "PREP"])


def with_inches_set_against(tokens: list[Token], hosts: Collection[str]) -> list[Token]:
    """The size as FORMAT. `hosts`: mounts that, named alone, are those of a body."""
    out = _ahead(list(tokens), hosts)
    for at in range(2, len(out)):
        one, join, size = out[at - 2 : at + 1]
        after = out[at + 1] if at + 1 < len(out) else None
        framed = one.kind == "FORMAT" or (one.kind == "MOUNT" and one.ids[:1] != () and one.ids[0] in hosts)
        inches = (size.kind, size.unit) == ("LENGTH", "in") and bool(size.ids) and "format" in size.implies
        ends = after is None or after.kind in _CLOSING
        if framed and inches and ends and join.kind == "JOIN" and join.value in _SET_AGAINST:
            out[at] = size.as_("FORMAT")
    return out


def _ahead(tokens: list[Token], hosts: Collection[str]) -> list[Token]:
    """'crop of 1 inch vs MFT': the size stands first."""
    for at in range(len(tokens) - 2):
        size, join, one = tokens[at : at + 3]
        framed = one.kind == "FORMAT" or (one.kind == "MOUNT" and one.ids[:1] != () and one.ids[0] in hosts)
        before = tokens[at - 1] if at else None
        led = before is None or before.kind in _LEADING
        inches = (size.kind, size.unit) == ("LENGTH", "in") and bool(size.ids) and "format" in size.implies
        if framed and inches and led and join.kind == "JOIN" and join.value in _SET_AGAINST:
            tokens[at] = size.as_("FORMAT")
    return tokens
