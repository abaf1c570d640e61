"""A bare number that is a stop because a magnification or an effective stop is spoken of: 'marked 5.6 at 3:1'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token
from grammar.words.written import STOPS

_ASKED: Final = "effective-f"  # the cue of a question for the f-number that counts
_GREATEST: Final = 32  # f-number, that bare numbers are taken for
_LEAST_FOCAL: Final = 8  # mm; behind an article a smaller number is no lens
_OF_OTHERS: Final = frozenset(["LENS", "KIND", "PIECE", "MOUNT", "BODY", "FRAME", "FORMAT", "LENGTH", "MOUNTWORD"])
_MEASURED: Final = frozenset(["LENGTH", "PIECE", "LIMIT", "NUMBER", "JOIN"])
_MARKED: Final = "mark"
_STOPPED: Final = frozenset(["FNUM", "COMBO", "TSTOP"])  # a stop that is told already
_ENDING: Final = frozenset(["STOP", "JOIN", "CUE"])
_SET_TO: Final = frozenset(["at", "to"])
_RING: Final = "adapter"  # 'the ring says 5.6': that of the iris
_ON_RING: Final = frozenset(["does", "on", "at", "be"])


def with_close_stops(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The tokens with the bare number that is set beside a magnification as FNUM, and what marked it as a CUE."""
    kinds = {token.kind for token in tokens}
    if _ASKED in told and not kinds & _STOPPED:
        tokens = _with_set_stop(_with_marked_stop(tokens))
        kinds = {token.kind for token in tokens}
    if "FNUM" in kinds or "COMBO" in kinds or not ("RATIO" in kinds or ("TIMES" in kinds and _ASKED in told)):
        return tokens
    out = list(tokens)
    for at, token in enumerate(out):
        if token.kind == "NUMBER" and _is_stop(out, at, told):
            out[at] = token.as_("FNUM")
            if at and out[at - 1].value == _MARKED:
                out[at - 1] = out[at - 1].as_("CUE")
            return out
    return out


def _with_marked_stop(tokens: list[Token]) -> list[Token]:
    """'marked 4, real working aperture?': what is marked beside is the stop, and no distance of the scale."""
    for at, token in enumerate(tokens[1:], start=1):
        bare = token.kind == "NUMBER" and not token.text.isalpha() and _is_of_dial(token.numbers[0])
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        if bare and tokens[at - 1].value == _MARKED and (after is None or after.kind in _ENDING):
            return [*tokens[: at - 1], tokens[at - 1].as_("CUE"), token.as_("FNUM"), *tokens[at + 1 :]]
    return tokens


def _with_set_stop(tokens: list[Token]) -> list[Token]:
    """'effective stop if i set 8', 'the real aperture, the ring says 5.6': the stop it is set to, which counts less."""
    for at, token in enumerate(tokens):
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        ends = after is None or after.kind in _ENDING
        if not ends or token.kind != "NUMBER" or token.text.isalpha() or not _is_of_dial(token.numbers[0]):
            continue
        led = at > 0 and (tokens[at - 1].kind == "CUE" or tokens[at - 1].value in _SET_TO)
        ring = at > 1 and tokens[at - 1].value in _ON_RING and tokens[at - 2].value == _RING
        if led or ring:
            out = [*tokens[: at - 2], *tokens[at:]] if ring else list(tokens)
            place = at - 2 if ring else at
            out[place] = token.as_("FNUM")
            return out
    return tokens


def _is_of_dial(number: float) -> bool:
    return number in STOPS and number <= _GREATEST


def _is_stop(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    number, text = tokens[at].numbers[0], tokens[at].text
    before = tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if text.isalpha() or not _is_of_dial(number):
        return False
    behind = at > 1 and tokens[at - 1].kind == "JOIN" and tokens[at - 2].kind == "RATIO"  # 'half life size, 5.6'
    listed = before is not None and before.kind in _MEASURED and not (behind and "." in text)
    if (after is not None and after.kind in _OF_OTHERS) or listed:
        return False
    set_to = before is not None and (before.value == _MARKED or (before.kind == "DET" and number < _LEAST_FOCAL))
    return _ASKED in told or "." in text or set_to
