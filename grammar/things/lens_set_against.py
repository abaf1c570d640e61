"""A length set against that of a lens: 'on a 20mm lens vs a 100mm' tells of two lenses."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_DRAWING: Final = frozenset(["extension-tube", "helicoid", "bellows", "close-up-lens", "filter", "reverse-ring"])
_SHORTEST, _LONGEST = 8.0, 1200.0  # mm


def with_lens_set_against(tokens: list[Token]) -> list[Token]:
    """'on a 20mm lens vs a 100mm', 'for a 20mm than for an 85mm': the length set against that of a lens is one too."""
    if any(one.kind in ("PIECE", "TUBE") and one.value in _DRAWING for one in tokens):
        return tokens
    out = list(tokens)
    for at, one in enumerate(tokens):
        led = tokens[at - 1].kind == "DET" and tokens[at - 2].kind == "PREP" if at > 1 else False
        if not (led and _is_lens_long(one)):
            continue
        place = at + 1 + (at + 1 < len(tokens) and tokens[at + 1].kind == "LENS")
        against = place < len(tokens) and (
            (tokens[place].kind, tokens[place].value) == ("JOIN", "vs")
            or (tokens[place].kind == "PREP" and tokens[place].value == tokens[at - 2].value)
        )
        while against and place < len(tokens) and tokens[place].kind in ("JOIN", "PREP", "DET"):
            place += 1
        ends = place + 1 >= len(tokens) or tokens[place + 1].kind in ("STOP", "JOIN", "LENS", "CUE")
        if against and place < len(tokens) and ends and _is_lens_long(tokens[place]):
            out[at], out[place] = (token.as_("FOCAL", unit="mm") for token in (one, tokens[place]))
    return out


def _is_lens_long(token: Token) -> bool:
    return token.is_mm and _SHORTEST <= token.numbers[0] <= _LONGEST
