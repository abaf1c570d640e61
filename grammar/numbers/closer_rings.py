"""Rings that are said to focus closer, which makes them helicoids: 'a close focus M ring', 'the 18-30 macro M ring'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_MACRO: Final = "macro"


def with_closer_rings(tokens: list[Token]) -> list[Token]:
    """'a close focus M ring', 'the 18-30 macro M ring': that is a helicoid, also with its mount in between."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        kinds = [one.kind for one in tokens[at + 1 : at + 3]]
        closer = token.kind == "MEASURE" and token.value == "close-focus" and kinds == ["MOUNT", "PIECE"]
        drawn = (
            token.text.casefold() == _MACRO and kinds == ["MOUNT", "PIECE"] and bool(out) and out[-1].kind == "RANGE"
        )
        if drawn:
            continue
        out.append(token.as_("CUE") if closer else token)
        if len(out) > 1 and token.kind == "PIECE" and token.value == "adapter" and _closer(tokens[max(0, at - 2) : at]):
            out[-1] = token.as_("PIECE", value="helicoid")
    return out


def _closer(before: list[Token]) -> bool:
    """Whether a ring is said to focus closer: by the word before its mount."""
    if [one.kind for one in before[1:]] != ["MOUNT"]:
        return False
    return before[0].text.casefold() == _MACRO or (before[0].kind, before[0].value) == ("MEASURE", "close-focus")
