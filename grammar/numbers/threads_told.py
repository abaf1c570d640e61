"""Bare numbers that tell how wide a thread is without saying so: 'mic says 20.2, 36 to the inch', 'screw, 42ish'."""

from __future__ import annotations

from typing import Final

from engine.base.units import MM_PER_INCH
from grammar.numbers.crests import is_screw
from grammar.numbers.measured_lengths import WIDTHS
from grammar.words.groups import FEMALE, METRIC
from grammar.words.token_kinds import CHOICES
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_WIDTHS: Final = (10.0, 130.0)  # mm, that a thread may be wide
_PITCHES: Final = (0.3, 2.0)  # mm
_NO_PITCH: Final = frozenset(["PITCH", "THREAD", "PIECE", "LINK", "BODY", "FNUM", "STOPS"])
_WIDE: Final = "wide"
_NUMBER_AND_PITCH: Final = 2
_ROUGHLY: Final = "ish"  # so is told what was held against a rule; no focal length is
_OWN: Final = frozenset(["LENS", "KIND", "PIECE", "MOUNT", "BODY", "FNUM", "TRAIT"])


def with_threads_told(tokens: list[Token]) -> list[Token]:
    """The bare number beside a pitch becomes the width of the thread."""
    out = _without_either(list(tokens))
    told = any(token.kind == "THREAD" or (token.kind == "KEYED" and token.value == "diameter") for token in out)
    wide = None if told else _width(out)
    if wide is not None:
        out[wide] = out[wide].as_("KEYED", value="diameter", unit="mm")
        if wide + 1 < len(out) and out[wide + 1].text.casefold() == _WIDE:
            out[wide + 1] = out[wide + 1].as_("CUE")
    return _with_pitch(out)


def with_led_apart(tokens: list[Token]) -> list[Token]:
    """'register 28.8 26 tpi': what a measuring word leads is no width of a thread, so that the pitch stands alone."""
    out: list[Token] = []
    for token in tokens:
        led = out[-1] if out else None
        other = led is not None and led.kind == "MEASURE" and led.value not in WIDTHS
        parts = token.text.split(maxsplit=1)
        if not (other and token.kind == "THREAD" and token.unit == "tpi" and len(parts) == _NUMBER_AND_PITCH):
            out.append(token)
            continue
        number, pitch = parts
        bare = number.removesuffix("mm")
        if not bare.replace(".", "").isdigit() or "x" in pitch.casefold():
            out.append(token)
            continue
        per_inch = token.numbers[1]
        kind, unit = ("NUMBER", "") if bare == number else ("LENGTH", "mm")
        out.append(token.as_(kind, text=number, value=bare, numbers=token.numbers[:1], unit=unit))
        column = token.column + len(token.text) - len(pitch)
        told = f"{round(MM_PER_INCH / per_inch)} tpi"
        out.append(token.as_("PITCH", text=pitch, column=column, value=told, numbers=(per_inch,)))
    return out


def _without_either(tokens: list[Token]) -> list[Token]:
    """'26 tpi or metric', 'is it 1.0 or 0.75 pitch': of two pitches set side by side neither is told."""
    for at, token in enumerate(tokens):
        if token.kind != "JOIN" or token.value not in CHOICES or not 0 < at < len(tokens) - 1:
            continue
        one, other = tokens[at - 1], tokens[at + 1]
        ends = [place for place in (at - 1, at + 1) if tokens[place].kind == "PITCH" or _may_be_pitch(tokens[place])]
        pitches = [place for place in ends if tokens[place].kind == "PITCH"]
        system = any(METRIC in end.groups for end in (one, other))
        if pitches and (len(ends) > 1 or system):
            for place in ends:
                tokens[place] = tokens[place].as_("CUE")
    return tokens


def _with_pitch(tokens: list[Token]) -> list[Token]:
    """'thread 47 mm, 0.75': the one bare fraction beside a width is a pitch, where no ring is named."""
    told = any(token.kind in _NO_PITCH for token in tokens)
    wide = any(_tells_width(token) for token in tokens)
    bare = [at for at, token in enumerate(tokens) if _may_be_pitch(token) and not is_stop(tokens, at)]
    if told or not wide or len(bare) != 1:
        return tokens
    token = tokens[bare[0]]
    tokens[bare[0]] = token.as_("PITCH", value=f"{token.numbers[0]:g} mm", unit="mm")
    return tokens


def is_stop(tokens: list[Token], at: int) -> bool:
    """'50 mm 1.8, screw 42 across': right behind a focal length stands how far the lens opens."""
    before, token = tokens[at - 1] if at else None, tokens[at]
    focal = before is not None and before.kind in ("LENGTH", "FOCAL", "TAIL") and before.unit in ("", "mm")
    return focal and token.kind in ("NUMBER", "TAIL") and token.numbers[0] in STOPS and token.numbers[0] > 1


def _may_be_pitch(token: Token) -> bool:
    """A bare fraction, 'x 0.75', or so short a length in mm, as pitches are long."""
    fraction = (token.kind == "NUMBER" and "." in token.text) or _is_by(token)
    return (fraction or token.is_mm) and (_PITCHES[0] <= token.numbers[0] <= _PITCHES[1])


def _tells_width(token: Token) -> bool:
    """Whether it is the width of a thread, or the name of a mount by its width: '42 mm thread'."""
    named = token.kind == "MOUNT" and token.text[:2].isdigit()
    return named or (token.kind == "KEYED" and token.value == "diameter")


def _is_by(token: Token) -> bool:
    """'x 0.75', 'x 1': by which another number is told."""
    return token.kind == "TIMES" and token.text[:1].casefold() == "x"


def _width(tokens: list[Token]) -> int | None:
    """The first bare number that is as wide as threads are, where a pitch is told or it is roughly that of a screw."""
    pitch = any(token.kind == "PITCH" or FEMALE in token.groups for token in tokens)
    screw = any(map(is_screw, tokens))
    for at, token in enumerate(tokens):
        if token.kind != "NUMBER" or token.text.isalpha() or not _WIDTHS[0] <= token.numbers[0] <= _WIDTHS[1]:
            continue
        roughly = screw and token.text.casefold().endswith(_ROUGHLY)
        after = tokens[at + 1] if at + 1 < len(tokens) else Token("STOP", "", 0)
        if (pitch or roughly) and (after.kind not in _OWN or after.text.casefold() == _WIDE):
            return at
    return None
