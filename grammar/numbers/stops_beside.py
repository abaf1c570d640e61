"""A stop by its number alone, told so by what stands beside it: 'at 2x, ring says 5.6', 'engraved 2.8 but T3.1'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token
from grammar.words.written import STOPS

_RING: Final = "ring"
SHARE: Final = "share"  # the value of words for the light that passes
_BETWEEN: Final = frozenset(["VERB", "PREP", "FILLER", "CUE"])
_MARKED: Final = "mark"  # the value of words that something is engraved by
_LARGER: Final = frozenset(["RATIO", "TIMES"])
_GLASS: Final = frozenset(["PIECE", "LENS", "KIND", "CROP"])  # behind a factor they say whose it is
_FAR: Final = 2.0  # times
_OF_BLUR: Final = frozenset(["dof", "which-stop", "drawn-frame", "equiv", "wants-blur", "back-blurred", "looks-like"])
_STOPPED: Final = frozenset(["COMBO", "TSTOP"])
_FRAMES: Final = frozenset(["CROP", "FORMAT", "FRAME", "BODY", "MOUNT"])
_CROP: Final = "crop"
_BEFORE: Final = frozenset(["LENGTH", "FOCAL", "NUMBER", "PIECE", "CROP"])  # a number behind these is of something else
_FIRST: Final = 2  # tokens from the word for the ring to its number


def with_stops_beside(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The bare numbers that can only be stops as FNUM, and the words for the iris ring or the engraving as no piece."""
    out = _shares_told(tokens)
    if any(one.kind == "FNUM" for one in out):
        return out
    if told & _OF_BLUR and not any(one.kind in _STOPPED for one in out):
        out = _on_a_frame(out)
    if any(one.kind == "TSTOP" for one in out):
        return _beside_t_stop(out)
    return _on_the_ring(out) if any(_is_magnification(out, at) for at in range(len(out))) else out


def _shares_told(tokens: list[Token]) -> list[Token]:
    """'transmits 0.7', 'transmission is 0.85': less than one right behind the word is the share that passes."""
    out = list(tokens)
    for at, token in enumerate(out):
        row = out[max(0, at - _FIRST) : at]
        led = [one.value == SHARE for one in row]
        near = any(led) and (led[-1] or row[-1].kind in _BETWEEN)
        if near and token.kind == "NUMBER" and token.numbers[0] < 1:
            out[at] = token.as_("PERCENT", numbers=(token.numbers[0] * 100,))
    return out


def _on_a_frame(tokens: list[Token]) -> list[Token]:
    """'2.8 on a 1.6 crop body', 'the blur of 1.4 on aps-c': a stop of the dial, told on a frame."""
    for at, token in enumerate(tokens[:-1]):
        dial = token.kind == "NUMBER" and "." in token.text and _is_stop(token)
        behind = [one for one in tokens[at + 1 : at + 5] if one.kind != "DET"]
        on = dial and bool(behind) and behind[0].value == "on" and any(_is_of_frame(one) for one in behind[1:])
        measured = at > 0 and tokens[at - 1].value == "size"  # 'a ring that measures 1.60 on EF'
        if on and not measured and not (at and tokens[at - 1].kind in _BEFORE):
            return [*tokens[:at], token.as_("FNUM"), *tokens[at + 1 :]]
    return tokens


def _is_of_frame(token: Token) -> bool:
    return token.kind in _FRAMES or token.text.casefold() == _CROP


def _beside_t_stop(tokens: list[Token]) -> list[Token]:
    passed = next(one.numbers[0] for one in tokens if one.kind == "TSTOP")
    # one lens's stop by its hole is near that by its light: in 'T2.2 on the 25' the other number is the lens
    told = [
        at for at, one in enumerate(tokens)
        if one.kind == "NUMBER" and _is_stop(one) and passed / _FAR <= one.numbers[0] <= passed * _FAR
    ]  # fmt: skip
    if len(told) == 1:
        at = told[0]
        tokens[at] = tokens[at].as_("FNUM")
        if at and tokens[at - 1].kind == "MEASURE" and tokens[at - 1].value == _MARKED:
            tokens[at - 1] = tokens[at - 1].as_("CUE")
    return tokens


def _on_the_ring(tokens: list[Token]) -> list[Token]:
    """'ring says 5.6', 'the ring on 8': of a lens that works close up, what its ring says is the stop."""
    for at, token in enumerate(tokens):
        if token.kind != "PIECE" or token.text.casefold() != _RING:
            continue
        behind = at + 1
        while behind < len(tokens) and behind - at <= _FIRST and tokens[behind].kind in _BETWEEN:
            behind += 1
        if behind - at > 1 and behind < len(tokens) and tokens[behind].kind == "NUMBER" and _is_stop(tokens[behind]):
            tokens[behind] = tokens[behind].as_("FNUM")
            tokens[at] = token.as_("CUE")
            break
    return tokens


def _is_stop(token: Token) -> bool:
    return token.numbers[0] in STOPS and not token.text.isalpha()


def _is_magnification(tokens: list[Token], at: int) -> bool:
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return tokens[at].kind in _LARGER and (after is None or after.kind not in _GLASS)
