"""A body told by nothing but its register: 'on a 46.5 body', 'a 44 mm DSLR'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_REGISTER: Final = "flange-to-image"
_OF_BODY: Final = "body-register"
_FINE_MM: Final = (12.0, 120.0)  # registers told to a tenth, as no focal length or format is
_OF_SLRS_MM: Final = (40.5, 48.0)  # whole ones, with their unit; no film is so wide
_TELLS: Final = frozenset(["MEASURE", "KEYED"])


def with_bodies_by_register(tokens: list[Token]) -> list[Token]:
    """The number right before a body becomes its register, where no other is told of and nothing else names it."""
    if any(one.kind in _TELLS and one.value == _REGISTER for one in tokens):
        return tokens
    out = list(tokens)
    for at in range(1, len(tokens) - 1):
        if _is_plain_body(tokens[at + 1]) and tokens[at - 1].kind in ("DET", "LETTER", "PREP") and _may_be(tokens[at]):
            out[at] = tokens[at].as_("KEYED", value=_OF_BODY, unit="mm")
    told = any(one.kind == "KEYED" and one.value == _OF_BODY for one in out)
    return [_of_lens(out, at) if told else token for at, token in enumerate(out)]


def _of_lens(tokens: list[Token], at: int) -> Token:
    """'a 45.46 lens on a 44.5 body': both are told by their registers."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    register = after is not None and after.kind == "LENS" and not after.ids and _may_be(tokens[at])
    return tokens[at].as_("KEYED", value=_REGISTER, unit="mm") if register else tokens[at]


def _is_plain_body(token: Token) -> bool:
    return token.kind == "BODY" and not token.ids


def _may_be(token: Token) -> bool:
    if token.kind not in ("NUMBER", "LENGTH") or token.unit not in ("", "mm") or len(token.numbers) != 1:
        return False
    number = token.numbers[0]
    if "." in token.text and number != int(number):
        return _FINE_MM[0] <= number <= _FINE_MM[1]
    return token.kind == "LENGTH" and _OF_SLRS_MM[0] <= number <= _OF_SLRS_MM[1]
