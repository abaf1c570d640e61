"""Bare numbers that count things: '2 c-mount ones', '2x K, 1x F'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import FLANGES, HOLDS, LOOKS, MAGNIFIES, PLACES_ROUND, SEVERAL, SORTS
from grammar.words.tokens import Token, is_plural

MOST_THINGS: Final = 12  # a larger number before a lens is its focal length
_DESCRIBING: Final = frozenset(["MOUNT", "KIND", "TRAIT", "FORMAT"])
_NUMBERED: Final = frozenset(["LENGTH", "FOCAL", "FNUM", "COMBO", "NUMBER", "LIMIT", "PREP"])  # of the lens before
_MOST_FLANGES: Final = 4  # of a breech mount; no mount has a register as short
_MOST_ALIKE: Final = 4  # lenses of one focal length that one speaks of together
_ENDS: Final = frozenset(["STOP", "JOIN", "PREP", "CUE", "LIMIT", "TRAIT"])


def with_holds_counted(tokens: list[Token]) -> list[Token]:
    """'3 lugs', 'four-claw', '4 flange breech': so many of what holds a lens, or is on its rear, is no length.

    Nor are the places where a ring was measured: 'at four points', no stop.
    """
    for at, token in enumerate(tokens[:-1]):
        behind = [one for one in tokens[at + 1 : at + 3] if one.kind != "MARK"][:1]
        whole = token.kind in ("NUMBER", "COUNT") and token.numbers[0] == int(token.numbers[0]) <= MOST_THINGS
        flanges = 1 < token.numbers[0] <= _MOST_FLANGES if token.numbers else False
        held = any(HOLDS in one.groups or (flanges and FLANGES in one.groups) for one in behind)
        if whole and (held or any(PLACES_ROUND in one.groups for one in behind)):
            tokens[at] = token.as_("CUE")
    return tokens


def with_kinds_counted(tokens: list[Token]) -> list[Token]:
    """'3 kinds of slr lens', 'five lens mounts', '6 mounts on 3 camera mounts': so many sorts, told by no name."""
    tokens = _with_long_ones(tokens)
    ringed = any(one.kind == "PIECE" for one in tokens) and any(one.kind == "BODY" for one in tokens)
    at = 0
    while at < len(tokens) - 1:
        if _is_count(tokens, at):
            place, kinds = _past_kinds(tokens, at + 1)
            head, end = _counted(tokens, place, kinds, ringed)
            if head:
                tokens = [*tokens[:at], tokens[at].as_("COUNT"), *head, *tokens[end:]]
        at += 1
    return tokens


def _is_count(tokens: list[Token], at: int) -> bool:
    """A whole number of things; 'x 2' too, where more than one body stands behind it."""
    token = tokens[at]
    times = token.kind == "TIMES" and token.text[:1].casefold() == "x" and tokens[at + 1].kind == "BODY"
    if token.kind != "NUMBER" and not (times and is_plural(tokens[at + 1])):
        return False
    return token.numbers[0] == int(token.numbers[0]) and 1 < token.numbers[0] <= MOST_THINGS


def _past_kinds(tokens: list[Token], place: int) -> tuple[int, bool]:
    """Where what is counted begins, past 'kinds of', 'different', and whether such a word stands there."""
    kinds = SORTS in tokens[place].groups
    while kinds and place < len(tokens) and (tokens[place].kind == "FILLER" or tokens[place].value == "of"):
        place += 1
    return place, kinds


def _counted(tokens: list[Token], place: int, kinds: bool, ringed: bool) -> tuple[list[Token], int]:
    """The words of what is counted and where they end; none where it is no sort of lens or body.

    `ringed`: whether rings and a body are spoken of, so that mounts which are only counted are those of lenses.
    """
    row = tokens[place : place + 2]
    ahead = [one.kind for one in row]
    if ahead in (["LENS", "MOUNTWORD"], ["BODY", "MOUNTWORD"]) and is_plural(row[1]):
        return row[:1], place + 2
    if ringed and ahead[:1] == ["MOUNTWORD"] and (kinds or is_plural(row[0])):
        return [row[0].as_("LENS")], place + 1
    if kinds and ahead[:1] == ["LENS"]:
        return row[:1], place + 1
    if kinds and ahead == ["BODY", "LENS"]:
        return row, place + 2
    if ahead[:1] == ["BODY"] and tokens[place - 1].kind == "TIMES":
        return row[:1], place + 1
    return [], place


def _with_long_ones(tokens: list[Token]) -> list[Token]:
    """'our three long T2 lenses', 'two long lenses': 'long' tells of the lenses, and the number is no length."""
    out = list(tokens)
    for at, token in enumerate(out[:-1]):
        word = out[at + 1]
        if token.kind != "NUMBER" or word.kind != "MEASURE" or LOOKS not in word.groups:
            continue
        rest = [one for one in out[at + 2 : at + 5] if one.kind not in _DESCRIBING or is_several_of_kind(one)]
        lenses = bool(rest) and (is_several_of_kind(rest[0]) or (rest[0].kind == "LENS" and is_plural(rest[0])))
        if lenses and token.numbers[0] == int(token.numbers[0]) and 1 < token.numbers[0] <= MOST_THINGS:
            out[at + 1] = word.as_("FILLER")
    return out


def is_so_many(tokens: list[Token], at: int) -> bool:
    """'2x K, 1x F': so many lenses of a mount; '2x M42 extender' is a factor."""
    number = tokens[at].numbers[0]
    rest = tokens[at + 1 : at + 3]
    mount = bool(rest) and rest[0].kind == "MOUNT"
    if mount and MAGNIFIES in rest[0].groups:
        return False  # '4x finite objective'
    return mount and number == int(number) <= MOST_THINGS and not any(one.kind in ("PIECE", "LINK") for one in rest)


def is_several(head: Token) -> bool:
    return is_plural(head)


def is_several_of_kind(token: Token) -> bool:
    """'teles', 'zooms'."""
    return token.kind == "KIND" and is_plural(token)


def counts(tokens: list[Token], at: int) -> bool:
    """'2 c-mount ones', 'two old M42 lenses', '2 c-mount': so many of what is described right behind the number."""
    number, before = tokens[at].numbers[0], tokens[at - 1] if at else None
    listed = before is not None and (before.kind == "JOIN" or SEVERAL in before.groups)
    one_more = number == 1 and listed  # '3 K lenses and 1 OM', 'two K lenses one OM'
    counts = number == int(number) and (2 <= number <= MOST_THINGS or one_more)
    if not counts or (before is not None and before.kind in _NUMBERED):
        return False
    if _counts_lenses(tokens, at):
        return True
    end = at + 1
    while end < len(tokens) and tokens[end].kind in _DESCRIBING:
        end += 1
    if end == at + 1:
        return False
    head = tokens[end] if end < len(tokens) else None
    if head is not None and head.kind in ("LENS", "BODY", "MOUNTWORD"):
        return is_several(head)
    if is_several_of_kind(tokens[end - 1]):
        return True  # '5 K teles'
    return all(one.kind == "MOUNT" for one in tokens[at + 1 : end]) and (head is None or head.kind in _ENDS)


def _counts_lenses(tokens: list[Token], at: int) -> bool:
    """'two 50 1.8 face to face', 'both 50s': a number in words right before what lenses are told by."""
    if not tokens[at].text[:1].isalpha() or at + 1 >= len(tokens) or tokens[at].numbers[0] > _MOST_ALIKE:
        return False
    lens, after = tokens[at + 1], tokens[at + 2] if at + 2 < len(tokens) else None
    told = lens.kind in ("COMBO", "FOCAL") or (lens.kind == "SHUTTER" and lens.text[:-1].isdigit())
    told = told or (lens.kind == "LENGTH" and after is not None and after.kind == "LENS" and is_several(after))
    return told and (after is None or after.kind not in ("PIECE", "MEASURE", "NUMBER"))
