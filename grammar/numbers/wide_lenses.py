"""'a 20 mm wide on E', 'my 28mm wide lens': whether 'wide' behind a length is a kind of lens or tells a width."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import AMISS, REAR
from grammar.words.tokens import Token

_LONGEST_MM: Final = 40.0  # focal lengths that are called wide
_SHORTEST_MM: Final = 8.0
_ENGRAVED: Final = frozenset([10, 12, 14, 15, 16, 17, 18, 19, 20, 21, 24, 25, 28, 35])  # what wide lenses are made to
_THICK: Final = "thickness"  # by which nothing is wide
_LED: Final = frozenset(["DET", "LETTER"])
_ITS: Final = "its"  # 'it's 20 mm wide' tells of a size
_BEHIND: Final = "behind"
_PUT: Final = frozenset(["on", "with", "for", "at", "in", "behind", "to"])
_ENDS: Final = frozenset(["JOIN", "STOP", "MARK", "CUE", "FNUM"])
_OF_RINGS: Final = frozenset(["own", "nominal", "thickness", "length"])  # values of words that tell of no width
_MEASURED: Final = frozenset(["MEASURE", "MOUNTWORD", "KEYED", "PITCH"])  # words for what may be so wide


def is_wide_lens(tokens: list[Token], at: int) -> bool:
    """Whether the length before `at` is the focal length of a lens that the word at `at` calls wide."""
    length = tokens[at - 1]
    focal = length.unit == "mm" and _SHORTEST_MM <= length.numbers[0] <= _LONGEST_MM
    if not focal or length.numbers[0] != int(length.numbers[0]):
        return False
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if after is not None and after.kind == "LENS":
        return at + 2 >= len(tokens) or tokens[at + 2].kind != "MEASURE"
    before = tokens[at - 2] if at > 1 else None
    if _stands_alone(tokens, at):
        return True
    led = (
        before is None
        or (before.kind in _LED and before.value != _ITS)
        or (before.kind == "PREP" and before.value == _BEHIND)
    )
    if not led or any((one.kind in _MEASURED and one.value != _THICK) or REAR in one.groups for one in tokens):
        return False
    if after is not None and after.kind == "MOUNT":
        return at >= 2 and length.numbers[0] in _ENGRAVED  # 'a 28mm wide M42'
    placed = after is not None and after.kind == "PREP" and after.value in _PUT and at + 2 < len(tokens)
    ringed = after is not None and after.kind == "JOIN" and any(one.kind == "PIECE" for one in tokens[at + 2 :])
    placed = placed or (ringed and length.numbers[0] in _ENGRAVED)  # '35mm wide and a ring 0.15 too thin'
    return placed or (at >= 2 and (after is None or after.kind in _ENDS))


def _stands_alone(tokens: list[Token], at: int) -> bool:
    """'mine is 34.10. 18mm wide': a clause by itself, of a length that such lenses have, and of no hole."""
    before, after = tokens[at - 2] if at > 1 else None, tokens[at + 1] if at + 1 < len(tokens) else None
    alone = before is not None and before.kind in ("STOP", "JOIN") and (after is None or after.kind == "STOP")
    holes = any((one.kind in _MEASURED and one.value not in _OF_RINGS) or REAR in one.groups for one in tokens)
    return alone and tokens[at - 1].numbers[0] in _ENGRAVED and not holes


def is_lens_amiss(tokens: list[Token], at: int, behind: int) -> bool:
    """'my 24 is way off', 'only the 35 falls short': a lens by its number, and no ring; it is told as one then."""
    number, word = tokens[at], tokens[behind]
    whole = number.kind in ("NUMBER", "FOCAL") and number.text.isdigit() and number.numbers[0] >= _SHORTEST_MM
    led = at > 0 and tokens[at - 1].kind == "DET" and tokens[at - 1].value != _ITS
    if not (AMISS in word.groups and whole and led and behind > at):
        return False
    tokens[at], tokens[behind] = number.as_("FOCAL"), word.as_("CUE")
    return True
