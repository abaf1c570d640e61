"""What two mounts differ by, told beside the lens: 'only 2 mm between E and Z, can an E lens hold infinity on it?'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import DIFFERS
from grammar.words.tokens import Token

_BETWEEN: Final = "between"
_JOINED: Final = frozenset(["and", "vs", "or"])
_SIZES: Final = frozenset(["LENGTH", "NUMBER", "KEYED"])
_WORDS: Final = frozenset(["VERB", "FILLER", "DET", "CUE", "MEASURE", "PREP", "UNKNOWN", "MARK", "SHARE"])
_NOUNS: Final = frozenset(["LENS", "BODY", "PIECE", "ADAPTER", "NAMED", "FRAME"])
_LED: Final = frozenset(["FILLER", "DET", "VERB", "PREP"])  # words before the size that are told with it
_TOWARDS: Final = ("on", "to", "onto", "in", "for")
_ROW: Final = 4  # body, comma, mount and piece
_MOST_MM: Final = 60.0  # that two registers are apart


def with_body_ahead(tokens: list[Token], hosts: frozenset[str]) -> list[Token]:
    """'MFT, M42 helicoid 17-31, 55mm m42': a mount of bodies at the head is that of the body, and of no ring behind."""
    if len(tokens) < _ROW or any(one.kind == "BODY" for one in tokens):
        return tokens
    body, comma, mount, piece = tokens[:_ROW]
    host = body.kind in ("MOUNT", "LETTER") and bool(hosts & set(body.ids[:1]))
    alone = body.kind == "MOUNT" and not any(one.kind == "MOUNT" for one in tokens[1:])
    told = {one.kind for one in tokens[2:]}
    alone = alone and bool(told & {"LENS", "KIND"}) and bool(told & {"LENGTH", "COMBO", "FNUM"})
    if (host or alone) and comma.kind == "STOP" and comma.text != "?":
        return [body, Token("BODY", "", body.column), *tokens[1:]]  # 'EF. lens out of a slide projector ...'
    leads = host and comma.text == ","
    other = mount.kind == "MOUNT" and mount.value != body.value and piece.kind == "PIECE"
    return [body, Token("BODY", "", body.column), *tokens[1:]] if leads and other else tokens


def without_difference(tokens: list[Token]) -> list[Token]:
    """The question without the two mounts and what they differ by, where the lens, or the body, is told besides.

    What of the two is not told besides is the other side: the body that such a lens goes on, or the lens.
    """
    for at in range(len(tokens) - 2):
        one, join, other = tokens[at : at + 3]
        pair = one.kind == other.kind == "MOUNT" and join.kind == "JOIN" and join.value in _JOINED
        told = _told(tokens, at) if pair and one.value != other.value else None
        if told is not None:
            return _without(tokens, *told, one, other)
    return tokens


def _told(tokens: list[Token], at: int) -> tuple[int, int] | None:
    """From where to where the difference of the two mounts from here on is told, as places among the tokens."""
    behind = at + 3
    after = _size(tokens, behind, 1)
    if behind < len(tokens) and tokens[behind].kind in _NOUNS:
        return None  # 'between an E lens and a Z body' stands a piece
    if at and (tokens[at - 1].kind, tokens[at - 1].value) == ("PREP", _BETWEEN):
        size = _size(tokens, at - 2, -1)
        if size is not None:
            while size and tokens[size - 1].kind in _LED:
                size -= 1
            return size, at + 2
        return (at - 1, after) if after is not None else None
    last = after
    while last is not None and last + 1 < len(tokens) and DIFFERS in tokens[last + 1].groups:
        last += 1
    differs = last is not None and any(DIFFERS in one.groups for one in tokens[behind : last + 1])
    return (at, last) if differs and last is not None else None


def _size(tokens: list[Token], at: int, step: int) -> int | None:
    """The place of the one length that is told on from here, with no more than small words before it."""
    while 0 <= at < len(tokens) and tokens[at].kind in _WORDS:
        at += step
    if not 0 <= at < len(tokens) or tokens[at].kind not in _SIZES or tokens[at].unit not in ("", "mm"):
        return None
    return at if tokens[at].numbers and 0 < tokens[at].numbers[0] <= _MOST_MM else None


def _without(tokens: list[Token], first: int, last: int, one: Token, other: Token) -> list[Token]:
    rest = _with_letter(tokens[:first], one, other) + _with_letter(tokens[last + 1 :], one, other)
    told = {token.value for token in rest if token.kind == "MOUNT"}
    again = told & {one.value, other.value}
    if not again or any(token.kind in ("PIECE", "ADAPTER", "NAMED") for token in tokens[first : last + 1]):
        return tokens
    while first < len(rest) and rest[first].kind in ("JOIN", "STOP", "MARK"):
        del rest[first]
    if len(again) > 1 or told - again:
        return rest
    left = other if one.value in again else one
    place = next(n for n, token in enumerate(rest) if token.kind == "MOUNT")
    before = [token for token in rest[max(0, place - 2) : place] if token.kind == "PREP"]
    if before and before[-1].value in _TOWARDS:
        return [*rest[:first], left, *rest[first:]]
    led = Token("PREP", _TOWARDS[0], left.column, value=_TOWARDS[0])
    return [*rest[:first], led, left, *rest[first:]]


def _with_letter(tokens: list[Token], one: Token, other: Token) -> list[Token]:
    """'between A and EF, does my A 50 ...': the letter of one of the two, before a length, is that mount again."""
    out = list(tokens)
    for at, token in enumerate(tokens[:-1]):
        mount = next((this for this in (one, other) if this.text == token.text), None)
        if token.kind == "DET" and mount is not None and tokens[at + 1].kind in ("NUMBER", "LENGTH", "LENS"):
            out[at] = mount.as_("MOUNT", column=token.column)
    return out
