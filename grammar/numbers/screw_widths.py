"""How wide the screw of a lens is, beside its focal length: '45mm, screws in, about 42 wide', 'a screw of 42 or so'."""

from __future__ import annotations

import re
from typing import Final

from engine.base.units import MM_PER_INCH
from grammar.numbers.crests import is_screw
from grammar.numbers.measured_lengths import WIDTHS
from grammar.words.token_kinds import LENGTHS
from grammar.words.tokens import Token

_SCREWS: Final = "screw"  # 'screws in', 'screwed on'
_WIDE: Final = "wide"
_OF: Final = "of"
_SMALLEST: Final = (19.5, 21.0)  # mm: the screw of objectives, as short as hardly a lens is that is told by it
_WIDTHS: Final = ((24.5, 26.5), (36.5, 44.5))  # mm: screws that lenses are held by
_NO_FOCALS: Final = ((25.3, 25.5), (38.8, 39.2), (41.5, 42.4))  # and of these what hardly any lens is long
_OBJECTIVES: Final = (15.0, 40.0)  # mm: how wide screws of objectives are, whose focal length is hardly ever told
_OBJECTIVE: Final = "objective"
_OF_IT: Final = frozenset(["KIND", "LENS", "FILLER", "TRAIT", "MEASURE"])
_ELSE: Final = frozenset(["MOUNT", "BODY", "PIECE", "FORMAT", "FNUM", "NUMBER", "KIND", "LINK", "NAMED", "DISTANCE"])
_OF_BARREL: Final = ("MEASURE", "barrel")  # 'wide at the back'
_INCH: Final = "inch"
_ROW: Final = 3  # tokens: is, the inches, wide
_REACH: Final = 7  # tokens from the word for a screw to its width
_FOCALS: Final = frozenset(["LENGTH", "COMBO", "FOCAL", "RANGE"])
_OF_OTHERS: Final = frozenset(["LENS", "PIECE", "LINK", "FNUM", "COMBO", "NUMBER", "MOUNT", "PITCH", "TIMES", "TRAIT"])


def with_screw_widths(tokens: list[Token]) -> list[Token]:
    """The number as wide as lens screws are, near a word for one, is its width where the lens has its own number."""
    out = list(tokens)
    for at, token in enumerate(out):
        if not _speaks_of_screw(token):
            continue
        wide = out[at + 2] if at + 2 < len(out) and out[at + 1].kind in LENGTHS and is_screw(token) else None
        if wide is not None and (wide.kind, wide.value) == _OF_BARREL:  # 'a thread 42 mm wide at the back'
            out[at + 1 : at + 3] = [out[at + 1].as_("KEYED", value="diameter", unit="mm"), wide.as_("CUE")]
            continue
        led = at + 2 < len(out) and out[at + 1].value == _OF and _is_of_objective(out[at + 2])
        if led and not any(_is_told(one) for one in out):
            out[at + 2] = out[at + 2].as_("KEYED", value="diameter", unit="mm")  # 'a small screw of 20 mm'
            continue
        before = _before_lens(out, at)
        if before is not None and not any(_is_told(one) and one.kind != "PITCH" for one in out):
            out[before] = out[before].as_("KEYED", value="diameter", unit="mm")
            continue
        inches = _inches_wide(out, at)
        if inches is not None:
            out[at + 2] = out[at + 2].as_("KEYED", value="diameter", unit="mm", numbers=(inches,), ids=())
            out[at + 3] = out[at + 3].as_("CUE")
            continue
        found = next((place for place in range(at + 1, min(at + _REACH, len(out))) if _is_width(out, place)), None)
        if found is None or any(_is_told(one) for one in out):
            continue
        out[found] = out[found].as_("KEYED", value="diameter", unit="mm")
        if found + 1 < len(out) and out[found + 1].text.casefold() == _WIDE:
            out[found + 1] = out[found + 1].as_("CUE")
    return out


def _is_of_objective(token: Token) -> bool:
    return token.is_mm and _SMALLEST[0] <= token.numbers[0] <= _SMALLEST[1]


def _before_lens(tokens: list[Token], at: int) -> int | None:
    """'27 mm objective thread', '42mm lens screw': the width stands before what the screw is of, no such length."""
    place = at - 1
    while place >= 0 and tokens[place].kind in _OF_IT:
        place -= 1
    if not 0 <= place < at - 1 or not is_screw(tokens[at]) or tokens[place].kind != "LENGTH" or not tokens[place].is_mm:
        return None
    of_objective = any(one.kind == "KIND" and one.value == _OBJECTIVE for one in tokens[place:at])
    widths = (_OBJECTIVES,) if of_objective else _NO_FOCALS
    return place if any(least <= tokens[place].numbers[0] <= most for least, most in widths) else None


def _inches_wide(tokens: list[Token], at: int) -> float | None:
    """'the screw is one inch wide': told in whole inches, and no chip of that name; in mm."""
    row = tokens[at + 1 : at + 4]
    if len(row) < _ROW or row[0].value != "be" or row[2].text.casefold() != _WIDE:
        return None
    inch = _INCH in row[1].text.casefold().split()
    told = inch and row[1].kind in ("FORMAT", "LENGTH") and re.fullmatch(r"\d+(?:\.\d+)?", row[1].value) is not None
    return float(row[1].value) * MM_PER_INCH if told else None


def is_lens_by_stop(tokens: list[Token], screw: int) -> bool:
    """'screw mount 58mm f2 lens': no width of a screw that lenses are held by, and a stop right behind it."""
    behind = [n for n in (screw + 1, screw + 2) if n < len(tokens) and tokens[n].kind == "FNUM"][:1]
    at = next((n for n in (screw - 1, screw + 1) if n >= 0 and n < len(tokens) and tokens[n].kind in LENGTHS), None)
    if at is None or not behind or behind[0] not in (at + 1, screw + 1) or tokens[at].unit not in ("", "mm"):
        return False
    others = any(one.kind in _FOCALS and one.unit in ("", "mm") for n, one in enumerate(tokens[: behind[0]]) if n != at)
    return not others and not any(least <= tokens[at].numbers[0] <= most for least, most in _WIDTHS)


def _speaks_of_screw(token: Token) -> bool:
    verb = token.kind in ("CUE", "VERB") and token.text.casefold().startswith(_SCREWS)
    return is_screw(token) or verb


def _is_told(token: Token) -> bool:
    return token.kind in ("THREAD", "PITCH") or (token.kind == "KEYED" and token.value == "diameter")


def _is_width(tokens: list[Token], at: int) -> bool:
    token = tokens[at]
    if token.kind not in LENGTHS or token.unit not in ("", "mm") or token.text.isalpha():
        return False
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    wide = after is not None and after.text.casefold() == _WIDE
    ends = after is None or wide or (after.kind not in _OF_OTHERS and after.kind != "KIND")
    ends = ends and (after is None or after.kind != "MEASURE" or after.value in WIDTHS)  # '44.3 from shoulder to image'
    others = any(one.kind in _FOCALS and one.unit in ("", "mm") for n, one in enumerate(tokens) if n != at)
    widths = _WIDTHS if others else _NO_FOCALS if _is_all_told(tokens, at) else ()
    return ends and any(least <= token.numbers[0] <= most for least, most in widths)


def _is_all_told(tokens: list[Token], at: int) -> bool:
    """'a screw lens in a drawer, around 42 mm': nothing else is told of it, and no body or ring either."""
    wide = next((n for n in (at + 1,) if n < len(tokens) and tokens[n].text.casefold() == _WIDE), at)
    return not any(one.kind in _ELSE or one.unit for n, one in enumerate(tokens) if n not in (at, wide))
