"""'image 38 mm behind the end of the barrel', 'its picture is 58 off the rear rim': so far behind the lens it lies."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import BACK_FROM, IMAGE
from grammar.words.tokens import Token

_FLANGE: Final = "flange-to-image"
_REAR: Final = "rear-reach"  # value of 'rear end', which here is where it is measured from
_LEAST_MM, _MOST_MM = 9.0, 300.0
_AHEAD: Final = 4  # tokens at most from the word for the image to the number
_LED: Final = frozenset(["FILLER", "VERB", "DET", "PREP", "CUE", "MEASURE", "MARK"])
_OF_IMAGE: Final = frozenset(["MEASURE", "KEYED"])  # where it is told already what the number is of


def with_image_behind(tokens: list[Token]) -> list[Token]:
    """The length between a word for the image and one that leads back to the lens, as that from seat to image."""
    for at, token in enumerate(tokens):
        if IMAGE not in token.groups or token.kind in _OF_IMAGE:
            continue
        place = _number(tokens, at)
        if place is None or not any(_leads_back(one) for one in tokens[place + 1 : place + 2]):
            continue
        behind = [one.as_("CUE", value="") if one.value == _REAR else one for one in tokens[place + 1 : place + _AHEAD]]
        if all(one.kind not in _OF_IMAGE for one in behind):
            told = tokens[place].as_("KEYED", value=_FLANGE, unit="mm")
            return [*tokens[:place], told, *behind, *tokens[place + _AHEAD :]]
    return tokens


def _leads_back(token: Token) -> bool:
    return BACK_FROM in token.groups or token.value == _REAR


def _number(tokens: list[Token], at: int) -> int | None:
    for place in range(at + 1, min(at + 1 + _AHEAD, len(tokens))):
        token = tokens[place]
        if token.may_be_mm and not token.text.isalpha() and len(token.numbers) == 1:
            return place if _LEAST_MM <= token.numbers[0] <= _MOST_MM else None
        if token.kind not in _LED:
            return None
    return None
