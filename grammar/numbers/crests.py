"""Crests counted over a length give the pitch of a thread: '10 threads are 10 mm', '7.5 mm over 10 crests'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_CRESTS: Final = "crests"
_SEVERAL: Final = "threads"  # so many of them in a row are as many pitches
_PER_INCH: Final = frozenset([24, 26, 27, 28, 32, 36, 40])
_INCH_MM: Final = 25.4
_LEAST_CRESTS: Final = 5  # that are counted along a rule
_PITCHES: Final = (0.3, 2.0)  # mm
_ALONG: Final = frozenset(["CUE", "DET", "PREP", "MEASURE"])


def counted(tokens: list[Token]) -> list[Token]:
    """'10 threads are 10 mm', '7.5 mm over 10 crests': so many pitches in a length, which gives one."""
    for at, token in enumerate(tokens):
        crests = token.kind == "MEASURE" and token.value == _CRESTS
        crests = crests or (token.kind == "MOUNTWORD" and token.text.casefold() == _SEVERAL)
        count = tokens[at - 1] if at else None
        if not crests or count is None or count.kind not in ("NUMBER", "COUNT", "FOCAL"):
            continue
        number = count.numbers[0]
        found = _beside(tokens, at + 1, 1)
        found = found if found is not None else _beside(tokens, at - 2, -1)
        found = found if found is not None else _whole_beside(tokens, at + 1, number)
        if found is None and number in _PER_INCH and token.kind == "MOUNTWORD":
            tokens[at - 1] = count.as_("PITCH", value=f"{number:g} tpi", numbers=(_INCH_MM / number,), unit="tpi")
            tokens[at] = token.as_("CUE")  # '1 inch across, 32 threads'
        if found is None or number < 1 or number != int(number):
            continue
        pitch = tokens[found].numbers[0] / number
        tokens[found] = tokens[found].as_("PITCH", value=f"{pitch:.6g} mm", numbers=(pitch,), unit="mm")
        tokens[at - 1] = count.as_("CUE")
        tokens[at] = token.as_("CUE")
    return tokens


def _beside(tokens: list[Token], at: int, step: int) -> int | None:
    """The length next to `at` in one direction, past the words that only lead to it."""
    while 0 <= at < len(tokens) and tokens[at].kind in _ALONG:
        at += step
    if not 0 <= at < len(tokens):
        return None
    token = tokens[at]
    return at if token.kind == "LENGTH" or (token.kind == "NUMBER" and "." in token.text) else None


def _whole_beside(tokens: list[Token], at: int, count: float) -> int | None:
    """'twenty crests make 15': a whole number behind them, where it is as long as so many pitches may be."""
    while at < len(tokens) and tokens[at].kind in _ALONG:
        at += 1
    if at >= len(tokens) or tokens[at].kind != "NUMBER" or count < _LEAST_CRESTS:
        return None
    return at if _PITCHES[0] <= tokens[at].numbers[0] / count <= _PITCHES[1] else None
