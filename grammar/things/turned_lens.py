"""A lens that is turned round in so many words: 'turn the 28 mm around', 'i flip a 24 and put it on the front of'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import FLIPS, ROUND, TURNS_ROUND
from grammar.words.tokens import Token

_LENSES: Final = frozenset(["LENGTH", "NUMBER", "COMBO", "FOCAL", "NAMED"])
_SHORTEST: Final = 8.0  # mm
_BETWEEN: Final = frozenset(["DET", "LETTER", "FNUM", "LENS", "KIND", "MOUNT"])  # 'turn the 28 mm f/2.8 lens around'
_HOSTS: Final = frozenset(["MOUNT", "LETTER", "BODY", "FORMAT"])
_REVERSED: Final = "reversed"
_WORDS: Final = 4  # of what is turned
_BEFORE: Final = "before"


def with_turned_lens(tokens: list[Token]) -> list[Token]:
    """The words that turn a lens as the TRAIT reversed, right behind that lens; 'before' then is what it is put on."""
    tokens = _with_body_behind(tokens)
    out: list[Token] = []
    at = 0
    while at < len(tokens):
        token = tokens[at]
        end = _end_of_turned(tokens, at) if FLIPS in token.groups or TURNS_ROUND in token.groups else None
        if end is not None:
            told = tokens[end - 1] if ROUND in tokens[end - 1].groups else token
            turned = [one for one in tokens[at + 1 : end] if ROUND not in one.groups]
            out += [*turned, told.as_("TRAIT", value=_REVERSED, ids=())]
            at = end
            continue
        if out and out[-1].value == _REVERSED and token.text.casefold() == _BEFORE and _is_lens_ahead(tokens, at + 1):
            token = token.as_("PREP", value="on")
        out.append(token)
        at += 1
    return out


def _with_body_behind(tokens: list[Token]) -> list[Token]:
    """'135/2.8 T2 on Z reversed': told behind the body, it is the lens that is reversed."""
    for at in range(2, len(tokens)):
        if (tokens[at].kind, tokens[at].value) != ("TRAIT", _REVERSED) or tokens[at - 1].kind not in _HOSTS:
            continue
        on = at - 1
        while on > 0 and tokens[on].kind in (*_HOSTS, "DET"):
            on -= 1
        lens = any(one.kind in _LENSES for one in tokens[:on])
        if tokens[on].kind == "PREP" and tokens[on].value == "on" and lens:
            return [*tokens[:on], tokens[at], *tokens[on:at], *tokens[at + 1 :]]
    return tokens


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
