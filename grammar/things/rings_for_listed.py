"""Rings named by the body they all go on: 'how thick are E rings for OM, FD and K', 'MFT adapters for C and Pen F'."""

from __future__ import annotations

from typing import Final

from grammar.questions import RING
from grammar.words.tokens import Token, is_plural

_FOR, _ON = "for", "on"
_BETWEEN: Final = frozenset(["MARK", "CUE", "MEASURE", "VERB", "FILLER", "JOIN", "DET"])  # 'rings: how thick for'
_LISTING: Final = frozenset(["JOIN", "DET"])
_OF_LENSES: Final = frozenset(["LENS", "MOUNTWORD"])


def with_rings_for_listed(tokens: list[Token], hosts: frozenset[str]) -> list[Token]:
    """Told as 'rings for OM, FD and K on E', where the ring's one mount is that of a body and not all listed are.

    `hosts`: mounts that, named alone, are those of a body.
    """
    for at in range(len(tokens) - 4):
        body, ring = tokens[at : at + 2]
        of_host = body.kind == "MOUNT" and hosts.issuperset(body.ids[:1])
        told = of_host and (ring.kind, ring.value) == ("PIECE", RING) and is_plural(ring)
        if not told or (at and tokens[at - 1].kind in ("MOUNT", "PREP", "LINK")):
            continue
        start = at + 2
        while start < len(tokens) and tokens[start].kind in _BETWEEN:
            start += 1
        if start >= len(tokens) or tokens[start].value != _FOR:
            continue
        listed, end = _row(tokens, start + 1)
        if len(listed) < 2 or all(hosts.issuperset(one.ids[:1]) for one in listed):
            continue
        if any(one.kind in ("MOUNT", "BODY") for one in tokens[end:]):
            continue  # the body is told besides
        on = [tokens[start].as_("PREP", value=_ON, text=_ON), body]
        return [*tokens[:at], *tokens[at + 1 : end], *on, *tokens[end:]]
    return tokens


def _row(tokens: list[Token], start: int) -> tuple[list[Token], int]:
    """The mounts in a row from there, and where it ends, with the word for lenses behind it."""
    listed: list[Token] = []
    end = place = start
    while place < len(tokens) and (tokens[place].kind in _LISTING or tokens[place].kind == "MOUNT"):
        if tokens[place].kind == "MOUNT":
            listed.append(tokens[place])
            end = place + 1
        place += 1
    while end < len(tokens) and tokens[end].kind in _OF_LENSES:
        end += 1
    return listed, end
