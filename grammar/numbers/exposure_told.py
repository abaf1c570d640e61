"""Which bare number of an exposure is the f-number, by the word before it or as the one left over."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import DRAWN
from grammar.words.groups import DENSITY, MOON, OPENED, STARS, STOP_NAMED, STOPPED_SO
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_NEAR: Final = 3  # tokens
_STOPPED: Final = frozenset(["FNUM", "TSTOP", "COMBO"])
_MEASURED: Final = frozenset(["PIECE", "BODY", "FRAME", "MEASURE", "MOUNTWORD", "STOPS", "NUMBER"])
_LED: Final = frozenset(["PIECE", "LIMIT", "MEASURE", "LENGTH", "FOCAL", "ISO", "NUMBER", "ND"])
_SPEED: Final = "iso"
_FIXED: Final = "fixed-iris"
_FILTER: Final = "filter"
_SMALLEST: Final = 22  # the f-number that rings go to
_SLOWEST: Final = 6.3  # what lenses open to
_THINGS: Final = frozenset(["PIECE", "BODY", "FRAME", "MOUNT", "LENS", "KIND", "MEASURE"])
_CLOSE: Final = frozenset(["macro", "how-big", "frame-filling", "bellows-factor", "factor-word", "shim", "make"])
# what must be spoken of for the number left over to be a stop; and that the filter, not a number of it, is asked for
_IRIS: Final = "iris"  # cue
_SKY: Final = {MOON: "moon", STARS: "starry-sky"}  # group -> the light
_EXPOSURE_ASKED: Final = frozenset(["exposure", "shutter-speed"])
_EXPOSED: Final = frozenset(["FNUM", "ISO", "SHUTTER"])
_VAGUE: Final = "vaguely"  # of a word for light that only tells where it is
_SETTINGS: Final = 2  # of them make an exposure
_LEAST_UNSAID: Final = 100  # the least ISO that is told without the word for it
_IN_ROW: Final = frozenset(["JOIN", "STOP", "CUE", "LIGHT", "EV", "FNUM", "TSTOP", "SHUTTER", "FPS", "DEGREES", "ND"])
_AT: Final = frozenset(["at", "and"])
_SET: Final = frozenset(["SHUTTER", "FPS", "ISO", "DEGREES"])


def with_rule_of_thumb(tokens: list[Token]) -> list[Token]:
    """'sunny 16 at iso 400': the rule has its stop in its name, where no other is told."""
    if any(token.kind in _STOPPED for token in tokens):
        return tokens
    at = next((at for at, token in enumerate(tokens) if token.kind == "LIGHT" and token.text.endswith("16")), None)
    if at is None:
        return tokens
    return [*tokens[: at + 1], tokens[at].as_("FNUM", text="f/16", value="", numbers=(16.0,)), *tokens[at + 1 :]]


def with_sky_lit(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'the moon at f11 and iso 100': in the picture, so what is exposed for; else it is only far off."""
    kinds = {token.kind for token in tokens}
    enough = _SETTINGS - bool(told & _EXPOSURE_ASKED)
    if "LIGHT" in kinds or "EV" in kinds or len(kinds & _EXPOSED) < enough:
        return tokens
    lit = [next((_SKY[group] for group in token.groups if group in _SKY), None) for token in tokens]
    return [token.as_("LIGHT", value=light) if light else token for token, light in zip(tokens, lit, strict=True)]


def _without_vague_light(tokens: list[Token]) -> list[Token]:
    """'outdoors, overcast': where the light is, beside what it is."""
    lit = [token for token in tokens if token.kind == "LIGHT"]
    vague = [token for token in lit if _VAGUE in token.implies]
    if not vague or len(vague) == len(lit):
        return tokens
    return [token.as_("CUE", value="") if token in vague else token for token in tokens]


def with_fixed_stops(tokens: list[Token]) -> list[Token]:
    """'my lens is fixed at f2': the stop is what the lens has, and none that it is set to."""
    out: list[Token] = []
    tokens = _without_vague_light(tokens)
    for at, token in enumerate(tokens):
        fixed = bool(out) and out[-1].kind == "TRAIT" and out[-1].value == _FIXED
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        if (
            fixed
            and token.value == "at"
            and token.kind in ("AT", "PREP")
            and after is not None
            and after.kind == "FNUM"
        ):
            continue
        out.append(token)
    return out


def is_named_stop(tokens: list[Token], at: int) -> bool:
    """'stop 3.5', 'aperture is 1.1', '1.8 wide open': what stands behind, or before, the word for it."""
    if tokens[at].numbers[0] not in STOPS or tokens[at].text.isalpha() or _is_of_other(tokens, at):
        return False
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if after is not None and STOPPED_SO in after.groups:
        return not _is_lens_opened(tokens, at)
    behind = list(tokens[max(0, at - _NEAR) : at])
    while behind and behind[-1].kind in ("PREP", "DET", "FILLER", "AT", "CUE") and STOP_NAMED not in behind[-1].groups:
        behind.pop()
    if not behind:
        return False
    opens = behind[-1].kind == "LENS" and tokens[at].numbers[0] <= _SLOWEST  # 'lens is 1.4'
    return opens or STOP_NAMED in behind[-1].groups


def _is_lens_opened(tokens: list[Token], at: int) -> bool:
    """'with the 25 wide open': no lens opens to f/25, so it is the lens that is opened."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return after is not None and OPENED in after.groups and tokens[at].numbers[0] > _SLOWEST


def is_stop_left(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'2.5, iso 100, sun, which nd': where a filter is asked for and no stop is told, the number of aperture rings."""
    number = tokens[at].numbers[0]
    if number not in STOPS or number > _SMALLEST or tokens[at].text.isalpha() or _is_lens_opened(tokens, at):
        return False
    if not is_exposure_open(tokens, told):
        return False
    others = [token for token in tokens if token.kind == "NUMBER" and token.numbers[0] in STOPS]
    if len(others) > 1 and ("." not in tokens[at].text or sum("." in one.text for one in others) > 1):
        return False
    return not _is_of_other(tokens, at) and not _is_led(tokens, at)


def are_stops_apart(tokens: list[Token], told: frozenset[str]) -> bool:
    """'stops from 2 to 8', 'two thirds under 4': all the numbers told are stops where stops are spoken of."""
    told_so = any(token.kind == "STOPS" for token in tokens)
    bare = [token for token in tokens if token.kind == "NUMBER"]
    others = [token for token in tokens if token.numbers and token.kind not in ("NUMBER", "STOPS", "FNUM")]
    things = [n for n, token in enumerate(tokens) if token.kind in _THINGS and not _is_iris_ring(tokens, n)]
    if others or told & _CLOSE or things:
        return False
    between = any(token.value == "between" for token in tokens)
    between = between and (_IRIS in told or any("." in token.text for token in bare))
    enough = len(bare) == (1 if told_so else 2) and bool({"f-stop", "halfway"} & told or told_so or between)
    return enough and all(token.numbers[0] in STOPS and not token.text.isalpha() for token in bare)


def _is_iris_ring(tokens: list[Token], at: int) -> bool:
    """'the aperture ring has a dot between 8 and 11': no ring between lens and body."""
    return tokens[at].kind == "PIECE" and at > 0 and STOP_NAMED in tokens[at - 1].groups


def is_ratio_of_stop(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'1:2, shutter 1/50, EV 14, which nd': as it is engraved, where nothing close up is spoken of."""
    number = tokens[at].numbers[0]
    if any(one.kind == "PIECE" and one.value in DRAWN for one in tokens):
        return False  # 'bellows at 1:1, meter says 1/30'
    return 0 < number <= 1 and round(1 / number, 2) in STOPS and is_exposure_open(tokens, told)


def is_exposure_open(tokens: list[Token], told: frozenset[str]) -> bool:
    """Whether a filter is asked for with a setting of the exposure told, and no stop yet."""
    filtered = any((token.kind, token.value) == ("PIECE", _FILTER) for token in tokens)
    lit = "f-stop" in told or any(token.kind in ("LIGHT", "EV") for token in tokens)
    asked = {"nd", "exposure"} & told or (lit and filtered)
    stopped = any(token.kind in _STOPPED for token in tokens)
    return bool(asked) and not stopped and not told & _CLOSE and any(token.kind in _SET for token in tokens)


def _is_of_other(tokens: list[Token], at: int) -> bool:
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    fast = tokens[at].numbers[0] > _SMALLEST
    return after is not None and (after.kind in _MEASURED or (after.value == _SPEED and fast))


def _is_led(tokens: list[Token], at: int) -> bool:
    """Whether it is of what stands before it: a filter, a tube, a speed."""
    before = tokens[at - 1] if at else None
    if before is None:
        return False
    return before.kind in _LED or before.value == _SPEED or DENSITY in before.groups


def is_iso_of_row(tokens: list[Token], at: int, speeds: frozenset[int]) -> bool:
    """'full sun, f2, 400, 1/50': among the settings of an exposure the round number that is none of the others."""
    token = tokens[at]
    if token.numbers[0] not in speeds or token.numbers[0] < _LEAST_UNSAID or not token.text.isdecimal():
        return False
    timed = any(one.kind in ("SHUTTER", "FPS") for one in tokens)
    stopped = any(one.kind in _STOPPED for one in tokens)
    # 'what nd, 25p, 200, sun' in a talk of a lens whose stop is known
    filtered = any(one.kind == "LIGHT" for one in tokens) and any(DENSITY in one.groups for one in tokens)
    bare = sum(one.kind == "NUMBER" for one in tokens) == 1
    if not timed or not (stopped or (filtered and bare)) or any(one.kind == "ISO" for one in tokens):
        return False
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    led = before is None or before.kind in _IN_ROW or before.value in _AT
    return led and (after is None or after.kind in _IN_ROW - {"FNUM", "TSTOP"} or after.value in ("in", "and"))
