"""A colon behind a lens that is told: what follows with an article is another thing: 'with a 100 mm: a tube or ...'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import FITS_ONTO
from grammar.words.tokens import Token

_SEVERAL: Final = 2
_OF_BODY: Final = frozenset(["BODY", "DET", "FORMAT", "FRAME", "FILLER"])  # what may stand about a body's mount
_PUT: Final = frozenset(["on", "to", "for"])
_IDLE: Final = frozenset(["DET", "LETTER", "FILLER"])
_AT: Final = ("PREP", "at")
_THINGS: Final = frozenset(["LENGTH", "FNUM", "COMBO", "MOUNT", "LENS", "BODY", "NUMBER"])


def with_colons_told(tokens: list[Token]) -> list[Token]:
    """Such a colon becomes a JOIN; elsewhere it is no more than a mark."""
    out = _with_row_before_body(tokens)
    tokens = list(out)
    for at in range(1, len(tokens) - 1):
        before, token, after = tokens[at - 1 : at + 2]
        place = next((n for n in range(at - 1, -1, -1) if tokens[n].kind not in _IDLE), at)
        if token.kind == "MARK" and token.text == ":" and (tokens[place].kind, tokens[place].value) == _AT:
            out[place] = tokens[place].as_("CUE")  # 'at a wedding: 85 mm'
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
    mounts = [one for one in row if _is_mount(one)]
    others = [one for one in row if one not in mounts and one.kind not in ("JOIN", "LENS", "FILLER")]
    if len(mounts) < _SEVERAL or others:
        return list(tokens)
    start = colon
    while start and (tokens[start - 1].kind in _OF_BODY or _is_mount(tokens[start - 1])):
        start -= 1
    led = tokens[start - 1] if start else None
    put_on = led is not None and led.kind == "PREP" and led.value in _PUT
    fits = led is not None and led.kind == "CUE" and FITS_ONTO in led.groups  # 'which fit E: OM, M42'
    if not (put_on or fits) or not any(map(_is_mount, tokens[start:colon])):
        return list(tokens)
    named = [one for one in row if _is_mount(one) or one.kind == "JOIN"]
    head = Token("LENS", "lenses", mounts[-1].column)
    ends = [one for one in tokens[colon + 1 :] if one.kind == "STOP"][-1:]
    apart = Token("STOP", ";", named[0].column, ";")
    on = [Token("PREP", "on", tokens[start].column, "on")] if fits else []
    first = start if fits else start - 1
    return [*tokens[:first], apart, *named, head, *on, *tokens[first:colon], *ends]


def _is_mount(token: Token) -> bool:
    """A mount, or the letter of one: 'K', 'F'."""
    return token.kind == "MOUNT" or (token.kind == "LETTER" and token.text.isupper())
