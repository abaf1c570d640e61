"""Glass told by its index: '4 mm clear behind the lens (n1.517)', 'a window 2 mm thick, n = 1.46'."""

from __future__ import annotations

import re
from typing import Final

from grammar.words.groups import GLASS_LIKE, INDEX, LINKS_FIGURE
from grammar.words.tokens import Token

_GLUED: Final = re.compile(r"n(?:d)?=?1", re.IGNORECASE)  # 'n1' of 'n1.517', which the point ends
_INDICES: Final = (1.3, 2.1)  # of glass
_THICKEST: Final = 12.0  # mm
_NEAR: Final = 3  # tokens from the name to the number
_OF_GLASS: Final = frozenset(["UNKNOWN", "LENS", "PIECE", "KIND", "MEASURE"])  # words for it behind its thickness


def with_glass_by_index(tokens: list[Token]) -> list[Token]:
    """Where an index is told, the one short length is the thickness of glass; the index itself is read elsewhere."""
    found = next((run for at in range(len(tokens)) if (run := _index(tokens, at)) is not None), None)
    if found is None:
        return tokens
    first, last = found
    out = [token.as_("FILLER") if first <= at <= last else token for at, token in enumerate(tokens)]
    lengths = [at for at, token in enumerate(out) if _may_be_thickness(token)]
    if len(lengths) != 1:
        return out
    at = lengths[0]
    out[at] = out[at].as_("KEYED", value="glass", unit="mm")
    for place in (*range(at + 1, len(out)), *range(at - 1, -1, -1)):
        if abs(place - at) > _NEAR:
            continue
        of_glass = out[place].kind in _OF_GLASS and GLASS_LIKE in out[place].groups
        if out[place].kind == "UNKNOWN" or of_glass:
            out[place] = out[place].as_("FILLER")
    return out


def _index(tokens: list[Token], at: int) -> tuple[int, int] | None:
    """Where the name of an index and its number begin and end, from here on."""
    if _GLUED.fullmatch(tokens[at].text) and at + 1 < len(tokens) and tokens[at + 1].text.startswith("."):
        return at, at + 1
    if INDEX not in tokens[at].groups:
        return None
    for place in range(at + 1, min(len(tokens), at + 1 + _NEAR)):
        token = tokens[place]
        if token.numbers and _INDICES[0] <= token.numbers[0] <= _INDICES[1] and "." in token.text:
            return at, place
        if not (token.kind == "MARK" or LINKS_FIGURE in token.groups):
            return None
    return None


def _may_be_thickness(token: Token) -> bool:
    return token.is_mm and 0 < token.numbers[0] <= _THICKEST
