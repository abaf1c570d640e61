"""A bare number that is a stop because a magnification is told: 'marked 5.6 at 3:1', 'at 2:1 my 4 becomes'."""

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


def with_close_stops(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The tokens with the bare number that is set beside a magnification as FNUM, and what marked it as a CUE."""
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


def _is_stop(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    number, text = tokens[at].numbers[0], tokens[at].text
    before = tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if text.isalpha() or number not in STOPS or number > _GREATEST:
        return False
    behind = at > 1 and tokens[at - 1].kind == "JOIN" and tokens[at - 2].kind == "RATIO"  # 'half life size, 5.6'
    listed = before is not None and before.kind in _MEASURED and not (behind and "." in text)
    if (after is not None and after.kind in _OF_OTHERS) or listed:
        return False
    set_to = before is not None and (before.value == _MARKED or (before.kind == "DET" and number < _LEAST_FOCAL))
    return _ASKED in told or "." in text or set_to
