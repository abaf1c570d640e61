"""Frame rates told without their unit: 'overcrank 25 to 100', '24 to 120 fps', 'shoot 50 in a 25 timeline'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.words.groups import CRANKED, FRAMES_COUNTED, LEADS_RATE, OF_FILM, SLOWED
from grammar.words.tokens import Token

_RATES: Final = (6.0, 2000.0)  # frames a second, where words tell that they are
_USUAL: Final = frozenset(
    [12, 16, 18, 24, 25, 30, 48, 50, 60, 72, 75, 90, 96, 100, 120, 144, 150, 180, 200, 240, 250, 300]
)
_LINKS: Final = frozenset(
    ["to", "from", "vs", "instead", "of", "in", "against", "than", "on", "over", "for", "up", "down"]
)
_SMALL: Final = frozenset(["PREP", "DET", "CUE", "JOIN", "VERB", "FILLER", "MEASURE", "LIMIT"])
_NEAR: Final = 4  # tokens between two rates
_LEAST_SLOW: Final = 48.0  # frames a second
_LEAST_FILMED: Final = 24.0  # frames a second of what is filmed today
_OF_OTHERS: Final = frozenset(["LENS", "KIND", "MOUNT", "PIECE", "DEGREES", "FNUM", "BODY"])


def with_rates_told(tokens: list[Token]) -> list[Token]:
    """Two bare numbers that a word for slow or quick motion, or the unit of one, makes frame rates become FPS."""
    tokens = _counted(tokens)
    rated = any(one.kind == "FPS" for one in tokens)
    cranked = any(CRANKED in one.groups for one in tokens)
    alone = _of_slow_motion(tokens)
    if alone is not None:
        return [one.as_("FPS") if at == alone else one for at, one in enumerate(tokens)]
    if not (rated or cranked):
        return tokens
    out = list(tokens)
    places = [at for at, one in enumerate(out) if one.kind == "FPS" or _may_be_rate(out, at, cranked)]
    for one, other in pairwise(places):
        if _are_linked(out[one + 1 : other]):
            out[one], out[other] = out[one].as_("FPS"), out[other].as_("FPS")
    return out


def _counted(tokens: list[Token]) -> list[Token]:
    """'video at 25 frames', '50 frames, outside': so many at the usual rates are those of a second."""
    out = list(tokens)
    for at, (one, other) in enumerate(pairwise(tokens)):
        rate = one.kind in ("NUMBER", "COUNT") and one.text.isdecimal() and one.numbers[0] in _USUAL
        if rate and one.numbers[0] >= _LEAST_FILMED and FRAMES_COUNTED in other.groups and not _is_of_film(tokens, at):
            out[at] = one.as_("FPS")
    return out


def _is_of_film(tokens: list[Token], at: int) -> bool:
    """'24 frames left', '24 frames on a roll': they are counted, and nothing runs."""
    return any(OF_FILM in one.groups for one in tokens[at + 2 : at + 6])


def _of_slow_motion(tokens: list[Token]) -> int | None:
    """'we do slow motion at 100': where the one number that slow motion is taken at stands."""
    slow = any(SLOWED in one.groups for one in tokens)
    slow = slow or any(SLOWED in one.listed.of(f"{one.text} {two.text}") for one, two in pairwise(tokens))
    numbers = [at for at, one in enumerate(tokens) if one.numbers and one.kind != "LIGHT"]
    if not slow or len(numbers) != 1 or not numbers[0] > 0 or LEADS_RATE not in tokens[numbers[0] - 1].groups:
        return None
    fits = tokens[numbers[0]].numbers[0] in _USUAL and tokens[numbers[0]].numbers[0] >= _LEAST_SLOW
    return numbers[0] if fits and _may_be_rate(tokens, numbers[0], cranked=True) else None


def _may_be_rate(tokens: list[Token], at: int, cranked: bool) -> bool:
    token, after = tokens[at], tokens[at + 1] if at + 1 < len(tokens) else None
    if token.kind not in ("NUMBER", "FOCAL") or not token.text.isdecimal():
        return False
    if after is not None and after.kind in _OF_OTHERS:
        return False
    return _RATES[0] <= token.numbers[0] <= _RATES[1] if cranked else token.numbers[0] in _USUAL


def _are_linked(between: list[Token]) -> bool:
    """Whether nothing but what leads from one to the other stands between them."""
    words = {word for one in between for word in (one.value, *one.text.casefold().split())}
    return 0 < len(between) <= _NEAR and all(one.kind in _SMALL for one in between) and bool(words & _LINKS)
