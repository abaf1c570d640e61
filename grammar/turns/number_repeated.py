"""The length of a piece of before said again without its noun: 'is 5 mm safe for the thread' after a 5 mm tube."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard, hear
from grammar.questions import Question, Thing
from grammar.turns.number_roles import length_of
from grammar.words.lexicon import Lexicon
from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token

_NOUNS: Final = {"adapter": "ring", "extension-tube": "extension tube", "helicoid": "helicoid", "bellows": "bellows"}


def with_piece_named(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """The line with the noun behind that number, where it would else be taken for another lens; else as typed."""
    token = _bare_length(heard)
    if token is None or before.lens is None or before.lens.focal_length_mm == token.numbers[0]:
        return heard
    as_long = [one for one in before.adapters if _is_as_long(one, token.numbers[0])]
    noun = _NOUNS.get(as_long[0].piece or "adapter") if len(as_long) == 1 else None
    if noun is None:
        return heard
    text = f"{heard.text[: token.column - 1]}{token.numbers[0]:g} mm {noun}{heard.text[token.end :]}"
    again = hear(text, lexicon, before.intent)
    return replace(again, line=replace(again.line, text=heard.text))


def _bare_length(heard: Heard) -> Token | None:
    """The one number in mm of the line, where it was heard as a lens of which nothing else is told."""
    numbers = [token for token in heard.line.tokens if token.numbers]
    lenses = heard.cast.lenses
    if len(numbers) != 1 or numbers[0].kind not in SIZES or numbers[0].unit not in ("", "mm") or len(lenses) != 1:
        return None
    told = lenses[0].mounts or lenses[0].has_mount_or_kind or lenses[0].f_number is not None
    return None if told or any(token.kind in ("LENS", "PIECE") for token in heard.line.tokens) else numbers[0]


def _is_as_long(piece: Thing, number: float) -> bool:
    length = length_of(piece)
    return length is not None and length == (number, number)
