"""A body named before its lens, 'on RF a 50 1.4': the article begins the lens, whose mount that is not."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import TAKES
from grammar.words.tokens import Token

_PLACING: Final = frozenset(["on", "for"])
_NUMBERS: Final = frozenset(["COMBO", "FOCAL", "LENGTH", "NUMBER"])
_WITH, _MOUNT = "with", "mount"
_GOES_ON: Final = frozenset(["LENS", "KIND", "PIECE", "MOUNT", "LINK", "LENGTH", "COMBO", "JOIN"])  # behind it
_LEAST: Final = 8.0  # mm, of a lens


def with_host_first(tokens: list[Token]) -> list[Token]:
    """A comma before the article that follows the mount of a body."""
    tokens = _with_mount_behind(_with_what_it_takes(tokens))
    out = list(tokens)
    for at in range(len(tokens) - 3):
        prep, mount, article, size = tokens[at : at + 4]
        placed = prep.kind == "PREP" and prep.value in _PLACING and mount.kind == "MOUNT"
        led = article.kind == "DET" and article.text.casefold() in ("a", "an")
        if placed and led and size.kind in _NUMBERS and size.numbers[:1] and size.numbers[0] >= _LEAST:
            comma = Token("JOIN", ",", mount.end or mount.column + len(mount.text), ",", listed=mount.listed)
            return [*out[: at + 2], comma, *out[at + 2 :]]
    return out


def _with_what_it_takes(tokens: list[Token]) -> list[Token]:
    """'SR 200, my camera takes Z lenses': beside a lens that is told, the mount of what a camera takes is its own."""
    for at in range(1, len(tokens) - 3):
        body, takes, mount, lens = tokens[at : at + 4]
        said = body.kind == "BODY" and not body.ids and takes.kind == "CUE" and TAKES in takes.groups
        others = any(one.kind == "MOUNT" for one in tokens[:at])
        if said and others and mount.kind == "MOUNT" and lens.kind == "LENS":
            return [*tokens[:at], mount, body, *_with_what_it_takes(tokens[at + 4 :])]
    return tokens


def _with_mount_behind(tokens: list[Token]) -> list[Token]:
    """'a camera with C-mount': said so, the mount is the body's own; 'a camera with C-mount lenses' tells of these."""
    for at in range(len(tokens) - 2):
        body, led = tokens[at : at + 2]
        first = at + 2 + (tokens[at + 2].kind == "DET")
        mount = tokens[first] if first < len(tokens) else None
        after = tokens[first + 1] if first + 1 < len(tokens) else None
        said = body.kind == "BODY" and not body.ids and (led.kind, led.value) == ("PREP", _WITH)
        own = mount is not None and mount.kind == "MOUNT" and mount.text.casefold().endswith(_MOUNT)
        bare = not (at and tokens[at - 1].kind == "MOUNT") and (after is None or after.kind not in _GOES_ON)
        if said and own and bare and mount is not None:
            while at and tokens[at - 1].kind == "BODY":
                at -= 1  # 'a digital reflex with EF mount'
            behind = [token for token in tokens[at : first - 1] if token.kind == "BODY"]
            return [*tokens[:at], mount, *behind, *tokens[first + 1 :]]
    return tokens
