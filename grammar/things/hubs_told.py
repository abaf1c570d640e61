"""Mounts that things go through or move between: 'all to M first' is a hub, 'I move from E to Z' are two bodies."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import CHANGES_OVER, EVERYTHING, IN_BETWEEN, MIDDLE, WAYS
from grammar.words.tokens import Token

_TO: Final = "to"
_ON: Final = "on"
_VIA: Final = "via"
_BY: Final = frozenset(["by", "over"])
_OF_LENSES: Final = frozenset(["LENS", "MOUNTWORD"])
_FROM: Final = "from"
_FIRST: Final = "1"
_PUT: Final = frozenset(["in", "as"])
_SAID_OF_IT: Final = frozenset(["WHEN", "FILLER", "DET", "MOUNTWORD", "BODY"])  # behind the second of the two
_NEAR: Final = 7  # tokens within which it is told what one moves between
_NAMED: Final = frozenset(["DET", "MOUNT", "MOUNTWORD", "BODY"])
_HUB: Final = "hub"
_OF_HUB: Final = frozenset(["with", "of", _ON, _VIA])
_ENDING: Final = frozenset(["STOP", "MARK", "JOIN", "CUE", "FILLER"])  # behind the mount of a hub


def with_hubs_told(tokens: list[Token]) -> list[Token]:
    """Its 'to' becomes a 'via', and 'first' asks for nothing."""
    out = _changed_over(_ways_of_mounts(_in_the_middle(_hub_first(_by_mounts(_counted_apart(tokens))))))
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


def _changed_over(tokens: list[Token]) -> list[Token]:
    """'I switch from E to Z', 'moving X to RF': beside the mounts of lenses, bodies of which one follows the other."""
    for at, token in enumerate(tokens):
        if CHANGES_OVER not in token.groups:
            continue
        row = [place for place in range(at + 1, min(at + _NEAR, len(tokens))) if tokens[place].kind != "DET"]
        row = row[1:] if row and CHANGES_OVER in tokens[row[0]].groups else row
        led = bool(row) and tokens[row[0]].value == _FROM
        row = row[1:] if led else row
        words = [tokens[place] for place in row if tokens[place].kind not in ("BODY", "MOUNTWORD", "FILLER")][:3]
        if [one.kind for one in words] != ["MOUNT", "PREP", "MOUNT"] or words[1].value != _TO:
            continue
        if not any(one.kind == "MOUNT" and one not in words for one in tokens):
            continue
        on = Token("PREP", "", words[0].column, _ON, listed=token.listed)
        both = words[1].as_("JOIN", value="and", text="and")
        rest = tokens[tokens.index(words[2]) + 1 :]
        said = next((place for place, one in enumerate(rest) if one.kind not in _SAID_OF_IT), len(rest))
        ends = rest[said + (rest[said : said + 1] != [] and rest[said].kind in ("JOIN", "STOP")) :]
        return [*tokens[: at + 1], on, words[0], both, words[2], *rest[:said], _stop(words[2]), *ends]
    return tokens


def _stop(token: Token) -> Token:
    return Token("STOP", "", token.end or token.column, ".", listed=token.listed)


def _counted_apart(tokens: list[Token]) -> list[Token]:
    """'5 lens mounts 3 bodies', 'three cameras: hub or direct': so many bodies, and no part of what is beside them."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        counted = token.kind == "NUMBER" and at + 1 < len(tokens) and _is_plural_body(tokens[at + 1])
        if counted and out and out[-1].kind in _OF_LENSES:
            out.append(token.as_("JOIN", value="and", text=",", numbers=()))
        out.append(token)
        behind = next((one for one in tokens[at + 1 :] if one.kind != "MARK"), None)
        told = _is_plural_body(token) and at > 0 and tokens[at - 1].kind == "NUMBER"
        parted = at + 1 < len(tokens) and tokens[at + 1].text == ":"
        if told and behind is not None and (parted or (behind.kind, behind.value) == ("PIECE", _HUB)):
            out.append(_stop(token))
    return out


def _is_plural_body(token: Token) -> bool:
    return token.kind == "BODY" and token.text.casefold().endswith("s")


def _by_mounts(tokens: list[Token]) -> list[Token]:
    """'how many rings straight, how many by M', 'direct or over M': by way of that mount."""
    for at in range(1, len(tokens) - 1):
        behind = next((one.kind for one in tokens[at + 2 :] if one.kind != "MOUNTWORD"), "STOP")
        led = tokens[at].kind == "FILLER" and tokens[at].text.casefold() in _BY
        if led and tokens[at + 1].kind == "MOUNT" and behind in _ENDING:
            tokens[at] = tokens[at].as_("PREP", value=_VIA)
    return tokens


def _hub_first(tokens: list[Token]) -> list[Token]:
    """'a hub with M', 'hub over M': the mount that the hub is of, said before it as in 'an M hub'."""
    for at in range(len(tokens) - 2):
        hub, between, mount = tokens[at : at + 3]
        led = between.kind == "FILLER" or (between.kind == "PREP" and between.value in _OF_HUB)
        behind = next((one.kind for one in tokens[at + 3 :] if one.kind != "MOUNTWORD"), "STOP")
        if (hub.kind, hub.value) == ("PIECE", _HUB) and led and mount.kind == "MOUNT" and behind in _ENDING:
            return [*tokens[:at], mount, hub, *tokens[at + 3 :]]
    return tokens


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
