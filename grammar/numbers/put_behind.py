"""Tubes that are told by their length and place alone: '7 mm behind a 28', 'a 28 with 7 mm behind it'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import DRAWN, SPACER
from grammar.words.groups import REAR, TOO_MUCH
from grammar.words.tokens import Token

_BEHIND: Final = "behind"
_METRIC: Final = frozenset(["mm", "cm"])
_LONGEST_MM: Final = 150.0
_SHORTEST_LENS_MM: Final = 8.0
_PASSED: Final = frozenset(["DET", "LETTER", "FILLER", "MARK", "TRAIT"])
_LENS: Final = frozenset(["NUMBER", "LENGTH", "COMBO"])
_IT: Final = "it"
_ENDS: Final = frozenset(["STOP", "JOIN", "MARK", "CUE"])
# what stands behind a lens that is no tube: the image, a sensor, a filter
_OTHERS: Final = frozenset(["image", "seat"])
_OF_OTHERS: Final = frozenset(["PIECE", "BODY", "FRAME", "KEYED"])
_IMAGE_CUES: Final = frozenset(["image-lands", "rear-stands"])
_OWN_FLANGE: Final = frozenset(["projector", "enlarger"])  # kinds of which the image behind them is measured
_REGISTER: Final = "flange-to-image"


def with_tubes_behind(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """A tube put behind each such length; nothing where an image, a flange or a rear is spoken of."""
    tokens = _with_excess(tokens)
    if told & _IMAGE_CUES or any(_is_other(one) for one in tokens):
        return tokens
    out: list[Token] = []
    for at, token in enumerate(tokens):
        out.append(token)
        if _is_length(token) and _stands_behind(tokens, at):
            out.append(Token("PIECE", "tube", token.column, SPACER))
    return out


def _with_excess(tokens: list[Token]) -> list[Token]:
    """'11mm too much tube': a tube of that length, which is in the way."""
    out = list(tokens)
    for at in range(1, len(tokens) - 1):
        rest = [one for one in tokens[at + 1 : at + 3] if one.kind != "FILLER"]
        drawn = bool(rest) and rest[0].kind == "PIECE" and rest[0].value in DRAWN
        if drawn and _is_length(tokens[at - 1]) and TOO_MUCH in tokens[at].groups:
            out[at] = tokens[at].as_("FILLER")
    return out


def _is_other(token: Token) -> bool:
    measured = token.kind == "MEASURE" and token.value == _REGISTER
    return measured or token.value in _OTHERS or REAR in token.groups


def _is_length(token: Token) -> bool:
    return token.kind == "LENGTH" and token.unit in _METRIC and 0 < token.numbers[0] <= _LONGEST_MM


def _stands_behind(tokens: list[Token], at: int) -> bool:
    behind = tokens[at + 1] if at + 1 < len(tokens) else None
    if behind is None or behind.kind != "PREP" or behind.value != _BEHIND:
        return False
    if at and tokens[at - 1].kind in _OF_OTHERS:
        return False
    ahead = [one for one in tokens[at + 2 : at + 6] if one.kind not in _PASSED]
    if ahead and _may_be_lens(ahead[0]):
        return True
    of_it = not ahead or ahead[0].value == _IT or tokens[at + 2].kind in _ENDS
    if any(one.kind == "KIND" and one.value in _OWN_FLANGE for one in tokens):
        return False
    return of_it and any(_may_be_lens(one) for one in tokens[:at])


def _may_be_lens(token: Token) -> bool:
    """A focal length, with or without its stop."""
    named = token.kind in _LENS and token.unit in ("", "mm") and not token.text.isalpha()
    return named and token.numbers[0] >= _SHORTEST_LENS_MM
