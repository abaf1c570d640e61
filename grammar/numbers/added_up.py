"""Lengths that plus signs join: 'how near with 21 + 31', 'a stack of 3.2 + 0.4', 'rings end to end 2.5 + 1 + 26'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.numbers.draws import is_bare
from grammar.things.casting import DRAWN, SPACER
from grammar.things.phrases import TOLD
from grammar.words.tokens import Token

LENSLIKE: Final = frozenset(["LENS", "KIND", "MOUNT", "FNUM", "STRANGE", "TRAIT", "LETTER"])
OF_LENS: Final = frozenset(["NUMBER", "LENGTH", "COMBO", "FOCAL"])
_CLOSE: Final = frozenset(["how-close", "how-big", "macro", "working-distance"])
_LENSES: Final = "lenses"  # of which the numbers added up are: 'two lenses, 85 + 35'
_PLUS: Final = frozenset(["+", "plus"])
_MANY: Final = 2  # plus signs, that join no lens and ring but lengths of one sort
_LEAST_ADDED: Final = 2


def with_sums_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """Numbers added up that nothing names, with a word for spacers behind, where they can be nothing else."""
    added = sum(one.text in _PLUS for one in tokens) >= _MANY or _adds_fine(tokens)
    if told & _CLOSE or any(token.kind == "RATIO" for token in tokens) or added:
        return _with_sums_told(tokens)
    return tokens


def with_rings_added(tokens: list[Token], at: int) -> None:
    """'helicoid 17-31, rings 1+1', 'rings end to end 2.5 + 26': what is added up right behind are spacers so long."""
    first = next((n for n in range(at + 1, len(tokens)) if tokens[n].kind not in ("CUE", "PREP")), len(tokens))
    row = _added_up(tokens, first) if first < len(tokens) else []
    drawn = any(one.kind == "PIECE" and one.value in DRAWN for one in tokens)
    fine = any("." in tokens[n].text for n in row)
    after = tokens[row[-1] + 1] if row and row[-1] + 1 < len(tokens) else None
    if len(row) < _LEAST_ADDED or not (drawn or fine) or (after is not None and after.kind in LENSLIKE):
        return
    if sum(one.kind in ("MOUNT", "LETTER") for one in tokens[:at]) > len(row):
        return  # 'ltm 50 to m to e, rings 1.0 + 9.8': each is the ring of two of them
    if at and tokens[at - 1].kind == "NUMBER" and tokens[at - 1].numbers[0] == len(row):
        tokens[at - 1] = tokens[at - 1].as_("DET", numbers=())  # 'three rings, 2.5 + 1 + 26'
    tokens[at] = tokens[at].as_("PIECE", value=SPACER)
    as_row(tokens, row)
    led = tokens[at + 1 : first]
    tokens[at + 1 : row[-1] + 1] = [*tokens[first : row[-1] + 1], *(one.as_("CUE", value="") for one in led)]


def _with_sums_told(tokens: list[Token]) -> list[Token]:
    """'how near with 21 + 31', '7 + 14 + 28 with my 85': put behind a lens told elsewhere; the pieces stand unsaid."""
    if any(one.kind == "PIECE" or (one.kind == "LENS" and one.text.casefold() == _LENSES) for one in tokens):
        return tokens
    for at, token in enumerate(tokens):
        row = _added_up(tokens, at)
        others = [one for n, one in enumerate(tokens) if n not in row and one.kind in OF_LENS]
        if len(row) < _LEAST_ADDED or not (others or _is_all_told(tokens)) or (at and tokens[at - 1].text in _PLUS):
            continue
        out = [one.as_("LENGTH", unit="mm") if n in row else one for n, one in enumerate(tokens)]
        for n in row[1:]:
            out[n - 1] = out[n - 1].as_("JOIN", value=",")
        if at and out[at - 1].value == TOLD:
            out[at - 1] = out[at - 1].as_("CUE", value="")  # 'my chain on X is 1.02 + 10.05' says nothing of the body
        out.insert(row[-1] + 1, Token("PIECE", "spacers", token.column, SPACER))
        return out
    return tokens


def _is_all_told(tokens: list[Token]) -> bool:
    """'with 9.2 + 1.0 for LTM on MFT': both mounts are told, so that what is told finer than a lens lies between."""
    return sum(one.kind == "MOUNT" for one in tokens) > 1 and _adds_fine(tokens)


def _adds_fine(tokens: list[Token]) -> bool:
    """'a stack of 3.2 + 0.4': two lengths told to the tenth, which no lens and no glass is."""
    rows = (tokens[at : at + 3] for at in range(len(tokens) - 2))
    return any(
        one.text in _PLUS and is_bare(a) and is_bare(b) and "." in a.text and "." in b.text for a, one, b in rows
    )


def _added_up(tokens: list[Token], at: int) -> list[int]:
    """The places of the bare numbers from here on that plus signs join."""
    row = [at] if is_bare(tokens[at]) else []
    while row and row[-1] + 2 < len(tokens) and tokens[row[-1] + 1].text in _PLUS and is_bare(tokens[row[-1] + 2]):
        row.append(row[-1] + 2)
    return row


def as_row(out: list[Token], lengths: list[int]) -> int:
    """Every number of the row a length, each joined to the one before; gives how many joins were put in."""
    for at in lengths:
        out[at] = out[at].as_("LENGTH", unit="mm")
    put = 0
    for one, other in reversed(list(pairwise(lengths))):
        between = out[one + 1 : other]
        join = Token("JOIN", ",", out[other].column, ",")
        out[one + 1 : other] = [join]
        put += 1 - len(between)
    return put
