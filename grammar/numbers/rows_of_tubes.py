"""Lengths of tubes in a row that are not called so: '12 20 and 36 on a 200/4, how big', 'my 85 with 13, 21 and 31'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.things.casting import SPACER
from grammar.words.groups import OWN, PICKED_OUT, STANDS_IN
from grammar.words.tokens import Token, is_plural

_TUBES: Final = (3.0, 100.0)  # mm, of one in a set
_LEAST: Final = 2
_EITHER: Final = frozenset(["or", "vs"])
_MOST_TUBES: Final = 6
_JOINING: Final = frozenset(["JOIN", "MARK"])
_ARTICLES: Final = frozenset(["DET", "LETTER"])
_AND_A: Final = frozenset(["and a", "and an"])
_PASSED: Final = frozenset(["DET", "CUE", "LETTER", "FILLER", "VERB", "JOIN", "MARK"])
_UNDER: Final = frozenset(
    ["on", "behind", "with", "under", "beneath", "below"]
)  # between a row of tubes and the lens they are put to
_BEFORE: Final = frozenset(["with", "on", "added", "plus", "+", "and"])  # between a lens and the row
_OF_LENS: Final = frozenset(["COMBO", "FOCAL", "LENGTH", "NUMBER"])
_MACRO: Final = "macro"
_TUBE: Final = "extension-tube"
_LENS_TOLD: Final = frozenset(["FOCAL", "COMBO", "LENS"])
_EXTENSION: Final = "extension"  # value of 'of tubes', where it is told how many mm of them


def with_unsaid_tubes(tokens: list[Token]) -> list[Token]:
    """The tokens with such a row as spacers of those lengths; for questions of what comes close up."""
    if any(one.kind == "PIECE" for one in tokens):
        return tokens
    at = 0
    while at < len(tokens):
        row = _row(tokens, at)
        if len(row) >= _LEAST and (_leads_to_lens(tokens, row[-1] + 1) or _follows_lens(tokens, row[0])):
            return _told(tokens, row)
        at = row[-1] + 1 if row else at + 1
    return tokens


def _with_both_tubes(tokens: list[Token]) -> list[Token]:
    """'100 macro, now add the 20 and the 36 tube': of two lengths before one tube the first is of one too."""
    sized = ("FOCAL", "LENGTH", "NUMBER")  # 'the 100 macro', and no bug of 10 mm
    named = (
        at
        for at, (one, other) in enumerate(pairwise(tokens))
        if (one.kind in sized and _names(other)) or (OWN in one.groups and other.kind == "NUMBER")
    )  # 'my 90 with a 20 or a 36 mm tube'
    lens = next((at for at in named), next((at for at, one in enumerate(tokens) if one.kind in _LENS_TOLD), None))
    for at in range(1, len(tokens) - 3):
        size, join, *rest = tokens[at], *(one for one in tokens[at + 1 : at + 6] if one.kind not in _ARTICLES)
        if len(rest) < _LEAST:
            return tokens
        other, piece = rest[:_LEAST]
        numbers = size.kind in ("FOCAL", "NUMBER") and other.kind in ("LENGTH", "NUMBER", "FOCAL")
        pair = numbers and join.value in ("and", "or") and (piece.kind, piece.value) == ("PIECE", _TUBE)
        put = any(one.value in _BEFORE for one in tokens[max(0, at - 2) : at] if one.kind not in _ARTICLES)
        if pair and put and lens is not None and lens < at and _TUBES[0] <= size.numbers[0] <= _TUBES[1]:
            first = [size.as_("LENGTH", unit="mm"), Token("PIECE", "tube", size.column, _TUBE)]
            return [*tokens[:at], *first, *tokens[at + 1 :]]
    return tokens


def _names(token: Token) -> bool:
    return token.kind in ("KIND", "LENS", "MOUNT") or token.text.casefold() == _MACRO


def _told(tokens: list[Token], row: list[int]) -> list[Token]:
    ahead = row[-1] + 1
    out = list(tokens[: row[0]])
    if len(out) > 1 and out[-2].kind == "LENGTH":
        out[-2] = out[-2].as_("FOCAL")  # '50 mm plus 12, 20 and 36'
    if len(out) > 1 and out[-2].kind == "NUMBER" and out[-2].numbers[0] == len(row):
        del out[-2:]  # 'all three, 12 20 36,'
    for n in row:
        if n != row[0]:
            out.append(Token("JOIN", ",", tokens[n].column, ","))
        out.append(tokens[n].as_("LENGTH", unit="mm"))
    said = ahead < len(tokens) and (
        (tokens[ahead].kind, tokens[ahead].value) == ("MEASURE", _EXTENSION) or _is_standin(tokens[ahead])
    )
    out.append(Token("PIECE", "spacers", tokens[row[-1]].column, SPACER))
    return [*out, *tokens[ahead + said :]]


def _row(tokens: list[Token], at: int) -> list[int]:
    """The places of whole bare numbers that follow each other from here on, with no more than joins between."""
    row: list[int] = []
    while at < len(tokens):
        if _is_bare(tokens[at]):
            row.append(at)
        elif not row or not _joins(tokens, at):
            break
        at += 1
    return row


def _joins(tokens: list[Token], at: int) -> bool:
    """'12, 24', 'a 7 and a 14', 'the 36 plus the 12': whether a row may go on behind what stands here."""
    token = tokens[at]
    led = token.kind == "DET" and tokens[at - 1].kind == "JOIN"
    return token.kind in _JOINING or led or (token.kind == "PREP" and token.text.casefold() in _AND_A)


def _is_bare(token: Token) -> bool:
    whole = _is_left_number(token) and token.numbers[0] == int(token.numbers[0])
    return whole and _TUBES[0] <= token.numbers[0] <= _TUBES[1]


def _leads_to_lens(tokens: list[Token], at: int) -> bool:
    """'.. all together on a 200/4': behind what parts them stands a lens that the row is put to."""
    under = _past(tokens, at)
    if under is not None and tokens[under].value == "for" and tokens[under + 1 : under + 2]:
        under = (
            _past(tokens, under + 2) if tokens[under + 1].kind == "MOUNT" else under
        )  # 'the 12 20 36 set for EF, on'
    if under is not None and any(_is_all(one) for one in tokens[at:under]) and _may_be_lens(tokens[under]):
        return tokens[under].kind != "NUMBER"  # '7 14 and 28 all stacked, 135mm'
    if under is None or tokens[under].kind not in ("PREP", "LIMIT") or tokens[under].value not in _UNDER:
        return False
    lens = _past(tokens, under + 1)
    return lens is not None and any(map(_may_be_lens, _named_at(tokens, lens)))


def _is_all(token: Token) -> bool:
    return token.text.casefold().split()[:1] == ["all"]


def with_lens_before_tubes(tokens: list[Token]) -> list[Token]:
    """'58mm m42 tubes 12+20': of tubes that are told behind the word the length before their mount is the lens's."""
    tokens = _with_both_tubes(tokens)
    for at in range(2, len(tokens) - 1):
        size, mount, tubes = tokens[at - 2 : at + 1]
        named = (tubes.kind, tubes.value) == ("PIECE", _TUBE) and is_plural(tubes) and mount.kind == "MOUNT"
        if named and size.is_mm and tokens[at + 1].may_be_mm and not any(one.kind in _LENS_TOLD for one in tokens):
            lens = Token("LENS", "lens", mount.column, listed=mount.listed)
            put = Token("PREP", "with", tubes.column, "with", listed=mount.listed)
            return [*tokens[: at - 2], size.as_("FOCAL"), mount, lens, put, *tokens[at:]]
    return tokens


def with_tubes_picked(tokens: list[Token]) -> list[Token]:
    """'tubes 9 16 30, only the 9 and 30 on it': those of the row alone; 'tubes 9 16 30. all three': no third number."""
    row = next((row for at in range(len(tokens)) if len(row := _lengths_at(tokens, at)) >= _LEAST), [])
    out = list(tokens)
    if not row or not any(
        one.value == SPACER for one in (*tokens[max(0, row[0] - 1) : row[0]], *tokens[row[-1] + 1 : row[-1] + 2])
    ):
        return tokens
    for at in range(row[-1] + 1, len(out)):
        if out[at].kind == "NUMBER" and _is_all(out[at]):
            out[at] = out[at].as_("CUE", numbers=())
    lengths = {out[at].numbers[0] for at in row}
    picks = ((at, _row(out, at + 1)) for at in range(row[-1] + 1, len(out)) if _points(out[at]))
    only, said = next(((at, row) for at, row in picks if row and {out[n].numbers[0] for n in row} < lengths), (0, []))
    if not said or any(_is_all(one) for one in out[row[-1] + 1 : only]):
        return out  # 'all three together, and just the 5' asks of both
    picked = {out[at].numbers[0] for at in said}
    rest = [one for n, one in enumerate(out[row[-1] + 1 :], start=row[-1] + 1) if not only <= n <= said[-1]]
    kept = [out[at] for at in row if out[at].numbers[0] in picked]
    joined = [
        part for n, one in enumerate(kept) for part in ((Token("JOIN", ",", one.column, ","),) if n else ()) + (one,)
    ]
    return [*out[: row[0]], *joined, *rest]


def _points(token: Token) -> bool:
    return PICKED_OUT in token.groups or (token.kind == "DET" and token.value == "the")


def _lengths_at(tokens: list[Token], at: int) -> list[int]:
    """The places of lengths in mm from here on, each joined to the one before."""
    row = [at] if tokens[at].is_mm else []
    while row and row[-1] + 2 < len(tokens) and tokens[row[-1] + 1].kind == "JOIN" and tokens[row[-1] + 2].is_mm:
        row.append(row[-1] + 2)
    return row


def _named_at(tokens: list[Token], at: int) -> list[Token]:
    """What names a lens here: a number, or a mount with the number behind it."""
    return tokens[at : at + 2] if tokens[at].kind in ("LENS", "MOUNT", "KIND") else tokens[at : at + 1]


def _follows_lens(tokens: list[Token], at: int) -> bool:
    """'my 85 1.8 with 10 and 16': what stands before the row is a lens with a word that puts the row to it."""
    led = at - 1
    while led >= 0 and tokens[led].kind in ("DET", "LETTER", "CUE"):
        led -= 1
    if led < 1 or not (tokens[led].value in _BEFORE or tokens[led].text.casefold() in _BEFORE):
        return False
    back = led - 1
    while back >= 0 and tokens[back].kind in ("LENS", "MOUNT", "KIND", "FNUM"):
        back -= 1
    return back >= 0 and (tokens[back].kind in ("COMBO", "FOCAL", "LENGTH") or _is_left_number(tokens[back]))


def _is_left_number(token: Token) -> bool:
    return token.kind == "NUMBER" and token.text[:1].isdigit()


def _past(tokens: list[Token], at: int) -> int | None:
    while at < len(tokens) and (tokens[at].kind in _PASSED or _is_standin(tokens[at])):
        at += 1
    return at if at < len(tokens) else None


def _is_standin(token: Token) -> bool:
    """'the 10 and 16 ones': they are those pieces."""
    return token.kind == "LENS" and STANDS_IN in token.groups


def _may_be_lens(token: Token) -> bool:
    metric = token.kind in _OF_LENS and not token.text.isalpha() and token.unit in ("", "mm")
    return metric or token.kind == "NAMED"


def with_counted_tubes(tokens: list[Token]) -> list[Token]:
    """'one 30 mm tube or three of 10', 'three 12 mm tubes or one 36 mm': both sides of the 'or' are tubes."""
    for at, join in enumerate(tokens):
        if join.kind != "JOIN" or join.value not in _EITHER:
            continue
        tube = next((one for one in (*tokens[:at], *tokens[at + 1 :]) if one.value == SPACER), None)
        ahead = [one for one in tokens[at + 1 : at + 4] if one.kind != "DET" or one.value != "the"]
        after = tokens[at + 4 : at + 5]
        if tube is None or len(ahead) < 2 or tokens[at - 1] is not tube:
            continue
        count, of = ahead[0], ahead[1]
        if len(ahead) == 3 and of.value == "of" and count.kind == "NUMBER" and 2 <= count.numbers[0] <= _MOST_TUBES:
            length = ahead[2].kind in ("NUMBER", "LENGTH") and ahead[2].unit in ("", "mm")
            if length and not any(one.kind == "PIECE" for one in after):
                one = [ahead[2].as_("LENGTH", unit="mm"), ahead[2].as_("PIECE", value=SPACER, numbers=())]
                more = [ahead[2].as_("JOIN", value="+", text="+", numbers=()), *one] * (int(count.numbers[0]) - 1)
                return [*tokens[: at + 1], *one, *more, *tokens[at + 4 :]]
        single = count.value == "1" or (count.kind == "NUMBER" and count.numbers[0] == 1)
        if single and of.kind == "LENGTH" and of.unit == "mm" and not any(one.kind == "PIECE" for one in ahead):
            piece = of.as_("PIECE", value=SPACER, numbers=())
            return [*tokens[: at + 1], count, of, piece, *tokens[at + 3 :]]
    return tokens
