"""By how much a picture is cropped in the edit: 'punch in 1.4x', 'punching in 2x', 'a 1.3x punch-in'; no glass."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import PUNCHED
from grammar.words.tokens import Token

_MOST: Final = 8.0  # times
_NEAR: Final = 3  # tokens from the word to its factor
_BETWEEN: Final = frozenset(["PREP", "FILLER", "CUE", "MARK", "VERB"])


def with_punched_in(tokens: list[Token]) -> list[Token]:
    """The factor right beside such a word becomes CROP."""
    places = [at for at, one in enumerate(tokens) if PUNCHED in one.groups]
    out = list(tokens)
    for place in places:
        ahead = range(place + 1, min(len(out), place + 1 + _NEAR))
        factor = next((at for at in ahead if out[at].kind not in _BETWEEN), None)
        before = place - 1 if place else None
        for at in (factor, before):
            if at is not None and _is_factor(out[at]):
                out[at] = out[at].as_("CROP", ids=(), value=f"{out[at].numbers[0]:g}")
                break
    if places:  # 'scaled to 150 % on the timeline'
        for at, token in enumerate(out):
            if _is_scale(token):
                out[at] = _as_crop(token)
                if at and out[at - 1].kind == "PREP":
                    out[at - 1] = out[at - 1].as_("CUE")  # 'scaled to': no frame that it is put on
    return out


def _as_crop(token: Token) -> Token:
    factor = token.numbers[0] / 100
    return token.as_("CROP", ids=(), numbers=(factor,), value=f"{factor:g}")


def _is_scale(token: Token) -> bool:
    """A percentage that enlarges; what a filter or lens lets through is less than all."""
    return token.kind == "PERCENT" and 100 < token.numbers[0] <= _MOST * 100


def _is_factor(token: Token) -> bool:
    said = token.kind == "TIMES" or (token.kind == "NUMBER" and not token.text.isalpha())
    return said and 1.0 < token.numbers[0] <= _MOST
