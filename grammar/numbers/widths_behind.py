"""How wide a lens is just ahead of its seat, which a cup must let in: 'its barrel at the back is 38 mm wide'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.words.groups import BESIDE_THREAD, BODY_OF_LENS, GLASS_LIKE, OUTER, SCREW
from grammar.words.tokens import Token

BARREL: Final = "barrel"
_WIDTHS: Final = (20.0, 130.0)  # mm
_SIZE: Final = "size"  # a plain 'measures'
_ACROSS: Final = frozenset(["diameter", "thickness", _SIZE])
_LENGTHS: Final = frozenset(["rear-reach", "flange-to-image"])  # behind the seat: what is said to be a width is none
_OTHERS: Final = frozenset(["PIECE", "COMBO", "FOCAL"])  # in a sentence that tells how wide something else is


def with_widths_behind(tokens: list[Token]) -> list[Token]:
    """The width of the part ahead of the seat becomes KEYED as of a barrel; that of rear glass or flange as a width."""
    out = list(tokens)
    if any(token.kind == "MOUNTWORD" and not _is_screw(token) for token in out):
        return out  # of a bayonet it is how wide the lens is where it goes in
    starts = [0, *(at + 1 for at, one in enumerate(out) if one.kind in ("STOP", "JOIN")), len(out)]
    for start, end in pairwise(starts):
        said = range(start, end)
        if not any(out[at].kind in _OTHERS for at in said):
            _tell_width(out, said)
    return out


def _tell_width(tokens: list[Token], said: range) -> None:
    places = [at for at in said if _names_the_back(tokens, at)]
    lengths = [at for at in said if tokens[at].kind == "MEASURE" and tokens[at].value in _LENGTHS]
    across, width = _told_across(tokens, said)
    if across is None or width is None or any(at not in places and _is_screw(tokens[at]) for at in said):
        return
    if tokens[across].value == _SIZE and not any(_is_screw(tokens[at]) for at in places):
        return  # 'the barrel measures 38' may be its length
    # 'the rear glass is 30 mm wide': no reach, though a rear is spoken of
    # '44.7 register 35 mm wide': a length that is told before its word leaves the lens
    bare = bool(lengths) and not (lengths[0] > said.start and tokens[lengths[0] - 1].numbers)
    no_length = bare and OUTER in tokens[across].groups and lengths[0] < width < across
    if not (places or no_length):
        return
    of_body = bool(places) and not any(GLASS_LIKE in _groups_of(tokens[at]) for at in lengths)
    tokens[width] = tokens[width].as_("KEYED", value=BARREL if of_body else "width", unit="mm")
    for at in (across, *places, *lengths):
        tokens[at] = tokens[at].as_("CUE", ids=())
    for at in said[1:]:
        if tokens[at].kind == "BODY" and tokens[at - 1].kind == "LENS":  # 'the lens body is 41 wide near the thread'
            tokens[at - 1 : at + 1] = [one.as_("CUE") for one in tokens[at - 1 : at + 1]]


def _told_across(tokens: list[Token], said: range) -> tuple[int | None, int | None]:
    """Where a word for a width stands, and the length beside it."""
    for at in said:
        if OUTER in tokens[at].groups or (tokens[at].kind == "MEASURE" and tokens[at].value in _ACROSS):
            for near in (at - 1, at + 1, at + 2):
                if near in said and _is_width(tokens[near]):
                    return at, near
    return None, None


def _is_width(token: Token) -> bool:
    return token.may_be_mm and not token.text.isalpha() and _WIDTHS[0] <= token.numbers[0] <= _WIDTHS[1]


def _is_screw(token: Token) -> bool:
    return token.kind == "MOUNTWORD" and SCREW in token.groups


def _groups_of(token: Token) -> frozenset[str]:
    """Of each of its words."""
    return frozenset().union(*(token.listed.of(word) for word in token.text.casefold().split()))


def _names_the_back(tokens: list[Token], at: int) -> bool:
    """'back', 'rear end'; 'above the thread': where a lens is wide, and no thread or glass itself."""
    if _is_screw(tokens[at]):
        return any(BESIDE_THREAD in one.groups for one in tokens[max(0, at - 2) : at])
    groups = _groups_of(tokens[at])
    return BODY_OF_LENS in groups and GLASS_LIKE not in groups
