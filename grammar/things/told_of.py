"""What is told of a thing behind it: 'my body is Z', 'the lens is M39', 'tele 135 mm, preset, T2'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_BE: Final = "be"
_THINGS: Final = frozenset(["LENS", "BODY"])
_ENDS: Final = frozenset(["STOP", "JOIN"])  # behind what is told of it
_OF_LENS: Final = frozenset(["KIND", "LENS", "LENGTH", "FNUM", "COMBO", "TRAIT", "DET"])
_CAMERAS: Final = frozenset(["slr"])
_SMALL: Final = frozenset(["VERB", "FILLER", "DET", "PREP", "CUE"])
_NEAR: Final = 4  # tokens from the lens to its mount
_SHORTEST, _LONGEST = 4.0, 2000.0  # mm, of a lens


def with_told_of(tokens: list[Token], hosts: frozenset[str]) -> list[Token]:
    """The mount before the thing that it is told of. `hosts`: mounts that, named alone, are those of a body."""
    return _in_commas(_of_camera(_told_so(_on_front_of(tokens))), hosts)


def _on_front_of(tokens: list[Token]) -> list[Token]:
    """'a 50 flipped onto the filter thread of a 135': it is put on that lens."""
    if not any(token.kind == "TRAIT" and token.value == "reversed" for token in tokens):
        return tokens
    for at in range(len(tokens) - 2):
        front, of = tokens[at : at + 2]
        size = at + 2 + (tokens[at + 2].kind == "DET")
        thread = front.kind == "PIECE" and front.value == "filter" and front.text.casefold().endswith("thread")
        if thread and of.value == "of" and size < len(tokens) and tokens[size].kind in ("LENGTH", "NUMBER"):
            led = tokens[at - 1] if at and tokens[at - 1].kind == "DET" else None
            first = at - 1 if led is not None else at
            put = tokens[:first]
            if put and put[-1].kind == "PREP":
                put = [*put[:-1], put[-1].as_("PREP", value="on")]
            return [*put, tokens[size].as_("FOCAL", unit="mm"), *tokens[size + 1 :]]
    return tokens


def _of_camera(tokens: list[Token]) -> list[Token]:
    """'the lens has M39, but it comes off a reflex': the camera that it is of stands with it, and is no body."""
    lens = next((at for at, token in enumerate(tokens) if token.kind == "LENS" and not token.ids), None)
    if lens is None:
        return tokens
    mount = lens - 1 if lens and tokens[lens - 1].kind == "MOUNT" else None
    behind = next((at for at in range(lens + 1, min(lens + _NEAR, len(tokens))) if tokens[at].kind == "MOUNT"), None)
    if mount is None and behind is not None and all(one.kind in _SMALL for one in tokens[lens + 1 : behind]):
        mount = behind
    for at in range(lens + 1, len(tokens)):
        camera = tokens[at]
        if mount is None or at <= mount or camera.kind != "BODY" or camera.value not in _CAMERAS:
            continue
        led = at - 1
        while led > lens and tokens[led].kind in ("DET", "FILLER", "LETTER"):
            led -= 1
        if led <= max(lens, mount) or (tokens[led].kind, tokens[led].value) != ("PREP", "from"):
            continue
        rest = [one for n, one in enumerate(tokens) if n not in (lens, mount) and not led <= n <= at]
        place = min(lens, mount)
        return [*rest[:place], tokens[mount], camera, tokens[lens], *rest[place:]]
    return tokens


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
