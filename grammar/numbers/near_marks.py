"""The nearest mark of a lens, told by the words about it: 'stops at 1.5', 'goes down to 0.45', 'to 45cm by itself'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.measured_lengths import is_led
from grammar.things.casting import DRAWN
from grammar.words.groups import NEAREST_ASKED, NEAREST_LED, SCALE
from grammar.words.tokens import Token

NEAREST: Final = "nearest"  # the value of the words that lead to it
_BEHIND: Final = frozenset(["flange-to-image", "image-distance"])
_NATIVE: Final = "close-focus"
_OF_LENS: Final = 8  # tokens from the words to the distance, where the lens is named between
_SEVERAL: Final = 4
_SAYS: Final = "does"  # value of 'says', 'shows', 'ends'
_MARK: Final = "mark"  # of the scale, whatever is sharp there
_HOW_CLOSE: Final = "how-close"  # cue
_CLOSE: Final = frozenset([_HOW_CLOSE, "macro", "working-distance", "how-big", "after-macro-distance"])
_SPACING: Final = DRAWN | {"close-up-lens"}
_BETWEEN: Final = frozenset(["CUE", "DET", "PREP", "VERB"])
_OF_THINGS: Final = frozenset(["LENS", "KIND", "PIECE", "MOUNT", "FNUM", "TRAIT"])
_FAR_UNITS: Final = frozenset(["m", "cm", "ft", "in"])
_METRES: Final = 10.0  # a bare number under this is in metres
_LEAST_METRES: Final = 0.25  # a bare decimal under this is a magnification
_CENTIMETRES: Final = 200.0  # and under this in centimetres
_LEAST_MM: Final = 60.0
_REACH: Final = 4  # tokens
_LEAST_LENS: Final = 8.0  # mm
_FARTHEST: Final = 3000.0  # mm, that the nearest mark of a lens lies off


def with_near_marks_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The distance beside such words becomes KEYED, where things are looked at close up; else the words say nothing.

    Where nothing is close up, 'stops at 6 m' is how far a lens reaches, not how near.
    """
    out = _of_scale(_of_lenses(list(tokens)), told)
    close = bool(told & _CLOSE) or any(one.kind == "PIECE" and one.value in _SPACING for one in out)
    for at, token in enumerate(out):
        leads = close and token.kind == "CUE" and NEAREST_ASKED in token.groups and _is_decimal(out, at + 1)
        leads = leads or (close and _is_scale_read(out, at))
        if not leads and (token.kind != "MEASURE" or token.value != NEAREST):
            continue
        out[at] = token.as_("CUE")
        near = close or NEAREST_LED in token.groups
        found = _behind(out, at) if near else None
        found = None if found is not None and _is_of_image(out, found) else found
        ahead = _ahead(out, at) if found is not None and not out[found].unit else None
        found = ahead if ahead is not None and out[ahead].unit in _FAR_UNITS else found  # '30 inch min focus 135'
        found = found if found is not None or not close else _ahead(out, at)
        if found is not None and is_own_size(out[found]):
            out[found] = out[found].as_("RATIO")
        elif found is not None:
            out[found] = out[found].as_("KEYED", value="close-focus", numbers=(_mm(out[found]) or 0.0,), unit="m")
    return out


def _is_of_image(tokens: list[Token], at: int) -> bool:
    """'focuses 141 behind its rim': how far behind the lens its image lies, and no distance in front of it."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    behind = after is not None and after.kind == "MEASURE" and after.value in _BEHIND
    return behind and tokens[at].unit in ("", "mm") and tokens[at].numbers[0] >= _LEAST_LENS


def with_natives_joined(tokens: list[Token]) -> list[Token]:
    """'native close focus 5 m': two words for the nearest mark, of which the second waits for its distance."""
    near = [(one.kind, one.value) == ("MEASURE", _NATIVE) for one in tokens]
    return [one.as_("CUE") if near[at] and near[at + 1 : at + 2] == [True] else one for at, one in enumerate(tokens)]


def with_bracketed_marks(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'a 28 (0.3 m) with a 6 mm ring', 'my 28 (0.7)': in brackets behind a lens stands its nearest mark; 'min 0.7'."""
    close = bool(told & _CLOSE) or any(one.kind == "PIECE" and one.value in (*_SPACING, "adapter") for one in tokens)
    out = list(tokens)
    for at in range(1, len(out) - 1):
        told_of = close and out[at].kind == "LENGTH" and out[at].unit in _FAR_UNITS and out[at + 1].kind == "LENS"
        if told_of and (_mm(out[at]) or _FARTHEST) < _FARTHEST and any(map(_is_focal, out[:at])):
            out[at] = out[at].as_("KEYED", value=_NATIVE, unit="m")  # '35 and 75, both 0.7 m lenses'
    for at in range(len(out) - 1):
        said = out[at].kind == "FILLER" and NEAREST_ASKED in out[at].groups and not out[at + 1].unit
        if close and said and _is_decimal(out, at + 1) and out[at + 1].numbers[0] >= _LEAST_METRES:
            size = _mm(out[at + 1])  # 'my 28 with min 0.7'
            out[at + 1] = out[at + 1].as_("KEYED", value=_NATIVE, numbers=(size or 0.0,), unit="m")
    for at in range(len(out) - 3):
        lens, opened, near, closed = out[at : at + 4]
        if (opened.text, closed.text) != ("(", ")") or not close or near.kind not in ("NUMBER", "LENGTH"):
            continue
        metres = near.unit in _FAR_UNITS or (not near.unit and "." in near.text and near.numbers[0] >= _LEAST_METRES)
        size = _mm(near) if metres else None
        if size is None or not _is_focal(lens):
            continue
        out[at] = lens if lens.kind == "COMBO" else lens.as_("FOCAL", unit="mm")
        out[at + 2] = near.as_("KEYED", value=_NATIVE, numbers=(size,), unit="m")
    return out


def _is_focal(token: Token) -> bool:
    bare = token.may_be_mm and token.text[:1].isdigit()
    return token.kind == "COMBO" or (bare and token.numbers[0] >= _LEAST_LENS)


def _of_lenses(tokens: list[Token]) -> list[Token]:
    """'close focus of the 85 is 1 m', 'nearest of my 50 is .45': the lens stands between the words and it."""
    for at, token in enumerate(tokens):
        leads = token.kind == "MEASURE" and token.value in (NEAREST, _NATIVE)
        if not leads and NEAREST_ASKED not in token.groups:
            continue
        rest = [n for n in range(at + 1, min(at + _OF_LENS, len(tokens))) if tokens[n].kind != "DET"]
        if len(rest) < _SEVERAL or tokens[rest[0]].value != "of" or tokens[rest[2]].kind != "CUE":
            continue
        lens, near = tokens[rest[1]], tokens[rest[3]]
        focal = lens.may_be_mm and lens.text[:1].isdigit()
        size = _mm(near) if near.kind in ("NUMBER", "LENGTH") else None
        if focal and size is not None:
            tokens[at] = token.as_("CUE")
            tokens[rest[1]] = lens.as_("FOCAL", unit="mm")
            tokens[rest[3]] = near.as_("KEYED", value=_NATIVE, numbers=(size,), unit="m")
    return tokens


def _of_scale(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'whats the nearest if it reads 0.3 on the ring': what is read off a scale, where one asks how near."""
    if not (_HOW_CLOSE in told or any(NEAREST_ASKED in one.groups for one in tokens)):
        return tokens
    for at in range(len(tokens) - 1):
        near, scale = tokens[at], tokens[at + 1]
        read = (scale.kind, scale.value) == ("MEASURE", _MARK) and near.kind in ("NUMBER", "LENGTH")
        size = _mm(near) if read and "." in near.text and near.unit in ("", *_FAR_UNITS) else None
        if size is not None and size < _FARTHEST:
            tokens[at] = near.as_("KEYED", value=_NATIVE, numbers=(size,), unit="m")
            tokens[at + 1] = scale.as_("CUE")
    return tokens


def is_own_size(token: Token) -> bool:
    """'already does 0.12': no lens is marked so near in metres; it is how large things get."""
    bare = token.kind == "NUMBER" and not token.unit and "." in token.text
    return bare and 0 < token.numbers[0] < _LEAST_METRES


def _is_scale_read(tokens: list[Token], at: int) -> bool:
    """'how close, the scale says 0.35': what stands on it there is its nearest mark."""
    read = SCALE in tokens[at].groups and at + 1 < len(tokens) and tokens[at + 1].value == _SAYS
    ring = tokens[at].kind == "PIECE"  # 'P6 on K, ring says 29.0' tells how long that is
    return read and _is_decimal(tokens, at + 2) and not (ring and tokens[at + 2].numbers[0] >= _METRES)


def _is_decimal(tokens: list[Token], at: int) -> bool:
    """'nearest 0.45': right behind the word, as marks in metres are told, and no factor or tube of a row."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    plain = at < len(tokens) and tokens[at].kind in ("NUMBER", "LENGTH") and "." in tokens[at].text
    return plain and (after is None or after.kind not in _OF_THINGS)


def _behind(tokens: list[Token], at: int) -> int | None:
    for place in range(at + 1, min(at + _REACH, len(tokens))):
        if tokens[place].kind in ("LENGTH", "NUMBER", "FOCAL"):
            after = tokens[place + 1] if place + 1 < len(tokens) else None
            taken = after is not None and (after.kind in _OF_THINGS or after.value == _MARK)  # 'focuses at 8 m mark'
            taken = taken or (not tokens[place].unit and "." not in tokens[place].text and is_led(tokens, place))
            return place if _mm(tokens[place]) and not taken else None
        if tokens[place].kind not in _BETWEEN:
            return None
    return None


def _ahead(tokens: list[Token], at: int) -> int | None:
    """'0.45 near mark': right before the words, and plainly a distance."""
    before = tokens[at - 1] if at else None
    if before is None or before.kind not in ("LENGTH", "NUMBER"):
        return None
    plain = before.unit in _FAR_UNITS or "." in before.text
    return at - 1 if plain and _mm(before) else None


def _mm(token: Token) -> float | None:
    """What the number tells in mm; None where it can be no distance to a subject."""
    number = token.numbers[0]
    if token.unit in _FAR_UNITS:
        return number if number >= _LEAST_MM else None
    if token.unit == "mm":
        return number if number >= _CENTIMETRES else None
    if token.text.isalpha():
        return None
    if number < _METRES:
        return number * 1000.0 if number * 1000.0 >= _LEAST_MM else None
    return number * 10.0 if number < _CENTIMETRES else number
