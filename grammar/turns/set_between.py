"""A number that says how far what can be drawn out is drawn now: 'and at 100' after a bellows of 40 to 140 mm."""

from __future__ import annotations

from grammar.hearing import Heard
from grammar.questions import Question, Thing
from grammar.turns.spans import span_of
from grammar.words.tokens import Token
from grammar.words.written import STOPS


def drawn_to(heard: Heard, before: Question) -> tuple[Token, str, Token] | None:
    """'at 100 what is the scale' after a bellows of 40 to 140 mm: how far it is drawn out."""
    tokens = heard.line.tokens
    ranged = [(one.piece, span) for one in before.adapters if one.thickness_mm and len(set(span := _ends(one))) > 1]
    set_to = [token for token in tokens if token.kind == "NUMBER" and is_set(token, heard)]
    if len(ranged) != 1 or len(set_to) != 1 or any(token.kind == "PIECE" for token in tokens):
        return None
    number, (piece, (least, most)) = set_to[0].numbers[0], ranged[0]
    held = least <= number <= most and number not in STOPS
    at = next(one for one in reversed(tokens) if one.column < set_to[0].column)
    return (set_to[0], f"with {number:g} mm {piece}", at) if held else None


def _ends(piece: Thing) -> tuple[float, float]:
    """Both ends of what is drawn out, also where it is set to a length between them now."""
    return span_of(piece) or piece.thickness_mm or (0.0, 0.0)


def is_set(token: Token, heard: Heard) -> bool:
    """'at 8': a stop or a distance, no length of a thing."""
    led = heard.led_by(token)
    return led is not None and (led.kind, led.value) == ("PREP", "at")
