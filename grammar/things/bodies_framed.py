"""A body told by its frame, with its mount behind a comma: 'my camera is full frame, Z' is one body."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_IS: Final = "be"
_ENDS: Final = frozenset(["JOIN", "STOP", "CUE", "PREP"])


def with_bodies_framed(tokens: list[Token], hosts: frozenset[str]) -> list[Token]:
    """The tokens without the comma between such a frame and the mount, and without what leads to the frame.

    `hosts`: mounts that, named alone, are those of a body.
    """
    for at, token in enumerate(tokens):
        if token.kind != "BODY":
            continue
        after = tokens[at + 1 : at + 3]
        bracketed = at and tokens[at - 1].kind == "FORMAT" and _is_host(after[:1], hosts)
        if bracketed and (len(after) == 1 or after[1].kind in _ENDS):  # 'a full frame camera (E-mount)'
            return [*tokens[: at - 1], token, tokens[at - 1], *tokens[at + 1 :]]
        led = at + 1 < len(tokens) and tokens[at + 1].kind == "CUE" and tokens[at + 1].value in (_IS, ":")
        row = tokens[at + 1 + led : at + 4 + led]
        if [one.kind for one in row] != ["FORMAT", "JOIN", "MOUNT"] or row[1].text != ",":
            continue
        if _is_host(row[2:], hosts):
            return [*tokens[: at + 1], row[0], row[2], *tokens[at + 4 + led :]]
    return tokens


def _is_host(tokens: list[Token], hosts: frozenset[str]) -> bool:
    return bool(tokens) and tokens[0].kind == "MOUNT" and tokens[0].ids[:1] != () and tokens[0].ids[0] in hosts
