"""How far a thread is to move something, where the turns for it are asked: '4 mm on M42x0.75, how many turns'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_ASKED: Final = "turns-q"
_ANGLE_SEEN: Final = "angle-seen"  # the cue that the degrees are those of a view
_LONGEST: Final = 12.0  # mm, that a thread of a lens moves; what is longer may be its focal length
_OF_OTHERS: Final = frozenset(["LENS", "KIND", "MOUNT", "PIECE", "FNUM", "MOUNTWORD", "BODY"])


def with_moves_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The one short length that is of nothing else becomes KEYED as the travel."""
    if (
        _ASKED not in told
        or _ANGLE_SEEN in told
        or any(token.kind == "FORMAT" for token in tokens)  # '5.5 mm on Super 8, how wide in degrees' is a lens
        or any(token.kind == "KEYED" and token.value == "travel" for token in tokens)
    ):
        return tokens
    turned = any(token.kind == "DEGREES" for token in tokens)  # '6 mm in 270 degrees, how far for 0.1'
    left = [
        at for at, token in enumerate(tokens)
        if (token.is_mm if turned else True) and _is_short(token) and not _is_of_another(tokens, at)
    ]  # fmt: skip
    if len(left) != 1:
        return tokens
    return [one.as_("KEYED", value="travel", unit="mm") if at == left[0] else one for at, one in enumerate(tokens)]


def _is_short(token: Token) -> bool:
    """A length in mm, or a bare number with a point, which counts nothing: 'turns for 5.24'."""
    bare = token.kind == "NUMBER" and "." in token.text
    return (bare or token.is_mm) and 0 < token.numbers[0] <= _LONGEST


def _is_of_another(tokens: list[Token], at: int) -> bool:
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return after is not None and after.kind in _OF_OTHERS
