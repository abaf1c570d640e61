"""One more length joined on behind a piece that has its own: 'two 10 mm tubes and a 5', '12 mm ring plus a 1'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import SPACER
from grammar.words.groups import JOINED_ON, THIN_LED
from grammar.words.tokens import Token

_SIZED: Final = frozenset(["LENGTH", "COUNT", "NUMBER"])
_LENSES: Final = frozenset(["NUMBER", "LENGTH", "FOCAL", "COMBO", "NAMED"])
_OWN: Final = frozenset(["LENS", "KIND", "FNUM", "MOUNT", "PIECE", "NUMBER", "LETTER", "TRAIT", "MEASURE", "BODY"])
_LONGEST_MM: Final = 40.0
_LEAST_LENS_MM: Final = 8.0


def with_further_tubes(tokens: list[Token]) -> list[Token]:
    """A tube put behind such a length, where another number can be the lens."""
    out = tokens = _with_thin_rings(list(tokens))
    for at in range(1, len(tokens) - 2):
        piece = tokens[at]
        if piece.kind != "PIECE" or piece.value != SPACER or tokens[at - 1].kind not in _SIZED:
            continue
        place = at + 1
        if JOINED_ON not in tokens[place].groups:
            continue
        place += 2 if tokens[place + 1].kind == "DET" and place + 2 < len(tokens) else 1
        length = tokens[place]
        after = tokens[place + 1] if place + 1 < len(tokens) else None
        metric = length.may_be_mm and not length.text.isalpha()
        if not metric or length.numbers[0] > _LONGEST_MM or (after is not None and after.kind in _OWN):
            continue
        if not any(_may_be_lens(one) for n, one in enumerate(tokens) if n not in (at - 1, place)):
            continue
        joined = tokens[at + 1].as_("JOIN", text=",", value=",")
        more = [length.as_("LENGTH", unit="mm"), Token("PIECE", "tube", length.column, SPACER)]
        return [*out[: at + 1], joined, *more, *with_further_tubes(out[place + 1 :])]
    return out


def _with_thin_rings(tokens: list[Token]) -> list[Token]:
    """'the 10-15.5 helicoid plus thin 1mm on E': a thin length joined to a piece is a ring, and no error."""
    for at in range(1, len(tokens) - 2):
        row = [one.kind for one in tokens[at - 1 : at + 3]]
        joined = row == ["PIECE", "JOIN", "MEASURE", "LENGTH"] and JOINED_ON in tokens[at].groups
        after = tokens[at + 3] if at + 3 < len(tokens) else None
        if joined and THIN_LED in tokens[at + 1].groups and (after is None or after.kind not in _OWN):
            ring = Token("PIECE", "ring", tokens[at + 2].column, "adapter")
            return [*tokens[: at + 1], tokens[at + 2], ring, *tokens[at + 3 :]]
    return tokens


def _may_be_lens(token: Token) -> bool:
    if token.kind == "NAMED":
        return True
    return token.kind in _LENSES and bool(token.numbers) and token.numbers[0] >= _LEAST_LENS_MM
