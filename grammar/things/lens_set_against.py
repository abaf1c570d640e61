"""A length set against that of a lens: 'on a 20mm lens vs a 100mm' tells of two lenses."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import CONTRASTED
from grammar.words.tokens import Token

_DRAWING: Final = frozenset(["extension-tube", "helicoid", "bellows", "close-up-lens", "filter", "reverse-ring"])
_NUMBERS: Final = frozenset(["LENGTH", "NUMBER", "FOCAL"])
_SMALL: Final = frozenset(["CUE", "DET", "JOIN", "FILLER", "VERB", "PREP"])
_OF_RING: Final = _SMALL | {"PIECE", "MOUNT", "LETTER", "TARGET"}
_OPENERS: Final = frozenset(["STOP", "CUE", "DET", "VERB", "FILLER"])
_RING: Final = ("PIECE", "adapter")  # 'reaches infinity on this ring, but ...'
_ARTICLES: Final = frozenset(["DET", "LETTER"])
_AND_A: Final = frozenset(["and a", "and an"])
_REACH: Final = 12  # tokens from the one length to the other
_SHORTEST, _LONGEST = 8.0, 1200.0  # mm


def with_lens_set_against(tokens: list[Token]) -> list[Token]:
    """'on a 20mm lens vs a 100mm', 'for a 20mm than for an 85mm': the length set against that of a lens is one too."""
    tokens = _with_lenses_contrasted(tokens)
    if any(one.kind in ("PIECE", "TUBE") and one.value in _DRAWING for one in tokens):
        return tokens
    tokens = _with_another(tokens)
    out = _with_either(tokens)
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


def _with_another(tokens: list[Token]) -> list[Token]:
    """'a 24 mm and a 60 mm on APS-C': behind 'and a' stands another lens, where nothing is told that it would be of."""
    for at in range(len(tokens) - 2):
        one, join = tokens[at : at + 2]
        place = at + 2 + (tokens[at + 2].kind in _ARTICLES)
        other, after = (tokens[n] if n < len(tokens) else None for n in (place, place + 1))
        if other is None or one.kind != other.kind or not (_is_lens_long(one) and _is_lens_long(other)):
            continue
        led = at > 0 and (tokens[at - 1].kind in _ARTICLES or tokens[at - 1].value == "of")
        plain = join.value == "and" and led and not any(token.kind in ("PIECE", "MEASURE") for token in tokens)
        ends = after is None or after.kind in ("STOP", "CUE") or (after.kind == "PREP" and after.value in ("on", "at"))
        if ends and (plain or join.text.casefold() in _AND_A):
            both = [one.as_("FOCAL", unit="mm"), join.as_("JOIN", value="and"), other.as_("FOCAL", unit="mm")]
            return [*tokens[:at], *both, *tokens[place + 1 :]]
    return tokens


def _with_either(tokens: list[Token]) -> list[Token]:
    """'60mm or 105mm enlarger glass': either of two lengths before what kind of lens it is."""
    out = list(tokens)
    for at, one in enumerate(tokens[:-3]):
        join, other, kind = tokens[at + 1 : at + 4]
        opened = at == 0 or tokens[at - 1].kind in _OPENERS
        either = join.kind == "JOIN" and join.value in ("or", "vs") and kind.kind in ("LENS", "KIND")
        if opened and either and _is_lens_long(one) and _may_be_lens(other):
            out[at], out[at + 2] = (token.as_("FOCAL", unit="mm") for token in (one, other))
    return out


def _with_lenses_contrasted(tokens: list[Token]) -> list[Token]:
    """'the spacer error kills my 10mm but the 75 is fine', '... a 16mm and not a 100mm': lenses, and no spacer."""
    for at, one in enumerate(tokens[:-1]):
        rest = range(at + 1, min(len(tokens), at + _REACH))
        number = next((n for n in rest if tokens[n].kind in _NUMBERS), None)
        if number is None or not (_may_be_lens(one) and _may_be_lens(tokens[number])):
            continue
        between = tokens[at + 1 : number]
        ring = any((token.kind, token.value) == _RING for token in between)
        small = all(token.kind in (_OF_RING if ring else _SMALL) for token in between)
        small = small and not any(token.kind == "PIECE" for token in tokens[number + 1 : number + 2])
        led = any(n > 0 and tokens[n - 1].kind == "DET" for n in (at, number))
        if small and led and any(CONTRASTED in token.groups for token in between):
            places = {at, number}
            return [token.as_("FOCAL", unit="mm") if n in places else token for n, token in enumerate(tokens)]
    return tokens


def _may_be_lens(token: Token) -> bool:
    whole = token.kind in _NUMBERS and token.text[:1].isdigit() and token.numbers[0] == int(token.numbers[0])
    return whole and token.unit in ("", "mm") and _SHORTEST <= token.numbers[0] <= _LONGEST


def _is_lens_long(token: Token) -> bool:
    return token.is_mm and _SHORTEST <= token.numbers[0] <= _LONGEST
