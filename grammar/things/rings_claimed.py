"""How thick a ring is said to be, where that is doubted: 'an ad says 27.5 mm for OM to E, correct?'."""

from __future__ import annotations

from typing import Final

from grammar.questions import RING
from grammar.things.letters_by_numbers import ARTICLES
from grammar.words.tokens import Token

_DOUBTED: Final = "right"  # the cue that asks whether it is so
_MOUNTS: Final = frozenset(["MOUNT", "LETTER"])
_TO: Final = frozenset(["to", "on", "onto"])


def with_rings_claimed(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The length as that of the ring that joins the two mounts."""
    if _DOUBTED not in told or any(one.kind in ("PIECE", "LENS", "COMBO", "FNUM") for one in tokens):
        return tokens
    for at in range(len(tokens) - 4):
        size, lead, front, link, rear = tokens[at : at + 5]
        long = size.is_mm or (size.kind == "NUMBER" and not size.text.isalpha())
        led = lead.kind == "PREP" and lead.value == "for" and link.kind == "PREP" and link.value in _TO
        named = all(one.kind in _MOUNTS and one.text.casefold() not in ARTICLES for one in (front, rear))
        if long and led and named:
            ring = Token("PIECE", "ring", rear.column, RING)
            joined = link.as_("PREP", value="to")
            return [*tokens[:at], size.as_("LENGTH", unit="mm"), front, joined, rear, ring, *tokens[at + 5 :]]
    return tokens
