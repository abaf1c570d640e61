"""'SLR 50s', 'an old slr 35/2.8 on Z', 'a 50 off a film SLR': the kind of camera tells whose lens it is."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_SLR: Final = "slr"
_PASSED: Final = frozenset(["DET", "FILLER", "LETTER"])
_PUT: Final = frozenset(["on", "to", "for", "in", "onto"])  # before a body that a lens goes on
_TAKEN: Final = frozenset(["from", "off"])
_FOCALS: Final = (12.0, 600.0)  # mm
_EXPOSED: Final = frozenset(["exposure", "nd", "shutter-speed"])
_WITH_UNIT: Final = frozenset(["COMBO", "LENGTH"])


def with_lenses_of_slrs(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The focal length before the word for the camera, and behind it that it is a lens."""
    for at, token in enumerate(tokens):
        if token.kind != "BODY" or token.value != _SLR or " body" in token.text.casefold():
            continue
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        head = Token("LENS", "lens", token.column)
        if after is not None and _is_focal(after, told) and not _is_put_on(tokens, at):
            return [*tokens[:at], _as_focal(after), token, head, *tokens[at + 2 :]]
        lens = _taken_off(tokens, at)
        if lens is not None and _is_focal(tokens[lens], told):
            return [*tokens[:lens], _as_focal(tokens[lens]), token, head, *tokens[at + 1 :]]
    return tokens


def _is_focal(token: Token, told: frozenset[str]) -> bool:
    if token.kind == "SHUTTER":
        whole = token.text[:-1].isdigit() and token.text[-1:] == "s" and not told & _EXPOSED
    else:
        whole = token.kind in _WITH_UNIT or (token.kind == "NUMBER" and token.text.isdecimal())
    return whole and token.unit in ("", "mm", "s") and _FOCALS[0] <= token.numbers[0] <= _FOCALS[1]


def _as_focal(token: Token) -> Token:
    return token if token.kind in _WITH_UNIT else token.as_("LENGTH", unit="mm", value="")


def _is_put_on(tokens: list[Token], at: int) -> bool:
    """'on my SLR, 50 mm': there it is the body."""
    before = [one for one in tokens[max(0, at - 4) : at] if one.kind not in _PASSED]
    return bool(before) and before[-1].kind == "PREP" and before[-1].value in _PUT


def _taken_off(tokens: list[Token], at: int) -> int | None:
    """Where the number stands of a lens that is told to be off such a camera: '50s from film SLRs'."""
    place = at - 1
    while place > 0 and tokens[place].kind in _PASSED:
        place -= 1
    off = place > 0 and tokens[place].kind == "PREP" and tokens[place].value in _TAKEN
    return place - 1 if off else None
