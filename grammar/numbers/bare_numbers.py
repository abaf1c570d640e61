"""What a number without a unit stands for: a focal length, a count, a factor, a crop, a thickness."""

from __future__ import annotations

from typing import Final

from grammar.numbers.counting import MOST_THINGS, counts, is_several, is_so_many
from grammar.numbers.crop_numbers import is_crop, is_of_crop
from grammar.numbers.drawn_numbers import is_added_travel, is_drawn_so_far
from grammar.numbers.light_numbers import is_further_stop, with_light_told
from grammar.numbers.optics_numbers import (
    OPTICS,
    are_set_against,
    as_extender,
    is_put_on_lens,
    lists_factors,
    of_optics,
    with_glass_behind,
)
from grammar.numbers.picture_numbers import is_shape, is_size, is_size_named, names_size
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_ENDS: Final = frozenset(["STOP", "JOIN", "PREP", "CUE", "LIMIT", "TRAIT"])
_LENSLIKE: Final = frozenset(["LENS", "KIND", "MOUNT", "FNUM", "TRAIT", "STRANGE"])
_WORDS_BETWEEN: Final = 5  # tokens at most from a piece to its length: 'the ring I got is 25.3'
_WHOLE_FROM: Final = 17.0  # mm
_YEARS: Final = frozenset({*range(1900, 2000), *range(2001, 2030)})  # whole numbers that no focal length is
# cues of a question in which a bare number is most likely a focal length, and one after 'from' a distance in metres
_DISTANT: Final = frozenset(["how-close", "infinity", "working-distance", "how-big", "equiv", "match", "stabilisation"])
_OF_VIEW: Final = frozenset(["equiv", "match"])

# cues of a question whose answer goes by focal length; and what may tell one
_OF_FOCAL: Final = _DISTANT | {"macro", "dof", "hyperfocal", "zone-wanted", "which-stop", "frame-filling"}
_OF_MARKS: Final = frozenset(["shim", "past-infinity", "infinity-at", "take-off", "cant-focus"])  # and by a distance
_OF_SIZE: Final = frozenset(["how-big", "effective-f", "dof", "working-distance"])
_CLOSE_UP: Final = frozenset(["macro", "how-big", "frame-filling"])
_UNMEASURED: Final = OPTICS | {"filter"}  # pieces of which a number behind them is no length
_EXTENDING: Final = (1.2, 3.0)  # what a converter multiplies by
_FOCALS: Final = frozenset(["FOCAL", "COMBO", "LENGTH", "RANGE", "NAMED"])


def with_numbers_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """Bare numbers in their part: FOCAL (mm), COUNT, TIMES, CROP, LENGTH (mm) or FNUM; else they stay NUMBER."""
    out = with_glass_behind(with_light_told(_listed(list(tokens)), told), told)
    for at, token in enumerate(out):
        if token.kind == "NUMBER":
            out[at] = _told(out, at, told)
        elif token.kind == "SHUTTER" and _are_lenses(out, at, told):
            out[at] = token.as_("FOCAL", unit="mm")
        elif token.kind == "TIMES" and _is_magnification(out, at, told):
            out[at] = token.as_("RATIO")
        elif token.kind == "TIMES":
            if is_so_many(out, at):
                out[at] = token.as_("COUNT")
                continue
            if is_crop(out, at):
                out[at] = token.as_("CROP")
                continue
            out[at] = as_extender(out, at, told)
        elif token.kind == "FNUM" and ":" in token.text and names_size(out, at + 1):
            out[at] = token.as_("RATIO", numbers=(1 / token.numbers[0],))  # '1:1.4 mag'
        elif token.kind == "RATIO" and _is_engraved_stop(out, at, told):
            out[at] = token.as_("FNUM", numbers=(round(1 / token.numbers[0], 4),))
    return _with_focal_left(out, told)


def _is_engraved_stop(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'50 mm 1:2': how far a lens opens, as it is engraved; where close-ups are spoken of it is how big they get."""
    behind_lens = at > 0 and tokens[at - 1].kind in ("LENGTH", "FOCAL") and tokens[at].numbers[0] < 1
    return behind_lens and not told & _CLOSE_UP


def _is_magnification(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'0.5x on full frame, how wide is what i see': no reducer where nothing but a size is spoken of."""
    things = any(one.kind in ("PIECE", "LENS", "KIND") for one in tokens)
    before = tokens[at - 1] if at else None
    placed = before is not None and before.kind in ("PREP", "DET")
    return bool(told & _OF_SIZE) and not things and not placed


def _with_focal_left(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'group 3m to 5m, 50 on ff': where distances or depth are asked for, the one number left is the focal length."""
    zone = any(one.kind == "KEYED" and one.value == "zone" for one in tokens)
    away = any(one.kind in ("LENGTH", "KEYED") and one.unit in ("m", "ft") for one in tokens)
    if not (zone or told & _OF_FOCAL or (away and told & _OF_MARKS)) or any(
        one.startswith("after-") and one != "after-" for one in told
    ):
        return tokens
    if any(one.kind in _FOCALS and (one.kind != "LENGTH" or one.unit == "mm") for one in tokens):
        return tokens
    left = [at for at, one in enumerate(tokens) if one.kind == "NUMBER"]
    if len(left) != 1 or tokens[left[0]].text.isalpha() or not 8 <= tokens[left[0]].numbers[0] <= 800:
        return tokens
    if not _may_be_focal(tokens[left[0]].numbers[0]):
        return tokens
    tokens[left[0]] = tokens[left[0]].as_("FOCAL")
    return tokens


def _are_lenses(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'LTM 35s', 'both my 50s': lenses of that focal length, not seconds; 'the 70s' are years."""
    token = tokens[at]
    if not token.text[:-1].isdigit() or not 12 <= token.numbers[0] <= 600 or told & {"exposure", "nd", "shutter-speed"}:
        return False
    before = tokens[at - 1] if at else None
    if before is not None and before.kind == "PREP" and before.value in ("from", "of", "in"):
        return False
    the = before is not None and before.kind == "DET" and before.text.casefold() == "the"
    return before is not None and before.kind in ("MOUNT", "KIND", "DET", "NUMBER", "COUNT") and not the


def _listed(tokens: list[Token]) -> list[Token]:
    """'10, 16, 26mm': the unit at the end of a list is that of all its numbers."""
    for at in range(len(tokens) - 1, 1, -1):
        ended = tokens[at].kind == "LENGTH" and tokens[at - 1].kind == "JOIN" and tokens[at - 2].kind == "NUMBER"
        cropped = at > 2 and is_of_crop(tokens[at - 3])  # 'crop 2.7, 25 mm'
        if ended and not cropped and not _is_stop_of_lens(tokens, at - 2) and not _is_lens_beside(tokens, at):
            factor = {"m": 1000.0, "cm": 10.0, "in": 25.4, "ft": 304.8}.get(tokens[at].unit, 1.0)
            number = tokens[at - 2].numbers[0] * factor
            tokens[at - 2] = tokens[at - 2].as_("LENGTH", numbers=(number,), unit=tokens[at].unit)
    for at in range(len(tokens) - 1):
        if tokens[at].kind == "PIECE" and tokens[at].value not in _UNMEASURED and _is_number(tokens[at + 1]):
            _row_behind(tokens, at + 1)
    for at in range(2, len(tokens) - 1):
        if _is_number(tokens[at]) and tokens[at + 1].kind == "PIECE" and tokens[at + 1].value not in OPTICS:
            _all_lengths(tokens, at)
    return tokens


def _is_lens_beside(tokens: list[Token], at: int) -> bool:
    """'50 and 20mm tube': one tube is told, so that the other number is the lens, where nothing else can be it."""
    piece = tokens[at + 1] if at + 1 < len(tokens) and tokens[at + 1].kind == "PIECE" else None
    if piece is None or piece.text.casefold().endswith("s") or tokens[at - 1].value != "and":
        return False
    return sum(one.kind in ("NUMBER", "LENGTH", "COMBO") for one in tokens) == 2


def _all_lengths(tokens: list[Token], at: int) -> None:
    """'10 + 16 + 21 tubes': what the last of a row of bare numbers is of, all of them are."""
    first = at
    while first > 1 and tokens[first - 1].kind == "JOIN" and _is_number(tokens[first - 2]):
        first -= 2
    if first == at:
        return
    for place in range(first, at + 1, 2):
        tokens[place] = tokens[place].as_("LENGTH", unit="mm")


def _row_behind(tokens: list[Token], at: int) -> None:
    """'rings 1.0 + 9.8': a row of bare numbers right behind a piece, added up or told to the tenth."""
    row = [at]
    while at + 2 < len(tokens) and tokens[at + 1].kind == "JOIN" and _is_number(tokens[at + 2]):
        at += 2
        row.append(at)
    added = len(row) > 1 and all(tokens[one - 1].text in ("+", "and", "&") for one in row[1:])
    if added and any("." in tokens[one].text for one in row):
        for one in row:
            tokens[one] = tokens[one].as_("LENGTH", unit="mm")


def _is_number(token: Token) -> bool:
    return token.kind == "NUMBER" and not token.text.isalpha()


def _is_stop_of_lens(tokens: list[Token], at: int) -> bool:
    """'25mm C 1.4': behind a lens told by its focal length and mount the number is its stop."""
    behind = [token.kind for token in tokens[max(0, at - 2) : at]]
    if at and tokens[at - 1].value == "at" and "." in tokens[at].text and tokens[at].numbers[0] in STOPS:
        return True  # '135 at 2.8, 5 m'
    return behind in (["LENGTH", "MOUNT"], ["FOCAL", "MOUNT"]) and tokens[at].numbers[0] in STOPS


def _told(tokens: list[Token], at: int, told: frozenset[str]) -> Token:
    token, number = tokens[at], tokens[at].numbers[0]
    before = tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if before is not None and before.kind == "LIMIT":
        return token
    if before is not None and before.kind == "LENS" and number == int(number) and number < 8 and token.text.isdecimal():
        # 'lens 2' points at the second; 'lens 1: 35 mm' only tells them apart
        return token.as_("ORDINAL") if after is None or after.kind == "STOP" else token.as_("CUE")
    if _is_stop_of_lens(tokens, at) and "." in token.text:
        return token.as_("FNUM")
    if is_size_named(tokens, at):
        return token.as_("RATIO")
    if is_shape(tokens, at):
        return token.as_("ASPECT", value=f"{number:g}:1")
    if counts(tokens, at):
        return token.as_("COUNT")
    if after is not None and after.kind == "PIECE":
        return token.as_("COUNT") if token.text[:1].isalpha() else _of_piece(token, after)
    several = after is not None and after.kind in ("LENS", "BODY") and is_several(after)
    if several and number <= MOST_THINGS and number == int(number):
        return token.as_("COUNT")  # '25 mm 1.4 lens' tells a stop
    if is_crop(tokens, at) and not token.text.isalpha():  # 'both old slrs'
        return token.as_("CROP")
    if before is not None and before.kind == "PREP" and before.value == "at" and number in STOPS:
        # 'at 25 f/1.4' is a lens
        return token.as_("FOCAL") if after is not None and after.kind == "FNUM" else token.as_("FNUM")
    if is_further_stop(tokens, at):
        return token.as_("FNUM")
    if before is not None and before.kind in ("LENGTH", "FOCAL") and number in STOPS and number < 10:
        return token.as_("FNUM") if before.kind == "FOCAL" or "." in token.text else token
    if is_drawn_so_far(before, token, after):
        return token.as_("LENGTH", unit="mm")
    if is_added_travel(tokens, at):
        return token.as_("KEYED", value="travel", unit="mm")
    if is_put_on_lens(tokens, at) or are_set_against(tokens, at) or (0.3 <= number < 1 and lists_factors(tokens, at)):
        return token.as_("TIMES")
    with_it = before is not None and before.kind == "PREP" and before.value in ("with", "behind", "via")
    with_it = with_it or (before is not None and before.kind == "JOIN" and before.value in ("+", "and"))
    if before is not None and before.kind == "PIECE" and before.value in OPTICS and 0.4 <= number < 5:
        return token.as_("TIMES")  # 'reducer .71'
    if 0.4 <= number <= 0.95 and (with_it or (before is not None and before.kind == "DET")):
        return token.as_("TIMES")
    measured = tokens[at - 2] if at > 1 else None
    if before is not None and before.text.casefold() == "into" and measured is not None and measured.kind == "LENGTH":
        # '65cm into 23': the same unit on both sides
        factor = {"m": 1000.0, "cm": 10.0, "in": 25.4, "ft": 304.8}.get(measured.unit, 1.0)
        return token.as_("LENGTH", numbers=(number * factor,), unit=measured.unit)
    if is_size(tokens, at, told):
        return token.as_("RATIO")
    if _is_focal(tokens, at):
        return token.as_("FOCAL")
    behind = next((one for one in reversed(tokens[max(0, at - _WORDS_BETWEEN) : at]) if one.kind != "CUE"), None)
    if 0.4 <= number <= 5 and of_optics(tokens, at):
        return token.as_("TIMES")
    led = before is not None and before.kind == "PREP" and before.value in ("to", "at", "of") and at > 1
    if led and tokens[at - 2].kind == "PIECE" and 0.05 <= number <= 300 and "." in token.text:
        return token.as_("KEYED", value="thickness", unit="mm")  # 'thinned the ring to 9.70'
    if behind is not None and behind.kind == "PIECE" and 0.05 <= number <= 300 and "." in token.text:
        return token.as_("LENGTH", unit="mm")
    if told & _OF_VIEW and after is not None and after.kind == "FORMAT" and 8 <= number <= 1000:
        return token.as_("FOCAL")  # 'like a 50 ff'
    if told & _DISTANT and (after is None or after.kind in _ENDS):
        if before is not None and before.kind == "PREP" and before.value in ("from", "at") and 0.1 <= number < 8:
            return token.as_("KEYED", value="close-focus", numbers=(number * 1000,), unit="m")
        if 8 <= number <= 1000 and number * 2 == int(number * 2) and not (before is not None and before.kind == "PREP"):
            return token.as_("FOCAL")
    return token


def _of_piece(token: Token, piece: Token) -> Token:
    number = token.numbers[0]
    converts = piece.text.casefold().startswith("convert") and _EXTENDING[0] <= number <= _EXTENDING[1]
    if (piece.value in OPTICS and number < 5) or converts:
        return token.as_("TIMES")
    if number == int(number) and number <= 12 and piece.text.casefold().endswith("s"):
        return token.as_("COUNT")
    return token.as_("LENGTH", unit="mm")


def _is_focal(tokens: list[Token], at: int) -> bool:
    number = tokens[at].numbers[0]
    if not 3 <= number <= 2000 or number * 10 != int(number * 10):
        return False  # focal lengths are told to a tenth at most; '25.93' is something measured
    if not _may_be_focal(number):
        return False
    before = tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if tokens[at].value and tokens[at].text.isalpha() and number < 28:  # a small number word is a count
        return False
    if after is not None and after.kind in _LENSLIKE:
        return number >= 8 or after.kind in ("FNUM", "KIND") or (before is not None and before.kind == "DET")
    if before is not None and before.kind in ("KIND", "LENS", "MOUNT") and (after is None or after.kind in _ENDS):
        return number >= 8
    if after is not None and after.kind not in _ENDS and not (after.kind == "DET" and before is not None):
        return False
    if number < 8 and number == int(number):
        return False
    if before is None or before.kind == "STOP":
        opens = after is not None and after.text.casefold().startswith("crop")  # '135 cropped to APS-C'
        return after is not None and (after.kind in ("PREP", "TRAIT", "JOIN") or opens)
    if before.kind == "DET":
        return True
    if before.kind == "FNUM":
        return number >= 8 and not any(one.kind in ("FOCAL", "COMBO") for one in tokens)  # 'my f2 50'
    if before.kind == "PREP":
        return before.value in ("on", "with", "for", "of", "behind")
    return before.kind == "JOIN" and at >= 2 and tokens[at - 2].kind in ("FOCAL", "LENGTH", "COMBO")


def _may_be_focal(number: float) -> bool:
    """'M bayonet (68.8)', 'F, 1961': long ones are told in whole numbers or halves, and are no years."""
    return number < _WHOLE_FROM or (number * 2 == int(number * 2) and number not in _YEARS)
