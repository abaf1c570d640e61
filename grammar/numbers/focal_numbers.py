"""Bare numbers that are focal lengths, by what stands around them: 'my 50', 'a 135 on MFT', '... vs 14 on MFT'."""

from __future__ import annotations

from typing import Final

from engine.base.units import FAR_UNITS
from grammar.numbers.measured_lengths import is_lens_led
from grammar.words.groups import BECOMING, CROP, FOCAL_NAMED, LEADS_INTO
from grammar.words.tokens import Token, is_plural

ENDS: Final = frozenset(["STOP", "JOIN", "PREP", "CUE", "LIMIT", "TRAIT"])
LENSLIKE: Final = frozenset(["LENS", "KIND", "MOUNT", "FNUM", "TRAIT", "STRANGE"])
_WHOLE_FROM: Final = 17.0  # mm
_MACRO: Final = "macro"  # beside a number no less than this that is the lens's
_LEAST_MACRO: Final = 28.0
_SAME: Final = "same"
_YEARS: Final = frozenset({*range(1900, 2000), *range(2001, 2030)})  # whole numbers that no focal length is
_FRAMED: Final = frozenset(["FORMAT", "MOUNT", "CROP", "BODY"])
_LEAST_LENS, _MOST_LENS = 3, 1000  # mm
_TRAVEL: Final = "travel"
_COMES_TO: Final = "total"
_COMMA: Final = ","
_NAMED_WITHIN: Final = 5  # words between 'focal' and the number
_GOING: Final = frozenset(["CUE", "VERB", "PREP", "DET", "MEASURE"])  # words between a lens and how far it goes
_WORDS_TO_FAR: Final = 7
_OF_LENSES: Final = frozenset(["FOCAL", "COMBO", "NAMED"])
_ARTICLE, _IS, _JOINS = "a", "be", frozenset([",", ", a"])


def is_focal(tokens: list[Token], at: int) -> bool:
    """Whether the bare number here is a focal length in mm, by its size and what stands beside it."""
    number = tokens[at].numbers[0]
    if not 3 <= number <= 2000 or number * 10 != int(number * 10):
        return False  # focal lengths are told to a tenth at most; '25.93' is something measured
    if not may_be_focal(number):
        return False
    before = tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if after is not None and after.kind == "MEASURE" and (at + 2 == len(tokens) or tokens[at + 2].kind == "STOP"):
        after = None  # 'on my 90 working distance?': what is measured is asked for
    if after is not None and after.kind == "NUMBER" and after.text.isalpha():
        after = tokens[at + 2] if at + 2 < len(tokens) else None  # 'my 35 and my 50 both stop at 0.7 m'
    if after is not None and (after.kind, after.value) == ("MEASURE", _COMES_TO):
        after = None  # 'does a CY 50 make infinity'
    if tokens[at].value and tokens[at].text.isalpha() and number < 28:  # a small number word is a count
        return False
    if number >= _LEAST_MACRO and any(one is not None and one.text.casefold() == _MACRO for one in (before, after)):
        return after is None or after.kind not in ("PIECE", "MEASURE")  # '105 macro goes 1:2', 'macro 100 does 1:1'
    if after is not None and (after.kind, after.value) == ("MEASURE", "thickness") and is_lens_led(tokens, at):
        return True  # 'the ring under a 24 too short'
    off = after is not None and after.is_mm and "." in after.text
    if off and before is not None and before.kind == "DET" and number >= 8 and number == int(number):
        return True  # 'my 28 0.3mm too far out': by how much it is off
    if after is not None and after.kind in LENSLIKE:
        return number >= 8 or after.kind in ("FNUM", "KIND") or (before is not None and before.kind == "DET")
    if _is_of_lens_named(tokens, at) and (after is None or after.kind == "STOP"):
        return True
    if before is not None and before.kind in ("KIND", "LENS", "MOUNT") and (after is None or after.kind in ENDS):
        return number >= 8
    if before is not None and before.kind == "MOUNT" and after is not None and after.kind in ("VERB", "FILLER"):
        return number >= 8 and at > 1 and tokens[at - 2].kind == "DET"  # 'the FD 50 wont close its blades'
    if before is not None and before.kind == "FORMAT" and (after is None or after.kind in ENDS):
        return _is_made_for(tokens, at)
    if after is not None and after.kind not in ENDS and not (after.kind == "DET" and before is not None):
        return False
    if number < 8 and number == int(number):
        return False
    if before is None or before.kind == "STOP":
        if _goes_so_far(tokens, at):
            return True
        opens = after is not None and CROP in after.groups  # '135 cropped to APS-C'
        return after is not None and (after.kind in ("PREP", "TRAIT", "JOIN") or opens)
    if before.kind == "DET" or (before.text == _COMMA and number >= 8 and _goes_so_far(tokens, at)):
        return True
    if before.kind == "FNUM":
        return number >= 8 and not any(one.kind in ("FOCAL", "COMBO") for one in tokens)  # 'my f2 50'
    if before.kind == "CUE" and _is_on_frame(tokens, at):  # 'what is 75 on 44x33 like'
        return number >= 8 and not any(one.kind == "FNUM" for one in tokens)
    if before.text.casefold() == _SAME and after is not None and after.kind == "PREP":
        return number >= 8  # 'same 50 on both'
    if before.kind == "PREP":
        return before.value in ("on", "with", "for", "of", "behind")
    return before.kind == "JOIN" and at >= 2 and tokens[at - 2].kind in ("FOCAL", "LENGTH", "COMBO")


def _goes_so_far(tokens: list[Token], at: int) -> bool:
    """'28 won't go past 6 m', 'ring bad, 50 stops at 12 m': what goes so far is a lens, the only one told of."""
    rest = [one for one in tokens[at + 1 : at + _WORDS_TO_FAR] if one.kind not in _GOING]
    far = bool(rest) and rest[0].kind in ("LENGTH", "KEYED") and rest[0].unit in FAR_UNITS
    return far and not any(one.kind in _OF_LENSES for one in tokens)


def with_focals_named(tokens: list[Token]) -> list[Token]:
    """'focal length about 85', 'the focal is 58': a bare number is one, behind its name and idle words alone."""
    out = [token.as_("FOCAL") if _is_named(tokens, at) else token for at, token in enumerate(tokens)]
    drawn = [at for at in range(len(out)) if _is_lens_drawn(out, at)]
    for at in drawn:
        out[at], out[at + 1] = out[at].as_("FOCAL", unit="mm"), out[at + 1].as_("CUE")
    return out


def _is_named(tokens: list[Token], at: int) -> bool:
    token = tokens[at]
    if token.kind != "NUMBER" or token.text.isalpha() or not _LEAST_LENS <= token.numbers[0] <= 2 * _MOST_LENS:
        return False
    for one in reversed(tokens[max(0, at - _NAMED_WITHIN) : at]):
        if FOCAL_NAMED in one.groups:
            return True
        if one.kind not in ("FILLER", "VERB", "MARK"):
            return False
    return False


def _is_lens_drawn(tokens: list[Token], at: int) -> bool:
    """'the 50 pulls out': a lens that does so, where by how much is not told behind it."""
    token, around = tokens[at], tokens[max(0, at - 1) : at + 3]
    if token.kind != "NUMBER" or token.text.isalpha() or not _LEAST_LENS <= token.numbers[0] <= 2 * _MOST_LENS:
        return False
    led = at > 0 and around[0].kind == "DET" and around[0].value == "the"
    behind = tokens[at + 1 : at + 3]
    draws = behind[:1] and (behind[0].kind, behind[0].value) == ("MEASURE", _TRAVEL) and " " in behind[0].text
    return bool(led and draws) and not any(one.numbers for one in behind[1:])


def is_what_it_becomes(tokens: list[Token], at: int) -> bool:
    """'my 50 turns into a 75 on the smaller chip': no other lens, but what the one before it frames like."""
    if at < 3 or tokens[at - 1].kind not in ("DET", "LETTER"):
        return False
    place = at - 2 - (LEADS_INTO in tokens[at - 2].groups)
    lens = tokens[place - 1] if place > 0 else None
    told = lens is not None and lens.kind in ("FOCAL", "COMBO", "LENGTH")
    return told and BECOMING in tokens[place].groups and tokens[at].numbers[0] >= 2 * _LEAST_LENS


def is_lens_against(tokens: list[Token], at: int) -> bool:
    """'20 mm on APS-C vs 14 on MFT', 'wider, 12 on MFT or 17 on APS-C': each on a frame of its own."""
    number = tokens[at].numbers[0]
    if not _is_on_frame(tokens, at) or not _LEAST_LENS <= number <= _MOST_LENS or tokens[at].text.isalpha():
        return False
    others = [n for n, one in enumerate(tokens) if n != at and _is_on_frame(tokens, n) and _tells_lens(one)]
    return any(_joined(tokens, min(at, n), max(at, n)) for n in others)


def _is_made_for(tokens: list[Token], at: int) -> bool:
    """'half frame 38 on my full frame body': behind a format a lens made for it, where another frame is told too."""
    number, frame = tokens[at].numbers[0], tokens[at - 1]
    named = at > 1 and tokens[at - 2].kind == "PREP" and tokens[at - 2].value == "on"  # 'on full frame 50 is normal'
    others = any(one.kind in ("FORMAT", "BODY", "MOUNT") and one is not frame for one in tokens)
    return number == int(number) and number > _LEAST_LENS and others and not named


def _joined(tokens: list[Token], first: int, last: int) -> bool:
    before = tokens[last - 1]
    listed = before.kind == "JOIN" and before.value in ("vs", "or", "and")
    likened = before.kind == "CUE" or (before.kind == "PREP" and before.value == "to")  # 'compares to 35 on full frame'
    return first < last and (listed or likened)


def _tells_lens(token: Token) -> bool:
    metric = token.is_mm
    return metric or token.kind in ("FOCAL", "COMBO") or (token.kind == "NUMBER" and not token.text.isalpha())


def _is_on_frame(tokens: list[Token], at: int) -> bool:
    rest = [one for one in tokens[at + 1 : at + 5] if one.kind not in ("DET", "LENS")]
    return len(rest) > 1 and rest[0].kind == "PREP" and rest[0].value == "on" and rest[1].kind in _FRAMED


def may_be_focal(number: float) -> bool:
    """'M bayonet (68.8)', 'F, 1961': long ones are told in whole numbers or halves, and are no years."""
    return number < _WHOLE_FROM or (number * 2 == int(number * 2) and number not in _YEARS)


def _is_of_lens_named(tokens: list[Token], at: int) -> bool:
    """'and the other lens, a 6', 'other lens is 28': the length of the lens that is named right before."""
    led = [one for one in tokens[:at] if one.kind != "DET" and one.text != _ARTICLE]
    joined = len(led) > 1 and (led[-1].text in _JOINS or led[-1].value == _IS)
    whole = tokens[at].text.isdigit() and tokens[at].kind == "NUMBER"
    return whole and joined and led[-2].kind == "LENS" and not is_plural(led[-2])
