"""Two pitches set against each other: '1.00 instead of 26 tpi, 4 turns', 'two 37 mm threads, 0.75 and 1.0'."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import Final

from engine.base.compact import replace
from grammar.numbers.threads_told import is_stop
from grammar.words.groups import IN_PLACE_OF, OF_PITCH, SCREW
from grammar.words.tokens import Token

KEY: Final = "other-pitch"
_LEAST_MM, _MOST_MM = 0.3, 2.6  # of the threads that lenses have
_NEAR: Final = 4  # tokens between the two
_PASSED: Final = frozenset(["CUE", "DET", "PREP", "JOIN", "MOUNTWORD"])
_APART: Final = 6  # tokens between two pitches of one width
_WIDTH: Final = re.compile(r"(\d+(?:\.\d+)?) ?mm\b")


def with_pitches_named(tokens: list[Token]) -> list[Token]:
    """'half mm pitch': a length right before the word is one."""
    for at, (one, behind) in enumerate(pairwise(tokens)):
        short = one.is_mm and one.numbers[0] <= _MOST_MM
        if short and len(one.numbers) == 1 and behind.kind == "CUE" and OF_PITCH in behind.groups:
            made = replace(one, kind="PITCH", value=f"{one.numbers[0]:g} mm")
            return [*tokens[:at], made, *tokens[at + 2 :]]
    return tokens


def with_two_of_a_width(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'two 37 mm threads, 0.75 and 1.0', 'a 40.5 with 0.5 pitch and one with 0.75': two THREADs of one width."""
    tokens = with_pitches_named(tokens)
    pitches = [at for at, one in enumerate(tokens) if _pitch_mm(one) is not None and one.kind != "LENGTH"]
    pitches = [at for at in pitches if not is_stop(tokens, at)]
    widths = [(at, mm) for at, one in enumerate(tokens) if (mm := _width_mm(one)) is not None]
    screwed = any(one.kind == "PITCH" or SCREW in one.groups for one in tokens)
    if len(pitches) != 2 or len(widths) != 1 or not screwed or any(one.kind == "TURNS" for one in tokens):
        return tokens
    first, last = pitches
    between = tokens[first + 1 : last]
    told_as_or = any(one.kind == "JOIN" and one.value == "or" for one in between)
    if last - first > _APART or told_as_or or "pitch-drift" in told:
        return tokens
    (at, width) = widths[0]
    out = list(tokens)
    for place in pitches:
        pitch = _pitch_mm(tokens[place])
        assert pitch is not None
        name = f"M{width:g}x{pitch:g}"
        out[place] = replace(tokens[place], kind="THREAD", value=name, unit="mm", numbers=(width, pitch), ids=())
    return [one for place, one in enumerate(out) if place != at]


def _width_mm(token: Token) -> float | None:
    """How wide a thread is of which that alone is told: '37 mm', '42 mm thread'."""
    if token.kind == "KEYED" and token.value == "diameter":
        return token.numbers[0]
    found = _WIDTH.match(token.text) if token.kind == "MOUNT" and len(token.ids) > 1 else None
    return float(found[1]) if found is not None else None


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
