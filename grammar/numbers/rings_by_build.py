"""How thick a ring is, told before the word for its build: 'a flat 1 mm thread ring', 'a 1 mm M42 to E flange'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.crests import is_screw
from grammar.numbers.senses import is_thread_length
from grammar.things.casting import DRAWN
from grammar.words.tokens import Token

_RINGS: Final = frozenset(["adapter", "plain", "spacer", "ring", ""])
_MOUNTED: Final = frozenset(["adapter", "recessed", "plain"])
_LED_BY_LENS: Final = frozenset(["LENGTH", "FOCAL", "NUMBER", "COMBO"])
_LONGEST_MM: Final = 300.0  # of a ring
_FLANGE: Final = "flange-to-image"
_WORD: Final = "flange"
_PITCHES_MM: Final = frozenset([0.5, 0.6, 0.7, 0.75, 0.794, 0.8, 0.977])  # of a screw, and no ring is cut so
_SIZES: Final = frozenset(["LENGTH", "NUMBER", "THREAD"])
_GOES_ON: Final = frozenset(["PIECE", "MEASURE", "LENGTH", "NUMBER", "KEYED"])
_ENDS_OF_RING: Final = frozenset(["MOUNT", "LETTER"])
_TO: Final = "to"
_ADDED: Final = frozenset(["+", "and", "plus", "with", "via", "and a"])


def with_rings_by_build(tokens: list[Token]) -> list[Token]:
    """Without the word between a length and the ring that it tells of: neither thread nor register is so short."""
    out = [token for at, token in enumerate(tokens) if not _stands_between(tokens, at)]
    return _with_flanges_as_rings(out)


def _stands_between(tokens: list[Token], at: int) -> bool:
    within = 0 < at < len(tokens) - 1
    return within and _is_build(tokens[at]) and _is_ring(tokens[at + 1]) and _is_thickness(tokens, at - 1)


def is_of_mounted_ring(tokens: list[Token], at: int) -> bool:
    """'a 0.5 C tube', 'a 27.3 M42 ring': a decimal before a piece that its mount stands with; no lens has such a one.

    Less than a millimetre before a ring may be what a reducer multiplies by.
    """
    row, number = tokens[at + 1 : at + 3], tokens[at].numbers[0]
    if [one.kind for one in row] != ["MOUNT", "PIECE"] or "." not in tokens[at].text:
        return False
    if row[1].value in DRAWN and number < 1:
        return True
    if at and tokens[at - 1].kind in _LED_BY_LENS:
        return False  # '50mm 2.0 m42 ring' tells how far the lens opens
    return row[1].value in _MOUNTED and 1.0 <= number <= _LONGEST_MM


def _is_build(token: Token) -> bool:
    return _is_flange(token) or is_screw(token)


def _is_flange(token: Token) -> bool:
    return (token.kind, token.value) == ("MEASURE", _FLANGE) and token.text.casefold() == _WORD


def _is_ring(token: Token) -> bool:
    return token.kind == "PIECE" and token.value in _RINGS


def _is_thickness(tokens: list[Token], at: int, joined: bool = False) -> bool:
    """Whether the length here is in mm and neither a pitch nor behind the width of a screw, as in '39 x 1 mm'.

    `joined`: a word of a row is known to stand before it.
    """
    token = tokens[at]
    metric = token.kind == "LENGTH" and token.unit == "mm" and is_thread_length(token)
    behind_width = not joined and at > 0 and tokens[at - 1].kind in _SIZES
    return metric and token.numbers[0] not in _PITCHES_MM and not behind_width


def _with_flanges_as_rings(tokens: list[Token]) -> list[Token]:
    """'9 + 16 + a 1 mm flange', 'and a 1 mm M42 to E flange': a last piece so thin is a ring, and no register."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        if not _is_flange(token) or (after is not None and after.kind in _GOES_ON):
            continue
        size = at - 1
        while size >= 0 and (tokens[size].kind in _ENDS_OF_RING or tokens[size].text.casefold() == _TO):
            size -= 1
        led = next((one for one in reversed(tokens[: max(size, 0)]) if one.kind not in ("DET", "LETTER")), None)
        if size >= 0 and _is_thickness(tokens, size, joined=True) and led is not None and led.text.casefold() in _ADDED:
            out[at] = token.as_("PIECE", value="adapter")
    return out
