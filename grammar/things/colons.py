"""A colon behind a lens that is told: what follows with an article is another thing: 'with a 100 mm: a tube or ...'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_SEVERAL: Final = 2
_PUT: Final = frozenset(["on", "to", "for"])
_THINGS: Final = frozenset(["LENGTH", "FNUM", "COMBO", "MOUNT", "LENS", "BODY", "NUMBER"])


def with_colons_told(tokens: list[Token]) -> list[Token]:
    """Such a colon becomes a JOIN; elsewhere it is no more than a mark."""
    out = _with_row_before_body(tokens)
    tokens = list(out)
    for at in range(1, len(tokens) - 1):
        before, token, after = tokens[at - 1 : at + 2]
        opens = after.kind == "DET" or after.text.casefold() == "a"
        if token.kind == "MARK" and token.text == ":" and before.kind in _THINGS and opens:
            out[at] = token.as_("JOIN", value=",")
    return out


def _with_row_before_body(tokens: list[Token]) -> list[Token]:
    """'which of these go on EF: FD, K, OM': the mounts listed behind the colon are of lenses, put before their body."""
    colon = next((at for at, one in enumerate(tokens) if one.kind == "MARK" and one.text == ":"), None)
    if colon is None:
        return list(tokens)
    row = [one for one in tokens[colon + 1 :] if one.kind not in ("DET", "STOP")]
    mounts = [one for one in row if one.kind == "MOUNT"]
    if len(mounts) < _SEVERAL or any(one.kind not in ("MOUNT", "JOIN", "LENS", "FILLER") for one in row):
        return list(tokens)
    start = colon
    while start and tokens[start - 1].kind in ("BODY", "MOUNT", "DET", "FORMAT", "FRAME"):
        start -= 1
    put_on = start and tokens[start - 1].kind == "PREP" and tokens[start - 1].value in _PUT
    if not put_on or not any(one.kind == "MOUNT" for one in tokens[start:colon]):
        return list(tokens)
    named = [one for one in row if one.kind in ("MOUNT", "JOIN")]
    head = Token("LENS", "lenses", mounts[-1].column)
    ends = [one for one in tokens[colon + 1 :] if one.kind == "STOP"][-1:]
    apart = Token("STOP", ";", named[0].column, ";")
    return [*tokens[: start - 1], apart, *named, head, *tokens[start - 1 : colon], *ends]
