"""What a bare number stands for among the settings of an exposure: an ISO, an f-number, a shutter angle, a crop."""

from __future__ import annotations

from typing import Final

from grammar.numbers.crop_numbers import is_crop, is_of_crop, with_crops_told
from grammar.numbers.densities import DENSITIES
from grammar.numbers.exposure_told import (
    are_stops_apart,
    is_exposure_open,
    is_iso_of_row,
    is_named_stop,
    is_ratio_of_stop,
    is_stop_left,
    with_rule_of_thumb,
    with_sky_lit,
)
from grammar.numbers.focal_numbers import LENSLIKE
from grammar.words.groups import ANGLE, FACTOR_NAMED, OPENED
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_SPEED: Final = "iso"  # the value of the words for it
_NATIVE: Final = "base-iso"  # and of those that only mean it where exposure is spoken of: 'base 800'
_ISO_NEAR: Final = 6  # words
# where one of these is told, or asked about, a number that is engraved on aperture rings is a stop
_SETTINGS: Final = frozenset(["ISO", "SHUTTER", "FPS", "EV", "ND", "STOPS", "LIGHT", "TSTOP"])
_LIT: Final = frozenset(["nd", "exposure", "shutter-speed", "f-stop", "halfway"])
_FACTORED: Final = frozenset(["factor-word", "bellows-factor", "how-big", "macro", "shim", "make"])
_FACTORS: Final = frozenset([2, 4, 8, 16, 32, 64, 128, 256, 400, 500, 1000])  # and by their factors
_WHOLE_FACTORS: Final = _FACTORS | {512, 1024, 100, 200, 2000, 4000}
_GEAR: Final = frozenset(["LENS", "KIND", "MOUNT", "COMBO", "LENGTH", "FOCAL", "FNUM", "PIECE", "BODY", "FRAME"])
_ANGLES: Final = frozenset([45, 72, 90, 120, 144, 150, 172, 172.8, 180, 216, 270, 360])  # of shutters, beside a rate
_RATES: Final = frozenset([24, 25, 30, 48, 50, 60, 100, 120])  # frames a second
_BETWEEN_RATES: Final = frozenset(["from", "to", "vs", "instead", "of", "over", "than"])
_OF_VIEW: Final = frozenset(["equiv", "match", "focal"])
_GOING_ON: Final = "after-exposure-nd"
SPEEDS: Final = frozenset(
    [50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400]
)  # ISO, in thirds of a stop
_SLOWEST: Final = 25  # the least ISO that is set
_LEAST_BASE: Final = 50  # and the least that a sensor has by itself
_SMALLEST: Final = 22  # the f-number that bare whole numbers of a row of stops go to
_WHOLE: Final = frozenset([2, 4, 8, 11, 16, 22, 32])
_OF_OTHERS: Final = frozenset(["PIECE", "BODY", "FRAME", "MEASURE", "MOUNTWORD"])
_FRAMES: Final = frozenset(["FORMAT", "MOUNT", "BODY", "FRAME"])
_WIDEST, _NARROWEST = 0.85, 6.3  # f-numbers that lenses open to
_ON: Final = frozenset(["on", "in"])
_LINKS: Final = frozenset(["to", "then"])  # values of what stands between two stops of a row


def with_light_told(tokens: list[Token], told: frozenset[str], never_full: frozenset[str] = frozenset()) -> list[Token]:
    """The tokens with bare numbers as ISO, FNUM, DEGREES or CROP where those around them say so."""
    out = with_sky_lit(with_rule_of_thumb(with_crops_told(list(tokens), told, never_full)), told)
    lit = (bool(told & _LIT) or any(token.kind in _SETTINGS for token in out)) and not told & _FACTORED
    if are_stops_apart(out, told):
        return [
            token.as_("FNUM" if token.kind == "NUMBER" else "CUE") if token.kind in ("NUMBER", "LIMIT") else token
            for token in out
        ]
    for at, token in enumerate(out):
        if token.kind == "MOUNT" and _is_t_stop(out, at, told):
            out[at] = token.as_("TSTOP", numbers=(float(token.text[1:]),), ids=())
        if token.kind == "RATIO" and is_ratio_of_stop(out, at, told):
            out[at] = token.as_("FNUM", numbers=(round(1 / token.numbers[0], 4),))
        if token.kind != "NUMBER":
            continue
        if is_named_stop(out, at) and lit:
            out[at] = token.as_("FNUM")
        elif _is_factor(out, at):
            out[at] = token.as_("ND", value=f"ND{token.text}")
        elif is_stop_left(out, at, told):
            out[at] = token.as_("FNUM")
        elif _is_density(out, at, told) or (_GOING_ON in told and _is_density_alone(out, at)):
            out[at] = token.as_("ND", value=f"ND {token.text}")
        elif _is_angle(out, at) or _is_first_angle(out, at):
            out[at] = token.as_("DEGREES")
        elif _is_rate(out, at, told):
            out[at] = token.as_("FPS")
        elif (
            _is_iso(out, at, lit or _GOING_ON in told)
            or _is_least_iso(out, at, told, lit)
            or (lit and is_iso_of_row(out, at, SPEEDS))
            or (_GOING_ON in told and _is_of_camera(out, at))
        ):
            out[at] = token.as_("ISO")
        elif (lit and _is_stop(out, at)) or _is_opening_on_frame(out, at):
            out[at] = token.as_("FNUM")
    return _set_beside(out)


def _is_t_stop(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'from T2 to T2.9', 'T2, 1/50, full sun, which nd': the mount of that name is a T-stop as well."""
    text = tokens[at].text.casefold()
    named = text[:1] == "t" and text[1:].isdecimal()
    lit = any(token.kind == "TSTOP" for token in tokens) or is_exposure_open(tokens, told) or _is_exposed(tokens)
    return named and (lit or _is_beside_mount(tokens, at))


def _is_exposed(tokens: list[Token]) -> bool:
    """'T2 wide open, 25p, iso 800, full sun': light, speed and time are told, and no other stop, ring or body."""
    kinds = {token.kind for token in tokens}
    row = "ISO" in kinds and kinds & {"LIGHT", "EV"} and kinds & {"SHUTTER", "FPS", "DEGREES"}
    return bool(row) and not kinds & {"FNUM", "PIECE", "BODY", "LENS", "LINK"}


def _is_beside_mount(tokens: list[Token], at: int) -> bool:
    """'PL 50mm T2', '18mm T2 PL': behind the focal length of a lens whose mount is told right beside."""
    after = [one for one in tokens[at + 1 : at + 4] if one.kind not in ("KIND", "LENS", "JOIN")]
    ahead = tokens[at - 1] if at else None
    if ahead is None or ahead.kind not in ("LENGTH", "FOCAL", "NUMBER") or ahead.text.isalpha():
        return False
    if after and after[0].kind in ("PIECE", "LINK", "MOUNTWORD"):
        return False
    before = tokens[at - 2] if at > 1 else None
    return (before is not None and before.kind == "MOUNT") or bool(after and after[0].kind == "MOUNT")


def _is_iso(tokens: list[Token], at: int, lit: bool) -> bool:
    """'iso can't go below 400', 'iso 3200 instead of 800', 'base 800': a round number near the word or an ISO."""
    number = tokens[at].numbers[0]
    if number < 25 or (number % 5 and number not in SPEEDS) or not tokens[at].text.isdecimal():
        return False
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if after is not None and OPENED in after.groups:
        return False  # 'what iso with the 25 wide open': the lens
    if after is not None and after.value == _SPEED and not any(one.kind == "ISO" for one in tokens):
        return True  # 'full sun, 100 iso'
    if lit and after is not None and after.value == _NATIVE and number >= _LEAST_BASE:
        return True  # 'full sun, 800 base'
    for token in reversed(tokens[max(0, at - _ISO_NEAR) : at]):
        if token.value == _SPEED or (lit and token.value == _NATIVE and number >= _LEAST_BASE):
            return True
        if token.kind == "ISO":
            return (number >= 100 or number in SPEEDS) and (after is None or after.kind not in LENSLIKE)
        if token.kind in ("NUMBER", "LENGTH", "STOP", "PRICE"):
            return False
    return False


def _is_least_iso(tokens: list[Token], at: int, told: frozenset[str], lit: bool) -> bool:
    """'wont go under 640' where exposure is spoken of and no money is named: the least ISO."""
    limited = at > 0 and tokens[at - 1].kind == "LIMIT" and (lit or _GOING_ON in told)
    number = tokens[at].numbers[0]
    return limited and "cost" not in told and number >= _SLOWEST and number % 5 == 0


def _is_of_camera(tokens: list[Token], at: int) -> bool:
    """'the camera only goes down to 800' in a talk about exposure: a speed that is set, where no other number is."""
    before, others = tokens[:at], [one for one in tokens if one.numbers]
    led = any(one.kind == "BODY" for one in before) and not any(one.kind in ("LENS", "PIECE") for one in tokens)
    return led and len(others) == 1 and tokens[at].numbers[0] in SPEEDS


def _is_density_alone(tokens: list[Token], at: int) -> bool:
    """'i only have a 3.0' in a talk about exposure: as a filter is marked, and as no aperture ring is."""
    before = tokens[at - 1] if at else None
    named = before is None or before.kind in ("DET", "VERB", "CUE", "FILLER")
    marked = tokens[at].numbers[0] not in STOPS or tokens[at].text.endswith(".0")
    return named and marked and "." in tokens[at].text and tokens[at].numbers[0] in DENSITIES


def _is_density(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'ND 1.8, and a 0.6 on top': beside a filter that is told, a density of whole tenths of a stop's three."""
    number = tokens[at].numbers[0]
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    beside = [tokens[at - 1].text if at else "", after.text if after is not None else ""]
    if "." in tokens[at].text and any(word.casefold().startswith("densit") for word in beside):
        return True  # '2.0 density', 'density 2.0'
    if "." not in tokens[at].text or number not in DENSITIES or (after is not None and after.kind in _OF_OTHERS):
        return False
    filtered = any(token.kind == "PIECE" and token.value == "filter" for token in tokens)
    lens = any(token.kind in ("LENS", "COMBO", "LENGTH", "FNUM", "FOCAL") for token in tokens)
    grey = filtered and ("nd" in told or not lens)  # 'the filter says 1.8 on its rim'
    return grey or any(token.kind == "ND" and len(token.numbers) == 1 for token in tokens)


def _is_factor(tokens: list[Token], at: int) -> bool:
    """'meter reads 1/2000, i stack the 64 and the 4': filters as they are marked, where no lens is spoken of."""
    before = tokens[at - 1] if at else None
    if before is not None and FACTOR_NAMED in before.groups and tokens[at].numbers[0] in _WHOLE_FACTORS:
        return True  # 'factor 64 in stops'
    named = before is not None and before.kind == "DET" and tokens[at].numbers[0] in _FACTORS
    timed = any(token.kind == "SHUTTER" for token in tokens)
    return named and timed and not any(one.kind in _GEAR for one in tokens)


def _is_angle(tokens: list[Token], at: int) -> bool:
    """'180 shutter', 'a 90 angle', '24p, 180'."""
    if any(token.kind == "FPS" for token in tokens) and tokens[at].numbers[0] in _ANGLES:
        return True
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    named = after is not None and ANGLE in after.groups and after.kind != "SHUTTER"
    return named and 20 <= tokens[at].numbers[0] <= 360


def _is_first_angle(tokens: list[Token], at: int) -> bool:
    """'180 to 90 degree': the unit at the end is that of both."""
    rest = tokens[at + 1 : at + 3]
    linked = len(rest) > 1 and rest[0].value in _LINKS | {"vs", "or"} and rest[1].kind == "DEGREES"
    return linked and tokens[at].numbers[0] in _ANGLES


def _is_rate(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'back to 24, 90 degrees': the frame rate beside the angle of a shutter, where no view is spoken of."""
    if tokens[at].numbers[0] not in _RATES or told & _OF_VIEW:
        return False
    rated, before = any(token.kind == "FPS" for token in tokens), tokens[at - 1] if at else None
    if rated:  # '240 fps from 24'
        return before is not None and (before.value in _BETWEEN_RATES or before.text.casefold() in _BETWEEN_RATES)
    of_lens = before is not None and before.kind in ("MOUNT", "KIND", "DET", "PIECE")
    return any(token.kind == "DEGREES" for token in tokens) and not of_lens


def _is_stop(tokens: list[Token], at: int) -> bool:
    """'want 5.6' beside an ISO, 'from 2.8 to 8': a number of aperture rings that is of nothing else."""
    number, text = tokens[at].numbers[0], tokens[at].text
    before = tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if number not in STOPS or (after is not None and (after.kind in _OF_OTHERS or is_of_crop(after))):
        return False
    if before is not None and (before.kind in ("PIECE", "LIMIT", "MEASURE", "LENGTH", "FOCAL") or is_of_crop(before)):
        return False
    if "." in text:
        return True
    placed = before is not None and before.kind in ("PREP", "AT", "FNUM")
    return placed and number in _WHOLE and any(token.kind == "FNUM" for token in tokens)


def _is_opening_on_frame(tokens: list[Token], at: int) -> bool:
    """'does 1.4 on m4/3 blur like ...', 'is a 1.8 on apsc ...': what a lens opens to, where no other number is its."""
    if not _opens(tokens[at]) or (at and tokens[at - 1].kind not in ("VERB", "CUE", "DET", "STOP")):
        return False
    after = [token for token in tokens[at + 1 : at + 4] if token.kind != "DET"]
    placed = len(after) > 1 and after[0].kind == "PREP" and after[0].value in _ON and after[1].kind in _FRAMES
    lens = any(token.kind in ("LENGTH", "COMBO", "FOCAL", "PIECE", "FNUM", "MEASURE") for token in tokens)
    return placed and not lens


def _set_beside(tokens: list[Token]) -> list[Token]:
    """'f/1.8 on apsc really a 2.8 in ff terms', '... blur like f1.4': a second opening is of what the first is like."""
    first = next((at for at, token in enumerate(tokens) if token.kind == "FNUM"), len(tokens))
    framed = any(token.kind == "FORMAT" or token.kind == "MOUNT" for token in tokens[first:])
    for at in range(first + 2, len(tokens)):
        token, led = tokens[at], tokens[at - 1].kind in ("CUE", "DET") and tokens[at - 2].value != "with"
        if (
            framed
            and led
            and (token.kind == "FNUM" or (token.kind == "NUMBER" and _opens(token) and not is_crop(tokens, at)))
        ):
            tokens[at] = token.as_("FNUM")
            tokens[at - 1] = tokens[at - 1].as_("CUE")  # it belongs to no frame named before it
    return tokens


def _opens(token: Token) -> bool:
    number = token.numbers[0]
    return "." in token.text and number in STOPS and _WIDEST <= number <= _NARROWEST


def is_further_stop(tokens: list[Token], at: int) -> bool:
    """'at 1.4, 4 and 8', 'f/2.8 or 11': one more of a row of stops, where it is of nothing that follows."""
    number = tokens[at].numbers[0]
    if at < 2 or tokens[at].text.isalpha() or number not in STOPS or number > _SMALLEST:
        return False
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if after is not None and (after.kind in _OF_OTHERS or after.kind in LENSLIKE):
        return False
    listed = tokens[at - 1].kind == "JOIN" or tokens[at - 1].value in _LINKS
    return listed and tokens[at - 2].kind == "FNUM"
