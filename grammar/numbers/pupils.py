"""The pupils of a lens as they are measured, or one by the other: 'exit pupil 24 mm', 'exit 1.7 times the entrance'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

RATIO: Final = "pupil-ratio"
EXIT, ENTRANCE = "exit-pupil", "entrance-pupil"
_PUPILS: Final = (EXIT, ENTRANCE, RATIO)
_SMALL: Final = frozenset(["CUE", "VERB", "PREP", "DET", "FILLER", "UNKNOWN", "AT"])
_RATIOS: Final = (0.2, 5.0)  # of exit to entrance pupil
_AWAY: Final = 4  # tokens
_AS_NUMBER: Final = frozenset(["NUMBER", "TIMES", "FNUM", "LENGTH"])


def with_pupils_told(tokens: list[Token]) -> list[Token]:
    """The tokens with the widths of pupils, and their ratio, as KEYED; the words for them then ask nothing more."""
    if not any(_names(token) for token in tokens):
        return tokens
    out = list(tokens)
    for at, token in enumerate(tokens):
        if not _names(token):
            continue
        place = _number_of(out, at)
        if place is not None:
            key = _told_by(out, at, place)
            # a ratio is listened for in the text, and is of nothing else
            out[place] = (
                out[place].as_("CUE", value="") if key == RATIO else out[place].as_("KEYED", value=key, unit="mm")
            )
    return [token.as_("CUE", value="") if _names(token) else token for token in out]


def _names(token: Token) -> bool:
    return token.kind == "MEASURE" and token.value in _PUPILS


def _number_of(tokens: list[Token], at: int) -> int | None:
    """Where the number of a pupil stands: behind it, past small words, else right before it."""
    for place in range(at + 1, min(at + 1 + _AWAY, len(tokens))):
        if _is_number(tokens[place]):
            return place
        if tokens[place].kind not in _SMALL:
            break
    return at - 1 if at and tokens[at - 1].kind == "LENGTH" and tokens[at - 1].is_mm else None


def _is_number(token: Token) -> bool:
    return token.kind in _AS_NUMBER and len(token.numbers) == 1 and token.unit in ("", "mm")


def _told_by(tokens: list[Token], at: int, place: int) -> str:
    """What the number is: the width of that pupil, or, set against the other one, how many times as wide it is."""
    number = tokens[place]
    plain = number.unit != "mm" and _RATIOS[0] <= number.numbers[0] <= _RATIOS[1]
    return RATIO if plain and tokens[at].value in (EXIT, RATIO) else tokens[at].value
