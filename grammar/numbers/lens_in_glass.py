"""'25 in .71 booster': no inches, but a lens and the glass that it stands in."""

from __future__ import annotations

from typing import Final

from engine.base.units import MM_PER_INCH
from grammar.numbers.optics_numbers import OPTICS
from grammar.words.tokens import Token

_IN: Final = "in"
_SHORTEST: Final = 8.0  # mm, of a lens
_FACTORS: Final = ("NUMBER", "TIMES")
_LESS: Final = 3.5  # what glass multiplies by


def with_lens_in_glass(tokens: list[Token]) -> list[Token]:
    """The length as FOCAL, and 'in' by itself, right before the factor and the name of a reducer or an extender."""
    for at, (size, factor, piece) in enumerate(zip(tokens, tokens[1:], tokens[2:], strict=False)):
        inches = (size.kind, size.unit) == ("LENGTH", _IN) and size.text.casefold().endswith(_IN)
        whole = round(size.numbers[0] / MM_PER_INCH, 3) if inches else 0.0
        glass = piece.kind == "PIECE" and piece.value in OPTICS
        if inches and glass and factor.kind in _FACTORS and factor.numbers[0] < _LESS and whole >= _SHORTEST:
            focal = size.as_("FOCAL", numbers=(whole,), unit="mm", ids=(), implies=())
            put = Token("PREP", _IN, size.column + len(size.text) - len(_IN), value=_IN)
            return [*tokens[:at], focal, put, *tokens[at + 1 :]]
    return tokens
