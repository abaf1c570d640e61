"""Bare numbers that are crop factors: '1.6 crop', 'crop body 1.6', 'another 1.3', 'a 1.5x sensor'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import OPTICAL
from grammar.things.standins import stands_in
from grammar.words.groups import CROP, READ_OUT
from grammar.words.tokens import Token

_FURTHER: Final = frozenset(["further", "another"])  # values of the words that add to what was told
_NEAR: Final = 5  # words
_FRAMES: Final = frozenset(["BODY", "FRAME"])
_OF_VIEW: Final = frozenset(["equiv", "match", "equals"])
_OF_VIEWS: Final = _OF_VIEW | {"how-wide", "angle-of-view", "cover", "dof", "framing"}  # what a frame decides
_OF_SENSORS: Final = frozenset([1.3, 1.5, 1.52, 1.53, 1.6, 1.61, 1.62, 2.7])  # as people call them
_OF_OTHERS: Final = frozenset(["LENS", "KIND", "PIECE", "FNUM", "MOUNT"])
_LEAST, _MOST = 1.05, 7.0
_OTHERS: Final = frozenset(["35mm-ff-digital", "24x36"])  # names of full frame
_USUAL: Final = "aps-c-1.5"  # what is meant by a crop body where no factor is told
_CALLED: Final = "crop sensor"
_FULL: Final = "35mm-full-frame"
_TWO: Final = 2  # mounts: one seats on the other, and it is that which is asked
_FOCAL: Final = frozenset(["LENGTH", "COMBO", "NUMBER"])
_IS: Final = frozenset(["be", "equals"])
_OF_CLOSE_UP: Final = frozenset(
    ["macro", "how-big", "how-close", "working-distance", "extension-asked", "bellows-factor"]
)
_LEADING: Final = frozenset(["DET", "MOUNT", "LETTER", "PREP", "JOIN", "STOP", "TRAIT"])
_PLACED: Final = frozenset(["MOUNT", "LETTER", "MOUNTWORD"])


def with_crops_told(tokens: list[Token], told: frozenset[str], never_full: frozenset[str] = frozenset()) -> list[Token]:
    """The tokens with crops that come on top of a frame as CROP, and those told behind a body right before it.

    `never_full`: mounts of which no body is of full frame.
    """
    out = _with_crop_of_small(_with_mode_of_full(_with_crop_behind_mount(tokens)), never_full)
    for at, token in enumerate(out):
        if _crops_further(out, at):
            out[at] = token.as_("CROP", numbers=_numbers(token), ids=())
        elif _is_frame_placed_on(out, at, told) or _is_mode_of(out, at) or _is_said_of_body(out, at, told):
            out[at] = token.as_("CROP")
        elif token.kind in _FRAMES and at + 1 < len(out) and _crops_body(out, at):
            out[at], out[at + 1] = out[at + 1].as_("CROP"), token
    seated = sum(one.kind == "MOUNT" for one in out) >= _TWO or not any(one.kind in _FOCAL for one in out)
    return out if seated and not told & _OF_VIEWS else _with_crop_bodies(out)


def _with_crop_behind_mount(tokens: list[Token]) -> list[Token]:
    """'on 1.6 EF crop': the factor stands before the word for it, the mount before both."""
    out = list(tokens)
    for at in range(len(tokens) - 2):
        factor, mount, word = out[at : at + 3]
        if mount.kind in ("MOUNT", "LETTER") and _is_of_sensor(factor) and word.kind == "CUE" and is_of_crop(word):
            out[at : at + 2] = [mount, factor]
    return out


def _with_crop_of_small(tokens: list[Token], never_full: frozenset[str]) -> list[Token]:
    """'on MFT with the 1.3x crop': beside a frame that is smaller than full frame the factor is told of that one."""
    apart = any(one.kind == "JOIN" and one.value == "vs" for one in tokens)  # 'a 20 on 1.6 crop vs a 14 on MFT'
    framed = not apart and any(_is_small(one, never_full) for one in tokens)
    return [one.as_("CROP", numbers=_numbers(one), ids=()) if framed and is_crop_named(one) else one for one in tokens]


def is_crop_named(token: Token) -> bool:
    """'1.3x crop' names the frame of that factor."""
    return token.kind == "FORMAT" and "crop" in token.text.casefold() and _numbers(token)[0] > 1


def _is_small(token: Token, never_full: frozenset[str]) -> bool:
    if is_crop_named(token):
        return False
    small = token.kind == "FORMAT" and not {_FULL, *_OTHERS} & set(token.ids)
    return small or (token.kind == "MOUNT" and token.ids[:1] != () and token.ids[0] in never_full)


def _with_mode_of_full(tokens: list[Token]) -> list[Token]:
    """'on E full frame in crop mode': the mode without a factor or a frame of its own, of the usual smaller frame."""
    frames = [one for one in tokens if one.kind == "FORMAT"]
    modes = [one for one in tokens if one.kind == "FRAME" and {CROP, READ_OUT} <= set(one.groups)]
    told = any(one.kind in ("CROP", "AREA") or _is_of_sensor(one) for one in tokens)
    if len(modes) != 1 or len(frames) != 1 or _FULL not in frames[0].ids or told:
        return tokens
    at = tokens.index(modes[0])
    return [*tokens[:at], modes[0].as_("FORMAT", value=_CALLED, ids=(_USUAL,)), *tokens[at + 1 :]]


def _with_crop_bodies(tokens: list[Token]) -> list[Token]:
    """'an E mount crop camera', 'a cropped E body': the usual smaller frame, where no factor and no frame is told."""
    if any(one.kind in ("CROP", "FORMAT", "AREA") or _is_of_sensor(one) for one in tokens):
        return tokens
    out = list(tokens)
    for at, token in enumerate(tokens):
        if token.kind != "CUE" or not is_of_crop(token) or (at > 0 and tokens[at - 1].kind not in _LEADING):
            continue
        headed = next(
            (n for n in range(at + 1, min(at + 4, len(tokens))) if tokens[n].kind not in _PLACED), len(tokens)
        )
        if headed == len(tokens) or tokens[headed].kind not in _FRAMES or _has_factor(tokens, at, headed):
            continue
        frame = token.as_("FORMAT", value=_CALLED, ids=(_USUAL,))
        out[at:headed] = [*tokens[at + 1 : headed], frame]
    return out


def _has_factor(tokens: list[Token], at: int, body: int) -> bool:
    """Whether a number right before the word or right behind the body is a crop."""
    beside = [*tokens[max(0, at - 1) : at], *tokens[body + 1 : body + 2]]
    return any(one.kind in ("NUMBER", "TIMES") and crops(one.numbers[0]) for one in beside)


def _is_of_sensor(token: Token) -> bool:
    return token.kind in ("NUMBER", "TIMES") and token.numbers[0] in _OF_SENSORS


def _is_frame_placed_on(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'what on 1.6 matches a 35', '400 on 1.5x': the factor of a sensor, as no converter has it."""
    token, before = tokens[at], tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    placed = before is not None and before.kind == "PREP" and before.value == "on"
    ends = after is None or after.kind not in _OF_OTHERS
    glass = any(one is not token and (one.kind == "TIMES" or _reduces(one)) for one in tokens)
    meant = token.kind == "TIMES" or (token.kind == "NUMBER" and (glass or bool(told & _OF_VIEW)))
    return meant and placed and ends and token.numbers[0] in _OF_SENSORS


def _is_mode_of(tokens: list[Token], at: int) -> bool:
    """'4K crop on MFT 1.25x', 'digital zoom 2x on MFT': a factor where crops are spoken of, and no glass is."""
    if tokens[at].kind != "TIMES" or not crops(tokens[at].numbers[0]):
        return False
    before = tokens[max(0, at - _NEAR) : at]
    glass = any(one.kind == "PIECE" and one.value in OPTICAL for one in tokens)
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return any(map(is_of_crop, before)) and not glass and (after is None or after.kind not in _OF_OTHERS - {"MOUNT"})


def _is_said_of_body(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'this MFT cam is 2.2x', '4K mode on my E body is 1.7x': what a body or its mode is, where no glass is told.

    'the picture on the sensor is 2x' is of a size.
    """
    if tokens[at].kind != "TIMES" or not crops(tokens[at].numbers[0]) or told & _OF_CLOSE_UP:
        return False
    before = tokens[max(0, at - _NEAR) : at]
    said = len(before) > 1 and before[-1].value in _IS
    named = [one.kind for one in before if one.kind in _FRAMES | {"LENS", "PIECE", "KIND", "COMBO", "LENGTH", "NUMBER"}]
    glass = any(one.kind == "PIECE" and one.value in OPTICAL for one in tokens)
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    ends = after is None or after.kind not in _OF_OTHERS
    shown = [one.value for one in before if one.kind in ("PREP", "FRAME")][-2:-1] == ["on"] and named[-1:] == ["FRAME"]
    return said and not glass and ends and not shown and bool(named) and named[-1] in _FRAMES


def _reduces(token: Token) -> bool:
    """'28 with the .71 on 1.5': a bare factor of glass, before it is told as such."""
    return token.kind == "NUMBER" and "." in token.text and 0.5 < token.numbers[0] <= 0.9


def is_crop(tokens: list[Token], at: int) -> bool:
    """'1.6 crop', '1.5x body': a number that a frame can be smaller by, before what says that it is."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if not crops(tokens[at].numbers[0]):
        return False
    if after is not None and (after.kind in _FRAMES or is_of_crop(after) or _is_the_one(tokens, at)):
        return True
    return _is_told_of_crop(tokens, at) and (after is None or after.kind not in _OF_OTHERS)


def _is_the_one(tokens: list[Token], at: int) -> bool:
    """'on the 1.6 one it is like a what': the body of that crop, as sensors are called by it."""
    led = [one.kind for one in tokens[max(0, at - 2) : at]] == ["PREP", "DET"] and tokens[at - 2].value == "on"
    return led and tokens[at].numbers[0] in _OF_SENSORS and stands_in(tokens[at + 1])


def _is_told_of_crop(tokens: list[Token], at: int) -> bool:
    """'a 4k crop of 2.2', 'crop factor is 2.2': behind the word, with no more than a small one between."""
    before = tokens[max(0, at - 3) : at]
    while before and (before[-1].kind in ("VERB", "CUE") or before[-1].value == "of") and not is_of_crop(before[-1]):
        before = before[:-1]
    return bool(before) and is_of_crop(before[-1]) and "." in tokens[at].text


def crops(number: float) -> bool:
    return (_LEAST <= number <= _MOST and number != int(number)) or number in (2, 3)


def is_of_crop(token: Token) -> bool:
    return CROP in token.groups


def _crops_body(tokens: list[Token], at: int) -> bool:
    """'crop body 1.6', 'crop sensor 1.5x'."""
    cropped = is_of_crop(tokens[at]) or (at > 0 and is_of_crop(tokens[at - 1]))
    factor = tokens[at + 1]
    return cropped and factor.kind in ("NUMBER", "TIMES") and crops(factor.numbers[0])


def _crops_further(tokens: list[Token], at: int) -> bool:
    """'another 1.3', 'crops 1.3', 'an additional 1.5 crop' where crops are spoken of."""
    token, before = tokens[at], tokens[at - 1] if at else None
    if before is None or not (is_of_crop(before) or {before.value, before.text.casefold()} & _FURTHER):
        return False
    near = tokens[max(0, at - _NEAR) : at + _NEAR + 1]
    cropped = any("crop" in one.text.casefold() for one in near)
    return cropped and token.kind in ("NUMBER", "TIMES", "FORMAT") and 1 < _numbers(token)[0] <= _MOST


def _numbers(token: Token) -> tuple[float, ...]:
    """Its number; of a format that is called by its crop factor that factor: '1.5 crop'."""
    if token.kind != "FORMAT":
        return token.numbers
    first = token.text.split()[0].rstrip("xX")
    return (float(first),) if first.replace(".", "", 1).isdecimal() else (0.0,)
