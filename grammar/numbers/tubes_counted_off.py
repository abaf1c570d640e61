"""Tubes that are counted and then told one by one: 'three tubes, 7 14 28', '3 tubes: 12, 20 and 36 EF, 50mm'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import SPACER
from grammar.words.groups import LIKE_BEFORE
from grammar.words.tokens import Token, is_plural

_MOST: Final = 6  # in a set
_LONGEST_MM: Final = 100.0  # of one
_LEADS: Final = frozenset(["MARK", "JOIN"])
_OF: Final = "of"
_HEADS_LENS: Final = frozenset(["LENS", "MOUNT", "KIND", "LETTER"])


def with_tubes_counted_off(tokens: list[Token]) -> list[Token]:
    """The tokens without the count, each number of the row as a length, and what is told next as no further one."""
    for at in range(len(tokens) - 3):
        count, tubes = tokens[at], tokens[at + 1]
        counted = count.kind in ("NUMBER", "COUNT") and count.numbers[0] in range(2, _MOST + 1)
        counted = counted and LIKE_BEFORE not in count.groups  # 'both tubes' are those spoken of before
        if not counted or (tubes.kind, tubes.value) != ("PIECE", SPACER) or not is_plural(tubes):
            continue
        first = at + 2
        while first < len(tokens) and (tokens[first].kind in _LEADS or tokens[first].value == _OF):
            first += 1
        row = _row(tokens, first, int(count.numbers[0]))
        if row:
            return _told(tokens, at, row)
    return tokens


def _row(tokens: list[Token], first: int, many: int) -> list[int]:
    """The places of just so many lengths from here on; none where there are fewer."""
    row: list[int] = []
    for at in range(first, len(tokens)):
        token = tokens[at]
        if token.may_be_mm and not token.text.isalpha() and 0 < token.numbers[0] <= _LONGEST_MM:
            row.append(at)
        elif token.kind != "JOIN":
            break
        if len(row) == many:
            return row
    return []


def _told(tokens: list[Token], at: int, row: list[int]) -> list[Token]:
    tubes, rest = tokens[at + 1], tokens[row[-1] + 1 :]
    mount = (
        rest[:1] if rest and rest[0].kind == "MOUNT" and (len(rest) == 1 or rest[1].kind in ("JOIN", "STOP")) else []
    )
    rest = rest[len(mount) :]
    out = [*tokens[:at], *mount, tubes]
    for n, place in enumerate(row):
        out += [Token("JOIN", ",", tokens[place].column, ",", listed=tubes.listed)] if n else []
        out.append(tokens[place].as_("LENGTH", unit="mm"))
    if len(rest) > 1 and rest[0].kind == "JOIN" and rest[1].may_be_mm and not rest[1].text.isalpha():
        # all of them are told: what is next is the lens's
        behind = rest[2:3]
        lens = (
            []
            if behind and behind[0].kind in _HEADS_LENS
            else [Token("LENS", "lens", rest[1].column, listed=tubes.listed)]
        )
        rest = [rest[0], rest[1].as_("LENGTH", unit="mm"), *lens, *rest[2:]]
    return [*out, *rest]
