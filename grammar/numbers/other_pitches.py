"""Two pitches set against each other: '1.00 instead of 26 tpi, 4 turns', '32 tpi cut as 0.8'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.words.groups import IN_PLACE_OF
from grammar.words.tokens import Token

KEY: Final = "other-pitch"
_LEAST_MM, _MOST_MM = 0.3, 2.6  # of the threads that lenses have
_NEAR: Final = 4  # tokens between the two
_PASSED: Final = frozenset(["CUE", "DET", "PREP", "JOIN", "MOUNTWORD"])


def with_other_pitches(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The pitch that stands against the one told as such as KEYED, where turns or a drift are spoken of."""
    places = [at for at, one in enumerate(tokens) if one.kind == "PITCH"]
    if not places or not (any(one.kind == "TURNS" for one in tokens) or "pitch-drift" in told):
        return tokens
    for at in reversed(places):  # of two pitches the first is the one that is cut
        for other in range(max(0, at - _NEAR), min(len(tokens), at + _NEAR + 1)):
            mm = _pitch_mm(tokens[other]) if other != at else None
            if mm is None or not _set_apart(tokens, *sorted((at, other))):
                continue
            out = list(tokens)
            out[other] = replace(tokens[other], kind="KEYED", value=KEY, unit="mm", numbers=(mm,), ids=())
            return out
    return tokens


def _pitch_mm(token: Token) -> float | None:
    """How large it is as a pitch, in mm; None where it can be none."""
    if token.kind == "PITCH":
        return token.numbers[0] if token.numbers else None
    if token.kind not in ("NUMBER", "LENGTH") or token.text.isalpha() or token.unit not in ("", "mm"):
        return None
    return token.numbers[0] if len(token.numbers) == 1 and _LEAST_MM <= token.numbers[0] <= _MOST_MM else None


def _set_apart(tokens: list[Token], first: int, last: int) -> bool:
    """Whether nothing stands between but what sets the one in place of the other."""
    between = tokens[first + 1 : last]
    led = bool(between) and any(IN_PLACE_OF in one.groups for one in between)
    return led and all(one.kind in _PASSED or not one.numbers for one in between)
