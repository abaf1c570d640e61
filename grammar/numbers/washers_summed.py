"""Several sheets that lie together: 'two 0.1 washers and one of 0.05, total?', 'four shims of .08', '0.15 twice'."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import Final

from engine.base.units import MM_PER_INCH
from grammar.things.casting import SPACER
from grammar.words.groups import PUT_WHERE, SHEETS, TWICE
from grammar.words.tokens import Token

SHEETS_LAID: Final = "sheets"  # key of how thick each of them is
_SUM_ASKED: Final = "sum-asked"
_COMES_OF_IT: Final = frozenset(["infinity", "how-far", "far-asked", "focus", "how-bad", "which-stop", "end-far"])
_CHOOSES: Final = frozenset(["how-many", "which", "how-close", "how-big", "macro", "turns-q"])  # which to take
_LAYER: Final = ("MEASURE", "layer")
_LINKS: Final = frozenset(["of", "at", "with"])
_EACH: Final = "each"
_THICKEST_MM: Final = 3.0
_MOST: Final = 9  # of one thickness
_INCHES: Final = frozenset(["in", "thou", "mil"])
_FINE: Final = frozenset([".", "0"])  # how thin ones begin


def with_washers_summed(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The sheets as one row where their sum is asked for, and as one spacer where it is asked what comes of them."""
    summed, comes = _SUM_ASKED in told, bool(told & _COMES_OF_IT)
    if not (summed or comes or any(TWICE in one.groups for one in tokens)) or told & _CHOOSES:
        return tokens
    tokens = _in_mm(tokens)
    first = 0
    while first < len(tokens):
        last = _end(tokens, first)
        run = tokens[first : last + 1]
        sizes = _sizes(run) if any(_is_sheet(one) for one in run) else []
        doubled = any(TWICE in one.groups for one in run)
        if len(sizes) == 1 and comes and not summed and _is_sheet(run[0]) and _is_put(tokens, last + 1):
            return [*tokens[:first], *_as_one(run, sizes, False), *tokens[last + 1 :]]
        if len(sizes) > 1:
            return [*tokens[:first], *_as_one(run, sizes, summed or (doubled and not comes)), *tokens[last + 1 :]]
        first = last + 1 if last >= first else first + 1
    return tokens


def listed(sizes: Sequence[float]) -> str:
    """Those sheets as they are kept: '0.05 mm, 2 x 0.1 mm'."""
    rows = [(len([*row]), size) for size, row in groupby(sizes)]
    return ", ".join(f"{count} x {size:g} mm" if count > 1 else f"{size:g} mm" for count, size in rows)


def _as_one(run: list[Token], sizes: list[float], summed: bool) -> list[Token]:
    of = next(one for one in run if _is_size(one))
    word = next(one for one in run if _is_sheet(one))
    if summed:
        return [of.as_("KEYED", value=SHEETS_LAID, numbers=tuple(sizes), unit="mm"), word.as_("CUE", value="")]
    whole = round(sum(sizes), 4)
    size = of.as_("LENGTH", text=f"{whole:g} mm", numbers=(whole,), unit="mm")
    led = of.as_("DET", text="a", value="A", numbers=(), unit="")  # no length of a row: '35mm, two 0.1 shims'
    return [led, size, word.as_("PIECE", value=SPACER)]


def _end(tokens: list[Token], first: int) -> int:
    """The place of the last size, or word for sheets, of the run that begins here; before it where none does."""
    last = first - 1
    if not (_is_size(tokens[first]) or _count(tokens[first]) or _is_sheet(tokens[first])):
        return last
    for at in range(first, len(tokens)):
        one = tokens[at]
        if _is_size(one) or _is_sheet(one) or TWICE in one.groups or one.text.casefold() == _EACH:
            last = at
        elif not (_count(one) or one.kind in ("JOIN", "DET") or one.value in _LINKS or one.text == ":"):
            break
    return last


def _sizes(run: list[Token]) -> list[float]:
    """How thick each of them is, those of one thickness as often as they are told."""
    out: list[list[float]] = []
    count, before_word = 1, False
    for at, one in enumerate(run):
        if _is_size(one):
            alone = before_word and sum(map(_is_size, run)) == 1
            out.append([one.numbers[0]] * (count if not before_word or alone else 1))
            count, before_word = 1, False
        elif _count(one):
            count, before_word = _count(one), False
        elif _is_sheet(one) and count > 1:
            before_word = True  # 'two washers, 0.1 and 0.25', 'two washers of 0.1'
        elif TWICE in one.groups and out:
            out[-1] = out[-1][:1] * 2
        elif one.kind == "JOIN" and at and not before_word:
            count = 1
    return [size for row in out for size in row]


def _is_put(tokens: list[Token], at: int) -> bool:
    """'a layer of tape, 0.06, under a 20mm lens': told to lie somewhere."""
    rest = [one for one in tokens[at : at + 2] if one.kind != "JOIN"][:1]
    return bool(rest) and PUT_WHERE in rest[0].groups


def _in_mm(tokens: list[Token]) -> list[Token]:
    """Inches and thous as the millimetres they are; 'one of .003 and one of .005 inch' tells both in inches."""
    inches = any(one.kind == "LENGTH" and one.unit in _INCHES and one.text[:1] in _FINE for one in tokens)
    out = []
    for one in tokens:
        if one.kind == "LENGTH" and one.unit in _INCHES and len(one.numbers) == 1 and one.numbers[0] <= _THICKEST_MM:
            one = one.as_("LENGTH", unit="mm")
        elif inches and one.kind == "NUMBER" and one.text[:1] in _FINE and len(one.numbers) == 1:
            one = one.as_("LENGTH", unit="mm", numbers=(round(one.numbers[0] * MM_PER_INCH, 4),))
        out.append(one)
    return out


def _is_size(token: Token) -> bool:
    fine = "." in token.text or token.is_mm
    return token.may_be_mm and fine and len(token.numbers) == 1 and 0 < token.numbers[0] <= _THICKEST_MM


def _count(token: Token) -> int:
    """How many, where it is a whole number without a unit; else 0."""
    bare = token.kind in ("NUMBER", "COUNT", "TIMES") and len(token.numbers) == 1 and not token.unit
    whole = bare and "." not in token.text and token.numbers[0] == int(token.numbers[0])
    return int(token.numbers[0]) if whole and 0 < token.numbers[0] <= _MOST else 0


def _is_sheet(token: Token) -> bool:
    return SHEETS in token.groups or (token.kind, token.value) == _LAYER
