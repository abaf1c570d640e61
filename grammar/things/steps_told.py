"""A bush with its thickness behind it: 'a 39-42 step (1mm)', '39-42 bush with a 1 mm lip', 'lipped 39-42 bush 1 mm'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_PIECES: Final = frozenset(["thread-reducer", "step-ring"])
_STEP: Final = "step"
_WIDTHS: Final = (24.0, 62.0)  # mm, of the screws of lenses
_MOST_APART: Final = 10.0  # mm, of the two
_THICKEST: Final = 4.0  # mm
_LIP: Final = frozenset(["lip", "thickness"])  # measures of how thick it is
_PASSED: Final = frozenset(["MARK", "DET", "LETTER", "PREP"])  # between it and its thickness


def with_steps_told(tokens: list[Token]) -> list[Token]:
    """The tokens with the thickness before the two widths, and a word for the piece behind them."""
    for at in range(len(tokens)):
        widths = _widths(tokens, at)
        if widths is None:
            continue
        pair, end = widths
        word = tokens[end] if end < len(tokens) else None
        piece = word is not None and word.kind == "PIECE" and word.value in _PIECES
        step = word is not None and word.kind == "FILLER" and word.text.casefold() == _STEP
        if word is None or not (piece or step):
            continue
        head = word.as_("PIECE", value="step-ring")  # of a told thickness, whatever it is called
        thick, rest = _thickness(tokens, end + 1)
        led = at - 1 if at and (tokens[at - 1].kind, tokens[at - 1].value) == ("MEASURE", "lip") else at
        if thick is None and (piece or not _is_sized(tokens, led)):
            continue
        size = [] if thick is None else [thick.as_("LENGTH", column=pair.column)]
        return [*tokens[:led], *size, pair, head, *with_steps_told(tokens[rest if size else end + 1 :])]
    return tokens


def _widths(tokens: list[Token], at: int) -> tuple[Token, int] | None:
    """The two widths of screws as one token, and where what follows them begins."""
    token = tokens[at]
    if token.kind == "RANGE" and not token.unit:
        return (token, at + 1) if _are_of_screws(token.numbers) else None
    row = tokens[at : at + 3]
    if [one.kind for one in row] != ["NUMBER", "PREP", "NUMBER"] or row[1].value != "to":
        return None
    ends = (row[0].numbers[0], row[2].numbers[0])
    whole = token.as_("RANGE", text=f"{ends[0]:g}-{ends[1]:g}", numbers=ends, unit="")
    return (whole, at + 3) if _are_of_screws(ends) else None


def _are_of_screws(ends: tuple[float, ...]) -> bool:
    low, high = ends
    return _WIDTHS[0] <= low < high <= _WIDTHS[1] and high - low <= _MOST_APART


def _thickness(tokens: list[Token], at: int) -> tuple[Token | None, int]:
    """A small length right behind it, in brackets or led by 'with', and where that ends."""
    start = at
    while at < len(tokens) and tokens[at].kind in _PASSED and at - start < 2:
        at += 1
    size = tokens[at] if at < len(tokens) else None
    if size is None or not size.is_mm or size.numbers[0] > _THICKEST:
        return None, start
    end = at + 1
    lipped = end < len(tokens) and tokens[end].kind == "MEASURE" and tokens[end].value in _LIP
    end += lipped
    led = any(one.kind != "MARK" for one in tokens[start:at])
    if led and not lipped:
        return None, start  # 'a 39-42 bush with a 1 mm ring'
    end += end < len(tokens) and tokens[end].kind == "MARK" and tokens[end].text == ")"
    return size, end


def _is_sized(tokens: list[Token], at: int) -> bool:
    """'a 1 mm 39 to 42 step': its thickness stands before it."""
    return at > 0 and tokens[at - 1].is_mm and tokens[at - 1].numbers[0] <= _THICKEST
