"""Rows of lenses told by their numbers: '28, 50 and 135, all M42' are three lenses of one mount.

What is told once for all of a row is told of each. A row that says no more than numbers is one only where several
lenses are spoken of beside it.
"""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact, field
from grammar.words.groups import ADDED
from grammar.words.tokens import Token
from grammar.words.written import STOPS

ALL: Final = "all"  # the value of the word by which something is told of each
_LEAST, _MOST = 3.5, 1200.0  # mm, of a bare number that is a focal length
_COUNTED: Final = 8.0  # a smaller whole number before a mount may be a count
_SLOWEST: Final = 12.0  # of a bare number that is the stop of a lens
_NOT_FOCAL: Final = frozenset([*range(1950, 2040)])  # years
_LED: Final = 4  # tokens between 'lenses' and the row, or between the row and what is told of all of it
_LATER: Final = 9  # tokens between the row and an 'all' behind other words
_LEADS: Final = frozenset(["JOIN", "STOP", "CUE", "DET", "COUNT"])
_JOINED: Final = frozenset(["JOIN", "DET"])
_OTHERS: Final = frozenset(["PIECE", "BODY", "FRAME", "MEASURE", "TIMES", "ISO", "FPS", "KIND", "LENS"])


@compact(frozen=False)
class _Item:
    """One lens of a row: where its number stands, its mount and its stop where they are told."""

    at: int
    mount: int | None = None
    stop: int | None = None
    end: int = 0  # the token behind it
    ahead: bool = False  # whether its mount stands before its number


@compact(frozen=False)
class _Row:
    items: list[_Item] = field(default_factory=list)
    start: int = 0

    @property
    def end(self) -> int:
        return self.items[-1].end

    def tells_stops(self, tokens: list[Token]) -> bool:
        return any(item.stop is not None or tokens[item.at].kind == "COMBO" for item in self.items)

    @property
    def mounts(self) -> int:
        return sum(item.mount is not None for item in self.items)


def with_lens_rows(tokens: list[Token], hosts: frozenset[str]) -> list[Token]:
    """The tokens with the numbers of each row as focal lengths and stops, and a mount told for all told of each.

    `hosts`: mounts that, named alone, are those of a body.
    """
    out = list(tokens)
    at = 0
    while at < len(out):
        row = _row_at(out, at)
        if row is None:
            at += 1
            continue
        before = len(out)
        _tell(out, row, hosts)
        at = row.end + len(out) - before
    return out


def _row_at(tokens: list[Token], at: int) -> _Row | None:
    """The row of two lenses or more that begins at `at`."""
    row = _Row(start=at)
    place = at
    while (item := _item_at(tokens, place, row.tells_stops(tokens))) is not None:
        row.items.append(item)
        place = item.end
        while place < len(tokens) and _joins(tokens[place]):
            place += 1
    return row if len(row.items) > 1 else None


def _joins(token: Token) -> bool:
    return (token.kind in _JOINED and token.value not in (ALL, "vs")) or begins_another(token)


def begins_another(token: Token) -> bool:
    """'and a', which begins another lens elsewhere, and before a number of a row only joins."""
    return token.kind == "PREP" and token.text.casefold() == "and a"


def _item_at(tokens: list[Token], at: int, stops: bool) -> _Item | None:
    """One lens of a row. `stops`: whether those before it have their stops told."""
    place = at
    ahead = _is_mount(tokens, place)
    place += ahead
    while ahead and place < len(tokens) and tokens[place].kind in ("KIND", "TRAIT"):
        place += 1  # 'M42 tele 300'
    if not (place < len(tokens) and _is_focal(tokens, place)):
        return None
    item = _Item(place, at if ahead else None, None, place + 1, ahead)
    if not ahead:
        mount = item.end + _is_in(tokens, item.end)
        if _is_mount(tokens, mount) and not _begins_next(tokens, item.end):
            item.mount, item.end = mount, mount + 1
    if item.end < len(tokens) and (tokens[item.end].kind == "FNUM" or _is_stop(tokens, item, stops)):
        item.stop, item.end = item.end, item.end + 1
    mount = item.end + _is_in(tokens, item.end)
    if item.mount is None and _is_mount(tokens, mount) and not _begins_next(tokens, item.end):
        item.mount, item.end = mount, mount + 1
    return item


def _is_mount(tokens: list[Token], at: int) -> bool:
    """Whether a mount stands there that is not one of the two of a ring."""
    linked = at + 1 < len(tokens) and tokens[at + 1].kind == "LINK"
    return at < len(tokens) and tokens[at].kind == "MOUNT" and not linked


def _is_in(tokens: list[Token], at: int) -> bool:
    """'a 35 in LTM': a small word before the mount of one lens."""
    return at < len(tokens) and tokens[at].kind == "PREP" and tokens[at].value in ("in", "of")


def _begins_next(tokens: list[Token], at: int) -> bool:
    """'28 M42 50 FD 135': whether the mount at `at` stands before a number of its own, with that number joined on."""
    return (
        _is_mount(tokens, at) and at + 1 < len(tokens) and _is_focal(tokens, at + 1) and not _is_small(tokens[at + 1])
    )


def _is_focal(tokens: list[Token], at: int) -> bool:
    token = tokens[at]
    if token.kind in ("COMBO", "FOCAL"):
        return True
    if token.kind == "LENGTH":
        return token.unit == "mm"
    number = token.numbers[0] if token.kind == "NUMBER" and token.text[:1].isdigit() else 0.0
    if token.implies and token.implies[0] == "mount":
        return False
    return _LEAST <= number <= _MOST and number * 2 == int(number * 2) and number not in _NOT_FOCAL


def _is_small(token: Token) -> bool:
    figures = token.kind == "NUMBER" and not token.text.isalpha()
    return figures and token.numbers[0] in STOPS and token.numbers[0] <= _SLOWEST


def _is_stop(tokens: list[Token], item: _Item, stops: bool) -> bool:
    """'16 mm C 1.6', '50 1.4': a stop without its f, behind the number of a lens that has none."""
    token, focal = tokens[item.end], tokens[item.at]
    if focal.kind == "COMBO" or not _is_small(token) or not token.gap:
        return False
    told = "." in token.text or item.mount is not None or stops
    return told and not any(one.kind in _OTHERS for one in tokens[item.end + 1 : item.end + 2])


def _tell(tokens: list[Token], row: _Row, hosts: frozenset[str]) -> None:
    """Writes into the tokens what the row tells, where it is one of lenses."""
    after = tokens[row.end] if row.end < len(tokens) else None
    if (after is not None and after.kind in _OTHERS - {"LENS", "KIND"}) or _of_piece(tokens, row.start):
        return
    bare = any(tokens[item.at].kind == "NUMBER" for item in row.items)
    shared = _told_of_all(tokens, row, hosts)
    led = _led(tokens, row)
    if not led and any(_may_count(tokens, item) for item in row.items):
        return
    if bare and not (row.mounts or shared is not None or led or (after is not None and _are_lenses(after))):
        return
    for item in row.items:
        if tokens[item.at].kind == "NUMBER":
            tokens[item.at] = tokens[item.at].as_("FOCAL", unit="mm", ids=(), implies=())
        if item.stop is not None and tokens[item.stop].kind == "NUMBER":
            tokens[item.stop] = tokens[item.stop].as_("FNUM")
    _share(tokens, row, shared)
    if led and row.start > 1 and _tells_whence(tokens, row.start - 2):
        del tokens[row.start - 2 : row.start]


def _may_count(tokens: list[Token], item: _Item) -> bool:
    """'5 M42 and 4 OM': a small whole number that may as well tell how many."""
    token = tokens[item.at]
    return token.kind == "NUMBER" and token.text.isdecimal() and token.numbers[0] < _COUNTED and item.stop is None


def _of_piece(tokens: list[Token], at: int) -> bool:
    """'tubes 10, 16 and 26', 'from 25 to 50': whether the numbers are those of what stands before them."""
    place = next((n for n in range(at - 1, -1, -1) if tokens[n].kind not in ("DET", "JOIN", "CUE")), None)
    if place is None or _tells_whence(tokens, place):
        return False
    before = tokens[place]
    if any(one.kind == "JOIN" and one.text == "," for one in tokens[place + 1 : at]):
        return before.kind in ("PIECE", "MEASURE", "ISO", "LIMIT")  # 'found at a market, 28, 50 and 135'
    return before.kind in ("PIECE", "MEASURE", "ISO", "LIMIT") or (
        before.kind == "PREP" and before.value in ("from", "at")
    )


def _tells_whence(tokens: list[Token], at: int) -> bool:
    """'three lenses from my aunt (28, 50, 135)': where they come from, and no range."""
    here = tokens[at]
    return here.kind == "PREP" and here.value == "from" and at + 1 < len(tokens) and tokens[at + 1].kind == "DET"


def _are_lenses(token: Token) -> bool:
    return token.kind == "LENS" and token.text.casefold().endswith(("s", "glass"))


def _led(tokens: list[Token], row: _Row) -> bool:
    """'3 lenses. 10, 25 and 75': whether lenses are spoken of right before the row, as many of them where counted."""
    for at in range(row.start - 1, max(-1, row.start - 1 - _LED), -1):
        token = tokens[at]
        if _are_lenses(token):
            count = next(
                (one.numbers[0] for one in tokens[max(0, at - 3) : at] if one.kind in ("NUMBER", "COUNT")), None
            )
            return count is None or count >= len(row.items)
        if token.kind not in _LEADS and token.kind != "MOUNT" and not _tells_whence(tokens, at):
            return False
    return False


def _told_of_all(tokens: list[Token], row: _Row, hosts: frozenset[str]) -> tuple[int, ...] | None:
    """The tokens of what is told of all behind the row: '..., all M42', '..., both f/1.4', '..., C mount I think'."""
    each = False
    found: list[int] = []
    for at in range(row.end, min(len(tokens), row.end + _LED + 1)):
        token = tokens[at]
        if token.kind == "DET" and token.value == ALL:
            each = True
        elif token.kind == "NUMBER" and token.text.isalpha() and token.numbers[0] == len(row.items):
            each = True  # 'both', 'all three'
        elif token.kind == "CUE" and ADDED in token.groups:
            each = True  # 'also M42'
        elif each and token.kind == "NUMBER" and "." in token.text and _is_small(token):
            tokens[at] = token.as_("FNUM")  # 'all 1.4'
            found.append(at)
        elif token.kind in ("MOUNT", "FNUM") and not any(tokens[one].kind == token.kind for one in found):
            after = tokens[at + 1] if at + 1 < len(tokens) else None
            of_next = after is not None and after.kind in ("BODY", "PIECE", "LINK", "FOCAL", "LENGTH")
            host = bool(hosts & set(token.ids[:1])) or (bool(row.mounts) and token.kind == "MOUNT")
            each = each or (after is not None and ADDED in after.groups)  # 'M42 too'
            if of_next or (host and not each) or (token.kind == "FNUM" and not each):
                break
            found.append(at)
        elif not (token.kind == "JOIN" or (token.kind == "CUE" and token.value in ("be", "it")) or _is_in(tokens, at)):
            break
    return tuple(found) if found else _all_later(tokens, row)


def _all_later(tokens: list[Token], row: _Row) -> tuple[int, ...] | None:
    """'35, 50 and 85 on Z, they are all C/Y': said of all after other words of the same sentence."""
    if row.mounts:
        return None
    for at in range(row.end, min(len(tokens) - 1, row.end + _LATER)):
        if tokens[at].kind == "STOP":
            return None
        if tokens[at].kind == "DET" and tokens[at].value == ALL:
            rest = [
                n for n in range(at + 1, min(len(tokens), at + 4)) if tokens[n].kind not in ("CUE", "STRANGE", "PREP")
            ]
            return (rest[0],) if rest and _is_mount(tokens, rest[0]) else None
    return None


def _share(tokens: list[Token], row: _Row, shared: tuple[int, ...] | None) -> None:
    """What is told once put beside each number that lacks it; a copy stands where the number stands."""
    told = [tokens[at] for at in shared or ()]
    for at in shared or ():
        tokens[at] = tokens[at].as_("CUE", value="")
    mount = next((one for one in told if one.kind == "MOUNT"), None)
    stop = next((one for one in told if one.kind == "FNUM"), None)
    mounts: dict[int, Token] = {}
    first = row.items[0]
    if mount is None and row.mounts == 1 and first.ahead and first.mount is not None:
        mount = tokens[first.mount]  # 'M42 28, 50 and 135'
    following: Token | None = None
    for n in range(len(row.items) - 1, -1, -1):
        item = row.items[n]
        if item.mount is not None:
            following = None if item.ahead else tokens[item.mount]
        elif mount is not None or following is not None:
            mounts[n] = mount or following  # type: ignore[assignment]
    for n in range(len(row.items) - 1, -1, -1):
        item, number = row.items[n], tokens[row.items[n].at]
        begin = item.mount if item.ahead and item.mount is not None else item.at
        between = range(row.items[n - 1].end, begin) if n else range(0)
        for at in between:
            if begins_another(tokens[at]):
                tokens[at] = tokens[at].as_("JOIN", value="and")
        if stop is not None and item.stop is None and number.kind != "COMBO":
            tokens.insert(item.at + 1, stop.as_("FNUM", text=number.text, column=number.column))
        if n in mounts:
            tokens.insert(item.at + 1, mounts[n].as_("MOUNT", text=number.text, column=number.column))
        if n and not any(tokens[at].kind == "JOIN" for at in between):
            tokens.insert(begin, Token("JOIN", "", tokens[begin].column, "and"))  # '28 50 135' without commas
