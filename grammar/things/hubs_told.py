"""A mount that everything is to go to first is a hub, and no body: 'all to M first', 'everything to EF first'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_TO: Final = "to"
_VIA: Final = "via"
_FIRST: Final = "1"
_NAMED: Final = frozenset(["DET", "MOUNT", "MOUNTWORD", "BODY"])


def with_hubs_told(tokens: list[Token]) -> list[Token]:
    """Its 'to' becomes a 'via', and 'first' asks for nothing."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        if token.kind != "PREP" or token.value != _TO:
            continue
        ahead = at + 1
        while ahead < len(tokens) and tokens[ahead].kind in _NAMED:
            ahead += 1
        mounts = sum(one.kind == "MOUNT" for one in tokens[at:ahead])
        last = tokens[ahead] if ahead < len(tokens) else None
        if mounts == 1 and last is not None and (last.kind, last.value) == ("ORDINAL", _FIRST):
            out[at], out[ahead] = token.as_("PREP", value=_VIA), last.as_("CUE")
    return out
