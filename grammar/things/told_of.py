"""What is told of a thing behind it: 'my body is Z', 'the lens is M39', 'tele 135 mm, preset, T2', 'cctv lens, C, 25'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_BE: Final = "be"
_THINGS: Final = frozenset(["LENS", "BODY"])
_ENDS: Final = frozenset(["STOP", "JOIN"])  # behind what is told of it
_OF_LENS: Final = frozenset(["KIND", "LENS", "LENGTH", "FNUM", "COMBO", "TRAIT", "DET"])
_SHORTEST, _LONGEST = 4.0, 2000.0  # mm, of a lens


def with_told_of(tokens: list[Token], hosts: frozenset[str]) -> list[Token]:
    """The mount before the thing that it is told of. `hosts`: mounts that, named alone, are those of a body."""
    return _in_commas(_told_so(tokens), hosts)


def _told_so(tokens: list[Token]) -> list[Token]:
    """'my body is Z', 'the lens is M39, for an SLR': as 'my Z body', 'the M39 lens'."""
    out = list(tokens)
    at = 0
    while at + 2 < len(out):
        thing, be, mount = out[at : at + 3]
        after = out[at + 3] if at + 3 < len(out) else None
        told = thing.kind in _THINGS and not thing.ids and be.value == _BE and mount.kind == "MOUNT"
        ends = after is None or after.kind in _ENDS
        bare = not (at and out[at - 1].kind in ("MOUNT", "KIND", "FORMAT", "LENGTH", "COMBO", "PIECE"))
        listed = after is not None and after.kind == "JOIN" and at + 4 < len(out) and out[at + 4].kind == "MOUNT"
        if told and ends and bare and not listed:
            out[at : at + 3] = [mount, thing]
        at += 1
    return out


def _in_commas(tokens: list[Token], hosts: frozenset[str]) -> list[Token]:
    """'tele 135mm, preset, T2. ...', 'cctv lens, C-mount, 25.': of one lens, up to the end of the sentence."""
    end = next((at for at, token in enumerate(tokens) if token.kind == "STOP"), len(tokens))
    told = tokens[:end]
    mounts = [at for at, token in enumerate(told) if token.kind == "MOUNT"]
    if end == len(tokens) or len(mounts) != 1 or hosts & set(told[mounts[0]].ids[:1]):
        return tokens
    at = mounts[0]
    if not at or told[at - 1].text != "," or any(one.kind not in _OF_LENS and one.text != "," for one in told[:at]):
        return tokens
    rest = told[at + 1 :]
    bare = len(rest) == 2 and rest[0].text == "," and rest[1].kind == "NUMBER" and rest[1].text.isdecimal()
    sized = any(one.kind in ("LENGTH", "COMBO") for one in told[:at])
    if not rest:
        return [told[at], *told[: at - 1], *tokens[end:]]
    if bare and not sized and _SHORTEST <= rest[1].numbers[0] <= _LONGEST:
        return [rest[1].as_("LENGTH", unit="mm"), told[at], *told[: at - 1], *tokens[end:]]
    return tokens
