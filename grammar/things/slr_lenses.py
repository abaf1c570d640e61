"""'SLR 50s', 'an old slr 35/2.8 on Z', 'a 50 off a film SLR': the kind of camera tells whose lens it is."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token, is_plural

_SLR: Final = "slr"
_NAMES: Final = frozenset(["MOUNT", "LETTER"])
_PASSED: Final = frozenset(["DET", "FILLER", "LETTER"])
_PUT: Final = frozenset(["on", "to", "for", "in", "onto"])  # before a body that a lens goes on
_TAKEN: Final = frozenset(["from", "off"])
_FOCALS: Final = (12.0, 600.0)  # mm
_EXPOSED: Final = frozenset(["exposure", "nd", "shutter-speed"])
_WITH_UNIT: Final = frozenset(["COMBO", "LENGTH"])


def with_lenses_of_slrs(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The focal length before the word for the camera, and behind it that it is a lens."""
    tokens = _with_mounts_of_slrs(tokens)
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


def _with_mounts_of_slrs(tokens: list[Token]) -> list[Token]:
    """'Z body: OM, R slr and MD': in a row of mounts the word only tells which mount of that name the lens has."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        out.append(token)
        whole = token.kind == "MOUNT" and token.text.casefold().endswith(f" {_SLR}")
        named = at > 0 and tokens[at - 1].kind in _NAMES and token.kind == "BODY" and token.text.casefold() == _SLR
        first = at if whole else at - 1
        listed = _is_listed(tokens, first - 1, -1) or _is_listed(tokens, at + 1, 1)
        if (whole or named) and listed and not _is_put_on(tokens, first):
            out.append(Token("LENS", "lens", token.column))
    return out


def _is_listed(tokens: list[Token], at: int, step: int) -> bool:
    """Whether a join stands there and another mount beyond it."""
    row = [one for one in tokens[max(0, at + min(step * 2, 0)) : at + 1 + max(step * 3, 0)] if one.kind != "DET"]
    row = row if step > 0 else row[::-1]
    joined = len(row) > 1 and (row[0].kind == "JOIN" or row[0].text == "/") and row[1].kind in _NAMES
    bodies = step > 0 and any(one.kind == "BODY" and is_plural(one) for one in row[2:])  # 'R slr and K bodies'
    return joined and not bodies


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
