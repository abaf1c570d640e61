"""The numbers on the barrel of a microscope objective: '4x, 0.10, 160' are no lengths of anything else."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

APERTURE: Final = "na"
_KIND: Final = "objective"
_LEAST, _MOST = 0.02, 1.5  # numerical apertures that are made
_TUBES: Final = frozenset([160.0, 170.0, 210.0])  # mm of tube for which they are corrected
_GLASS: Final = 0.17  # mm of cover glass, told behind the tube


def with_objectives_told(tokens: list[Token]) -> list[Token]:
    """The numerical aperture becomes KEYED, the length of its tube and the cover glass ask nothing."""
    if not any((token.kind, token.value) == ("KIND", _KIND) for token in tokens):
        return tokens
    out, found = list(tokens), False
    for at, token in enumerate(tokens):
        if token.kind != "NUMBER" or len(token.numbers) != 1:
            continue
        number = token.numbers[0]
        if number in _TUBES or (number == _GLASS and found):
            out[at] = token.as_("FILLER")
        elif "." in token.text and _LEAST <= number <= _MOST and not found:
            out[at], found = token.as_("KEYED", value=APERTURE), True
    return out
