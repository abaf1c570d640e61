"""A lens that is turned round in so many words: 'turn the 28 mm around', 'i flip a 24 and put it on the front of'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import FLIPS, ROUND, TURNS_ROUND
from grammar.words.tokens import Token

_LENSES: Final = frozenset(["LENGTH", "NUMBER", "COMBO", "FOCAL", "NAMED"])
_SHORTEST: Final = 8.0  # mm
_BETWEEN: Final = frozenset(["DET", "LETTER", "FNUM", "LENS", "KIND", "MOUNT"])  # 'turn the 28 mm f/2.8 lens around'
_WORDS: Final = 4  # of what is turned
_BEFORE: Final = "before"


def with_turned_lens(tokens: list[Token]) -> list[Token]:
    """The words that turn a lens as the TRAIT reversed, right behind that lens; 'before' then is what it is put on."""
    out: list[Token] = []
    at = 0
    while at < len(tokens):
        token = tokens[at]
        end = _end_of_turned(tokens, at) if FLIPS in token.groups or TURNS_ROUND in token.groups else None
        if end is not None:
            told = tokens[end - 1] if ROUND in tokens[end - 1].groups else token
            turned = [one for one in tokens[at + 1 : end] if ROUND not in one.groups]
            out += [*turned, told.as_("TRAIT", value="reversed", ids=())]
            at = end
            continue
        if out and out[-1].value == "reversed" and token.text.casefold() == _BEFORE and _is_lens_ahead(tokens, at + 1):
            token = token.as_("PREP", value="on")
        out.append(token)
        at += 1
    return out


def _end_of_turned(tokens: list[Token], at: int) -> int | None:
    """Where what is turned ends: behind the word that says round, or behind the lens that is flipped."""
    lens = False
    for ahead in range(at + 1, min(len(tokens), at + 2 + _WORDS)):
        token = tokens[ahead]
        if ROUND in token.groups and lens:
            return ahead + 1
        if token.kind in _LENSES and not (token.numbers and token.numbers[0] < _SHORTEST):
            lens = True
        elif token.kind not in _BETWEEN:
            return ahead if lens and FLIPS in tokens[at].groups and _is_lens_ahead(tokens, ahead) else None
    return None


def _is_lens_ahead(tokens: list[Token], at: int) -> bool:
    """Whether another length follows, that of what it is put on."""
    return any(one.kind in ("LENGTH", "NUMBER", "COMBO", "FOCAL", "RANGE") for one in tokens[at:])
