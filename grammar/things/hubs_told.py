"""A mount that everything is to go to first is a hub, and no body: 'all to M first', 'everything to EF first'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import EVERYTHING, IN_BETWEEN, MIDDLE, WAYS
from grammar.words.tokens import Token

_TO: Final = "to"
_ON: Final = "on"
_VIA: Final = "via"
_FIRST: Final = "1"
_PUT: Final = frozenset(["in", "as"])
_NAMED: Final = frozenset(["DET", "MOUNT", "MOUNTWORD", "BODY"])


def with_hubs_told(tokens: list[Token]) -> list[Token]:
    """Its 'to' becomes a 'via', and 'first' asks for nothing."""
    out = _ways_of_mounts(_in_the_middle(list(tokens)))
    for at, token in enumerate(out):
        of_all = token.value == _ON and any(EVERYTHING in one.groups for one in out[:at])
        if token.kind != "PREP" or not (token.value == _TO or of_all):
            continue
        ahead = at + 1
        while ahead < len(out) and out[ahead].kind in _NAMED:
            ahead += 1
        mounts = sum(one.kind == "MOUNT" for one in out[at:ahead])
        last = out[ahead] if ahead < len(out) else None
        if mounts == 1 and last is not None and (last.kind, last.value) == ("ORDINAL", _FIRST):
            out[at], out[ahead] = token.as_("PREP", value=_VIA), last.as_("CUE")
    return out


def _in_the_middle(tokens: list[Token]) -> list[Token]:
    """'with M in the middle', 'M in between', 'M as the middle one': what stands there is a hub."""
    for at in range(1, len(tokens)):
        rest = [one for one in tokens[at + 1 : at + 4] if one.kind not in ("DET", "MOUNTWORD")]
        middle = bool(rest) and IN_BETWEEN in rest[0].groups
        middle = middle or (len(rest) > 1 and _is_put(rest[0]) and MIDDLE in rest[1].groups)
        if tokens[at].kind != "MOUNT" or not middle:
            continue
        before = tokens[at - 1]
        led = before.kind == "JOIN" or (before.kind == "PREP" and before.value != _VIA)
        via = Token("PREP", "", tokens[at].column, _VIA, listed=tokens[at].listed)
        said = [one.as_("FILLER") if _tells_place(one) else one for one in tokens[at + 1 : at + 4]]
        return [*tokens[: at - led], via, tokens[at], *said, *tokens[at + 4 :]]
    return tokens


def _is_put(token: Token) -> bool:
    return token.text.casefold() in _PUT


def _tells_place(token: Token) -> bool:
    return _is_put(token) or MIDDLE in token.groups or IN_BETWEEN in token.groups


def _ways_of_mounts(tokens: list[Token]) -> list[Token]:
    """'what would the M way cost', 'go the M-mount route': the way that is named by a mount leads through it."""
    for at in range(1, len(tokens) - 1):
        behind = at + 1
        while behind < len(tokens) and (tokens[behind].kind == "MOUNTWORD" or tokens[behind].text == "-"):
            behind += 1
        led = tokens[at - 1].kind == "DET"
        if tokens[at].kind == "MOUNT" and led and behind < len(tokens) and WAYS in tokens[behind].groups:
            via = Token("PREP", "", tokens[at].column, _VIA, listed=tokens[at].listed)
            return [*tokens[: at - 1], via, tokens[at], tokens[behind].as_("FILLER"), *tokens[behind + 1 :]]
    return tokens
