"""Words that stand for a thing: 'the 39 mm one', 'two C-mount ones', 'one says 25 mm, the other 75 mm'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.words.token_kinds import CLAUSE_ENDS
from grammar.words.tokens import Token

STANDIN: Final = "~standin"  # what a word implies that stands for a thing
LEAST_FOCAL: Final = 8.0  # mm, of a bare number before a standing-in word
_SHORTEST_LENS_MM: Final = 3.0
_DESCRIBES: Final = frozenset(
    ["MOUNT", "KIND", "TRAIT", "FORMAT", "LENGTH", "RANGE", "FNUM", "COMBO", "NAMED", "MOUNTWORD", "THREAD"]
)
_HEADS: Final = frozenset(["LENS", "BODY", "PIECE", "FRAME", "MOUNTWORD", "KIND"])
_BEGINS: Final = frozenset(["LENGTH", "RANGE", "FNUM", "COMBO", "NUMBER", "MOUNT", "KIND", "LENS"])
_ENDS: Final = _DESCRIBES | {"LENS", "NUMBER"}
_FOR, _ON, _ONE, _ITS = "for", "on", "one", "its"
_ARTICLES: Final = frozenset(["a", "an"])
_LED: Final = 2  # tokens at least before what it is made for
_PASSED: Final = frozenset(["DET", "CUE"])
_BETWEEN: Final = frozenset(["DET", "FILLER", "UNKNOWN"])
_TELLS: Final = frozenset(["be"])  # 'is', 'was', 'are'
_FEW: Final = 3  # words from a piece to the length that is told of it


def with_standins(tokens: list[Token], hosts: frozenset[str] = frozenset()) -> list[Token]:
    """Each standing-in word behind what describes it heads that description; 'another' between two parts them.

    `hosts`: mounts that, named alone, are those of a body.
    """
    out: list[Token] = []
    tokens = _without_ones_for(tokens)
    for at, token in enumerate(tokens):
        if STANDIN in token.implies and (_ends_piece(tokens, at) or _is_piece_told(tokens, at) or _sizes_piece(out)):
            continue  # 'a helicoid one, 6 mm', 'the ring is a 2 mm one'
        if STANDIN in token.implies and _stands(tokens, at):
            ring = len(out) > 1 and (out[-2].kind == "LINK" or _is_thin(out, tokens))
            body = _is_host_on(out, hosts)
            if _is_told_of_it(out):
                out.append(Token("LENS", "lens", token.column))
                continue
            out.append(token.as_("PIECE", value="adapter") if ring else token.as_("BODY" if body else "LENS"))
        elif token.kind == "DET" and token.value == "another" and _parts(out, tokens[at + 1 :]):
            out.append(token.as_("JOIN", value="and"))
        else:
            out.append(token)
    return out


def _is_told_of_it(before: list[Token]) -> bool:
    """'its a super 35 one': what the lens spoken of is made for, and no frame; 'the APS-C one' is of the body."""
    if len(before) <= _LED or before[-1].kind != "FORMAT":
        return False
    its, article = before[-3:-1]
    return its.value == _ITS and article.text.casefold() in _ARTICLES


def _is_host_on(before: list[Token], hosts: frozenset[str]) -> bool:
    """'25 mm on the X one': what a lens stands on by a mount of bodies is a body; so is 'an E body or an X one'."""
    led = [one for one in before[-4:-1] if one.kind != "DET"]
    on = bool(led) and led[-1].kind == "PREP" and led[-1].value == _ON
    on = on or [one.kind for one in led[-2:]] == ["BODY", "JOIN"]
    on = on or _is_body_beside(before)
    return on and before[-1].kind == "MOUNT" and before[-1].ids[:1] != () and before[-1].ids[0] in hosts


def _is_body_beside(before: list[Token]) -> bool:
    """'an E camera with APS-C or an MFT one': set beside a body of which more is told, and no lens since."""
    rest = [one for one in before[:-1] if one.kind != "DET"]
    if not rest or rest[-1].kind != "JOIN":
        return False
    last = next((one.kind for one in reversed(rest) if one.kind in ("BODY", "LENS", "PIECE", "KIND")), "")
    return last == "BODY"


def _without_ones_for(tokens: list[Token]) -> list[Token]:
    """'the C ring for Z and the one for E': the same ring for another body, as in 'for Z and E'."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        ring_for = any(a.kind == "PIECE" and b.value == _FOR for a, b in pairwise(out))
        other = [one.kind for one in tokens[at + 1 : at + 3]] == ["PREP", "MOUNT"] and tokens[at + 1].value == _FOR
        if not (ring_for and other and token.text.casefold() == _ONE):
            out.append(token)
            continue
        if out[-1].kind == "DET":
            out.pop()
    return out


def _is_thin(before: list[Token], tokens: list[Token]) -> bool:
    """'md 50 on EF, plain 2 mm one': beside a lens that is told by its length, what is so short is a ring."""
    size = before[-1]
    lens = any(one.kind in ("COMBO", "FOCAL") or (one.kind == "LENGTH" and one is not size) for one in tokens)
    return lens and size.is_mm and size.numbers[0] < _SHORTEST_LENS_MM


def _ends_piece(tokens: list[Token], at: int) -> bool:
    """Whether it only says once more that a piece is meant."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return at > 0 and tokens[at - 1].kind == "PIECE" and (after is None or after.kind in CLAUSE_ENDS)


def _sizes_piece(before: list[Token]) -> bool:
    """'the spacer, the 2.5 mm one': a length told of the piece right before the comma."""
    led = [one for one in before[-4:] if one.kind != "DET"][-3:]
    sized = [one.kind for one in led] == ["PIECE", "JOIN", "LENGTH"]
    return sized and led[1].text == "," and led[2].is_mm


def _is_piece_told(tokens: list[Token], at: int) -> bool:
    """'the adapter is a plain 2 mm one': a length told of a piece that was named just before."""
    if not at or tokens[at - 1].kind != "LENGTH":
        return False
    led = [one for one in tokens[: at - 1] if one.kind not in _BETWEEN]
    verbs = [n for n, one in enumerate(led[-_FEW:]) if one.value in _TELLS]
    before = led[-_FEW:][: verbs[-1]] if verbs else []
    return bool(before) and before[-1].kind == "PIECE"


def _stands(tokens: list[Token], at: int) -> bool:
    before = tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if before is not None and before.kind == "NUMBER" and before.text.isdecimal() and before.numbers[0] >= LEAST_FOCAL:
        return after is None or after.kind not in _HEADS  # 'the 16 one'
    return before is not None and before.kind in _DESCRIBES and (after is None or after.kind not in _HEADS)


def _parts(before: list[Token], after: list[Token]) -> bool:
    """Whether what is told before and after 'another' is told of two things."""
    rest = next((one for one in after if one.kind not in _PASSED), None)
    return bool(before) and before[-1].kind in _ENDS and rest is not None and rest.kind in _BEGINS


def stands_in(head: Token | None) -> bool:
    """Whether the head of a description only stands for a thing that was named before."""
    return head is not None and STANDIN in head.implies
